import { holdHours } from './hold-point.ts'
import type { StepWork } from './tasks.ts'
import type { TooLong } from './too-long.ts'

/**
 * The last of some steps, which has its place alone but not after the others: named with the products that would have to keep longer. Found by
 * trying: each of those before it alone, and where none of them helps alone, all.
 *
 * @param works in working order; all but the last have their place together
 * @param fits  do these find a place together?
 */
export function followsTooLate(works: readonly StepWork[], fits: (works: readonly StepWork[]) => boolean): TooLong {
  const work = works[works.length - 1]!
  const before = ancestorsOf(work, works).filter(({ holdH }) => holdH < holdHours.weeks)
  const keptLonger = (some: readonly StepWork[]) =>
    works.map(one => (some.some(other => other.step === one.step) ? { ...one, holdH: holdHours.weeks } : one))
  const alone = before.filter(one => fits(keptLonger([one])))
  const keeps = alone.length > 0 ? alone : fits(keptLonger(before)) ? before : []
  const hours = leadingHours(work) + Math.max(0, ...works.filter(w => work.after.includes(w.step)).map(trailingHours))
  return {
    step: work.step,
    do: work.tasks[0]!.do,
    hours,
    why: 'keeps',
    keeps: keeps.map(({ step, holdH }) => ({ step, hours: holdH })),
  }
}

/** Whatever a step takes from, directly or through others, in working order. */
function ancestorsOf(work: StepWork, works: readonly StepWork[]): readonly StepWork[] {
  const found = new Set(work.takesFrom)
  for (const one of [...works].reverse()) if (found.has(one.step)) for (const before of one.takesFrom) found.add(before)
  return works.filter(one => found.has(one.step))
}

/** Hours of the attended work at the beginning of a step, and at its end. */
const leadingHours = (work: StepWork): number => attendedHours(work.tasks)
const trailingHours = (work: StepWork): number => attendedHours([...work.tasks].reverse())

function attendedHours(tasks: StepWork['tasks']): number {
  const stop = tasks.findIndex(task => task.kind === 'stand')
  return tasks.slice(0, stop < 0 ? tasks.length : stop).reduce((sum, task) => sum + task.hours, 0)
}
