import type { CommaRule } from '../quantity/number.ts'
import { type Measure, measuresIn } from './measures.ts'
import { timesIn } from './times-in.ts'

/** What a line says besides what is charged. */
export interface ConditionsRead {
  /** Hours named, ranges at their middle, in the order of the line. */
  readonly hours: readonly number[]
  /** Times that cannot be counted, as written. */
  readonly uncounted: readonly string[]
  /** Temperatures named, degrees Celsius, lowest and highest of each. */
  readonly temperaturesC: readonly (readonly [number, number])[]
  /** Boiling ranges by which a solvent is called, as written: no temperatures of the reaction. */
  readonly cuts: readonly string[]
}

/** Melting and boiling points describe the product, not how it is made. */
export const describesProduct = (line: string): boolean =>
  /^\W*(?:m\.?\s?p\.?|b\.?\s?p\.?|melting\b|boiling\s+point|mp\b|bp\b|smp\b|schmp|lit\.|R_?f\b|\[α\])/i.test(line)

/** From where in a line on temperatures are those of a product or of the work-up: melting and boiling points, drying, distilling. */
const notOfTheReaction =
  /\b(?:m\.?\s?p\.?(?=[\s:=\d])|b\.?\s?p\.?(?=[\s:=\d])|melt(?:s|ing)\b|boils\b|boiling\s+(?:at|point|range|between)|dr(?:y|ied|ying)\s+(?:at|in|over|overnight|under|on|to|for|down|it|the)\b|distil\w*|collect\w*|fraction|stor(?:e|ed|age)\b)/i

/** A solvent that is sold by its boiling range, before or behind it. */
const cutName = String.raw`(?:petroleum\s+(?:ether|spirits?|benzine?)|light\s+petroleum|pet\.?\s?ether|petrol(?:eum)?|petrolether|ligroine?|naphtha|benzine|white\s+spirits?|gasoline)`
const cutBefore = new RegExp(String.raw`(?<!\p{L})${cutName}[\s,;(]*(?:(?:fraction|boiling|b\.?\s?p\.?|bp)[\s:]*)*$`, 'iu')
const cutBehind = new RegExp(String.raw`^[\s,;)]*(?:fraction\s+of\s+)?${cutName}(?!\p{L})`, 'iu')
/** A melting or boiling point whose word stands behind it: "benzil (95 °C mp)". */
const pointBehind = /^\s*\(?(?:m\.?\s?p\.?|b\.?\s?p\.?|lit\.)(?![\p{L}\d])/iu

/** Times and temperatures of one line. */
export function conditionsIn(line: string, comma: CommaRule): ConditionsRead {
  if (describesProduct(line)) return { hours: [], uncounted: [], temperaturesC: [], cuts: [] }
  const temperatures = measuresIn(line, comma).filter(one => one.kind === 'temperature')
  const isCut = ({ from, to }: Measure): boolean => cutBefore.test(line.slice(0, from)) || cutBehind.test(line.slice(to))
  const until = notOfTheReaction.exec(line)?.index ?? line.length
  return {
    ...timesIn(line, comma),
    temperaturesC: temperatures
      .filter(one => one.from < until && !isCut(one) && !pointBehind.test(line.slice(one.to)))
      .map(one => [one.low, one.high] as const),
    cuts: temperatures.filter(isCut).map(one => line.slice(one.from, one.to).trim()),
  }
}
