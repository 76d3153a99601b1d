import type { Library } from '../library/library.ts'
import { standing } from '../plan/logged.ts'
import type { LogEntry, Plan } from '../plan/plan.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { plannedChargeG } from './planned-charge.ts'

/** What a person writes down after a run; the rest has a usual value. */
export interface RunNote {
  /** Transformation of the plan. */
  readonly step: string
  readonly weighedG: number
  /** Grams of limiting compound really charged; left out = as planned now, or as the entry or batch that this one belongs to. */
  readonly chargedG?: number | null
  /** Loss on drying still to come, percent of the weighed mass; 0 = dry. */
  readonly dampPercent?: number
  readonly purity?: number | null
  /** C, from the first liquid to the last solid. */
  readonly meltingC?: readonly [number, number] | null
  readonly batch?: number
  readonly date?: string | null
  readonly failed?: boolean
  readonly note?: string
  /** Entry that this one corrects; it stays in the log. */
  readonly replaces?: string | null
}

/** A thousand tonnes, as the plan file allows: beyond it the digits or the unit are wrong. */
const mostG = 1e9
const mostBatch = 10_000

/**
 * The plan with one more entry in its log. Nothing is edited: a correction is a new entry that names the one it replaces.
 *
 * @returns Problems: log-step-unknown, log-number (a mass, loss, purity, batch or melting range that cannot be), log-date, log-replaces (an entry that is not
 * there, stands no longer, or belongs to another step)
 */
export function withRun(library: Library, plan: Plan, run: RunNote): Checked<Plan> {
  const problems: Problem[] = []
  const fault = (code: string, field: string, what: string, why: string, cure: string): void => {
    problems.push({ code, where: ['log', run.step, field], what, why, cure })
  }
  const steps = new Set(plan.goals.flatMap(g => g.route.steps.map(s => s.transformation)))
  if (!steps.has(run.step) || !library.transformations.has(run.step)) {
    fault(
      'log-step-unknown',
      'step',
      `${run.step} is no step of this plan.`,
      'A run belongs to a step.',
      `Name one of ${[...steps].sort().join(', ')}.`,
    )
  }
  if (!(run.weighedG >= 0 && run.weighedG <= mostG)) {
    fault(
      'log-number',
      'weighedG',
      `${run.weighedG} g cannot be weighed.`,
      'The plan goes on from this mass.',
      'Give a mass in grams; 0 for a run that gave nothing.',
    )
  }
  const damp = run.dampPercent ?? 0
  if (!(damp >= 0 && damp < 100)) {
    fault(
      'log-number',
      'dampPercent',
      `${damp} % cannot be lost on drying.`,
      'It is taken off the weighed mass.',
      'Give at least 0 and less than 100; 0 for dry.',
    )
  }
  const purity = run.purity ?? null
  if (purity !== null && !(purity > 0 && purity <= 1)) {
    fault(
      'log-number',
      'purity',
      `A purity of ${purity * 100} % cannot be.`,
      'It multiplies the weighed mass.',
      'Give more than 0 and at most 100 %.',
    )
  }
  const charged = run.chargedG ?? null
  if (charged !== null && !(charged > 0 && charged <= mostG)) {
    fault(
      'log-number',
      'chargedG',
      `${charged} g cannot be charged.`,
      'The yield is reckoned on it.',
      'Give a mass above zero, or leave it out for "as planned".',
    )
  }
  const melting = run.meltingC ?? null
  if (
    melting !== null &&
    !(Number.isFinite(melting[0]) && Number.isFinite(melting[1]) && melting[0] <= melting[1] && melting[0] > -273.15)
  ) {
    fault(
      'log-number',
      'meltingC',
      `${melting[0]} to ${melting[1]} C is no melting range.`,
      'It goes from the first liquid to the last solid.',
      'Give the lower figure first, as in 94-95.',
    )
  }
  if (run.batch !== undefined && !(Number.isInteger(run.batch) && run.batch >= 1 && run.batch <= mostBatch)) {
    fault(
      'log-number',
      'batch',
      `${run.batch} is no number of a batch.`,
      'Entries of one batch are one run, as a second crop is.',
      'Give a whole number from 1 on, or leave it out for the next batch.',
    )
  }
  const date = run.date ?? null
  if (date !== null && !/^\d{4}-\d{2}-\d{2}$/.test(date)) {
    fault('log-date', 'date', `"${date}" is no date.`, 'Runs are listed by date.', 'Write it as 2026-12-03.')
  }
  const old = run.replaces == null ? null : (plan.log.find(e => e.id === run.replaces) ?? undefined)
  if (old === undefined) {
    fault(
      'log-replaces',
      'replaces',
      `There is no entry ${run.replaces}.`,
      'A correction names what it corrects.',
      'Name an entry of the log.',
    )
  } else if (old !== null && (!standing(plan.log).includes(old) || old.step !== run.step)) {
    const what = old.step === run.step ? `Entry ${old.id} was corrected before.` : `Entry ${old.id} belongs to ${old.step}.`
    fault('log-replaces', 'replaces', what, 'Only one entry stands for a weighing.', 'Correct the entry that stands.')
  }
  if (problems.length > 0) return bad(problems)
  const batch = run.batch ?? old?.batch ?? nextBatch(plan.log, run.step)
  const entry: LogEntry = {
    id: nextId(plan.log),
    step: run.step,
    date,
    batch,
    ...chargeOf(library, plan, run, { charged, old, batch }),
    weighedG: run.weighedG,
    dampPercent: damp,
    purity,
    ...(melting === null ? {} : { meltingC: melting }),
    failed: run.failed ?? false,
    note: run.note ?? '',
    replaces: run.replaces ?? null,
  }
  return good({ ...plan, log: [...plan.log, entry] })
}

/** What was charged: as written, else as the corrected entry or the batch has it (a second crop comes of the same charge), else as planned now. */
function chargeOf(
  library: Library,
  plan: Plan,
  { step }: RunNote,
  by: { readonly charged: number | null; readonly old: LogEntry | null | undefined; readonly batch: number },
): Pick<LogEntry, 'chargedG' | 'chargedAs'> {
  if (by.charged !== null) return { chargedG: by.charged }
  const before =
    by.old?.chargedG != null ? by.old : standing(plan.log).find(e => e.step === step && e.batch === by.batch && e.chargedG !== null)
  if (before !== undefined) return { chargedG: before.chargedG, ...(before.chargedAs === undefined ? {} : { chargedAs: before.chargedAs }) }
  const chargedG = plannedChargeG(library, plan, step)
  return chargedG === null ? { chargedG } : { chargedG, chargedAs: 'planned' }
}

/** The first batch without an entry that stands. */
export function nextBatch(log: readonly LogEntry[], step: string): number {
  const taken = new Set(standing(log).flatMap(e => (e.step === step ? [e.batch] : [])))
  let batch = 1
  while (taken.has(batch)) batch++
  return batch
}

/** Ids count up, so that the same log gives the same ids. */
function nextId(log: readonly LogEntry[]): string {
  const numbers = log.map(e => Number(/^run-(\d+)$/.exec(e.id)?.[1] ?? 0))
  return `run-${Math.max(0, ...numbers) + 1}`
}
