import type { Library } from '../library/library.ts'
import { didYouMean } from '../problem/nearest.ts'
import type { Problem } from '../problem/problem.ts'
import { standing } from './logged.ts'
import type { MergedSteps } from './merged-steps.ts'
import type { Plan } from './plan.ts'

/**
 * What a plan states and does not use, so that nothing is passed over in silence: logged runs of steps that it does not have (a new route leaves
 * some behind), own yields and batches of steps that nobody knows, top-ups and repeats with nothing to add to. Warnings: the plan can be
 * reckoned. An own yield of a step that the library knows and the plan does not take is no slip: settings serve many plans.
 */
export function unusedParts(library: Library, plan: Plan, { steps }: MergedSteps): readonly Problem[] {
  const own = new Set(steps.map(s => s.transformation))
  const logged = new Set(standing(plan.log).flatMap(e => (own.has(e.step) ? [e.step] : [])))
  return [
    ...runsElsewhere(library, plan, own),
    ...unknownSteps(library, own, 'yields', Object.keys(plan.settings.yields), 'An own yield is stated'),
    ...unknownSteps(library, own, 'batches', Object.keys(plan.settings.batches), 'Batches are asked for'),
    ...idleTopUps(library, plan, new Set(steps.flatMap(s => (logged.has(s.transformation) ? [s.makes] : [])))),
    ...idleRepeats(plan, logged),
  ]
}

function runsElsewhere(library: Library, plan: Plan, own: ReadonlySet<string>): readonly Problem[] {
  const runs = new Map<string, string[]>()
  for (const { id, step } of plan.log) if (!own.has(step)) runs.set(step, [...(runs.get(step) ?? []), id])
  return [...runs].map(([step, ids]) => {
    const known = library.transformations.get(step)
    const many = ids.length > 1
    return {
      code: 'log-not-in-plan',
      where: ['log', ...ids.slice(0, 5)],
      what: `${many ? `${ids.length} runs are` : `Run ${ids[0]} is`} logged for ${known?.name ?? step}, ${known ? 'which is no step of this plan' : 'a step that the library does not know'}.`,
      why: `${many ? 'They stay' : 'It stays'} in the log, but the plan reckons with runs of its own steps alone.`,
      cure: known
        ? 'Nothing needs doing where a new route left them behind; otherwise log the run under the step that was run.'
        : `${didYouMean(step, own)}Log the run under the step that was run, or add the step to a library file.`,
    }
  })
}

function unknownSteps(library: Library, own: ReadonlySet<string>, field: string, ids: readonly string[], told: string): readonly Problem[] {
  return ids
    .filter(id => !own.has(id) && !library.transformations.has(id))
    .map(id => ({
      code: 'settings-step-unknown',
      where: ['settings', field, id],
      what: `${told} for ${id}, a step that the library does not know.`,
      why: 'It changes nothing in the plan.',
      cure: `${didYouMean(id, own)}Name a step of the plan, or take it out.`,
    }))
}

function idleTopUps(library: Library, plan: Plan, made: ReadonlySet<string>): readonly Problem[] {
  return (plan.topUps ?? [])
    .filter(({ compound }) => !made.has(compound))
    .map(({ compound, massG }) => ({
      code: 'top-up-unused',
      where: ['topUps', compound],
      what: `${massG} g of ${library.materials.get(compound)?.name ?? compound} is to be topped up, but no run of a step that makes it is logged.`,
      why: 'A top-up adds to what a logged run of the plan gave; this one is neither bought nor used.',
      cure: `${didYouMean(compound, made)}Log the run first, or take the top-up out.`,
    }))
}

function idleRepeats(plan: Plan, logged: ReadonlySet<string>): readonly Problem[] {
  return [...new Set((plan.repeats ?? []).map(r => r.step))]
    .filter(step => !logged.has(step))
    .map(step => ({
      code: 'repeat-unused',
      where: ['repeats', step],
      what: `${step} is to be repeated, but no run of it is logged in this plan.`,
      why: 'A repeat follows runs that are done; this one adds no batch.',
      cure: `${didYouMean(step, logged)}Log the run first, or ask for more batches in the settings.`,
    }))
}
