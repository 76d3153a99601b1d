import { type Breach, breachOf } from '../../core/choose/breach.ts'
import type { Traits } from '../../core/hazards/traits.ts'
import { facts } from './facts-here.ts'
import { choosing, plan } from './store.ts'

/** What these steps use against what question 3 asks to be kept clear of; null where they keep to it. */
export function breachBy(steps: readonly string[]): Breach | null {
  const { library, traits } = facts.value
  return breachOf({
    library,
    traits: new Map(Object.entries(traits)) as ReadonlyMap<string, Traits>,
    settings: plan.value.settings,
    options: choosing.value,
    steps,
  })
}

/** The same of all goals together. */
export const breachOfPlan = (): Breach | null =>
  breachBy(plan.value.goals.flatMap(goal => goal.route.steps.map(step => step.transformation)))
