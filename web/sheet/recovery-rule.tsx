import { minorDigitsOf } from '../../core/quantity/money.ts'
import { recoveryRuleOf } from '../../core/report/shopping-notes.ts'
import type { RecoveryRule } from '../../core/shopping/solvent-recovery.ts'
import { NumberBlank } from '../parts/number-blank.tsx'
import { change, plan } from '../state/store.ts'

interface Field {
  readonly key: keyof RecoveryRule
  readonly label: string
  readonly least: number
  readonly most: number
  /** What is shown for one of what the rule holds. */
  readonly times: number
}

/** The rule by which getting a solvent back is called worth it, each figure to be changed. */
export function RecoveryRuleFields() {
  const { settings, packs } = plan.value
  const rule = recoveryRuleOf(settings)
  const currency = packs?.currency ?? 'EUR'
  const fields: readonly Field[] = [
    { key: 'share', label: 'A distillation gives back, %', least: 0, most: 100, times: 100 },
    { key: 'mlPerHour', label: 'The still brings over in an hour, mL', least: 1, most: 1e6, times: 1 },
    { key: 'handsH', label: 'Setting up and cleaning, h', least: 0, most: 1000, times: 1 },
    { key: 'apartC', label: 'Other liquids boil apart by, °C', least: 0, most: 1000, times: 1 },
    { key: 'leastMl', label: 'Not worth it below, mL', least: 0, most: 1e7, times: 1 },
    { key: 'worthPerHourMinor', label: `An hour must save, ${currency}`, least: 0, most: 1e7, times: 10 ** -minorDigitsOf(currency) },
  ]
  return (
    <details class="more-of">
      <summary>When a solvent is worth distilling off</summary>
      <p class="s soft">Rules of thumb, common practice without a source; change them to your bench.</p>
      <div class="lines">
        {fields.map(({ key, label, least, most, times }) => (
          <NumberBlank
            key={key}
            label={label}
            least={least}
            most={most}
            value={rule[key] * times}
            onValue={written => {
              const value = key === 'worthPerHourMinor' ? Math.round(written / times) : written / times
              change({ do: 'settings', patch: { recovery: { ...settings.recovery, [key]: value } } })
            }}
          />
        ))}
      </div>
    </details>
  )
}
