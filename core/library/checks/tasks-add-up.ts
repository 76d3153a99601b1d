import type { Transformation } from '../transformation.ts'
import type { Finding } from './check.ts'

/** Longest wait of the product at each hold point, in hours: what the calendar counts with. */
const longestWaitH: Readonly<Record<NonNullable<Transformation['holdPoint']>, number>> = { never: 0, hours: 4, overnight: 18, weeks: 672 }
/** Hours are given to two decimals; their sum may be off by half of the last digit for each. */
const roundingH = (tasks: number) => 0.005 * tasks + 1e-9

/** The hours of the tasks sum to the elapsed hours, those with hands to the hands-on hours; the last wait does not exceed the hold point. */
export function tasksAddUp({ tasks, elapsedHours, handsOnHours, holdPoint }: Transformation): readonly Finding[] {
  const findings: Finding[] = []
  const find = (field: readonly string[], what: string, cure: string) =>
    findings.push({
      severity: 'error',
      code: 'tasks-add-up',
      field,
      what,
      why: 'Days are planned from the tasks, and routes compared by the hours: both must tell the same.',
      cure,
    })
  if (handsOnHours !== undefined && handsOnHours > elapsedHours)
    find(
      ['handsOnHours'],
      `${handsOnHours} h of hands in ${elapsedHours} h.`,
      'Correct one of them: hands-on hours are part of the elapsed ones.',
    )
  const last = tasks?.at(-1)
  if (tasks === undefined || last === undefined) return findings

  const sum = tasks.reduce((hours, task) => hours + task.hours, 0)
  const hands = tasks.reduce((hours, task) => hours + (task.kind === 'hands' ? task.hours : 0), 0)
  const differs = (left: number, right: number) => Math.abs(left - right) > roundingH(tasks.length)
  if (differs(sum, elapsedHours))
    find(
      ['tasks'],
      `The tasks take ${rounded(sum)} h, the step says ${elapsedHours} h.`,
      'Correct "elapsedHours" or the hours of the tasks.',
    )
  if (handsOnHours !== undefined && differs(hands, handsOnHours))
    find(['tasks'], `The tasks by hand take ${rounded(hands)} h, the step says ${handsOnHours} h.`, 'Correct "handsOnHours" or the tasks.')
  if (holdPoint !== undefined && last.waitUpToH > longestWaitH[holdPoint])
    find(
      ['tasks', String(tasks.length - 1), 'waitUpToH'],
      `The product may wait ${last.waitUpToH} h after the last task, but its hold point is "${holdPoint}" (${longestWaitH[holdPoint]} h).`,
      'Shorten the wait or correct the hold point.',
    )
  return findings
}

const rounded = (hours: number): number => Math.round(hours * 1000) / 1000
