import type { Settings } from '../../core/plan/settings.ts'
import { change, plan } from '../state/store.ts'
import { DaysOffRow } from './days-off.tsx'
import { VesselRow } from './vessels.tsx'
import { WindowRow } from './windows.tsx'

const set = (patch: Partial<Settings>): void => change({ do: 'settings', patch })

/** A thing that is owned, not owned, or not spoken of. */
function Owned({
  label,
  value,
  onValue,
}: {
  readonly label: string
  readonly value: boolean | null
  readonly onValue: (value: boolean | null) => void
}) {
  return (
    <fieldset class="line">
      <legend>{label}</legend>
      {(
        [
          [true, 'yes'],
          [false, 'no'],
          [null, 'not stated'],
        ] as const
      ).map(([option, word]) => (
        <label class="dot-choice" key={word}>
          <input type="radio" name={label} checked={value === option} onChange={() => onValue(option)} />
          {word}
        </label>
      ))}
    </fieldset>
  )
}

function Choice<V extends string>({
  label,
  value,
  options,
  onValue,
}: {
  readonly label: string
  readonly value: V
  readonly options: readonly (readonly [V, string])[]
  readonly onValue: (value: V) => void
}) {
  return (
    <label class="line">
      <span>{label}</span>
      <select class="blank" value={value} onChange={event => onValue(event.currentTarget.value as V)}>
        {options.map(([option, word]) => (
          <option value={option} key={option}>
            {word}
          </option>
        ))}
      </select>
    </label>
  )
}

/** What is owned and how one works: it decides batches, days and what the law asks. */
export function Bench() {
  const { settings } = plan.value
  return (
    <details class="more-of">
      <summary>The bench: what I own and when I work</summary>
      <div class="lines">
        <label class="line">
          <span>Bench</span>
          <input
            class="blank"
            value={settings.bench}
            placeholder="its name"
            onChange={event => set({ bench: event.currentTarget.value.trim() })}
          />
        </label>
        <Owned label="Hood" value={settings.hood} onValue={hood => set({ hood })} />
        <Owned label="Inert gas" value={settings.inertGas} onValue={inertGas => set({ inertGas })} />
        <VesselRow vessels={settings.vessels} onVessels={vessels => set({ vessels })} />
        <label class="line">
          <span>Heat sources</span>
          <input
            class="blank"
            type="number"
            min={0}
            max={20}
            value={settings.heatSources ?? ''}
            placeholder="not stated"
            onChange={event =>
              set({ heatSources: event.currentTarget.value === '' ? null : Math.max(0, Math.round(Number(event.currentTarget.value))) })
            }
          />
        </label>
        <Choice
          label="Whose hand"
          value={settings.hand}
          options={[
            ['practised', 'practised: published yields'],
            ['first-time', 'first time: what people report'],
          ]}
          onValue={hand => set({ hand })}
        />
        <Choice
          label="Where"
          value={settings.region}
          options={[
            ['UN', 'elsewhere: the UN lists; check locally'],
            ['EU', 'EU'],
            ['UK', 'UK'],
            ['US', 'US'],
          ]}
          onValue={region => set({ region })}
        />
        <Choice
          label="Who buys"
          value={settings.buyer}
          options={[
            ['public', 'the public'],
            ['professional', 'a school or professional'],
          ]}
          onValue={buyer => set({ buyer })}
        />
        <label class="line">
          <span>First day</span>
          <input
            class="blank"
            type="date"
            value={settings.startDate ?? ''}
            onChange={event => set({ startDate: event.currentTarget.value || null })}
          />
        </label>
        <WindowRow windows={settings.windows} onWindows={windows => set({ windows })} />
        <DaysOffRow daysOff={settings.daysOff} onDaysOff={daysOff => set({ daysOff })} />
        <label class="line">
          <span>Days for delivery</span>
          <input
            class="blank"
            type="number"
            min={0}
            max={90}
            value={settings.deliveryDays}
            onChange={event => set({ deliveryDays: Math.max(0, Math.round(Number(event.currentTarget.value))) })}
          />
        </label>
      </div>
    </details>
  )
}
