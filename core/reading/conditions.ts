import type { CommaRule } from '../quantity/number.ts'
import { measuresIn } from './measures.ts'

/** What a line says besides what is charged. */
export interface ConditionsRead {
  /** Hours named, ranges at their middle, in the order of the line. */
  readonly hours: readonly number[]
  /** Temperatures named, degrees Celsius, lowest and highest of each. */
  readonly temperaturesC: readonly (readonly [number, number])[]
}

/** Melting and boiling points describe the product, not how it is made. */
export const describesProduct = (line: string): boolean =>
  /^\W*(?:m\.?\s?p\.?|b\.?\s?p\.?|melting\b|boiling\s+point|mp\b|bp\b|smp\b|schmp|lit\.|R_?f\b|\[α\])/i.test(line)

/** A line that tells what to do. */
export const tellsWhatToDo = (line: string): boolean =>
  /^\W*(?:then\s+)?(?:reflux|heat|warm|boil|stir|shake|cool|chill|stand|let|leave|keep|filter|decant|distil|evaporate|concentrate|separate|collect|dry|steam|add|dissolve|pour|wash|rinse|extract|recrystalli|crystalli|grind|swirl|irradiate|set|hold|allow|suck|scratch|seed|remove|under|overnight|neutrali|acidif|basif|at)\b/i.test(
    line,
  )

/** Times and temperatures of one line. */
export function conditionsIn(line: string, comma: CommaRule): ConditionsRead {
  if (describesProduct(line)) return { hours: [], temperaturesC: [] }
  const measures = measuresIn(line, comma)
  return {
    hours: measures
      .filter(one => one.kind === 'time')
      .map(one => (one.unit === 'min' ? one.value / 60 : one.unit === 'day' ? one.value * 24 : one.value)),
    temperaturesC: measures.filter(one => one.kind === 'temperature').map(one => [one.low, one.high] as const),
  }
}
