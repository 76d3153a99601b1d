import type { Measure } from './measures.ts'

const words = ['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']
const count = String.raw`(?:${words.join('|')}|\d{1,2})`

/** "Twice", "three times": how often something is done, as a piece of a regular expression without groups. */
export const oftenWords = String.raw`(?:once|twice|thrice|${count}\s+times|(?:several|many|some|a\s+few|repeated)\s+times|repeatedly)`
const often = new RegExp(String.raw`\b${oftenWords}\b(?:\s+more\b)?`, 'gi')
const eachTime = /\beach(?:\s+time)?\b/gi
const inAll = /\b(?:in\s+all|in\s+total|total|altogether|combined|overall)\b/i

/** How often the amount of a line goes in. */
export interface Repeats {
  /** 1 where nothing is said of it; null where it cannot be told. */
  readonly times: number | null
  /** As the line says it; empty where it says nothing. */
  readonly said: string
  /** Where the words stand in the body, for cutting them out. */
  readonly cuts: readonly Pick<Measure, 'from' | 'to'>[]
}

/**
 * "Washed twice with 10 mL", "5 mL each, three times". The amount is taken so often only where a single one is given, which is not
 * multiplied already, said to be the sum, or per gram.
 *
 * @param verb     what was taken off the front of the line
 * @param body     the rest, in which the amounts stand
 */
export function repeatsIn(verb: string, body: string, amounts: readonly Measure[]): Repeats {
  const inBody = [...body.matchAll(often)]
  const found = [...verb.matchAll(often), ...inBody].map(match => match[0])
  const each = amounts.length === 0 ? [] : [...body.matchAll(eachTime)]
  const cuts = [...inBody, ...each].map(match => ({ from: match.index, to: match.index + match[0].length }))
  const said = [...found, ...each.map(match => match[0])].join(', ')
  const [only] = amounts
  if (only === undefined || said === '') return { times: 1, said: '', cuts }
  const isMultiplied = /[x×*]/.test(body.slice(only.from, only.to))
  // "3 x 10 mL each" says the same twice.
  if (found.length === 0 && isMultiplied) return { times: 1, said: '', cuts }
  const isPlain = amounts.length === 1 && !isMultiplied && !only.perGram && !inAll.test(body)
  return { times: isPlain && found.length === 1 ? timesOf(found[0]!) : null, said, cuts }
}

function timesOf(said: string): number | null {
  const [first] = said.toLowerCase().split(/\s+/) as [string]
  const known = ['once', 'twice', 'thrice'].indexOf(first)
  if (known >= 0) return known + 1
  const spelled = words.indexOf(first)
  if (spelled >= 0) return spelled + 2
  return /^[1-9]\d?$/.test(first) ? Number(first) : null
}
