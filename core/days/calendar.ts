import type { Library } from '../library/library.ts'
import type { ChargedStep } from '../route/charged.ts'
import { BenchTime, type WindowOfWeek } from './bench-time.ts'
import { bookedTasks, unattendedOf } from './booked.ts'
import { dateOf, dayOf } from './civil-date.ts'
import type { Days } from './days.ts'
import { criticalPath } from './longest-chain.ts'
import { type StepWork, workOf } from './tasks.ts'
import { type Order, type TimedTask, type Timetable, type TimetableInput, timetable, type VesselUse, type Wait } from './timetable.ts'
import { type TooLong, timedTask, tooLongIn, waitAfter } from './too-long.ts'
import { fittingVessels, type VesselKindOwned } from './vessels-fit.ts'

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

/** A step's tasks as they stand in the timetable: `first[batch]` is the index of the first one of a batch. */
interface Placed {
  readonly work: StepWork
  readonly first: readonly number[]
}

/**
 * The plan on the calendar of the bench: one pair of hands, `hands` and `watch` inside windows, vessels and heat sources shared, deliveries
 * waited for, hold points kept. The timetable ends as early as any (or says in its notes that this is not proven).
 *
 * A step that no window is long enough for is named with the hours it needs; it and what depends on it get no date, and the plan no finish.
 *
 * @throws RangeError for a step that the library does not hold: our mistake
 * Source: definition 12 of the design.
 */
export function daysOf(input: DaysInput): Days {
  const { library, steps, windows } = input
  const works = workOf(library, steps)
  const notes = works.flatMap(work => work.notes)
  const stated = input.startDate === null ? null : dayOf(input.startDate)
  if (input.startDate !== null && stated === null) notes.push(`"${input.startDate}" is no date of the calendar: no dates are given.`)
  const hasWindows = windows.length > 0
  const firstDay = hasWindows ? stated : null
  if (input.startDate !== null && stated !== null && !hasWindows) notes.push('Without bench windows no dates can be given, only hours.')
  const bench = hasWindows
    ? BenchTime.of(windows, new Set(firstDay === null ? [] : input.daysOff), firstDay ?? someMonday, calendarDays)
    : BenchTime.always()
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

  const parts = (included: readonly StepWork[]) =>
    partsOf(included, { ...input, hasWindows, bench, horizonH, releaseOf, stepOf: work => steps[works.indexOf(work)]! })
  let datable = withoutDependents(works, tooLong)
  let laid = tableOf(parts(datable))
  while (laid.table === null && datable.length > 0) {
    // Each step alone has its place, but some two of them not together: name the first that cannot follow.
    const count = datable.findIndex((_, index) => tableOf(parts(datable.slice(0, index + 1))).table === null)
    const work = datable[Math.max(0, count)]!
    tooLong.push({
      step: work.step,
      do: work.tasks[0]!.do,
      hours: leadingHours(work) + Math.max(0, ...works.filter(w => work.after.includes(w.step)).map(trailingHours)),
    })
    notes.push(
      `${work.transformation.name} finds no place in the windows soon enough after the step before it: what it takes does not keep so long.`,
    )
    datable = withoutDependents(works, tooLong)
    laid = tableOf(parts(datable))
  }
  const { table, placed } = laid
  if (table !== null && !table.proven) notes.push('The calendar is a good one; that none ends earlier is not proven.')
  for (const work of works)
    if (!datable.includes(work) && !tooLong.some(t => t.step === work.step))
      notes.push(`${work.transformation.name} cannot be dated: it waits for a step that fits no window.`)

  const booked = table === null ? [] : bookedTasks(placed, table, bench, hasWindows, firstDay)
  const sessions = new Set(booked.flatMap(b => (b.window === null ? [] : [b.window]))).size
  const complete = tooLong.length === 0
  return {
    handsOnH: works.every(w => w.handsOnH !== null) ? works.reduce((sum, w) => sum + w.handsOnH! * w.batches, 0) : null,
    elapsedH: chain.hours,
    sessions: hasWindows && complete ? sessions : null,
    startDate: firstDay === null ? null : dateOf(firstDay),
    finishDate: firstDay === null || !complete || table === null ? null : dateOf(firstDay + Math.floor(table.finishH / 24)),
    booked,
    longestChain: chain.chain,
    unattended: unattendedOf(booked, works, hasWindows),
    tooLong,
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

interface Parts {
  readonly input: TimetableInput
  readonly placed: readonly Placed[]
}

interface Setting extends DaysInput {
  readonly hasWindows: boolean
  readonly bench: BenchTime
  readonly horizonH: number
  readonly releaseOf: (work: StepWork) => number
  readonly stepOf: (work: StepWork) => ChargedStep
}

function tableOf({ input, placed }: Parts): { readonly table: Timetable | null; readonly placed: readonly Placed[] } {
  const found = timetable(input)
  return { table: 'none' in found ? null : found, placed }
}

/** The tasks of all batches with everything that ties them together. */
function partsOf(works: readonly StepWork[], setting: Setting): Parts {
  const tasks: TimedTask[] = []
  const orders: Order[] = []
  const waits: Wait[] = []
  const vesselUses: VesselUse[] = []
  const placed: Placed[] = []
  for (const work of works) {
    const first: number[] = []
    const fits = fittingVessels(work, setting.stepOf(work), setting.vessels)
    for (let batch = 0; batch < work.batches; batch++) {
      const base = tasks.length
      first.push(base)
      for (const [index, task] of work.tasks.entries()) {
        const at = base + index
        tasks.push(timedTask(task, work.tasks[index - 1], setting.hasWindows, index === 0 ? setting.releaseOf(work) : 0))
        const next = work.tasks[index + 1]
        if (next !== undefined) {
          orders.push({ from: at, to: at + 1, since: 'end' })
          waits.push({ from: at, to: at + 1, upToH: waitAfter(task, next) })
        }
        // Batches are alike, so that the first may as well be the first at every task: half of the orders need no trying.
        if (batch > 0) orders.push({ from: at - work.tasks.length, to: at, since: task.kind === 'hands' ? 'end' : 'start' })
      }
      vesselUses.push({ first: base, last: base + work.vesselUntil, fits })
    }
    for (const before of placed.filter(p => work.after.includes(p.work.step)))
      for (const from of before.first.map(base => base + before.work.tasks.length - 1))
        for (const to of first) {
          orders.push({ from, to, since: 'end' })
          waits.push({ from, to, upToH: before.work.holdH })
        }
    placed.push({ work, first })
  }
  const { bench, heatSources, horizonH, budget = usualBudget } = setting
  const vesselCounts = setting.vessels.map(vessel => vessel.count)
  const ranks = ranksOf(placed, tasks.length)
  return { input: { ranks, tasks, orders, waits, bench, vesselUses, vesselCounts, heatSources, horizonH, budget }, placed }
}

/**
 * Three plain rules: the step whose supply keeps least goes on first; the step with the most still to come after it; the order of the plan.
 * Each follows the order of the plan as far as one step takes from another.
 */
function ranksOf(placed: readonly Placed[], taskCount: number): readonly (readonly number[])[] {
  const workOfStep = new Map(placed.map(p => [p.work.step, p.work]))
  const tail = new Map<string, number>()
  for (const { work } of [...placed].reverse()) {
    const following = placed.filter(p => p.work.after.includes(work.step)).map(p => tail.get(p.work.step) ?? 0)
    tail.set(work.step, work.transformation.elapsedHours + Math.max(0, ...following))
  }
  const keeps = (work: StepWork) =>
    Math.min(Number.MAX_VALUE, ...work.after.map(before => workOfStep.get(before)?.holdH ?? Number.MAX_VALUE))
  const rules: ((a: StepWork, b: StepWork) => number)[] = [
    (a, b) => keeps(a) - keeps(b) || tail.get(b.step)! - tail.get(a.step)!,
    (a, b) => tail.get(b.step)! - tail.get(a.step)!,
    () => 0,
  ]
  return rules.map(rule => {
    const rank = new Array<number>(taskCount).fill(0)
    const left = [...placed]
    const done = new Set<string>()
    let next = 0
    while (left.length > 0) {
      const ready = left.filter(p => p.work.after.every(before => done.has(before) || !workOfStep.has(before)))
      const chosen = ready.reduce((best, p) => (rule(p.work, best.work) < 0 ? p : best))
      for (const base of chosen.first) {
        for (let index = 0; index < chosen.work.tasks.length; index++) rank[base + index] = next
        next++
      }
      done.add(chosen.work.step)
      left.splice(left.indexOf(chosen), 1)
    }
    return rank
  })
}

/** Hours of the attended work at the beginning of a step, and at its end. */
const leadingHours = (work: StepWork): number => attendedHours(work.tasks)
const trailingHours = (work: StepWork): number => attendedHours([...work.tasks].reverse())

function attendedHours(tasks: StepWork['tasks']): number {
  const stop = tasks.findIndex(task => task.kind === 'stand')
  return tasks.slice(0, stop < 0 ? tasks.length : stop).reduce((sum, task) => sum + task.hours, 0)
}
