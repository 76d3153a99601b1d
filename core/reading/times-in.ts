import type { CommaRule } from '../quantity/number.ts'
import { clausesOf } from './clauses.ts'
import { measuresIn } from './measures.ts'
import { timesInFigures } from './time-words.ts'

/** The times of one line. */
export interface TimesRead {
  /** Hours named, ranges at their middle, in the order of the line. */
  readonly hours: readonly number[]
  /** Times that cannot be counted, as written: no hours, or told to be done over and over. */
  readonly uncounted: readonly string[]
}

const hoursOf: Readonly<Record<string, number>> = { min: 1 / 60, h: 1, day: 24, week: 168 }
/** Times without a figure. */
const vague = String.raw`(?<!\p{L})(?:over\s*night|(?:through(?:out)?|for)\s+the\s+night|(?:over\s+)?(?:the\s+)?week-?end|(?:some|several|(?:a\s+)?few|a\s+couple\s+of|many)\s+(?:more\s+)?(?:hours|minutes|days|weeks)|(?:un)?till?\s+(?:the\s+)?(?:next|following)\s+(?:day|morning))(?!\p{L})`
const vagueTimes = new RegExp(vague, 'giu')
/** Hours and minutes that no figure stands before, or one that runs into another ("1h5"). */
const bare = /(?:[\p{L}][\p{L}-]*\s+)?(?<!\p{L})(?:hours|hrs|minutes|mins)(?!\p{L})|\d+\s*h\s*\d+(?![\d.,]|\s*[\p{L}%°º])/giu
const figure = String.raw`\d[\d.,]*(?:\s*[-–]\s*\d[\d.,]*)?\s*(?:h|hrs?|hours?)(?!\p{L})`
/** "Overnight (16 h)" and "16 h (overnight)" have their figure. */
const settled = new RegExp(String.raw`${vague}\W{0,3}(?:(?:ca\.?|about)\s*)?${figure}|${figure}\W{0,3}${vague}`, 'giu')
const repeated =
  /(?<!\p{L})(?:repeat\w*|every|hourly|daily|each\s+time|at\s+intervals|(?:once|twice|times)\s+an?\s+(?:hour|day|week))(?!\p{L})/iu
const interval = /(?<!\p{L})every\s+(?:\d[\d.,]*\s*)?(?:h|hours?|min(?:ute)?s?|days?)(?!\p{L})/iu
const times = /(?<!\p{L})(?:twice|thrice|(?:two|three|four|five|six|\d+)\s+times)(?!\p{L})/iu

/**
 * The times of one line: figures, and numbers in words before a unit of time.
 *
 * What is done over and over, "5 min every hour", "three times: heat 5 min", and what has no figure, "overnight", is not counted but told.
 */
export function timesIn(line: string, comma: CommaRule): TimesRead {
  const hours: number[] = []
  const uncounted = (line.replace(settled, ' ').match(vagueTimes) ?? []).map(one => one.trim())
  const again = repeated.test(line)
  for (const clause of again ? [line] : clausesOf(line)) {
    const named = measuresIn(timesInFigures(clause).replace(interval, ' '), comma).filter(one => one.kind === 'time')
    // "Swirl every 5 min for 1 h" takes the hour.
    const takesOne = interval.test(clause) && named.length === 1 && !/repeat/i.test(clause)
    const open = withoutMeasures(timesInFigures(clause).replace(settled, ' ').replace(vagueTimes, ' ').replace(interval, ' '), comma)
    uncounted.push(...(open.match(bare) ?? []).map(one => one.trim()))
    if (!takesOne && (again || saysTimes(clause)) && (named.length > 0 || (/repeat/i.test(clause) && !amount.test(clause))))
      uncounted.push(clause.trim())
    else hours.push(...named.map(one => one.value * (hoursOf[one.unit] ?? 1)))
  }
  return { hours, uncounted }
}

const amount = /\d\s*m?[lLg](?!\p{L})/u
/** "Twice" beside an amount says nothing of the time: "wash twice with 10 mL water, stand 5 min". */
const saysTimes = (clause: string): boolean => times.test(clause) && !amount.test(clause)

function withoutMeasures(text: string, comma: CommaRule): string {
  let rest = text
  for (const { from, to } of [...measuresIn(text, comma)].reverse()) rest = `${rest.slice(0, from)} ; ${rest.slice(to)}`
  return rest
}
