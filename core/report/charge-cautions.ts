import type { HazardList, LabelledMaterial } from '../hazards/hazard-list.ts'
import { capital, lowerFirst } from './words.ts'

/** Classes whose amounts are never shown without a word of caution; a mere warning stands on the label. */
const dangerous: ReadonlySet<LabelledMaterial['class']> = new Set(['gravest', 'unknown', 'danger'])

/**
 * The word of caution beside an amount: what the gravest statement of the label says, or that nobody knows. Null where the label asks for no
 * Danger.
 */
export function chargeCaution({ materials }: HazardList, material: string): string | null {
  const label = materials.find(one => one.material === material)
  if (label === undefined || label.class === 'unknown') return 'no hazard data: read its data sheet'
  if (!dangerous.has(label.class)) return null
  const first = label.codes[0]?.statement
  return first === undefined ? 'Danger' : `Danger: ${lowerFirst(first)}`
}

/** Said once above the amounts of a step that holds anything dangerous or unknown, or whose own dangers ask for it. */
export function stepCaution(hazards: HazardList, step: string): string | null {
  const here = hazards.steps.find(one => one.step === step)
  if (here === undefined) return null
  const { gravest, unknown, danger } = here.counts
  const never = hazards.meetings.some(one => one.where === 'step' && one.place === step && one.severity === 'never' && !one.general)
  if (gravest + unknown + danger === 0 && !never) return null
  const parts = [
    ...(gravest > 0 ? [`${gravest} of the gravest class`] : []),
    ...(danger > 0 ? [`${danger} of danger`] : []),
    ...(unknown > 0 ? [`${unknown} unknown, which is not safe`] : []),
  ]
  const holds = parts.length === 0 ? 'Things meet here that elsewhere must not' : `Holds ${parts.join(', ')}`
  return capital(`${holds}. Amounts are estimates: data sheets, local codes and licensed practice go before them.`)
}
