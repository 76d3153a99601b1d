import { convert } from '../quantity/convert.ts'
import type { CommaRule } from '../quantity/number.ts'
import type { Unit } from '../quantity/unit.ts'
import { measuresIn } from './measures.ts'

/** What came out, as the text states it. */
export interface OutcomeRead {
  readonly text: string
  /** The middle of a range. */
  readonly isolatedG: number | null
  /** Where a range was given. */
  readonly isolatedRangeG: { readonly low: number; readonly high: number } | null
  /** Percent of theory as stated; low and high differ where a range was given. */
  readonly percent: { readonly low: number; readonly high: number } | null
  /** The product named on the line; empty where none is. */
  readonly name: string
}

const opening =
  /^\W*(?:isolated|yield(?:s|ed|ing)?|obtained|gave|gives|giving|afford(?:s|ed)|collected|recovered|ausbeute|rendement|rendimiento)\b(?:\s+yield)?\s*[:=]?\s*(?:of|was|is|were)?\s*/i

/** Whether a line says what came out. */
export const isOutcome = (line: string): boolean => opening.test(line)

/**
 * Reads "isolated 2.1 g", "yield 80 %", "yield: 2.1 g (80 %)", "obtained 7.5-8 g of benzoin".
 *
 * @returns null where the line names neither a mass nor a percentage, or several masses ("crude 12 g, pure 10 g"): which one came out is
 *   not guessed
 */
export function readOutcome(text: string, comma: CommaRule): OutcomeRead | null {
  const match = opening.exec(text)
  if (match === null) return null
  const body = text.slice(match[0].length)
  const measures = measuresIn(body, comma)
  const masses = measures.filter(one => one.unit === 'g' || one.unit === 'mg' || one.unit === 'kg')
  const mass = masses[0]
  const share = measures.find(one => one.kind === 'share')
  if ((mass === undefined && share === undefined) || masses.length > 1) return null
  const inG = (value: number): number => convert({ value, unit: mass!.unit as Unit }, 'g')
  let name = body
  for (const { from, to } of [...measures].sort((one, other) => other.from - one.from)) name = `${name.slice(0, from)} ${name.slice(to)}`
  return {
    text,
    isolatedG: mass === undefined ? null : inG(mass.value),
    isolatedRangeG: mass === undefined || mass.low === mass.high ? null : { low: inG(mass.low), high: inG(mass.high) },
    percent: share === undefined ? null : { low: share.low, high: share.high },
    name: name
      .replace(
        /\b(?:of theory|theoretical|der Theorie|based on\b.*|crude|pure|dry|white|yellow|colou?rless|pale|crystals?|needles?|plates?|solid|powder|product|about|ca\.?|from\b.*|after\b.*)\b/gi,
        ' ',
      )
      .replace(/[(),;:.=]+/g, ' ')
      .replace(/^\s*(?:of|the|as)\b|\b(?:of|as|the)\s*$/gi, ' ')
      .replace(/\s+/g, ' ')
      .trim(),
  }
}

/** Two lines on what came out, where one gives the mass and the other the yield; null where they give the same thing twice. */
export function outcomeOf(first: OutcomeRead, second: OutcomeRead): OutcomeRead | null {
  if (first.isolatedG !== null && second.isolatedG !== null) return null
  if (first.percent !== null && second.percent !== null) return null
  return {
    text: first.text,
    isolatedG: first.isolatedG ?? second.isolatedG,
    isolatedRangeG: first.isolatedRangeG ?? second.isolatedRangeG,
    percent: first.percent ?? second.percent,
    name: first.name || second.name,
  }
}
