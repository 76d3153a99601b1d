import type { Library } from '../../core/library/library.ts'
import { evaluate } from '../../core/plan/evaluate.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { changesSince, type OpenedPlan, planFromFile } from '../../core/plan/file.ts'
import { checkedPlan } from '../../core/plan/goals.ts'
import { missingSteps, stepMissing } from '../../core/plan/missing-steps.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { parseJson } from '../../core/problem/json.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { cautionSentences } from '../../core/report/cautions.ts'
import { stopProblems } from '../../core/report/stops.ts'
import type { Terminal } from '../commands/command.ts'
import { inOptions } from '../commands/option-words.ts'
import { withSlice } from '../library/with-slice.ts'
import type { Workshop } from '../library/workshop.ts'
import { Refusal, refusalOf } from '../refusal.ts'
import { loadSolver } from '../solver/highs.ts'
import { stopsInPlan, stopsInSlice } from './slice-screen.ts'

/**
 * A plan file, read; warnings tell what became of the library since.
 *
 * @throws Refusal for a file that is none, and for one that brings along what a list ends planning with
 */
export function openPlan(workshop: Workshop, value: unknown, name: string): OpenedPlan & { readonly changes: readonly Problem[] } {
  const opened = planFromFile(name, value)
  if (!opened.ok) throw new Refusal('bad-input', opened.problems)
  const stops = stopsInSlice(workshop, opened.value.slice)
  if (stops.length > 0) throw new Refusal('no-answer', stopProblems(opened.value.slice, stops))
  return { ...opened.value, changes: changesSince(workshop.library, opened.value) }
}

/** The workshop that an opened plan is reckoned in: with the records it brings along. */
export const workshopOf = (workshop: Workshop, { plan, slice }: OpenedPlan): Workshop =>
  withSlice(workshop, slice, plan.keepsRecords === true)

/**
 * The plan in a file that a command line names.
 *
 * @throws Refusal for a file that is none, and for a plan that a list ends
 */
export async function planIn(workshop: Workshop, file: string, terminal: Terminal) {
  const json = parseJson(file, await terminal.readFile(file))
  if (!json.ok) throw new Refusal('bad-input', json.problems)
  const opened = openPlan(workshop, json.value, file)
  refuseStopped(workshopOf(workshop, opened), opened.plan)
  return { ...opened, changes: opened.changes.map(inOptions) }
}

/** @throws Refusal for a plan whose routes name what a list ends planning with */
function refuseStopped(workshop: Workshop, plan: Plan): void {
  const stops = stopsInPlan(workshop, plan)
  if (stops.length > 0) throw new Refusal('no-answer', stopProblems(workshop.library, stops))
}

/** Everything wrong with a plan file, and what changed under it. */
export function planFileProblems(
  workshop: Workshop,
  value: unknown,
  name: string,
): { errors: readonly Problem[]; warnings: readonly Problem[] } {
  const opened = planFromFile(name, value)
  if (!opened.ok) return { errors: opened.problems, warnings: [] }
  const stops = stopsInSlice(workshop, opened.value.slice)
  if (stops.length > 0) return { errors: stopProblems(opened.value.slice, stops), warnings: [] }
  const warnings = [...opened.warnings, ...changesSince(workshop.library, opened.value)]
  let library: Library
  try {
    const shop = workshopOf(workshop, opened.value)
    library = shop.library
    const stopped = stopsInPlan(shop, opened.value.plan)
    if (stopped.length > 0) return { errors: stopProblems(library, stopped), warnings: [] }
  } catch (error) {
    const refusal = refusalOf(error)
    if (refusal === null) throw error
    return { errors: refusal.problems, warnings }
  }
  const checked = checkedPlan(library, opened.value.plan)
  return checked.ok ? { errors: [], warnings: [...warnings, ...checked.warnings] } : { errors: checked.problems, warnings }
}

/** The database ends a text at a NUL and knows no half of a pair; the plan itself keeps them, escaped. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const unstorable = /[\u0000-\u001f]|\p{Surrogate}/gu

/** A plan file as it may be stored: read, and told back as text with its title. */
export function checkedPlanFile(workshop: Workshop, value: unknown): { readonly title: string; readonly body: string } {
  const opened = openPlan(workshop, value, 'plan')
  const { plan } = opened
  const shop = workshopOf(workshop, opened)
  refuseStopped(shop, plan)
  const missing = missingSteps(shop.library, { goals: plan.goals, log: [] })
  if (missing.length > 0) throw new Refusal('no-answer', missing.map(stepMissing))
  return { title: plan.title.replace(unstorable, ' '), body: JSON.stringify(value) }
}

/** What is given to other programs says what every print says. */
export type CautionedEvaluation = Evaluation & { readonly cautions: readonly string[] }

/**
 * A plan, reckoned with the solver, other baskets beside the cheapest.
 *
 * @param maxNodes limit on the search for the basket; beyond it the best found stands with its gap
 * @throws Refusal for a plan that cannot be reckoned, and for one that a list ends
 */
export async function evaluatePlan(workshop: Workshop, plan: Plan, maxNodes?: number): Promise<CautionedEvaluation> {
  const checked = checkedPlan(workshop.library, plan)
  if (!checked.ok) throw new Refusal('bad-input', checked.problems)
  const { library, tables } = workshop
  const solver = await loadSolver(maxNodes)
  const evaluation = evaluate({ library, tables, traits: workshop.traits(), plan, solver, alternatives: true })
  if ('stopped' in evaluation) throw new Refusal('no-answer', stopProblems(library, evaluation.stopped))
  return { ...evaluation, cautions: cautionSentences }
}
