import type { Task, Transformation } from '../../core/library/transformation.ts'
import type { TaskProposed } from '../../core/reading/tasks-proposed.ts'
import { numberTyped } from './number-typed.ts'

/** A task as it stands on the page: everything as typed. */
export interface TypedTask {
  readonly do: string
  readonly kind: Task['kind']
  readonly hours: string
  /** How long it may wait before the next, h; empty = not at all, after the last as the hold point says. */
  readonly wait: string
  readonly splits: boolean
  readonly reaction: boolean
  /** What nobody has said yet, of a proposal that was taken. */
  readonly guessed: TaskProposed['guessed']
  /** Hours that were proposed and looked over: nobody read or clocked them, so they stay estimates until typed anew. */
  readonly judged?: TaskProposed['guessed']
}

export const emptyTask: TypedTask = { do: '', kind: 'hands', hours: '', wait: '', splits: false, reaction: false, guessed: [] }

export const typedOf = ({ task, guessed }: TaskProposed): TypedTask => ({
  do: task.do,
  kind: task.kind,
  hours: String(task.hours),
  wait: task.waitUpToH === 0 ? '' : String(task.waitUpToH),
  splits: task.splits === true,
  reaction: task.reaction === true,
  guessed,
})

/** A task as a person changes it; what is said of it is no guess any more. */
export function changedTask(task: TypedTask, patch: Partial<TypedTask>, said?: TaskProposed['guessed'][number]): TypedTask {
  const unsaid = (one: TaskProposed['guessed'][number]): boolean => one !== said && one !== 'task'
  return { ...task, ...patch, guessed: task.guessed.filter(unsaid), judged: (task.judged ?? []).filter(unsaid) }
}

/** The same tasks once they were found right as proposed: who must be there is settled, hours remain estimates. */
export const lookedOver = (tasks: readonly TypedTask[]): readonly TypedTask[] =>
  tasks.map(one => ({ ...one, guessed: [], judged: [...(one.judged ?? []), ...one.guessed.filter(guess => guess === 'hours')] }))

/** Longest wait that each hold point allows, h: what the rules of the library count with. */
const holdH: Readonly<Record<NonNullable<Transformation['holdPoint']>, number>> = { never: 0, hours: 4, overnight: 18, weeks: 672 }

export interface TasksRead {
  /** In the library format; empty where none is typed. */
  readonly tasks: readonly Task[]
  readonly elapsedHours: number
  readonly handsOnHours: number
  /** Whether any figure is a guess still. */
  readonly guessed: boolean
  /** Whether any hours are an estimate: a guess, or one that was looked over. */
  readonly estimated: boolean
  /** What is to be said yet, in plain words; null where nothing is. */
  readonly lacks: string | null
}

/** Hundredths of an hour, so that sums of thirds and sixths print short. */
const rounded = (hours: number): number => Math.round(hours * 100) / 100

/** The tasks out of what was typed. */
export function tasksTyped(typed: readonly TypedTask[], holdPoint: Transformation['holdPoint'] | ''): TasksRead {
  const rows = typed
    .map((one, at) => ({ ...one, number: at + 1 }))
    .filter(one => [one.do, one.hours, one.wait].some(text => text.trim() !== ''))
  let lacks: string | null = null
  const tasks = rows.map((row, at): Task => {
    const hours = numberTyped(row.hours)
    const last = at === rows.length - 1
    const wait = row.wait.trim() === '' ? (last && holdPoint ? holdH[holdPoint] : 0) : numberTyped(row.wait)
    if (row.do.trim() === '') lacks ??= `what is done in task ${row.number}`
    if (hours === null || hours < 0) lacks ??= `the hours of task ${row.number}`
    if (wait === null || wait < 0) lacks ??= `how many hours it may wait after task ${row.number}`
    return {
      do: row.do.trim(),
      kind: row.kind,
      hours: hours ?? 0,
      waitUpToH: wait ?? 0,
      ...(row.splits ? { splits: true } : {}),
      ...(row.reaction && row.kind !== 'hands' ? { reaction: true } : {}),
    }
  })
  const sum = (of: readonly Task[]): number => rounded(of.reduce((hours, one) => hours + one.hours, 0))
  return {
    tasks,
    elapsedHours: sum(tasks),
    handsOnHours: sum(tasks.filter(one => one.kind === 'hands')),
    guessed: rows.some(one => one.guessed.length > 0),
    estimated: rows.some(one => one.guessed.length > 0 || (one.judged ?? []).length > 0),
    lacks,
  }
}
