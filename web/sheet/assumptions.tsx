import { type ScaleFlags, scaleLimits } from '../../core/route/batches.ts'
import { NumberBlank } from '../parts/number-blank.tsx'
import { change, plan } from '../state/store.ts'

const fields: readonly {
  readonly key: keyof ScaleFlags
  readonly label: string
  readonly least: number
  readonly most: number
  readonly times: number
}[] = [
  { key: 'above', label: 'Too large: times the largest published scale', least: 1, most: 1e6, times: 1 },
  { key: 'aboveStrongExotherm', label: 'the same with a strong exotherm', least: 1, most: 1e6, times: 1 },
  { key: 'below', label: 'Too small: % of the smallest published scale', least: 0, most: 100, times: 100 },
  { key: 'leastProductG', label: 'Hardly any product: below, g', least: 0, most: 1e6, times: 1 },
]

/** What the plan assumes of every step: how a yield's spread parts into bench and run, and when a scale is flagged. Each figure can be changed. */
export function Assumptions() {
  const { settings } = plan.value
  return (
    <details class="more-of">
      <summary>What is assumed: spread and scale</summary>
      <p class="s soft">Common practice without a source; change it to your bench.</p>
      <div class="lines">
        <NumberBlank
          label="Of the spread of a yield, from bench to bench, %; the rest from run to run"
          least={0}
          most={100}
          value={settings.benchShare * 100}
          onValue={percent => change({ do: 'settings', patch: { benchShare: percent / 100 } })}
        />
        {fields.map(({ key, label, least, most, times }) => (
          <NumberBlank
            key={key}
            label={label}
            least={least}
            most={most}
            value={(settings.scale[key] ?? scaleLimits[key]) * times}
            onValue={written => change({ do: 'settings', patch: { scale: { ...settings.scale, [key]: written / times } } })}
          />
        ))}
      </div>
    </details>
  )
}
