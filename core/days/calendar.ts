import type { Library } from '../library/library.ts'
import type { ChargedStep } from '../route/charged.ts'
import { BenchTime, type WindowOfWeek } from './bench-time.ts'
import { bookedTasks, unattendedOf } from './booked.ts'
import { dateOf, dayOf } from './civil-date.ts'
import type { Days } from './days.ts'
import { followsTooLate } from './follows-too-late.ts'
import { criticalPath } from './longest-chain.ts'
import { type NetworkInput, type Placed, type TaskNetwork, taskNetwork } from './task-network.ts'
import { type StepWork, workOf } from './tasks.ts'
import { type Timetable, timetable } from './timetable.ts'
import { type TooLong, tooLongIn } from './too-long.ts'
import { fittingVessels, type VesselKindOwned } from './vessels-fit.ts'
import { windowThatWouldDo } from './would-do.ts'

export interface DaysInput {
  readonly library: Library
  readonly steps: readonly ChargedStep[]
  /** Bench windows of the week; none = hours only. */
  readonly windows: readonly WindowOfWeek[]
  /** `YYYY-MM-DD`. */
  readonly daysOff: readonly string[]
  readonly deliveryDays: number
  /** `YYYY-MM-DD`; null = no dates. */
  readonly startDate: string | null
  /** None = as many as needed. */
  readonly vessels: readonly VesselKindOwned[]
  /** Null = as many as needed. */
  readonly heatSources: number | null
  /** By step: further steps that have to be done before it, whose product it does not take; those come before it in `steps`. */
  readonly after?: ReadonlyMap<string, readonly string[]>
  /** Materials that have to be ordered; left out = whatever the steps buy. */
  readonly toBuy?: ReadonlySet<string>
  /** Steps of work that the search for the timetable may take, never time, so that the answer is the same everywhere. */
  readonly budget?: number
}

/** Two years: a plan that does not fit in does not fit its windows. */
const calendarDays = 730
/** A Monday, for plans with windows but no date. */
const someMonday = 4
const usualBudget = 40_000
/** For asking whether there is any timetable at all. */
const tryBudget = 2_000

/**
 * The plan on the calendar of the bench: one pair of hands, `hands` and `watch` inside windows, vessels and heat sources shared, deliveries
 * waited for, hold points kept. The timetable ends as early as any (or says in its notes that this is not proven).
 *
 * A step that has no place in the windows is named with the reason, beside it the one window that would do; it and what depends on it get no
 * date, and the plan no finish.
 *
 * @throws RangeError for a step that the library does not hold: our mistake
 * Source: definition 12 of the design.
 */
export function daysOf(input: DaysInput): Days {
  const { library, steps, windows } = input
  const works = workOf(library, steps, input.after)
  const notes = works.flatMap(work => work.notes)
  const stated = input.startDate === null ? null : dayOf(input.startDate)
  if (input.startDate !== null && stated === null) notes.push(`"${input.startDate}" is no date of the calendar: no dates are given.`)
  const hasWindows = windows.length > 0
  const firstDay = hasWindows ? stated : null
  if (input.startDate !== null && stated !== null && !hasWindows) notes.push('Without bench windows no dates can be given, only hours.')
  const daysOff = new Set(firstDay === null ? [] : input.daysOff)
  const benchOf = (of: readonly WindowOfWeek[]) => BenchTime.of(of, daysOff, firstDay ?? someMonday, calendarDays)
  const bench = hasWindows ? benchOf(windows) : BenchTime.always()
  const horizonH = hasWindows
    ? calendarDays * 24
    : works.reduce((sum, work) => sum + work.batches * work.tasks.reduce((h, t) => h + t.hours, 0), 1)

  const chain = criticalPath(works.map(work => ({ id: work.step, hours: work.transformation.elapsedHours, after: work.after })))
  const tooLong: TooLong[] = hasWindows ? works.flatMap(work => tooLongIn(work, bench, horizonH) ?? []) : []
  const releaseOf = (work: StepWork) => (firstDay !== null && isDelivered(input, work) ? input.deliveryDays * 24 : 0)
  const noVessel = works.filter(
    (work, index) => input.vessels.length > 0 && fittingVessels(work, steps[index]!, input.vessels).length === 0,
  )
  for (const work of noVessel)
    notes.push(`${work.transformation.name}: none of the vessels stated holds a batch; one is taken to be at hand.`)

  if (input.heatSources === 0 && works.some(work => work.tasks.some(task => task.heated)))
    notes.push('No heat source is stated, and something is heated; one is taken to be at hand.')

  const stepOf = new Map(steps.map(step => [step.transformation, step]))
  const usual = { ...input, hasWindows, bench, horizonH, releaseOf, stepOf: (work: StepWork) => stepOf.get(work.step)! }
  const lay = (included: readonly StepWork[], setting: Partial<NetworkInput> = {}) =>
    tableOf(taskNetwork(included, { ...usual, budget: input.budget ?? usualBudget, ...setting }))
  let datable = withoutDependents(works, tooLong)
  let laid = lay(datable)
  while (laid.table === null && datable.length > 0) {
    // Each step alone has its place, but some two of them not together: name the first that cannot follow.
    const count = datable.findIndex((_, index) => lay(datable.slice(0, index + 1)).table === null)
    const upTo = datable.slice(0, Math.max(0, count) + 1)
    tooLong.push(followsTooLate(upTo, some => lay(some, { budget: tryBudget }).table !== null))
    datable = withoutDependents(works, tooLong)
    laid = lay(datable)
  }
  const { table, placed } = laid
  const wouldDo =
    tooLong.length === 0
      ? null
      : windowThatWouldDo(windows, some => {
          const at = benchOf(some)
          return works.every(work => tooLongIn(work, at, horizonH) === null) && lay(works, { bench: at, budget: tryBudget }).table !== null
        })
  if (table !== null && !table.proven) notes.push('The calendar is a good one; that none ends earlier is not proven.')
  for (const work of works)
    if (!datable.includes(work) && !tooLong.some(t => t.step === work.step))
      notes.push(`${work.transformation.name} cannot be dated: it waits for a step that has no date.`)

  const booked = table === null ? [] : bookedTasks(placed, table, bench, hasWindows, firstDay)
  const windowsUsed = new Set(booked.flatMap(b => (b.window === null ? [] : [b.window]))).size
  const complete = tooLong.length === 0
  return {
    handsOnH: works.every(w => w.handsOnH !== null) ? works.reduce((sum, w) => sum + w.handsOnH! * w.batches, 0) : null,
    elapsedH: chain.hours,
    windowsUsed: hasWindows && complete ? windowsUsed : null,
    startDate: firstDay === null ? null : dateOf(firstDay),
    finishDate: firstDay === null || !complete || table === null ? null : dateOf(firstDay + Math.floor(table.finishH / 24)),
    booked,
    longestChain: chain.chain,
    unattended: unattendedOf(booked, works, hasWindows),
    tooLong,
    wouldDo,
    notes,
  }
}

/** Does the step wait for a delivery? */
function isDelivered({ steps, toBuy }: DaysInput, work: StepWork): boolean {
  const step = steps.find(s => s.transformation === work.step)!
  return step.charges.some(line =>
    toBuy === undefined ? line.supply === 'bought' && line.material !== 'water' : toBuy.has(line.material) && line.supply === 'bought',
  )
}

function withoutDependents(works: readonly StepWork[], tooLong: readonly TooLong[]): readonly StepWork[] {
  const out = new Set(tooLong.map(t => t.step))
  return works.filter(work => {
    if (work.after.some(before => out.has(before))) out.add(work.step)
    return !out.has(work.step)
  })
}

function tableOf({ input, placed }: TaskNetwork): { readonly table: Timetable | null; readonly placed: readonly Placed[] } {
  const found = timetable(input)
  return { table: 'none' in found ? null : found, placed }
}
