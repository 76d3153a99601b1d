/** The foot of every page and of every text: what no plan may be read without. */
export const cautions = [
  'Quantities are estimates.',
  'Read the safety data sheets.',
  'Local codes and licensed practice decide.',
  'Do not work alone.',
] as const

/** One line, as it stands at the foot of a page. */
export const cautionLine = `Caution. ${cautions.join(' ')}`

/** Left for the reader to fill in: at the foot of a sheet of one step, and of every other page. */
export const whoMayDo = { step: 'Who may do this step:', plan: 'Who may do this:', with: 'not alone, with:' } as const

/** Stands beside every list of regulated substances, with hits and without. */
export const listsHold =
  'Screened against the bundled lists. The schedules of controlled drugs are not in them; the law’s text decides. Outside the EU, the UK and the US check locally.'

/** Nobody has data for it: never read as harmless. */
export const noHazardData = 'No hazard data: read its safety data sheet.'

/** The block in whole sentences: what every print says, for a text or a program that has no pages. */
export const cautionSentences = [
  'Quantities are estimates: weigh, measure and think before each step.',
  'Read the safety data sheet of every material before opening its bottle; unknown is not safe.',
  'Local codes and licensed practice decide, not this plan.',
  'Do not work alone.',
  'Who may do these steps is for the person responsible for the bench to say.',
  listsHold,
] as const

/** The same with its heading and a line to fill in. */
export const cautionBlock: readonly string[] = [
  'CAUTION',
  ...cautionSentences.map(told => (told.startsWith('Who may do') ? `${told.slice(0, -1)}: _______________________` : told)),
]
