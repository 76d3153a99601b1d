import type { ChargedStep } from '../route/charged.ts'
import type { BenchTime } from './bench-time.ts'
import type { StepWork } from './tasks.ts'
import type { Order, TimedTask, TimetableInput, VesselUse, Wait } from './timetable-input.ts'
import { timedTask, waitAfter } from './too-long.ts'
import { fittingVessels, type VesselKindOwned } from './vessels-fit.ts'

/** A step's tasks as they stand in the timetable: `first[batch]` is the index of the first one of a batch. */
export interface Placed {
  readonly work: StepWork
  readonly first: readonly number[]
}

export interface TaskNetwork {
  readonly input: TimetableInput
  readonly placed: readonly Placed[]
}

export interface NetworkInput {
  readonly vessels: readonly VesselKindOwned[]
  readonly heatSources: number | null
  readonly budget: number
  readonly hasWindows: boolean
  readonly bench: BenchTime
  readonly horizonH: number
  readonly releaseOf: (work: StepWork) => number
  readonly stepOf: (work: StepWork) => ChargedStep
}

/** The tasks of all batches with everything that ties them together. */
export function taskNetwork(works: readonly StepWork[], setting: NetworkInput): TaskNetwork {
  const tasks: TimedTask[] = []
  const orders: Order[] = []
  const waits: Wait[] = []
  const vesselUses: VesselUse[] = []
  const placed: Placed[] = []
  for (const work of works) {
    const first: number[] = []
    const fits = fittingVessels(work, setting.stepOf(work), setting.vessels)
    // Batches begin and end in their order, so that of so many vessels, or heat sources, one more batch waits for the first of them to end.
    const room = fits.length === 0 ? Number.POSITIVE_INFINITY : fits.reduce((sum, vessel) => sum + setting.vessels[vessel]!.count, 0)
    const heats = setting.heatSources === null ? Number.POSITIVE_INFINITY : Math.max(1, setting.heatSources)
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
        const earlier = batch - heats
        if (task.heated && earlier >= 0) orders.push({ from: first[earlier]! + index, to: at, since: 'end', shared: true })
      }
      const emptied = batch - room
      if (emptied >= 0) orders.push({ from: first[emptied]! + work.vesselUntil, to: base, since: 'end', shared: true })
      vesselUses.push({ first: base, last: base + work.vesselUntil, fits })
    }
    for (const before of placed.filter(p => work.after.includes(p.work.step)))
      for (const from of before.first.map(base => base + before.work.tasks.length - 1))
        for (const to of first) {
          orders.push({ from, to, since: 'end' })
          if (work.takesFrom.includes(before.work.step)) waits.push({ from, to, upToH: before.work.holdH })
        }
    placed.push({ work, first })
  }
  const { bench, heatSources, horizonH, budget } = setting
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
    Math.min(Number.MAX_VALUE, ...work.takesFrom.map(before => workOfStep.get(before)?.holdH ?? Number.MAX_VALUE))
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
