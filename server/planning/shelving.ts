import type { Plan } from '../../core/plan/plan.ts'
import { badOption } from '../commands/command.ts'
import type { Workshop } from '../library/workshop.ts'

/**
 * A plan with second products moved to its shelf: their amount follows the plan, and other steps may use them once they are there.
 *
 * @throws Refusal for what no step of the plan gains
 */
export function withShelved({ library }: Workshop, plan: Plan, ids: readonly string[]): Plan {
  const steps = [...new Set(plan.goals.flatMap(goal => goal.route.steps.map(step => step.transformation)))]
  const gained = steps.flatMap(id => (library.transformations.get(id)?.coProducts ?? []).map(({ compound }) => ({ compound, step: id })))
  const items = ids.map(id => {
    const found = gained.find(one => one.compound === id)
    if (found !== undefined) return { material: id, amount: 0, unit: 'g' as const, gainedIn: found.step }
    throw badOption(
      '--shelve',
      `is "${id}".`,
      gained.length === 0 ? 'No step of this plan gains a second product.' : 'No step of this plan gains it beside its product.',
      gained.length === 0 ? 'Leave the option out.' : `Give ${gained.map(one => one.compound).join(' or ')}.`,
      'not-gained',
    )
  })
  const known = plan.shelf.filter(item => !items.some(one => one.gainedIn === item.gainedIn && one.material === item.material))
  return { ...plan, shelf: [...known, ...items] }
}
