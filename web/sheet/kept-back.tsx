import type { Settings } from '../../core/plan/settings.ts'
import { inBase } from '../../core/quantity/convert.ts'
import { massText } from '../../core/quantity/print.ts'
import { AmountField } from '../parts/amount-field.tsx'
import { Name } from '../parts/words.tsx'
import { startCompound } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { change, plan } from '../state/store.ts'

/** Compounds of which some may be kept back: the start and what the routes make on the way. */
function mayBeKept(): readonly string[] {
  const { goals } = plan.value
  const targets = new Set(goals.map(goal => goal.target))
  const made = goals.flatMap(goal => goal.route.steps.map(step => step.makes))
  return [...new Set([startCompound.value, ...made.filter(compound => !targets.has(compound))])]
}

/** Grams of the start or of an intermediate that no goal may use: they are taken off before anything is divided. */
export function KeptBack() {
  const { keptBack } = plan.value.settings
  const set = (next: Settings['keptBack']): void => change({ do: 'settings', patch: { keptBack: next } })
  const kept = (compound: string): number => keptBack.find(one => one.compound === compound)?.massG ?? 0
  const keep = (compound: string, massG: number): void => {
    const others = keptBack.filter(one => one.compound !== compound)
    set(massG > 0 ? [...others, { compound, massG }] : others)
  }
  const total = keptBack.filter(one => one.massG > 0)
  return (
    <details class="more-of">
      <summary>
        {total.length === 0
          ? 'Keep some back'
          : `Kept back: ${total.map(one => `${massText(one.massG)} ${nameOf(one.compound)}`).join(', ')}`}
      </summary>
      <div class="lines">
        {[...new Set([...mayBeKept(), ...total.map(one => one.compound)])].map(compound => (
          <div class="line" key={compound}>
            <span>
              <Name text={nameOf(compound)} />
            </span>
            <AmountField
              text={kept(compound) === 0 ? '' : massText(kept(compound))}
              label={`${nameOf(compound)} kept back`}
              dimensions={['mass']}
              mayBeEmpty
              onWritten={quantity => keep(compound, quantity === null ? 0 : inBase(quantity))}
            />
          </div>
        ))}
      </div>
      <p class="s soft">No goal may use it: it is taken off before the goals share what there is.</p>
    </details>
  )
}
