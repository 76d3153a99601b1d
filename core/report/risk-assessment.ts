import type { LabelledMaterial } from '../hazards/hazard-list.ts'
import { type Library, materialOf } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { amountWords } from './amounts.ts'
import { emergencyOf } from './emergency.ts'
import { gasText, severityText, sharedMeetings } from './hazard-sheet.ts'
import { nameIn } from './names.ts'
import { byNumberThenName } from './order.ts'
import { sharedNotes } from './shared-notes.ts'
import { capital, counted, listed, lowerFirst, sentence, stepsText } from './words.ts'

/** One row of the assessment: proposals for the reader to correct. Empty text = a blank to write in. */
export interface RiskRow {
  /** What stands in bold before the hazard. */
  readonly subject: string
  readonly hazard: string
  readonly who: string
  readonly control: string
  readonly emergency: string
  /** What a step brings by itself; the rest are materials. */
  readonly ofStep?: boolean
  /** Materials it speaks for. */
  readonly materials: readonly string[]
}

/**
 * One assessment for the whole plan: hazard, who and how, control, emergency, for every material made and used at plan scale, then for gas,
 * what must not meet, and what the steps themselves bring. What risk remains is for the reader to say: that column is left blank. Materials with the same label and the same way in stand in one row.
 *
 * Controls come from the hazard codes, emergencies from the precautionary statements of the label; what neither says stays a blank.
 */
export function riskRows(library: Library, evaluation: Evaluation): readonly RiskRow[] {
  const { hazards } = evaluation
  const of = (wanted: LabelledMaterial['class']): readonly LabelledMaterial[] => hazards.materials.filter(one => one.class === wanted)
  const unknown = of('unknown')
  const none = of('none')
  return [
    ...(unknown.length === 0 ? [] : [unknownRow(library, unknown)]),
    ...grouped([...of('gravest'), ...of('danger'), ...of('warning')]).map(group => labelRow(library, group)),
    ...gasRows(library, evaluation),
    ...meetingRows(library, evaluation),
    ...stepRows(library, evaluation),
    ...(none.length === 0 ? [] : [noneRow(library, none)]),
  ]
}

function unknownRow(library: Library, materials: readonly LabelledMaterial[]): RiskRow {
  return {
    subject: `${capital(counted(materials.length, 'material'))} without hazard data`,
    hazard: `${listed(materials.map(one => withAmount(library, one)))}: unknown is not safe`,
    who: `Whoever weighs, filters or washes up, ${stepsText(stepsOf(materials))}`,
    control: `Read the safety data sheets first; until then treat as toxic. ${controls(materials[0]!)}`,
    emergency: '',
    materials: materials.map(one => one.material),
  }
}

function labelRow(library: Library, group: readonly LabelledMaterial[]): RiskRow {
  const first = group[0]!
  return {
    subject: capital(listed(group.map(one => withAmount(library, one)))),
    hazard: `${first.codes.map(({ code, statement }) => `${lowerFirst(statement)} (${code})`).join('; ')}${first.known === 'remembered' ? '; remembered, no source seen' : ''}`,
    who: `${ways(library, group)}, ${stepsText(stepsOf(group))}`,
    control: controls(first),
    emergency: emergencyOf(first.precautions),
    materials: group.map(one => one.material),
  }
}

const noneRow = (library: Library, materials: readonly LabelledMaterial[]): RiskRow => ({
  subject: capital(listed(materials.map(one => nameIn(library)(one.material)))),
  hazard: 'no hazard class assigned, with a source',
  who: `Everybody at the bench, ${stepsText(stepsOf(materials))}`,
  control: 'Safety glasses and coat, as for all bench work.',
  emergency: '',
  materials: materials.map(one => one.material),
})

function gasRows(library: Library, { hazards, steps }: Evaluation): readonly RiskRow[] {
  return hazards.gas.map(gas => ({
    subject: `${capital(nameIn(library)(gas.compound))} given off`,
    hazard: gasText(library, gas, steps.find(step => step.number === gas.step)?.batches ?? 1),
    who: 'Pressure in a closed vessel; breathing where it is not led off',
    control: 'Open condenser or bubbler, in the hood; no stopper. Worst case at full conversion.',
    emergency: 'Take the heat away, sash down, leave the hood running.',
    materials: [gas.compound],
  }))
}

/** What the steps themselves bring; a danger that several share is told once, with all of them. */
function stepRows(library: Library, { hazards, steps }: Evaluation): readonly RiskRow[] {
  return sharedNotes(hazards.steps).map(({ steps: numbers, notes }) => {
    const only = numbers.length === 1 ? steps.find(other => other.number === numbers[0]) : undefined
    const batches = only === undefined || only.batches < 2 ? '' : `, ${counted(only.batches, 'batch', 'batches')}`
    const makes = only === undefined ? '' : `, ${nameIn(library)(only.makes)}`
    const alone = notes.some(note => /alone/i.test(note)) ? ', and whoever passes while it runs alone' : ''
    return {
      subject: `${capital(stepsText(numbers))}${makes}${batches}`,
      hazard: notes.join(' '),
      who: `Whoever runs ${numbers.length > 1 ? 'these steps' : 'the step'}${alone}`,
      control: '',
      emergency: '',
      ofStep: true,
      materials: [],
    }
  })
}

/** What must not meet, or only with care, in the steps: the rule says what to do. Mere notes stand in the hazard list. */
function meetingRows(library: Library, { hazards }: Evaluation): readonly RiskRow[] {
  return sharedMeetings(hazards.meetings.filter(one => one.where === 'step' && one.severity !== 'note')).map(({ meeting, places }) => {
    const told = meeting.conditions.filter(condition => !condition.endsWith('?'))
    const names = listed(meeting.materials.map(nameIn(library)))
    return {
      subject: `${severityText(meeting)}: ${lowerFirst(meeting.title)}`,
      hazard: sentence(meeting.consequence),
      who: capital([names, places].filter(part => part !== '').join(', ')),
      control: meeting.intended && told.length > 0 ? `Only so: ${told.map(sentence).join(' ')}` : sentence(meeting.do),
      emergency: '',
      materials: [],
    }
  })
}

/** Same statements, same controls, same state: one row. */
function grouped(materials: readonly LabelledMaterial[]): readonly (readonly LabelledMaterial[])[] {
  const groups = new Map<string, LabelledMaterial[]>()
  for (const one of materials) {
    const key = [one.known, one.as.includes('gas'), ...one.codes.map(({ code }) => code)].join(' ')
    const group = groups.get(key)
    if (group) group.push(one)
    else groups.set(key, [one])
  }
  return [...groups.values()]
}

const stepsOf = (materials: readonly LabelledMaterial[]): readonly string[] =>
  [...new Set(materials.flatMap(one => one.steps))].sort(byNumberThenName)

function withAmount(library: Library, one: LabelledMaterial): string {
  const { name, form } = materialOf(library, one.material)
  const amount = amountWords(one.massG, one.volumeMl, form === 'liquid' || form === 'solution')
  return amount === null ? name : `${name} (${amount})`
}

/** How a material gets at somebody, by its form. Common practice, no source. */
function ways(library: Library, group: readonly LabelledMaterial[]): string {
  const forms = new Set(group.map(one => (one.as.includes('gas') ? 'gas' : materialOf(library, one.material).form)))
  const found = [
    ...(forms.has('gas') ? ['breathing it where it comes off'] : []),
    ...(forms.has('solid') ? ['dust at weighing and filtering'] : []),
    ...(forms.has('liquid') || forms.has('solution') ? ['splash and vapour at pouring, heating and filtering'] : []),
  ]
  return capital(listed(found))
}

const controls = ({ protection }: LabelledMaterial): string => protection.map(one => one.do).join(' ')
