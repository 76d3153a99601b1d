import type { HazardList, Known, LabelledMaterial, Meeting, WasteLine } from '../hazards/hazard-list.ts'
import { citations } from '../library/figure-trust.ts'
import { commonPractice, mixtureRules } from '../library/from-words.ts'
import { type Library, materialOf } from '../library/library.ts'
import type { Marked } from '../library/mark.ts'
import { trustOf } from '../library/trust.ts'
import { durationText, massText, numberText, volumeText } from '../quantity/print.ts'
import { amountWords } from './amounts.ts'
import { noHazardData } from './cautions.ts'
import { nameIn } from './names.ts'
import { capital, counted, inWords, listed, sentence, stepsText } from './words.ts'

/** "Hazards: four materials unknown, five labelled Danger, three only remembered". */
export function hazardTitle({ materials, unknown }: HazardList): string {
  const danger = materials.filter(one => one.class === 'gravest' || one.class === 'danger').length
  const remembered = materials.filter(one => one.known === 'remembered').length
  const parts = [
    ...(unknown.length === 0 ? [] : [`${counted(unknown.length, 'material')} unknown`]),
    ...(danger === 0 ? [] : [`${inWords(danger)} labelled Danger`]),
    ...(remembered === 0 ? [] : [`${inWords(remembered)} only remembered`]),
  ]
  return parts.length === 0 ? 'Hazards: nothing above a warning, all of it seen in a source' : `Hazards: ${listed(parts)}`
}

/** How a label is known, in words beside its rule: never by a mark alone. */
export const knownWords: Readonly<Record<Known, string>> = {
  seen: 'Seen',
  remembered: 'Remembered, no source seen',
  unknown: 'Unknown: not safe',
}

/**
 * How the label of one material is known. That suppliers assign nothing is common practice, and no source that was seen; what comes of the
 * labels of the parts is reckoned.
 */
export function knownText({ known, from }: Pick<LabelledMaterial, 'known' | 'from'>): string {
  if (known === 'seen' && isPractice(from)) return 'Remembered'
  return known === 'seen' && from !== null && mixtureRules.test(from) ? 'Reckoned' : knownWords[known]
}

const isPractice = (from: string | null): boolean => from !== null && commonPractice.test(from)

/** "Seen: EU Annex VI. 61.5 mL, steps 1 and 2a." */
export function stateText(library: Library, material: LabelledMaterial): string {
  const from = material.known === 'seen' && material.from !== null ? `: ${material.from}` : ''
  const { form } = materialOf(library, material.material)
  const amount = amountWords(material.massG, material.volumeMl, form === 'liquid' || form === 'solution')
  const made = material.as.some(as => as === 'made' || as === 'product')
  const evolved = material.as.includes('gas')
  const only = material.as.every(as => as === 'by-product')
  const what = [
    amount === null
      ? evolved
        ? 'given off'
        : 'amount open'
      : `${amount}${made ? ' made' : evolved ? ' given off' : only ? ' as a by-product' : material.as.includes('by-product') ? ', some of it a by-product' : ''}`,
    stepsText(material.steps),
  ]
  return `${knownText(material)}${from}. ${capital(what.filter(Boolean).join(', '))}.`
}

/** What a label says in one line, for a text or a bottle: "Danger. H314 Causes severe skin burns and eye damage." */
export function labelText(material: LabelledMaterial): string {
  if (material.known === 'unknown') return noHazardData
  if (material.codes.length === 0) return `No hazard class assigned, ${isPractice(material.from) ? 'by common practice' : 'with a source'}.`
  const word = material.signalWord === null || material.signalWord === 'none' ? '' : `${material.signalWord}. `
  return `${word}${material.codes.map(({ code, statement }) => `${code} ${statement}`).join('; ')}.`
}

const placeText = ({ where, place }: Meeting): string => (where === 'storage' ? 'cabinet' : `waste bottle “${place.replaceAll('-', ' ')}”`)

export const severityText = ({ intended, severity }: Meeting): string =>
  intended ? 'Meant to meet' : severity === 'never' ? 'Never' : severity === 'care' ? 'With care' : 'Note'

/** A meeting with its materials, what follows and what to do; its conditions stay questions. */
export function meetingText(library: Library, meeting: Meeting): string {
  const names = meeting.materials.length === 0 ? '' : `${capital(listed(meeting.materials.map(nameIn(library))))}. `
  return `${names}${sentence(meeting.consequence)} ${sentence(meeting.do)}${conditionsText(meeting)}`
}

/**
 * The same for the hood: who meets, and what to do; for what the step is built for, the condition under which alone it is so. What follows
 * otherwise stands in the hazard list.
 */
export function meetingBrief(library: Library, meeting: Meeting): string {
  const names = meeting.materials.length === 0 ? '' : `${capital(listed(meeting.materials.map(nameIn(library))))}. `
  const conditions = conditionsText(meeting)
  return `${names}${meeting.intended && conditions.includes('Only so') ? conditions.trim() : `${sentence(meeting.do)}${conditions}`}`
}

/** What the step is built for is told as its condition; all else is asked, never taken as met. */
export function conditionsText({ conditions, intended }: Meeting): string {
  const asked = conditions.filter(text => text.endsWith('?')).map(sentence)
  const told = conditions.filter(text => !text.endsWith('?')).map(sentence)
  const parts = [...(told.length === 0 ? [] : [`${intended ? 'Only so: ' : ''}${told.join(' ')}`]), ...asked]
  return parts.map(part => ` ${part}`).join('')
}

/** What stands together in one cabinet: storage groups with their materials, as far as the plan's meetings in storage name them. */
export function storageGroups(
  library: Library,
  { meetings }: HazardList,
): readonly { readonly group: string; readonly names: readonly string[] }[] {
  const ids = [...new Set(meetings.filter(one => one.where === 'storage').flatMap(one => one.materials))]
  const groups = new Map<string, string[]>()
  for (const id of ids) {
    const group = library.materials.get(id)?.storageGroup ?? 'no group known: keep apart'
    groups.set(group, [...(groups.get(group) ?? []), nameIn(library)(id)])
  }
  return [...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([group, names]) => ({ group, names: names.sort() }))
}

/** One meeting that several steps share, told once. */
export interface SharedMeeting {
  readonly meeting: Meeting
  readonly places: string
}

/**
 * Meetings told once each with the steps named. A general rule (no flame near solvents, no boiling chip into what is hot) is told once for
 * all the materials it is about, after what really meets there; it would otherwise bury that in every step.
 */
export function sharedMeetings(meetings: readonly Meeting[]): readonly SharedMeeting[] {
  const groups = new Map<string, [Meeting, ...Meeting[]]>()
  for (const one of meetings) {
    const who = one.general ? 'general' : [...one.materials].sort().join(' ')
    const key = [one.where, one.title, one.intended, one.severity, who, one.conditions.join(' ')].join('|')
    const group = groups.get(key)
    if (group) group.push(one)
    else groups.set(key, [one])
  }
  const shared = [...groups.values()].map((group): SharedMeeting => {
    const first = group[0]
    const places = first.where === 'step' ? stepsText([...new Set(group.map(one => one.place))]) : placeText(first)
    return { meeting: { ...first, materials: [...new Set(group.flatMap(one => one.materials))] }, places }
  })
  return [...shared.filter(({ meeting }) => !meeting.general), ...shared.filter(({ meeting }) => meeting.general)]
}

/** "for 12 days together": how long what should not stand together does; empty where the calendar does not tell. */
export function togetherText({ where, days }: Meeting): string {
  if (where !== 'storage' || days === undefined) return ''
  if (days === null) return ' For how long the calendar does not tell.'
  return days === 0 ? ' On this calendar they are never there together.' : ` For ${counted(days, 'day')} of this plan.`
}

/** Worst case of one gas, with the room that the vessel has for it. */
export function gasText(library: Library, gas: HazardList['gas'][number], batches: number): string {
  const each = batches > 1 ? ` a batch, ${numberText(gas.litres, 2, 1)}\u00a0L in all` : ''
  const free = gas.freeVesselMl === null ? '' : `, over ${volumeText(gas.freeVesselMl)} of free vessel`
  return `${numberText(gas.litresPerBatch, 2, 1)}\u00a0L of ${nameIn(library)(gas.compound)}${each}, step ${gas.step}${free}. Never in a closed vessel.`
}

/** Amount of a waste container, and whether more may come to it. */
export function wasteAmount({ massG, volumeMl, open }: WasteLine): string {
  const figures = [volumeMl === null ? null : volumeText(volumeMl), massG === null ? null : massText(massG)].filter(one => one !== null)
  if (figures.length === 0) return 'amount unknown'
  return `${open ? 'at least ' : ''}${figures.join(', ')}`
}

/** Where a waste comes from, and what has to be done before it goes into its container. */
export const wasteFrom = (library: Library, { from }: WasteLine): string =>
  from
    .map(part => {
      const first = (part.first ?? []).length === 0 ? '' : `. First: ${(part.first ?? []).join(' ').replace(/\.$/, '')}`
      return `step ${part.step}, ${part.what} (${listed(part.materials.map(nameIn(library)))})${first}`
    })
    .join('; ')

/** Standing or running alone, in words. */
export const aloneText = (what: string, hours: number, heated: boolean): string =>
  `${what}, ${durationText(hours)}, ${heated ? 'heated' : 'not heated'}`

/** How sure what a rule about a meeting says is, by its own sources. */
export function meetingMark({ sources }: Meeting): Marked {
  const trust = trustOf(sources)
  return { mark: trust, source: citations(sources, trust) }
}
