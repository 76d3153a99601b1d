import { type Library, transformationOf } from '../library/library.ts'
import type { Task, Transformation } from '../library/transformation.ts'
import type { ChargedStep } from '../route/charged.ts'
import { holdPointOf } from './hold-point.ts'

/** One piece of work of one batch. */
export interface WorkTask {
  readonly do: string
  readonly kind: Task['kind']
  readonly hours: number
  /** How long it may wait before the next; after the last task the hold point. */
  readonly waitUpToH: number
  /** May be stopped and taken up again in another window. */
  readonly splits: boolean
  /** Takes a heat source. */
  readonly heated: boolean
}

/** One step as work: the same tasks for each of its batches. */
export interface StepWork {
  readonly step: string
  readonly transformation: Transformation
  readonly batches: number
  readonly tasks: readonly WorkTask[]
  /** Index of the last task for which the vessel is taken: what only stands at the end dries outside it. */
  readonly vesselUntil: number
  /** Hands of one batch, h; null where the library does not know them. */
  readonly handsOnH: number | null
  /** Steps that have to be done before it. */
  readonly after: readonly string[]
  /** Those of them whose product it takes, and before which that product must not stand too long. */
  readonly takesFrom: readonly string[]
  readonly holdH: number
  readonly notes: readonly string[]
}

/** A bath warmer than this takes a heat source: above any room. Common practice, no source. */
const warmC = 40

/**
 * The steps of a plan as work, in their order.
 *
 * A step without tasks is one piece of hands as long as the whole step: at the longest, and its notes say so.
 */
export function workOf(
  library: Library,
  steps: readonly ChargedStep[],
  furtherAfter: ReadonlyMap<string, readonly string[]> = new Map(),
): readonly StepWork[] {
  const idOf = (name: string) => steps.find(s => s.transformation === name || s.number === name)?.transformation
  return steps.map(step => {
    const transformation = transformationOf(library, step.transformation)
    const hold = holdPointOf(library, transformation)
    const tasks = tasksOf(transformation, hold.hours)
    const told = transformation.tasks !== undefined && transformation.tasks.length > 0
    const attended = tasks.findLastIndex(task => task.kind !== 'stand')
    const takesFrom = [
      ...new Set(
        steps.filter(s => s.goesTo.some(to => to.step !== null && idOf(to.step) === step.transformation)).map(s => s.transformation),
      ),
    ]
    const notes: string[] = []
    if (!told)
      notes.push(
        `${transformation.name}: no times of single tasks are known; all ${transformation.elapsedHours} h count as hands, at the longest.`,
      )
    if (hold.derived) notes.push(`${transformation.name}: how long its product may wait is derived, not from a source (${hold.hours} h).`)
    return {
      step: step.transformation,
      transformation,
      batches: Math.max(1, step.batches),
      tasks,
      vesselUntil: Math.max(0, attended),
      handsOnH: told ? sum(tasks.filter(t => t.kind === 'hands').map(t => t.hours)) : (transformation.handsOnHours ?? null),
      after: [...new Set([...takesFrom, ...(furtherAfter.get(step.transformation) ?? [])])],
      takesFrom,
      holdH: hold.hours,
      notes,
    }
  })
}

function tasksOf(transformation: Transformation, holdH: number): readonly WorkTask[] {
  const { tasks = [], temperatureC, elapsedHours } = transformation
  const isWarm = temperatureC !== undefined && temperatureC[1] > warmC
  if (tasks.length === 0)
    return [{ do: transformation.name, kind: 'hands', hours: elapsedHours, waitUpToH: holdH, splits: false, heated: isWarm }]
  return tasks.map((task, index) => ({
    do: task.do,
    kind: task.kind,
    hours: task.hours,
    waitUpToH: index === tasks.length - 1 ? holdH : task.waitUpToH,
    splits: task.splits === true,
    // A watch without a stated temperature may be the heating: it is taken for one.
    heated: task.kind === 'watch' ? isWarm || temperatureC === undefined : task.kind === 'stand' && task.reaction === true && isWarm,
  }))
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
