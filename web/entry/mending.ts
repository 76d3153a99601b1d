import { materialWords } from '../../core/library/field-words.ts'
import type { Material } from '../../core/library/material.ts'
import type { Source } from '../../core/library/source.ts'
import type { Identified } from './api.ts'
import { changedMore, limitLacks, moreFrom, moreTyped, wantsSource } from './material-more.ts'
import { hazardsTyped, type TypedMaterial } from './material-typed.ts'
import type { Lack } from './record.ts'

/** Keys of a record that each field of the page says. */
const keysOf = {
  name: ['name'],
  smiles: ['smiles', 'formula', 'displayFormula', 'kind'],
  formula: ['formula', 'displayFormula', 'kind'],
  cas: ['cas'],
  form: ['form'],
  density: ['densityGPerMl'],
  melting: ['meltingC'],
  boiling: ['boilingC'],
  flash: ['flashC'],
  contains: ['contains', 'kind'],
} as const satisfies Readonly<Record<string, readonly (keyof Material)[]>>
type FieldOfRecord = keyof typeof keysOf

/** The page as it stands when a record is opened to be put right: every field says what the record says. */
export function filledFrom(material: Material, nameOf: (id: string) => string): Partial<TypedMaterial> {
  const { name, smiles, formula, cas, form, densityGPerMl, meltingC, boilingC, flashC, contains, hazards } = material
  const chosen = (id: string | undefined) => (id === undefined ? null : { id, name: nameOf(id) })
  const figure = (value: number | undefined): string => (value === undefined ? '' : String(value))
  return {
    ...{ name, smiles: smiles ?? '', formula: formula ?? '', cas: cas ?? '', form },
    ...{ density: figure(densityGPerMl), melting: figure(meltingC), boiling: figure(boilingC), flash: figure(flashC) },
    ...{ of: chosen(contains?.compound), strength: strengthText(contains), rest: chosen(contains?.rest) },
    ...{ codes: hazards?.codes.join(', ') ?? '', signalWord: hazards?.signalWord ?? 'Warning' },
    ...moreFrom(material),
    over: material,
  }
}

function strengthText(contains: Material['contains']): string {
  if (contains?.massFraction !== undefined) return `${Number((contains.massFraction * 100).toPrecision(6))} %`
  return contains?.molPerL === undefined ? '' : `${contains.molPerL} M`
}

/** Fields that say something else than the record did. */
function changedFields(typed: TypedMaterial, over: Material): readonly FieldOfRecord[] {
  const before = filledFrom(over, String)
  const texts = (['name', 'smiles', 'formula', 'cas', 'form', 'density', 'melting', 'boiling', 'flash'] as const).filter(
    field => typed[field].trim() !== before[field]!.trim(),
  )
  const inIt = ({ of, strength, rest }: Partial<TypedMaterial>): string => [of?.id ?? '', strength?.trim(), rest?.id ?? ''].join('|')
  // What is in a liquid or a solid of a stated strength has no fields here, and stays.
  return typed.form !== 'solution' || inIt(typed) === inIt(before) ? texts : [...texts, 'contains']
}

/** What differs, as a source is said to speak for it: "density, melting point". */
export function changedWords(typed: TypedMaterial, over: Material): string {
  const keys = [...changedFields(typed, over).map(field => keysOf[field][0]), ...changedMore(typed, over).filter(wantsSource)]
  return [...new Set(keys.map(key => materialWords[key].label))].join(', ')
}

/** What is still to be said before a record can be put right: by whose word each thing that differs stands. */
export function mendingLacks(typed: TypedMaterial, over: Material): readonly Lack[] {
  const lacking: Lack[] = [...limitLacks(typed)]
  const words = changedWords(typed, over)
  if (words !== '' && typed.known === '') lacking.push({ field: 'known', what: `whether you read, remember or measured the ${words}` })
  if (words !== '' && typed.known === 'checked' && typed.source.trim() === '')
    lacking.push({ field: 'source', what: `where you read the ${words}` })
  if (typed.hazards === 'typed' && typed.codesFrom.trim() === '')
    lacking.push({ field: 'codesFrom', what: 'who assigned the hazards; write “memory” where you only remember them' })
  return lacking
}

/**
 * The record that would stand in place of another: all that the page does not ask about stays as it was, sources included, but for those that
 * spoke for what differs now.
 *
 * @param source  by whose word it differs, named for what differs
 */
export function mendedRecord(typed: TypedMaterial, over: Material, told: Identified, source: Source): Readonly<Record<string, unknown>> {
  const more = changedMore(typed, over)
  const keys = new Set<keyof Material>([...changedFields(typed, over).flatMap(field => [...keysOf[field]]), ...more])
  const hazards = hazardsNow(typed, told)
  const kept = Object.fromEntries(Object.entries(over).filter(([key]) => !keys.has(key as keyof Material)))
  const said = { ...told.material, ...Object.fromEntries(more.map(key => [key, undefined])), ...moreTyped(typed) }
  const fresh = Object.fromEntries(Object.entries(said).filter(([key, value]) => value !== undefined && keys.has(key as keyof Material)))
  const gone = [...[...keys].map(key => materialWords[key].label), ...(hazards === null ? [] : ['hazards'])]
  return {
    ...kept,
    ...fresh,
    ...(hazards === null ? {} : { hazards: hazards.hazards }),
    sources: [
      ...([...keys].some(wantsSource) ? [source] : []),
      ...(hazards?.sources ?? []),
      ...over.sources.flatMap(one => without(one, gone)),
    ],
  }
}

/** Hazards that take the place of the record's, with who speaks for them; null = they stay. */
function hazardsNow(
  typed: TypedMaterial,
  { withHazards }: Identified,
): { readonly hazards: unknown; readonly sources: readonly Source[] } | null {
  if (typed.hazards === 'tables' && withHazards?.hazards !== undefined)
    return {
      hazards: withHazards.hazards,
      sources: withHazards.sources.flatMap(one => (one.for === undefined || one.for === 'hazards' ? [{ ...one, for: 'hazards' }] : [])),
    }
  if (typed.hazards !== 'typed') return null
  const hazards = hazardsTyped(typed)
  const said = typed.codesFrom.trim() === '' ? 'not said yet' : typed.codesFrom.trim()
  const isMemory = /^(from )?memory\b/i.test(said)
  return {
    hazards: { ...hazards, from: said },
    sources: [{ citation: isMemory ? 'from memory' : said, for: 'hazards', checked: !isMemory }],
  }
}

/** A source without what it no longer speaks for; none where that was all. */
function without(source: Source, gone: readonly string[]): readonly Source[] {
  if (source.for === undefined) return [source]
  const before = source.for.split(/\s*[,;]\s*/)
  const left = before.filter(piece => !gone.some(word => piece === word || (word === 'flash point' && piece === 'flash')))
  if (left.length === before.length) return [source]
  return left.length === 0 ? [] : [{ ...source, for: left.join(', ') }]
}
