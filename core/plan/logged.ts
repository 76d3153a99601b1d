import { type Library, transformationOf } from '../library/library.ts'
import { flowOf } from '../route/flow.ts'
import type { LogEntry, Plan } from './plan.ts'

/** What the log says of one step. Grams of pure, dry product and of limiting compound. */
export interface LoggedStep {
  readonly isolatedG: number
  /** Batches with an entry. */
  readonly batchesDone: number
  /** Batches still to run. */
  readonly leftToRun: number
  /** Limiting compound that went into the logged batches. */
  readonly chargedG: number
  /** Limiting compound planned for the batches still to run. */
  readonly remainingG: number
  /** Yields that teach: no failed run, none above theory. */
  readonly yields: readonly number[]
  /** Batches that weighed more than theory allows. */
  readonly aboveTheory: readonly number[]
}

/** Entries that stand: those that no later one replaces. The replaced stay in the log. */
export function standing(log: readonly LogEntry[]): readonly LogEntry[] {
  const replaced = new Set(log.flatMap(e => (e.replaces === null ? [] : [e.replaces])))
  return log.filter(e => !replaced.has(e.id))
}

/** Grams of product that an entry stands for once dry and pure: less the loss on drying still to come, times purity where known. */
export const isolatedOf = (entry: LogEntry): number => entry.weighedG * (1 - entry.dampPercent / 100) * (entry.purity ?? 1)

/**
 * Yield of a run: fraction of theory on the limiting compound charged; for an isolation grams per gram of feedstock. Above 1 as it comes.
 *
 * @param chargedG grams of limiting compound
 */
export function runYield(library: Library, transformation: string, isolatedG: number, chargedG: number): number {
  return isolatedG / (chargedG * flowOf(library, transformation).theoryPerG)
}

/** A weighing may exceed theory by this before it counts as above: the last digit of two weighings. */
const weighing = 1e-6

/**
 * What the log says of the steps, by transformation.
 *
 * @param planned limiting compound and batches of each step as planned before anything was logged
 * @param repeats further batches asked for, each with its own charge
 */
export function loggedSteps(
  library: Library,
  log: readonly LogEntry[],
  planned: ReadonlyMap<string, { readonly limitingG: number; readonly batches: number }>,
  repeats: Plan['repeats'] = [],
): ReadonlyMap<string, LoggedStep> {
  const byStep = new Map<string, LogEntry[]>()
  for (const entry of standing(log)) {
    if (!library.transformations.has(entry.step) || !planned.has(entry.step)) continue
    const list = byStep.get(entry.step)
    if (list) list.push(entry)
    else byStep.set(entry.step, [entry])
  }
  const found = new Map<string, LoggedStep>()
  for (const [step, entries] of byStep) {
    const plan = planned.get(step)!
    const perBatchG = plan.batches > 0 ? plan.limitingG / plan.batches : 0
    let isolatedG = 0
    let chargedG = 0
    const yields: number[] = []
    const aboveTheory: number[] = []
    const batches = new Set(entries.map(e => e.batch))
    for (const batch of batches) {
      // A second crop is a second entry of the same batch: one run.
      const crops = entries.filter(e => e.batch === batch)
      const batchG = crops.reduce((sum, e) => sum + isolatedOf(e), 0)
      const charged = crops.find(e => e.chargedG !== null)?.chargedG ?? perBatchG
      isolatedG += batchG
      chargedG += charged
      if (crops.some(e => e.failed) || charged <= 0) continue
      const fraction = runYield(library, step, batchG, charged)
      if (fraction > 1 + weighing) aboveTheory.push(batch)
      else yields.push(Math.min(1, fraction))
    }
    const again = repeats.filter(r => r.step === step)
    const leftToRun = Math.max(0, plan.batches + again.length - batches.size)
    // The planned batches come first, then the repeats in their order.
    const leftOfPlan = Math.max(0, plan.batches - batches.size)
    const repeatsG = again.slice(again.length - (leftToRun - leftOfPlan)).reduce((sum, r) => sum + r.limitingG, 0)
    const remainingG = leftOfPlan * perBatchG + repeatsG
    found.set(step, { isolatedG, batchesDone: batches.size, leftToRun, chargedG, remainingG, yields, aboveTheory })
  }
  return found
}

/**
 * What is in hand of logged products for what is still to come: isolated, plus what the remaining batches should give, less what their logged
 * consumers took or will take. By compound, g.
 */
export function inHandOf(
  library: Library,
  logged: ReadonlyMap<string, LoggedStep>,
  expected: (step: string, limitingG: number) => number,
): ReadonlyMap<string, number> {
  const hand = new Map<string, number>()
  for (const [step, what] of logged) {
    const made = what.isolatedG + (what.remainingG > 0 ? expected(step, what.remainingG) : 0)
    hand.set(transformationOf(library, step).mainProduct, made - takenOf(library, logged, transformationOf(library, step).mainProduct))
  }
  for (const [compound, massG] of hand) hand.set(compound, Math.max(0, massG))
  return hand
}

/** Grams of a compound that logged steps took, or will take in their remaining batches. */
export function takenOf(library: Library, logged: ReadonlyMap<string, LoggedStep>, compound: string): number {
  let taken = 0
  for (const [step, what] of logged) {
    const need = flowOf(library, step).needs.find(n => n.compound === compound)
    if (need) taken += need.perG * (what.chargedG + what.remainingG)
  }
  return taken
}
