import type { BenchTime } from './bench-time.ts'
import type { StepWork, WorkTask } from './tasks.ts'
import { timetable } from './timetable.ts'
import type { TimedTask, Wait } from './timetable-input.ts'

/** A stretch of work that has no place in any window, and why not. */
export interface TooLong {
  readonly step: string
  readonly do: string
  /** From its first task on, what stands included; where products do not keep, the attended work of the two steps that meet. */
  readonly hours: number
  /**
   * `longer`: all of it has to lie in one window, and none is so long. `apart`: it stands meanwhile, and no window falls within what it may
   * wait then. `keeps`: the step has its place alone, but not soon enough after those before it.
   */
  readonly why: 'longer' | 'apart' | 'keeps'
  /** For `keeps`: the products that would have to keep longer, any one of them; empty where that alone would not help. */
  readonly keeps: readonly { readonly step: string; readonly hours: number }[]
}

/** How a task lies in the calendar, after the one before it. */
export function timedTask(task: WorkTask, before: WorkTask | undefined, hasWindows: boolean, release: number): TimedTask {
  const lies = !hasWindows ? 'any' : task.kind !== 'stand' ? (task.splits ? 'split' : 'bench') : before?.kind === 'stand' ? 'any' : 'begun'
  return { hours: task.hours, lies, hands: task.kind === 'hands', heated: task.heated, release }
}

/** How long the next task may be kept waiting; what stands after standing begins by itself, at once. */
export const waitAfter = (task: WorkTask, next: WorkTask): number => (task.kind === 'stand' && next.kind === 'stand' ? 0 : task.waitUpToH)

/**
 * The first stretch of a step's tasks for which the windows are too short, or too far apart for how long the tasks may wait; null where
 * the step alone can be done.
 */
export function tooLongIn(work: StepWork, bench: BenchTime, horizonH: number): TooLong | null {
  const fits = (from: number, to: number) => {
    const tasks = work.tasks.slice(from, to + 1)
    const waits: Wait[] = tasks
      .slice(1)
      .map((_, index) => ({ from: index, to: index + 1, upToH: waitAfter(tasks[index]!, tasks[index + 1]!) }))
    const found = timetable({
      tasks: tasks.map((task, index) => timedTask(task, tasks[index - 1], true, 0)),
      orders: waits.map(({ from: a, to: b }) => ({ from: a, to: b, since: 'end' as const })),
      waits,
      bench,
      vesselUses: [],
      vesselCounts: [],
      heatSources: null,
      ranks: [],
      horizonH,
      budget: 0,
    })
    return !('none' in found)
  }
  const last = work.tasks.findIndex((_, index) => !fits(0, index))
  if (last < 0) return null
  let first = last
  while (first > 0 && fits(first, last)) first--
  const stretch = work.tasks.slice(first, last + 1)
  const attended = stretch.filter(task => task.kind !== 'stand')
  // From the first attended task on, all of it has to lie in one window, what stands between included.
  const hours = stretch.reduce((sum, task) => sum + task.hours, 0)
  const named = stretch.length === 1 ? stretch[0]! : (attended[0] ?? stretch[0]!)
  return { step: work.step, do: named.do, hours, why: attended.length === stretch.length ? 'longer' : 'apart', keeps: [] }
}
