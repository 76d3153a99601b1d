import type { Problem } from '../problem/problem.ts'
import { type CommaRule, numberIn } from '../quantity/number.ts'
import { type Unit, unitNamed, unitTable } from '../quantity/unit.ts'

/** A unit as procedures use it: those of the closed table, and four that only a procedure has. */
export type MeasureUnit = Unit | 'drop' | 'equiv' | 'M' | 'N' | '°C' | 'day' | 'week'

/** One measure found in a line. */
export interface Measure {
  readonly kind: 'amount' | 'strength' | 'time' | 'temperature' | 'share'
  /** The middle of a range; times and pieces multiplied out. */
  readonly value: number
  readonly low: number
  readonly high: number
  readonly unit: MeasureUnit
  /** For "8 mL per gram". */
  readonly perGram: boolean
  /** Stands inside round brackets. */
  readonly bracketed: boolean
  /** Where it stands in the line, for cutting it out. */
  readonly from: number
  readonly to: number
}

const number = String.raw`(?:\d+[ \u00a0]+\d+\s*[/⁄]\s*\d+|\d+(?:[.,]\d+)?\s*[/⁄]\s*\d+(?:[.,]\d+)?|\d*\s?[½¼¾⅓⅔⅛]|\d{1,3}(?:[\u00a0\u2009\u202f ]\d{3})+(?![\d])(?:[.,]\d+)?|\d+(?:[.,]\d+)*|[.,]\d+)`
/** A share by mass, however it is said; by volume is another thing and is left as it stands. */
const byMass = String.raw`(?:(?:wt|w|mass|Gew)\.?[\s-]?%|[wm]\s?\/\s?[wm]\s?%|%(?:\s*\(?(?:[wm]\s?\/\s?[wm]|(?:by\s+)?(?:weight|mass)|wt\b\.?)\)?)?(?!\s*\(?(?:v|vol)\b))`
const perLitre = String.raw`mol\s*\/\s*(?:[lL]|dm[3³])|mol[\s·]*(?:[lL]|dm(?:3|³)?)\s*(?:\^?[-−]\s?[13]|⁻[¹³])`
const unitWords = String.raw`kilograms?|kg|milligrams?|mg|[µμu]g|grams?|grammes?|gms?|gr?|millilit(?:er|re)s?|mls?|mL|ML|[µμu][lL]|c\.?c\.?m?|cm[3³]|lit(?:er|re)s?|[lL]|millimoles?|mmols?|mmoles?|moles?|mols?(?![\s·]*(?:\/|[lL]\s*(?:\^?[-−]|⁻)|dm))|drops?|Tropfen|gouttes?|gotas?|equivalents?|equivs?|eq|${byMass}|percent|molar|${perLitre}|normal|M|N(?!,)|hours?|hrs?|h|Stunden?|Std|heures?|horas?|minutes?|mins?|min|days?|weeks?|°\s?C|deg(?:rees)?\s?C|º\s?C|C`
const pattern = new RegExp(
  String.raw`(?<![\p{L}\p{N}.,·])(?<!\p{L}-)(?:(?<times>\d+)\s*[x×*]\s*)?(?<low>[-−]?${number})(?:\s*(?:-|–|—|to|bis|à)\s*(?<high>${number}))?\s*(?<unit>${unitWords})(?![\p{L}\p{N}])(?!-\p{L})\.?(?<per>\s*(?:per|\/|pro)\s*(?:grams?|g)\b)?`,
  'gu',
)

/** Every measure of a line, in order. A number without a unit of the table is part of a name and left alone. */
export function measuresIn(line: string, comma: CommaRule): readonly Measure[] {
  const found: Measure[] = []
  for (const match of line.matchAll(pattern)) {
    const { times, low, high, unit, per } = match.groups as Record<string, string | undefined>
    const first = numberIn(low!, [], comma)
    const last = high === undefined ? first : numberIn(high, [], comma)
    const kind = kindOf(unit!)
    if (!first.ok || !last.ok || kind === null || isDivided(low!) || isDivided(high ?? '')) continue
    const pieces = times === undefined ? 1 : Number(times)
    const [from, to] = [first.value * pieces, last.value * pieces]
    if (kind.kind !== 'temperature' && from < 0) continue
    const before = line.slice(0, match.index)
    found.push({
      kind: kind.kind,
      value: (from + to) / 2,
      low: Math.min(from, to),
      high: Math.max(from, to),
      unit: kind.unit,
      perGram: per !== undefined,
      bracketed: before.lastIndexOf('(') > before.lastIndexOf(')'),
      from: match.index,
      to: match.index + match[0].length,
    })
  }
  return found
}

/** "10/15": what is no common fraction is a range or a choice as often as a division. */
function isDivided(written: string): boolean {
  const [, above, below] = /(\d+)\s*[/⁄]\s*(\d+)$/.exec(written) ?? []
  if (above === undefined || Number(above) === 1) return false
  return !(Number(above) < Number(below) && /^[348]$/.test(below!) && (below === '3' || Number(above) % 2 === 1))
}

/**
 * The first amount of a line that is plainly meant as one and is not read: "10/15 mL", a comma that can be read in two ways, a number beyond
 * anything a bench can hold.
 *
 * @returns where it stands, with what is wrong with its number, empty where that is its slash; null where there is none
 */
export function amountUnread(
  line: string,
  comma: CommaRule,
): (Pick<Measure, 'from' | 'to'> & { readonly written: string; readonly problems: readonly Problem[] }) | null {
  for (const match of line.matchAll(pattern)) {
    const { low, high, unit } = match.groups as Record<string, string | undefined>
    if (kindOf(unit!)?.kind !== 'amount') continue
    const at = { from: match.index, to: match.index + match[0].length, written: match[0] }
    for (const written of [low!, high ?? low!]) {
      const read = numberIn(written, [], comma)
      if (isDivided(written) || (!read.ok && /[/⁄]/.test(written))) return { ...at, problems: [] }
      if (!read.ok) return { ...at, problems: read.problems }
    }
  }
  return null
}

function kindOf(written: string): Pick<Measure, 'kind' | 'unit'> | null {
  const text = written.replace(/\s/g, '')
  if (/^(drops?|tropfen|gouttes?|gotas?)$/i.test(text)) return { kind: 'amount', unit: 'drop' }
  if (/^(equivalents?|equivs?|eq)$/i.test(text)) return { kind: 'amount', unit: 'equiv' }
  if ((/^(M|molar)$/i.test(text) && text !== 'm') || /^mol[/·]?(?:l|dm)/i.test(text)) return { kind: 'strength', unit: 'M' }
  if (/%/.test(text)) return { kind: 'share', unit: '%' }
  if (/^(N|normal)$/.test(text)) return { kind: 'strength', unit: 'N' }
  if (/^([°º]C|deg(rees)?C|C)$/.test(text)) return { kind: 'temperature', unit: '°C' }
  if (/^days?$/.test(text)) return { kind: 'time', unit: 'day' }
  if (/^weeks?$/.test(text)) return { kind: 'time', unit: 'week' }
  if (/^(stunden?|std|heures?|horas?)$/i.test(text)) return { kind: 'time', unit: 'h' }
  const unit = unitNamed(text)
  if (unit === null) return null
  const dimension = unitTable[unit].dimension
  if (dimension === 'share') return { kind: 'share', unit }
  return { kind: dimension === 'time' ? 'time' : 'amount', unit }
}

/**
 * How a comma before three digits is read in this text: where commas are clearly decimal elsewhere ("2,65 g"), neither reading is safe and
 * it is asked about; else it parts thousands, as in English.
 */
export function commaRuleOf(text: string): CommaRule {
  return /(?<![\d.,\p{L}-])\d+,\d{1,2}(?=\s*(?:k|m|µ|μ|c)?(?:g|l|L|ol|mol)\b)/u.test(text) ? 'ask' : 'thousands'
}
