import type { CommaRule } from '../quantity/number.ts'
import { type MeasureUnit, measuresIn } from './measures.ts'
import { startsWithVerb } from './verbs.ts'

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

const doing =
  /^\W*(?:then\s+)?(?:(?:reflux|heat|warm|boil|stir(?:r(?=[ei]))?|cool|chill|filter|decant|distil|collect|steam|add|pour|wash|extract|swirl|allow|suck|scratch|seed|treat|quench|mix|press|drain|acidify?|basify?|neutrali[sz]e?|(?:re)?crystalli[sz]e?|dissolve?|concentrate?|evaporate?|separate?|rinse?|remove?|irradiate?|triturate?|shake?)(?:s|ed|d|ing|n)?|(?:acidif|basif)(?:ied|ication)|(?:re)?crystalli[sz]ation|chilled|ground|grind|shaken|stand|let|leave|left|keep|kept|set|hold|held|under|overnight|at)\b/i

/** A line that tells what to do, as an order or in the past. */
export const tellsWhatToDo = (line: string): boolean => doing.test(line) || startsWithVerb.test(line)

/** From where in a line on temperatures are those of a product or of the work-up: melting and boiling points, drying, distilling. */
const notOfTheReaction =
  /\b(?:m\.?\s?p\.?(?=[\s:=\d])|b\.?\s?p\.?(?=[\s:=\d])|melt(?:s|ing)\b|boils\b|boiling\s+(?:at|point|range|between)|dr(?:y|ied|ying)\s+(?:at|in|over|under|on|to|for|down|it|the)\b|distil\w*|collect\w*|fraction|stor(?:e|ed|age)\b)/i

/** Times and temperatures of one line. */
export function conditionsIn(line: string, comma: CommaRule): ConditionsRead {
  if (describesProduct(line)) return { hours: [], temperaturesC: [] }
  const measures = measuresIn(line, comma)
  const until = notOfTheReaction.exec(line)?.index ?? line.length
  return {
    hours: measures.filter(one => one.kind === 'time').map(one => one.value * (hoursOf[one.unit] ?? 1)),
    temperaturesC: measures.filter(one => one.kind === 'temperature' && one.from < until).map(one => [one.low, one.high] as const),
  }
}

const hoursOf: Readonly<Partial<Record<MeasureUnit, number>>> = { min: 1 / 60, h: 1, day: 24, week: 168 }
