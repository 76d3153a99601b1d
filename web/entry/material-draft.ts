import { batch, effect, signal, untracked } from '@preact/signals'
import type { Source } from '../../core/library/source.ts'
import { ownBench } from '../../core/library/trust.ts'
import { isSmilesSyntax } from '../../core/reading/smiles-syntax.ts'
import type { Identified, MaterialTyped } from './api.ts'
import { type Called, draftOf, isUnsaved, type MaterialDraft, type MaterialDrafts, noDrafts, turnedTo } from './material-drafts.ts'
import { hasLimit, limitLacks, moreTyped } from './material-more.ts'
import { type Chosen, emptyMaterial, hazardsTyped, type TypedMaterial } from './material-typed.ts'
import { changedWords, mendedRecord, mendingLacks } from './mending.ts'
import { own } from './own.ts'
import { openEntry } from './place.ts'
import type { Lack } from './record.ts'

const key = 'waybench-material'

function kept(): MaterialDrafts {
  try {
    const { others = [], ...now } = (JSON.parse(localStorage.getItem(key) ?? 'null') ?? {}) as Partial<MaterialDraft & MaterialDrafts>
    const whole = (one: Partial<MaterialDraft>): MaterialDraft => ({
      ...draftOf({ ...emptyMaterial, ...one.begun }, one.called ?? null),
      typed: { ...emptyMaterial, ...one.typed },
      saved: one.saved ?? null,
    })
    return { now: whole(now), others: others.map(whole) }
  } catch {
    return noDrafts
  }
}

const { now: first, others } = kept()
/** What is typed of a material; kept in this browser at every letter. */
export const typedMaterial = signal<TypedMaterial>(first.typed)
export const setMaterial = (patch: Partial<TypedMaterial>): void => {
  typedMaterial.value = { ...typedMaterial.value, ...patch }
}
/** Null where the page was opened by itself. */
export const calledInWriting = signal<Called | null>(first.called)
/** As it stood before anything was typed or as it was saved, and the version that it was saved as. */
const stood = signal<Pick<MaterialDraft, 'begun' | 'saved'>>({ begun: first.begun, saved: first.saved })
/** Materials that were begun before and are not saved. */
export const waiting = signal<readonly MaterialDraft[]>(others)
/** What was thrown away last, until this page is left. */
export const thrownAway = signal<MaterialDraft | null>(null)

const draftNow = (): MaterialDraft => ({ typed: typedMaterial.value, called: calledInWriting.value, ...stood.value })

effect(() => {
  try {
    localStorage.setItem(key, JSON.stringify({ ...draftNow(), others: waiting.value }))
  } catch {
    // A full or forbidden storage keeps nothing; what is typed still stands on the page.
  }
})

function show({ typed, called, begun, saved }: MaterialDraft): void {
  batch(() => {
    typedMaterial.value = typed
    calledInWriting.value = called
    stood.value = { begun, saved }
  })
}

const undone = (): ReadonlySet<number> => new Set(own.peek()?.history.flatMap(one => (one.undoes === null ? [] : [one.undoes])))

/** Another material takes the page; what stood there waits, and what was typed of this one before comes back. */
export function turnTo(next: MaterialDraft): void {
  const turned = turnedTo({ now: untracked(draftNow), others: waiting.peek() }, next, undone())
  show(turned.now)
  waiting.value = turned.others
}

/** What stands on the page gives way to a fresh beginning; if that was a slip, it is brought back. */
export function throwAway(next: MaterialDraft = draftOf(emptyMaterial)): void {
  const gone = untracked(draftNow)
  if (isUnsaved(gone, undone())) thrownAway.value = gone
  show(next)
}

/** The same with one that waits. */
export function throwWaiting(one: MaterialDraft): void {
  waiting.value = waiting.peek().filter(other => other !== one)
  thrownAway.value = one
}

export function bringBack(): void {
  const back = thrownAway.peek()
  thrownAway.value = null
  if (back === null) return
  turnTo(back)
  show(back)
}

/** It is saved as it stands. */
export const markSaved = (version: number | null): void => {
  stood.value = { begun: typedMaterial.peek(), saved: version }
}

/** Opens the page for a material that a text names and the library does not hold. */
export function beginMaterial(text: string): void {
  // A name full of brackets is no structure, and a short word of atoms is a name or a formula.
  const looksDrawn = isSmilesSyntax(text) && /[=#()[\]]|[a-z]\d/.test(text)
  turnTo(draftOf({ ...emptyMaterial, ...(looksDrawn ? { smiles: text } : { name: text }) }, { text, line: null }))
  openEntry('material')
}

/** The same for a solution of a strength that is not held, asked for by a charge line. */
export function beginSolution(of: Chosen, strength: string, line: string): void {
  const name = `${of.name}${strength === '' ? ' solution' : `, ${strength}`}`
  turnTo(draftOf({ ...emptyMaterial, name, form: 'solution', of, strength }, { text: name, line }))
  openEntry('material')
}

/** What the server is asked: the fields that stand on the page, nothing else. */
export function asked(typed: TypedMaterial): MaterialTyped {
  const { name, smiles, formula, cas, form, density, melting, boiling, flash, of, strength, rest } = typed
  const isSolution = form === 'solution'
  // What was begun in the blank and not chosen is sent as it stands: it names nothing, and that is told.
  const idOf = (one: Chosen | null): string => (one === null || !isSolution ? '' : one.id || one.name)
  return {
    ...{ name, smiles, formula, cas, form, density, melting, boiling, flash },
    ...{ of: idOf(of), strength: isSolution ? strength : '', rest: idOf(rest), over: typed.over?.id ?? '' },
  }
}

/** Characters that the server takes in a field: beyond any name, and short of what would hold others up. */
const longest = {
  name: 300,
  smiles: 2000,
  formula: 300,
  cas: 20,
  density: 100,
  melting: 100,
  boiling: 100,
  flash: 100,
  strength: 100,
} as const

/** Fields that hold more than can be a name, a structure or a figure; they are not sent, and nothing is cut off. */
export const tooLong = (typed: TypedMaterial): readonly Lack[] =>
  (Object.keys(longest) as (keyof typeof longest)[])
    .filter(field => typed[field].length > longest[field])
    .map(field => ({
      field,
      what: `a shorter text in ${field === 'smiles' ? 'the SMILES' : field === 'cas' ? 'the CAS number' : `the ${field}`}`,
      wrong: `It has ${typed[field].length} characters, and at most ${longest[field]} are read: is something else pasted into it?`,
    }))

/** Fields whose faults stand beside them, and what each wants. */
export const wanted = {
  density: 'the density as one figure',
  melting: 'the melting point as one figure',
  boiling: 'the boiling point as one figure',
  flash: 'the flash point as one figure',
  of: 'what is dissolved in it',
  strength: 'how strong it is',
  rest: 'what it is made up with',
} as const

/** What is still to be said of a material before it can be saved, field by field. */
export function materialLacks(typed: TypedMaterial, told: Identified): readonly Lack[] {
  const lacking: Lack[] = told.problems.flatMap(({ where, what, cure }) => {
    const field = where[1] ?? ''
    return Object.hasOwn(wanted, field) ? [{ field, what: wanted[field as keyof typeof wanted], wrong: `${what} ${cure}` }] : []
  })
  for (const match of told.matches) {
    if (match.named)
      lacking.push({
        field: 'name',
        what: `whether it is ${match.name}, or a name of its own`,
        wrong: `${match.name} is called so already: every text that says “${typed.name.trim()}” would have to be asked about. Take that one, or write what sets yours apart, such as its grade or its maker.`,
      })
    else if (mayBeSame(match) && !typed.apartFrom.includes(match.id))
      lacking.push({ field: 'matches', what: `whether it is ${match.name}` })
  }
  if (typed.over !== null) return [...lacking, ...mendingLacks(typed, typed.over)]
  const { density, melting, boiling, flash } = typed
  const figures =
    hasLimit(typed) || [density, melting, boiling, flash, typed.form === 'solution' ? typed.strength : ''].some(text => text.trim() !== '')
  lacking.push(...limitLacks(typed))
  if (typed.known === '' && (figures || typed.source.trim() !== ''))
    lacking.push({ field: 'known', what: 'whether you read its figures, remember them or measured them' })
  if (typed.known === 'checked' && typed.source.trim() === '') lacking.push({ field: 'source', what: 'where the figures were read' })
  return lacking
}

/**
 * Whether a likely double has to be told apart by its reader: isomers of a formula and other stereo forms are others by themselves, unless one
 * of the two leaves its hands or double bonds open.
 */
export const mayBeSame = ({ by, form }: Identified['matches'][number]): boolean =>
  by === 'other form' ? form === 'states less' || form === 'states more' : by !== 'formula'

/**
 * The record to be tried, out of what was typed and what was told of it.
 *
 * @param today  for the bench's own notebook
 */
export function materialRecord(typed: TypedMaterial, told: Identified, today: string): Readonly<Record<string, unknown>> {
  if (typed.over !== null) return mendedRecord(typed, typed.over, told, sourceTyped(typed, today, changedWords(typed, typed.over)))
  const base = typed.hazards === 'tables' && told.withHazards !== null ? told.withHazards : told.material
  return {
    ...base,
    ...moreTyped(typed),
    ...(typed.hazards === 'typed' ? { hazards: hazardsTyped(typed) } : {}),
    sources: [sourceTyped(typed, today, identity), ...base.sources],
  }
}

/** What the source of a new material speaks for. */
const identity = 'identity and properties'

/** By whose word the figures stand, which is not by whose word its hazards do; of a name and a structure alone, by whoever typed them. */
function sourceTyped({ known, source }: TypedMaterial, today: string, speaksFor: string): Source {
  const said = source.trim()
  const of = { for: speaksFor }
  if (known === '' && speaksFor !== identity) return { citation: 'not said yet', ...of, checked: false }
  if (known === 'checked') return { citation: said || 'not said yet', ...of, checked: true }
  if (known === 'memory') return { citation: said || 'from memory', ...of, checked: false }
  if (known === 'own') return { citation: `${ownBench}, entered ${today}${said === '' ? '' : `: ${said}`}`, ...of, checked: true }
  return { citation: `${ownBench}: entered by hand`, ...of, checked: false }
}
