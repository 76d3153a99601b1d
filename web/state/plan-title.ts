import { hyphened } from '../../core/library/plain-letters.ts'
import { longDate } from '../../core/report/dates.ts'
import { capital } from '../../core/report/words.ts'

/** A plan by what it starts from and the day it was begun, so that it is told from the demo's and from last week's. */
export const planTitle = (start: string, day: string): string => `${capital(start)} downstream, ${longDate(day)}`

/** Name of a file that a plan is taken away as: its title, in letters that every disk holds. */
export function planFileName(title: string, ending: string): string {
  const plain = hyphened(title, 80)
  return `${plain === '' ? 'waybench-plan' : plain}.${ending}`
}
