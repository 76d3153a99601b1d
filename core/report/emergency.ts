import type { LabelledMaterial } from '../hazards/hazard-list.ts'

/**
 * First aid and fire in few words, by the precautionary statements that the label's codes call for; in the order in which they are read. The
 * statements are those of the UN GHS; the short wording is ours.
 */
const short: readonly (readonly [code: RegExp, words: string])[] = [
  [/^P305\+P35[14]/, 'Eyes: rinse for minutes, lenses out, go on rinsing.'],
  [/^P303\+P361/, 'Skin: clothes off at once, rinse.'],
  [/^P302\+P352/, 'Skin: wash with plenty of water.'],
  [/^P302\+P334|^P335/, 'Skin: brush off, then cool water.'],
  [/^P336/, 'Frost: thaw with lukewarm water, never rub.'],
  [/^P306/, 'Clothing: rinse before taking it off.'],
  [/^P304\+P340/, 'Breathed in: fresh air, at rest.'],
  [/^P342/, 'Breathing trouble: emergency help.'],
  [/^P301\+P330|^P331/, 'Swallowed: rinse mouth, do not make vomit.'],
  [/^P301\+P31[06]/, 'Swallowed: emergency medical help at once.'],
  [/^P301\+P31[27]/, 'Swallowed: get medical help.'],
  [/^P330$/, 'Rinse mouth.'],
  [/^P31[016]$|^P308\+P316/, 'Emergency medical help at once.'],
  [/^P308\+P31[38]|^P318/, 'Exposed or worried: medical advice.'],
  [/^P370\+P380|^P371/, 'Fire: leave the room.'],
  [/^P37[0-8]/, 'Fire: by the data sheet’s means; else out, and call the fire service.'],
  [/^P3(3[237]\+P31[37]|17$|19$)/, 'Irritation that stays, or feeling unwell: get medical help.'],
  [/^P36[1-4]/, 'Wash clothing before wearing it again.'],
  [/^P391|^P390/, 'Spilt: collect it.'],
]

/** What to do when it has happened; empty where the label says nothing, which is then a blank for the reader. */
export function emergencyOf(precautions: LabelledMaterial['precautions']): string {
  const codes = precautions.map(({ code }) => code).filter(code => code.startsWith('P3'))
  return short.flatMap(([pattern, words]) => (codes.some(code => pattern.test(code)) ? [words] : [])).join(' ')
}
