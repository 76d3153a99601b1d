import type { Evaluation } from '../../core/plan/evaluation.ts'
import type { Settings } from '../../core/plan/settings.ts'
import { moneyText } from '../../core/quantity/money.ts'
import { counted } from '../parts/words.tsx'

/** "€ 62.30 and one price unknown; five evenings, done 15 Dec". */
export function needAnswer(evaluation: Evaluation, windows: Settings['windows']): readonly string[] {
  return [`${costText(evaluation)};`, daysText(evaluation, windows)]
}

function costText({ basket, shopping }: Evaluation): string {
  const toBuy = shopping.filter(line => line.buy.amount === null || line.buy.amount > 0).length
  if (basket === null) return `${counted(toBuy, 'material')} to buy`
  const unknown = basket.priceUnknown.length
  const prices = unknown === 0 ? '' : `${counted(unknown, 'price')} unknown`
  if (basket.totalMinor === null) return unknown === 0 ? 'Nothing to buy' : `${counted(toBuy, 'material')} to buy, no price known`
  if (basket.totalMinor === 0 && unknown === 0) return 'Nothing to buy'
  const open = basket.amountUnknown.length > 0 && unknown === 0 ? ' and an amount left open' : ''
  return `${moneyText(basket.totalMinor, basket.currency)}${prices === '' ? open : ` and ${prices}`}`
}

/** A window that begins at five or later is an evening. */
const evening = '17:00'

export function sessionWord(windows: Settings['windows']): readonly [one: string, many: string] {
  return windows.length > 0 && windows.every(window => window.from >= evening)
    ? ['evening', 'evenings']
    : ['bench session', 'bench sessions']
}

function daysText({ days }: Evaluation, windows: Settings['windows']): string {
  if (days.tooLong.length > 0) return 'a step is longer than any bench session'
  const [one, many] = sessionWord(windows)
  const done = days.finishDate === null ? '' : `, done ${shortDate(days.finishDate)}`
  if (days.sessions !== null) return `${counted(days.sessions, one, many)}${done}`
  return days.handsOnH === null ? 'hands-on hours unknown' : `${Math.round(days.handsOnH * 10) / 10} hours hands-on${done}`
}

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat']

/** "15 Dec" of an ISO date, with the day of the week where asked; the same in every locale. */
export function shortDate(iso: string, withWeekday = false): string {
  const [year = 0, month = 1, day = 1] = iso.slice(0, 10).split('-').map(Number)
  const weekday = withWeekday ? `${weekdays[new Date(Date.UTC(year, month - 1, day)).getUTCDay()]} ` : ''
  return `${weekday}${day} ${months[month - 1]}`
}
