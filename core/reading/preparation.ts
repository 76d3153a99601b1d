import type { Toolkit } from '../chemistry/structure.ts'
import { type Library, materialOf } from '../library/library.ts'
import type { Transformation } from '../library/transformation.ts'
import type { Problem } from '../problem/problem.ts'
import type { ChargeRead } from './charge-line.ts'
import { chargesOfLine } from './charges-of-line.ts'
import { chargesOverArrow, sameMaterial } from './charges-over-arrow.ts'
import { compositionsOf } from './compositions-charged.ts'
import { conditionsIn, describesProduct } from './conditions.ts'
import { withoutCrystalWater } from './crystal-water.ts'
import { againstLimiting, chargeLines, type DraftCharge, draftCharge, limitingReactant, molesOf, notTheProduct } from './draft-charge.ts'
import { balanceOf, type ProposedEquation } from './equation-balance.ts'
import { isEquation, readEquation } from './equation-line.ts'
import type { TermRead } from './equation-term.ts'
import { equipmentProposed } from './equipment-proposed.ts'
import { limitingUnsettled, unsettled } from './limiting-settled.ts'
import { lineTooLong, lineUnread } from './line-unread.ts'
import { commaRuleOf } from './measures.ts'
import type { NameIndex } from './names.ts'
import { secondOutcome } from './outcome-asked.ts'
import { isOutcome, type OutcomeRead, outcomeOf, readOutcome } from './outcome-line.ts'
import { settledOutcome } from './outcome-settled.ts'
import { yieldOf } from './outcome-yield.ts'
import { ifNoReactant, longestText, mostLines, noLimiting, tooLong, tooManyLines } from './preparation-problems.ts'
import { isProse } from './prose.ts'
import { type TaskProposed, tasksProposed } from './tasks-proposed.ts'
import { tellsWhatToDo } from './tells-what-to-do.ts'
import { timeAsked } from './time-asked.ts'

/** One charge line with what it amounts to. */
export interface LineRead {
  readonly text: string
  /** Id; null where it has to be asked about or is unknown: then the line is in `unread` too. */
  readonly material: string | null
  readonly amountMol: number | null
  readonly equivalents: number | null
  /** Materials that the name can mean, where it has to be asked about; one is named by its id in braces at the end of the line. */
  readonly candidates?: readonly string[]
}

/** A transformation as far as a text can give it: keys of the library format, the yield perhaps without its ends. */
export type DraftTransformation = Partial<Omit<Transformation, 'yieldPercent'>> & {
  readonly yieldPercent?: { readonly low?: number; readonly typical: number; readonly high?: number }
}

/** What `waybench read` prints. */
export interface PreparationRead {
  readonly transformation: DraftTransformation
  readonly limiting: string | null
  readonly lines: readonly LineRead[]
  readonly theoreticalG: number | null
  readonly percentYield: number | null
  /** Keys of the library format that the text could not give. */
  readonly missing: readonly string[]
  /** Lines that could not be used, as typed. */
  readonly unread: readonly string[]
  readonly problems: readonly Problem[]
  /** What was assumed on the way, as sentences. */
  readonly notes: readonly string[]
  /** Tasks and equipment that the text suggests: guesses, never put into the transformation by themselves. */
  readonly proposed: { readonly tasks: readonly TaskProposed[]; readonly equipment: readonly string[] }
  /** The equation's compounds, in the order typed; each id null where it is unknown or has to be asked about. */
  readonly reactants: readonly TermRead[]
  readonly products: readonly TermRead[]
  /** Ways to balance the equation, likeliest first; empty where it balances. */
  readonly proposals: readonly ProposedEquation[]
  /** False where the equation is missing, unreadable or off: nothing may be planned on it. */
  readonly balanced: boolean
}

/** Keys that a transformation needs and a text may lack, in the order of the format. */
const needed = [
  'id',
  'name',
  'kind',
  'reactants',
  'products',
  'mainProduct',
  'limiting',
  'charge',
  'yieldPercent',
  'yieldPercent.low',
  'yieldPercent.high',
  'elapsedHours',
  'operations',
  'equipment',
  'atmosphere',
  'needsHood',
  'exotherm',
  'gasEvolved',
  'hazardNotes',
  'sources',
  'confidence',
] as const

/** A line longer than this is prose, not a charge; it stays unread. In characters. */
const longestLine = 400

/**
 * Reads a preparation as plain text: the equation on its first line, then one charge a line as a procedure says it, `isolated 2.1 g` or
 * `yield 80 %`, times and temperatures. Pure; it never throws for what was typed.
 *
 * @param text     lines; empty ones and those that begin with # are passed over
 * @param library  gives molar masses and densities
 * @param index    of the same library's names
 * @param toolkit  for SMILES; null where none is loaded
 */
export function readPreparation(text: string, library: Library, index: NameIndex, toolkit: Toolkit | null = null): PreparationRead {
  if (text.length > longestText) return nothingRead(tooLong(text.length))
  const lines = text
    .replace(/^\ufeff/, '')
    .split(/\r\n|\r|\n/)
    .map(line => line.trim())
    .filter(line => line !== '' && !line.startsWith('#'))
  const comma = commaRuleOf(text)
  const equation = readEquation(lines[0] ?? '', index, toolkit)
  const problems: Problem[] = [...equation.problems]
  const unread: string[] = lines.length > 0 && !isEquation(lines[0]!) ? [lines[0]!] : []
  const notes: string[] = [...(equation.notes ?? []), ...[...equation.reactants, ...equation.products].flatMap(term => term.note ?? [])]
  const isName = (name: string): boolean =>
    index.lookUp(name).kind !== 'unknown' || equation.products.some(term => term.text.toLowerCase() === name.toLowerCase())
  const charges: ChargeRead[] = []
  const operations: string[] = []
  const remarks: string[] = []
  let stated: OutcomeRead | null = null
  let hours = 0
  const uncounted: string[] = []
  const temperatures: (readonly [number, number])[] = []

  if (lines.length > mostLines) {
    unread.push(...lines.slice(mostLines))
    problems.push(tooManyLines(lines.length))
  }

  for (const line of lines.slice(1, mostLines)) {
    if (line.length > longestLine) {
      unread.push(line)
      problems.push(lineTooLong(line))
      continue
    }
    if (isOutcome(line)) {
      const { read, ...told } = readOutcome(line, comma, isName)
      const together: OutcomeRead | null = read === null ? null : stated === null ? read : outcomeOf(stated, read)
      problems.push(...told.problems)
      notes.push(...told.notes)
      // What was done before it came out is told of, and is not the charge of these hours.
      const timed = conditionsIn(line, comma)
      if (timed.hours.length > 0 || timed.uncounted.length > 0) uncounted.push(line)
      // A second mass, or a second yield, is another product or another run: neither takes the place of the first.
      if (together === null) unread.push(line)
      if (together === null && read !== null) problems.push(secondOutcome(line, stated!.text))
      stated = together ?? stated
      continue
    }
    if (describesProduct(line)) {
      remarks.push(line)
      continue
    }
    const conditions = conditionsIn(line, comma)
    const told = conditions.hours.length > 0 || conditions.uncounted.length > 0 || conditions.temperaturesC.length > 0
    for (const one of conditions.hours) hours += one
    for (const one of conditions.uncounted) {
      uncounted.push(one)
      problems.push(timeAsked(line, one))
    }
    for (const one of conditions.cuts) notes.push(`${one} in "${line}" is taken as a boiling range, not as a temperature of the reaction`)
    temperatures.push(...conditions.temperaturesC)
    const charged = chargesOfLine(line, index, comma)
    if (charged.length > 0) {
      charges.push(...charged)
      if (tellsWhatToDo(line) || isProse(line)) operations.push(line)
    } else if (told || tellsWhatToDo(line)) operations.push(line)
    else {
      unread.push(line)
      problems.push(lineUnread(line))
    }
  }

  // What a reaction SMILES has over its arrow is charged too, unless a line says how much of it.
  for (const { line, charge, asked } of chargesOverArrow(equation.agents ?? [], index, toolkit, comma)) {
    const isThere = charge?.found.kind === 'material' && charges.some(one => sameMaterial(one, charge))
    if (asked !== undefined) notes.push(`${line} over the arrow is not taken as any material: ${asked}`)
    if (charge === null) unread.push(line)
    else if (!isThere) {
      charges.push(charge)
      notes.push(`${charge.phrase} stands over the arrow: its amount is still to be given`)
    }
  }

  // A list whose every line has its dash right before the number is plainly a list; a single such line is asked about.
  const isList = charges.length > 1 && charges.every(read => read.dashed === true)
  if (isList) notes.push('every charge begins with a dash: they are taken as the marks of a list, not as minus signs')
  const balance = balanceOf(equation, compositionsOf(charges, index))
  if (balance.problem !== null) problems.push(balance.problem)
  const drafts: DraftCharge[] = []
  for (const read of charges) {
    const draft = notTheProduct(draftCharge(isList ? { ...read, dashed: false } : read, library, index), equation)
    problems.push(...draft.problems)
    notes.push(...draft.notes)
    if (draft.material === null) unread.push(read.text)
    drafts.push(draft)
  }
  const open = unsettled(equation.reactants, drafts, index)
  const limiting = open.length > 0 ? null : limitingReactant(equation.reactants, drafts)
  const limitingMol = limiting === null ? null : molesOf(limiting, drafts)
  if (limiting === null && equation.reactants.length > 0) problems.push(open.length > 0 ? limitingUnsettled(open) : noLimiting)
  const came = settledOutcome(stated, equation, limiting, index, library)
  const { outcome, main } = came
  if (stated !== null && outcome === null) unread.push(stated.text)
  problems.push(...came.problems)
  notes.push(...came.notes)
  const settled = drafts.map(draft => againstLimiting(draft, limitingMol))
  const charge = chargeLines(settled, equation.reactants, limiting)
  // An equation that is off would give a theory that is off, and a yield that looks right: twice as much where a 2 is forgotten.
  const isOff = balance.problem !== null
  const figures = yieldOf(equation, isOff ? null : limiting, limitingMol, main, outcome, library)
  notes.push(...figures.notes)
  if (isOff && limiting !== null) notes.push('no theory, and no yield on it, before the equation balances')
  if (hours > 0) notes.push('the hours are those that the text names: work-up and drying without a time are not in them')
  if (uncounted.length > 0) notes.push(`not in the hours: ${uncounted.map(one => `"${one}"`).join(', ')}`)
  const perhapsReactants = unread.filter(line => !isOutcome(line) && !isEquation(line))
  if (figures.theoreticalG !== null && perhapsReactants.length > 0) notes.push(ifNoReactant(perhapsReactants))

  const known = (terms: readonly TermRead[]): boolean => terms.length > 0 && terms.every(term => term.compound !== null)
  // A side that lacks a compound stays out of the draft; the water of a hydrate needs both.
  const sides = withoutCrystalWater(equation.reactants, equation.products, index)
  const transformation: DraftTransformation = {
    ...(main !== null && limiting !== null
      ? { id: `${main}-from-${limiting}`, name: `${materialOf(library, main).name} from ${materialOf(library, limiting).name}` }
      : {}),
    ...(equation.reactants.length > 0 ? { kind: 'reaction' as const } : {}),
    ...(known(equation.reactants) ? { reactants: [...sides.reactants] } : {}),
    ...(known(equation.products) ? { products: [...sides.products] } : {}),
    ...(main === null ? {} : { mainProduct: main }),
    ...(limiting === null ? {} : { limiting }),
    ...(charge.length > 0 ? { charge: [...charge] } : {}),
    ...(figures.percent === null ? {} : { yieldPercent: figures.percent }),
    ...(temperatures.length > 0
      ? { temperatureC: [Math.min(...temperatures.map(one => one[0])), Math.max(...temperatures.map(one => one[1]))] as [number, number] }
      : {}),
    // Three decimals of an hour are 4 s; sums of thirds and sixths of an hour would else print with all their digits.
    ...(hours > 0
      ? { elapsedHours: Math.round(hours * 1000) / 1000, timesBasis: uncounted.length > 0 ? ('estimate' as const) : ('source' as const) }
      : {}),
    ...(operations.length > 0 ? { operations } : {}),
    ...(outcome !== null && outcome.isolatedG !== null && outcome.isolatedG > 0
      ? {
          isolated: { amount: outcome.isolatedG, unit: 'g' as const },
          ...(outcome.state !== undefined && { isolatedBasis: outcome.state }),
        }
      : {}),
    ...(remarks.length > 0 ? { note: remarks.join('; ') } : {}),
  }
  return {
    transformation,
    limiting,
    lines: settled.map(({ read, material, amountMol, equivalents }) => ({
      text: read.text,
      material: material?.id ?? null,
      amountMol,
      equivalents,
      ...candidatesOf(read),
    })),
    theoreticalG: figures.theoreticalG,
    percentYield: figures.percentYield,
    missing: needed.filter(key => !holds(transformation, key)),
    unread,
    problems,
    notes,
    proposed: {
      tasks: tasksProposed(
        operations,
        { elapsedHours: null, handsOnHours: null, solid: main !== null && materialOf(library, main).form === 'solid' },
        comma,
      ),
      equipment: equipmentProposed(operations),
    },
    reactants: equation.reactants,
    products: equation.products,
    proposals: balance.proposals,
    balanced: balance.balanced,
  }
}

/** What a line's name can mean: several bottles, or the strengths that are held of a compound. */
function candidatesOf({ found }: ChargeRead): { readonly candidates?: readonly string[] } {
  if (found.kind === 'ambiguous') return { candidates: found.candidates }
  return found.kind === 'no-such-strength' && found.held.length > 0 ? { candidates: found.held } : {}
}

const nothingRead = (problem: Problem): PreparationRead => ({
  transformation: {},
  limiting: null,
  lines: [],
  theoreticalG: null,
  percentYield: null,
  missing: needed,
  unread: [],
  problems: [problem],
  notes: [],
  proposed: { tasks: [], equipment: [] },
  reactants: [],
  products: [],
  proposals: [],
  balanced: false,
})

function holds(draft: DraftTransformation, key: string): boolean {
  const [outer, inner] = key.split('.') as [keyof DraftTransformation, string?]
  const value = draft[outer]
  return inner === undefined ? value !== undefined : value !== undefined && (value as Record<string, unknown>)[inner] !== undefined
}
