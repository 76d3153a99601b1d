import { firstChoosing } from '../../core/plan/choosing.ts'
import type { Goal, GoalAmount, Plan } from '../../core/plan/plan.ts'
import type { Change } from './change.ts'
import { withPrice, withPriceBefore } from './prices.ts'
import type { SheetState } from './sheet-state.ts'

/** Grams of a goal where nothing is in hand to take a share of; a first figure to be written over. */
const firstGoalG = 5

/** Pure: the same state and change give the same next state. Saving, fetching and drawing happen to the result. */
export function changed(state: SheetState, change: Change): SheetState {
  const { plan } = state
  const withPlan = (patch: Partial<Plan>): SheetState => ({ ...state, plan: { ...plan, ...patch } })
  switch (change.do) {
    case 'open':
      return { plan: change.plan, choosing: change.choosing ?? firstChoosing }
    case 'rename':
      return withPlan({ title: change.title })
    case 'start':
      // Another compound leads elsewhere: its goals, its make-or-buy and its log would be about nothing that is in hand.
      return change.material === plan.start.material
        ? withPlan({ start: { material: change.material, massG: change.massG } })
        : {
            plan: { ...plan, start: { material: change.material, massG: change.massG }, goals: [], log: [] },
            choosing: { ...state.choosing, make: [] },
          }
    case 'have':
      return withPlan({ start: { ...plan.start, massG: change.massG }, goals: change.massG === null ? asMasses(plan.goals) : plan.goals })
    case 'add-goal':
      return withPlan({
        goals: withGoal(plan, { target: change.route.target, route: change.route, amount: change.amount ?? firstAmount(plan) }),
      })
    case 'drop-goal':
      return withPlan({ goals: plan.goals.filter(goal => goal.target !== change.target) })
    case 'goal-amount':
      return withPlan({ goals: withAmount(plan.goals, change.target, change.amount) })
    case 'goal-groups':
      return withPlan({ goals: plan.goals.map(goal => (goal.target === change.target ? withGroups(goal, change.groups) : goal)) })
    case 'goal-first':
      return withPlan({
        goals: [...plan.goals.filter(goal => goal.target === change.target), ...plan.goals.filter(goal => goal.target !== change.target)],
      })
    case 'routes':
      return withPlan({
        goals: plan.goals.map(goal => ({ ...goal, route: change.routes.find(route => route.target === goal.target) ?? goal.route })),
      })
    case 'choosing':
      return { ...state, choosing: { ...state.choosing, ...change.patch } }
    case 'put-on-shelf':
      return withPlan({
        shelf: change.at === null ? [...plan.shelf, change.item] : plan.shelf.map((item, at) => (at === change.at ? change.item : item)),
      })
    case 'take-off-shelf':
      return withPlan({ shelf: plan.shelf.filter((_, at) => at !== change.at) })
    case 'stock':
      return withPlan({ shelf: change.shelf })
    case 'packs':
      return withPlan({ packs: change.packs })
    case 'settings':
      return withPlan({ settings: { ...plan.settings, ...change.patch } })
    case 'price':
      return withPlan({ packs: withPrice(plan, change) })
    case 'price-back':
      return withPlan({ packs: withPriceBefore(plan.packs, change.pack) })
    case 'log':
      return withPlan({ log: [...plan.log, change.entry] })
    case 'keep-records': {
      const { keepsRecords: _keeps, ...rest } = plan
      return { ...state, plan: change.keep ? { ...rest, keepsRecords: true } : rest }
    }
  }
}

const withGoal = (plan: Plan, goal: Goal): readonly Goal[] =>
  plan.goals.some(known => known.target === goal.target)
    ? plan.goals.map(known => (known.target === goal.target ? { ...goal, amount: known.amount } : known))
    : [...plan.goals, goal]

/** The first goal gets everything; each further one half of what shares have left free, so that the sum never passes the whole. */
function firstAmount(plan: Plan): GoalAmount {
  if (plan.start.massG === null) return { kind: 'mass', massG: firstGoalG }
  if (!plan.goals.some(goal => goal.amount.kind === 'rest')) return { kind: 'rest' }
  const taken = plan.goals.reduce((sum, { amount }) => sum + (amount.kind === 'share' ? amount.fraction : 0), 0)
  return { kind: 'share', fraction: Math.max(0.01, Math.round(((1 - taken) / 2) * 100) / 100) }
}

const withGroups = ({ groups: _groups, ...goal }: Goal, groups: Goal['groups'] | null): Goal =>
  groups == null ? goal : { ...goal, groups }

/** At most one goal takes the rest: the one that had it before goes back to a share. */
function withAmount(goals: readonly Goal[], target: string, amount: GoalAmount): readonly Goal[] {
  return goals.map(goal => {
    // Only a mass can be divided among groups.
    if (goal.target === target) return withGroups({ ...goal, amount }, amount.kind === 'mass' ? goal.groups : null)
    return amount.kind === 'rest' && goal.amount.kind === 'rest' ? { ...goal, amount: { kind: 'share', fraction: 0.25 } } : goal
  })
}

/** Without an amount in hand there is nothing to take a share of. */
const asMasses = (goals: readonly Goal[]): readonly Goal[] =>
  goals.map(goal => (goal.amount.kind === 'mass' ? goal : { ...goal, amount: { kind: 'mass', massG: firstGoalG } }))
