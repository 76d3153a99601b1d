import type { HazardList, LabelledMaterial } from '../hazards/hazard-list.ts'
import { capital, counted, listed } from './words.ts'

/** Classes whose amounts are never shown without a word of caution; a mere warning stands on the label. */
const dangerous: ReadonlySet<LabelledMaterial['class']> = new Set(['gravest', 'unknown', 'danger'])

/** What a statement comes to, in few words, the worst first. The statements are those of the UN GHS; the short wording is ours. */
const short: readonly (readonly [code: RegExp, words: string])[] = [
  [/^H330/, 'fatal to breathe'],
  [/^H310/, 'fatal on the skin'],
  [/^H300/, 'fatal to swallow'],
  [/^H(340|350)/, 'may cause cancer or genetic damage'],
  [/^H360/, 'harms fertility or the unborn'],
  [/^H2(0[0-5]|4[01])/, 'may explode'],
  [/^H331/, 'toxic to breathe'],
  [/^H311/, 'toxic on the skin'],
  [/^H301/, 'toxic to swallow'],
  [/^H314/, 'burns skin and eyes'],
  [/^H318/, 'damages eyes'],
  [/^H(370|372)/, 'damages organs'],
  [/^H334/, 'allergy of the airways'],
  [/^H304/, 'deadly in the lungs'],
  [/^H250/, 'burns in air'],
  [/^H26[01]/, 'fire with water'],
  [/^H27[0-2]/, 'feeds fire'],
  [/^H22[0-8]|^H242|^H25[12]/, 'catches fire'],
]
/** More would be a label, and that stands on the same page. */
const atMost = 3

/**
 * The word of caution beside an amount: what the gravest statements of the label come to, or that nobody knows. Null where the label asks
 * for no Danger.
 */
export function chargeCaution({ materials }: HazardList, material: string): string | null {
  const label = materials.find(one => one.material === material)
  if (label === undefined || label.class === 'unknown') return 'no hazard data: read its data sheet'
  if (!dangerous.has(label.class)) return null
  const codes = label.codes.flatMap(({ code }) => code.split('+'))
  const words = short.flatMap(([pattern, text]) => (codes.some(code => pattern.test(code)) ? [text] : [])).slice(0, atMost)
  return words.length === 0 ? 'Danger' : `Danger: ${words.join(', ')}`
}

/** Said once above the amounts of a step that holds anything dangerous or unknown, or whose own dangers ask for it. */
export function stepCaution(hazards: HazardList, step: string): string | null {
  const here = hazards.steps.find(one => one.step === step)
  if (here === undefined) return null
  const { gravest, unknown, danger } = here.counts
  const never = hazards.meetings.some(one => one.where === 'step' && one.place === step && one.severity === 'never' && !one.general)
  if (gravest + unknown + danger === 0 && !never) return null
  const parts = [
    ...(gravest > 0 ? [`${counted(gravest, 'material')} of the gravest class`] : []),
    ...(danger > 0 ? [`${counted(danger, 'material')} labelled Danger`] : []),
    ...(unknown > 0 ? [`${counted(unknown, 'material')} without hazard data, which is not safe`] : []),
  ]
  const holds = parts.length === 0 ? 'Things meet here that elsewhere must not' : `Holds ${listed(parts)}`
  return capital(`${holds}. Amounts are estimates: data sheets, local codes and licensed practice go before them.`)
}
