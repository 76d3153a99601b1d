import type { Problem } from '../problem/problem.ts'
import { convert } from '../quantity/convert.ts'
import type { CommaRule } from '../quantity/number.ts'
import type { Unit } from '../quantity/unit.ts'
import type { Measure } from './measures.ts'
import { bound, leftOver, noFigure, notPure, perhapsStart, qualifiedAsked, severalFigures } from './outcome-asked.ts'
import { figuresIn } from './outcome-figures.ts'
import { purestOf } from './outcome-pairs.ts'
import { type Qualifier, qualifiersIn } from './outcome-qualifier.ts'
import { withoutPlusMinus } from './plus-minus.ts'

export interface Range {
  readonly low: number
  readonly high: number
}

/** What came out, as the text states it. */
export interface OutcomeRead {
  readonly text: string
  /** The middle of a range. */
  readonly isolatedG: number | null
  /** Where a range was given. */
  readonly isolatedRangeG: Range | null
  /** Moles or a volume where no mass is given: the product tells what they weigh. Low and high differ where a range was given. */
  readonly amountMol?: Range
  readonly volumeMl?: Range
  /** "crude", "wet" ...: what was weighed is not the product alone, and no yield is counted from it. */
  readonly state?: string
  /** Percent of theory as stated; low and high differ where a range was given. */
  readonly percent: Range | null
  /** What the percentage is told to be counted on; absent = not said. */
  readonly basis?: string
  /** What stands behind "from": a reactant, or what it crystallised from. */
  readonly origin?: string
  /** The product named on the line; empty where none is. */
  readonly name: string
}

/** What became of an outcome line; where `read` is null a problem says why and how to write it. */
export interface OutcomeFound {
  readonly read: OutcomeRead | null
  readonly problems: readonly Problem[]
  readonly notes: readonly string[]
}

/** Words before "yield" that qualify it are left to be read with the rest: "crude yield 5.2 g". */
const opening =
  /^\W*(?:the\s+)?(?:(?:typical|usual|average|mean|final|isolated|percent(?:age)?)\s+)?(?<kept>(?:overall|total|crude|GC|HPLC|NMR)\s+(?=yield))?(?:isolated|yield(?:s|ed|ing)?|obtained|gave|gives|giving|afford(?:s|ed)|collected|recovered|ausbeute|rendement|rendimiento)\b(?:\s+yield)?\s*[:=]?\s*(?:of|was|is|were)?\s*|^\W*(?=\d[\d.,\s–-]*%\s*(?:\p{L}+\s+)?yield\b)/iu

/** Whether a line says what came out. */
export const isOutcome = (line: string): boolean => opening.test(line)

const impure = /(?<!\p{L})(?:crude|raw|wet|moist|damp|undried|impure|unpurified)(?!\p{L})/iu
const bounds =
  /[<>≤≥≦≧]|(?<!\p{L})(?:at (?:least|most)|up to|(?:more|less) than|over|under|above|below|exceeding|max(?:imum)?\.?|min(?:imum)?\.?)(?=\W*\d[\d.,]*\s*(?:%|percent|[km]?g|m?mol|m?[lL])(?!\p{L}))/iu
const basis = /\b(?:based|calculated|calcd?\.?|counted|referred)\s+(?:up)?(?:on|to|from)\s+(?:the\s+)?([^,;)]*)/i
const theory = /^(?:theory|theoretical(?:\s+yield)?|(?:the\s+)?limiting(?:\s+\w+)?)?\W*$/i
/** Melting and boiling points and the like beside what came out. */
const described = /(?<=[,;(\s])(?:m\.?\s?p\.?|b\.?\s?p\.?|melting|boiling|R_?f\b|n_?D\b)(?=[\s:=\d])[^;)]*?(?=[;)]|,\s|$)/giu

/**
 * Reads "isolated 2.1 g", "yield 80 %", "yield: 2.1 g (80 %)", "75 ± 5 %", "35 mmol", "obtained 7.5-8 g of benzoin".
 *
 * What is left of the line once that is taken out may be the name of the product, words that say nothing of how much, or when and how hot; a
 * digit, a sign or a word that qualifies the figure is asked about and never passed over.
 *
 * @param isName  whether a text is the name of a material, digits and all
 */
export function readOutcome(text: string, comma: CommaRule, isName: (text: string) => boolean): OutcomeFound {
  const opened = opening.exec(text)
  const said = `${opened?.groups?.kept ?? ''}${text.slice(opened?.[0].length ?? 0)}`
  const points = said.match(described) ?? []
  const told = withoutPlusMinus(said, comma).replace(described, ' ; ')
  const { found: qualified, rest } = qualifiersIn(told)
  const on = basis.exec(rest)
  const figures = figuresIn(on === null ? rest : rest.replace(basis, ' ; '), comma)
  const { masses, moles, volumes, shares, shown, name } = figures
  const mass = masses.length === 1 ? masses[0] : purestOf(figures.line, masses)
  const problem = (): Problem | null => {
    const apart = qualified.find(one => one.share !== null)
    if (shown === null) return apart === undefined ? noFigure(text) : qualifiedAsked(text, apart, apart.share!)
    const sign = bounds.exec(rest)
    if (sign !== null) return bound(text, sign[0], shown)
    if (figures.stray !== null && !isName(name)) return leftOver(text, figures.stray, figures.isOfTail ? shown : null)
    const several = [mass == null ? masses : [], moles, volumes, shares].find(list => list.length > 1)
    if (several !== undefined)
      return severalFigures(
        text,
        several.map(one => figures.line.slice(one.from, one.to).trim()),
      )
    const grave = qualified.find(({ kind, share }) => kind === 'purity' || (masses.length === 0 && asksOfYield(kind, share)))
    if (grave !== undefined) return qualifiedAsked(text, grave, shown)
    return /^\W*recovered/i.test(text) && !isName(name) ? perhapsStart(text, shown) : null
  }
  const asked = problem()
  if (asked !== null) return { read: null, problems: [asked], notes: [] }

  const state = masses.length > 1 ? undefined : impure.exec(told)?.[0].toLowerCase()
  const share = shares[0]
  const isApart = state !== undefined || (mass != null && qualified.some(one => one.share === null))
  const whole = on?.[1]?.trim() ?? ''
  const read: OutcomeRead = {
    text,
    isolatedG: mass == null ? null : convert({ value: mass.value, unit: mass.unit as Unit }, 'g'),
    isolatedRangeG: mass == null || mass.low === mass.high ? null : rangeIn(mass, 'g'),
    ...(mass == null && moles[0] !== undefined && { amountMol: rangeIn(moles[0], 'mol') }),
    ...(mass == null && moles.length === 0 && volumes[0] !== undefined && { volumeMl: rangeIn(volumes[0], 'mL') }),
    ...(state !== undefined && { state }),
    percent: share === undefined || isApart ? null : { low: share.low, high: share.high },
    ...(!theory.test(whole) && { basis: whole }),
    ...(figures.origin !== null && { origin: figures.origin }),
    name,
  }
  return {
    // A percentage told to be of the crude product is no figure of the product at all; a mass is kept as what was weighed.
    read: state !== undefined && !hasAmount(read) ? null : read,
    problems: state === undefined ? [] : [notPure(text, state, shown!)],
    notes: [
      ...qualified.map(one => `"${one.text}" in "${text}" is kept apart: it is not counted as the yield`),
      ...points.map(point => `"${point.trim()}" in "${text}" describes the product`),
      ...(masses.length < 2 || mass == null
        ? []
        : [`of "${text}" ${figures.line.slice(mass.from, mass.to).trim()} is taken as what came out`]),
      ...(/[~≈]|(?<!\p{L})(?:about|approx|ca\.|circa)/iu.test(told) ? [`"${text}" is told as about so much`] : []),
    ],
  }
}

/** Whether a percentage alone, with this beside it, leaves open what the yield is. A qualifier with a figure of its own leaves the other as it is. */
const asksOfYield = (kind: Qualifier, share: string | null): boolean => kind === 'conversion' || (share === null && kind !== 'excess')

const rangeIn = ({ low, high, unit }: Measure, wanted: Unit): Range => ({
  low: convert({ value: low, unit: unit as Unit }, wanted),
  high: convert({ value: high, unit: unit as Unit }, wanted),
})

/** Two lines on what came out, where one gives the amount and the other the yield; null where they give the same thing twice. */
export function outcomeOf(first: OutcomeRead, second: OutcomeRead): OutcomeRead | null {
  if (hasAmount(first) && hasAmount(second)) return null
  if (first.percent !== null && second.percent !== null) return null
  const [amount, share] = hasAmount(second) ? [second, first] : [first, second]
  const { basis: on } = share.percent === null ? amount : share
  return {
    ...amount,
    text: first.text,
    percent: amount.percent ?? share.percent,
    name: first.name || second.name,
    ...(on !== undefined && { basis: on }),
  }
}

const hasAmount = ({ isolatedG, amountMol, volumeMl }: OutcomeRead): boolean =>
  isolatedG !== null || amountMol !== undefined || volumeMl !== undefined
