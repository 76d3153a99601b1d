import { computed } from '@preact/signals'
import { LazyWideMap } from './map/wide/lazy-wide-map.tsx'
import { mostDrawn, wideOfReach } from './map/wide-of-reach.ts'
import { startCompound } from './state/facts-here.ts'
import { dropGoal, wantGoal } from './state/goals.ts'
import { nameOf } from './state/names.ts'
import { reach } from './state/questions.ts'
import { hasStart } from './state/sheet-state.ts'
import { plan, sheet } from './state/store.ts'

const network = computed(() => {
  const { answer } = reach.value
  return answer === null ? null : wideOfReach({ id: startCompound.value, name: nameOf(startCompound.value) }, answer)
})

/** The wide network downstream; the list of the same stands in question 2 beside it. */
export function NetworkPane() {
  if (!hasStart(sheet.value)) return <p class="soft">Name what you have in question 1; what it can become is then drawn here.</p>
  const shown = network.value
  if (shown === null)
    return (
      <p class="soft" role="status">
        {reach.value.waiting ? 'Looking downstream.' : ''}
      </p>
    )
  if (shown.nodes.length < 2) return <p class="soft">Nothing in the library takes {nameOf(startCompound.value)} further.</p>
  const goals = plan.value.goals.map(goal => goal.target)
  const all = reach.value.answer?.reach.length ?? 0
  return (
    <>
      {all > mostDrawn && (
        <p class="s soft">
          Of {all} compounds the {mostDrawn} nearest are drawn, those with the best yields; question 2 finds the others by name.
        </p>
      )}
      <LazyWideMap
        network={shown}
        goals={goals}
        list={false}
        onChoose={id => {
          if (id === startCompound.value) return
          if (goals.includes(id)) dropGoal(id)
          else wantGoal(id)
        }}
      />
    </>
  )
}
