import type { GoalResult } from '../../core/plan/evaluation.ts'
import type { Goal, Groups } from '../../core/plan/plan.ts'
import { massText } from '../../core/quantity/print.ts'
import { groupsSentence } from '../../core/report/start-sentence.ts'
import { nameOf } from '../state/names.ts'
import { change } from '../state/store.ts'

/** For how many groups a goal is, and whether each runs the last step itself or one lot is divided. */
export function GroupsOf({ goal, result }: { readonly goal: Goal; readonly result: GoalResult | undefined }) {
  if (goal.amount.kind !== 'mass') return null
  const { groups } = goal
  const name = nameOf(goal.target)
  const set = (next: Groups | null): void => change({ do: 'goal-groups', target: goal.target, groups: next })
  return (
    <div class="s soft">
      <label>
        for{' '}
        <input
          class="blank n"
          type="number"
          min={1}
          max={1000}
          size={3}
          aria-label={`groups that share ${name}`}
          value={groups?.count ?? 1}
          onChange={event => {
            const count = Math.round(Number(event.currentTarget.value))
            set(count >= 2 && count <= 1000 ? { count, as: groups?.as ?? 'lot' } : null)
          }}
        />{' '}
        {groups === undefined ? 'bench' : `groups, ${massText(goal.amount.massG / groups.count)} each`}
      </label>{' '}
      {groups !== undefined && (
        <select
          class="blank"
          aria-label={`how the groups get ${name}`}
          value={groups.as}
          onChange={event => set({ ...groups, as: event.currentTarget.value === 'runs' ? 'runs' : 'lot' })}
        >
          <option value="lot">one lot to divide</option>
          <option value="runs">each runs the last step</option>
        </select>
      )}
      {result?.groups !== undefined && <span class="block">{groupsSentence(result)}</span>}
    </div>
  )
}
