import type { Evaluation } from '../plan/evaluation.ts'
import { moneyText } from '../quantity/money.ts'
import { numberText } from '../quantity/print.ts'
import type { Way } from './way.ts'

/** What a way may cost, in money and in time. */
export interface WayLimits {
  /** Of everything bought, minor units of the packs' currency. */
  readonly budgetMinor?: number
  readonly maxHandsOnH?: number
  /** `YYYY-MM-DD`; needs a start date and bench windows in the settings. */
  readonly finishBy?: string
}

const hours = (h: number): string => numberText(h, 3, 1)

/** In words, each limit that a plan does not keep; what is not known is not kept. */
export function overLimits({ basket, days }: Evaluation, { budgetMinor, maxHandsOnH, finishBy }: WayLimits): readonly string[] {
  const over: string[] = []
  if (budgetMinor !== undefined) {
    if (basket === null || basket.totalMinor === null) over.push('what it costs is not known')
    else if (basket.totalMinor > budgetMinor)
      over.push(
        `it costs ${moneyText(basket.totalMinor, basket.currency)}, ${moneyText(basket.totalMinor - budgetMinor, basket.currency)} more than the budget of ${moneyText(budgetMinor, basket.currency)}`,
      )
  }
  if (maxHandsOnH !== undefined) {
    if (days.handsOnH === null) over.push('its hands-on hours are not known')
    else if (days.handsOnH > maxHandsOnH + 1e-9)
      over.push(`it takes ${hours(days.handsOnH)} h of hands, ${hours(days.handsOnH - maxHandsOnH)} h more than ${hours(maxHandsOnH)} h`)
  }
  if (finishBy !== undefined) {
    if (days.finishDate === null) over.push('it has no finish date')
    else if (days.finishDate > finishBy) over.push(`it is done on ${days.finishDate}, later than ${finishBy}`)
  }
  return over
}

/** Is a way out by its bounds alone? */
export const isOutAlready = ({ leastMinor, handsOnH }: Way, { budgetMinor, maxHandsOnH }: WayLimits): boolean =>
  (budgetMinor !== undefined && leastMinor > budgetMinor) ||
  (maxHandsOnH !== undefined && (handsOnH === null || handsOnH > maxHandsOnH + 1e-9))

/** What the ways that were all out by their bounds come to at the least. */
export function nearestOut(ways: readonly Way[], { budgetMinor, maxHandsOnH }: WayLimits, currency: string): string {
  const out: string[] = []
  const least = Math.min(...ways.map(way => way.leastMinor))
  if (budgetMinor !== undefined && least > budgetMinor)
    out.push(
      `the cheapest costs at least ${moneyText(least, currency)}, ${moneyText(least - budgetMinor, currency)} more than the budget of ${moneyText(budgetMinor, currency)}`,
    )
  const hands = ways.flatMap(way => way.handsOnH ?? [])
  if (maxHandsOnH !== undefined)
    out.push(
      hands.length === 0
        ? 'hands-on hours are not known'
        : `the quickest takes ${hours(Math.min(...hands))} h of hands, and ${hours(maxHandsOnH)} h are allowed`,
    )
  return out.join('; ')
}
