import type { Evaluation } from '../../core/plan/evaluation.ts'
import { riskiestStep } from '../../core/shopping/riskiest-step.ts'
import { nameOf } from '../state/names.ts'
import { change, plan } from '../state/store.ts'

/** What is bought beyond the plan: a reserve on everything, one repeat of the riskiest step, a sample of each product. */
export function Spare({ evaluation }: { readonly evaluation: Evaluation }) {
  const { settings } = plan.value
  const riskiest = riskiestStep(evaluation.steps)
  return (
    <details class="more-of">
      <summary>To spare: reserve, a repeat, samples</summary>
      <div class="lines">
        <label class="line">
          <span>Reserve on every need, %</span>
          <input
            class="blank"
            type="number"
            min={0}
            max={500}
            value={Math.round(settings.reserve * 100)}
            onChange={event =>
              change({ do: 'settings', patch: { reserve: Math.min(5, Math.max(0, Number(event.currentTarget.value) / 100)) } })
            }
          />
        </label>
        <label class="line">
          <span>Repeat</span>
          <span class="dot-choice">
            <input
              type="checkbox"
              checked={settings.repeatRiskiest}
              onChange={event => change({ do: 'settings', patch: { repeatRiskiest: event.currentTarget.checked } })}
            />
            buy for one repeat of the riskiest step{riskiest === null ? '' : `, ${riskiest.number} ${nameOf(riskiest.makes)}`}
          </span>
        </label>
        <label class="line">
          <span>Sample kept of each product, g</span>
          <input
            class="blank"
            type="number"
            min={0}
            step={0.05}
            value={settings.retainedSampleG}
            onChange={event => change({ do: 'settings', patch: { retainedSampleG: Math.max(0, Number(event.currentTarget.value)) } })}
          />
        </label>
      </div>
    </details>
  )
}
