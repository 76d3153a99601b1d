import { useState } from 'preact/hooks'
import type { HazardList, LabelledMaterial, Meeting, RegulatedHit } from '../../core/hazards/hazard-list.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { massText, noBreakSpace, numberText, volumeText } from '../../core/quantity/print.ts'
import { hurtAnswer } from '../../core/report/answers.ts'
import { capital, counted, listed, sentence } from '../../core/report/words.ts'
import { Pictogram } from '../parts/pictogram.tsx'
import { Clauses, Name, Unknown } from '../parts/words.tsx'
import { nameOf } from '../state/names.ts'
import { standing } from '../state/reckoner.ts'
import { Question } from './question.tsx'
import { Stop } from './refusal.tsx'

/** Question 6: labels, meetings, gas, waste and the law, for all goals together. */
export function Hurt() {
  const { evaluation, refused, fresh } = standing.value
  const answer =
    refused?.ok === 'stopped' ? (
      'Planning stopped: a regulated substance'
    ) : evaluation === null ? (
      'Nothing yet'
    ) : (
      <Clauses of={hurtAnswer(evaluation.hazards, nameOf).map((clause, at) => <Name text={clause} key={at} />)} />
    )
  return (
    <Question no={6} ask="What can hurt?" empty={evaluation === null && refused === null} stale={!fresh} answer={answer}>
      {() =>
        refused?.ok === 'stopped' ? (
          <Stop hits={refused.stopped} />
        ) : evaluation === null ? (
          <p>What can hurt follows from what is used and made: choose a goal first.</p>
        ) : (
          <HurtBody evaluation={evaluation} />
        )
      }
    </Question>
  )
}

/** So many labels are read at a glance; the rest is one press away, and all of it is in print. */
const atFirst = 5

function HurtBody({ evaluation }: { readonly evaluation: Evaluation }) {
  const { hazards } = evaluation
  const [all, setAll] = useState(false)
  const unknown = hazards.materials.filter(material => material.class === 'unknown')
  const known = hazards.materials.filter(material => material.class !== 'unknown')
  const shown = all ? known : known.slice(0, atFirst)
  const numbers = new Map(evaluation.steps.map(step => [step.transformation, step.number]))
  return (
    <>
      <p class="key" aria-hidden="true">
        <span class="seen">seen in a source</span>
        <span class="remembered">remembered</span>
        <span class="unknown">unknown</span>
      </p>
      <ul class="hazards">
        {unknown.length > 0 && <UnknownRow materials={unknown} />}
        {shown.map(material => (
          <LabelRow material={material} numbers={numbers} key={material.material} />
        ))}
      </ul>
      {known.length > shown.length && (
        <p class="more">
          <button type="button" class="fig" onClick={() => setAll(true)}>
            {capital(counted(known.length - shown.length, 'more material', 'more materials'))}
          </button>
        </p>
      )}
      <Meetings of={hazards.meetings} numbers={numbers} />
      <StepNotes hazards={hazards} numbers={numbers} />
      <Gas hazards={hazards} numbers={numbers} />
      <Waste hazards={hazards} />
      <Regulated hits={hazards.regulated} notScreened={hazards.notScreened} />
      <p class="s soft">
        Quantities are estimates. Read the safety data sheets; local codes and licensed practice decide; do not work alone.
      </p>
    </>
  )
}

function UnknownRow({ materials }: { readonly materials: readonly LabelledMaterial[] }) {
  return (
    <li class="hz unknown">
      <span class="q-mark" aria-hidden="true">
        ?
      </span>
      <div>
        <b>
          {materials.map((material, at) => (
            <span key={material.material}>
              {at > 0 ? ', ' : ''}
              <Name text={nameOf(material.material)} />
            </span>
          ))}
        </b>
        <p>No hazard data: read its safety data sheet.</p>
        <p class="state">Unknown: {counted(materials.length, 'material')}. Unknown is not safe.</p>
      </div>
    </li>
  )
}

/** The gravest three; the rest behind a figure. */
const codesAtFirst = 3

function LabelRow({ material, numbers }: { readonly material: LabelledMaterial; readonly numbers: ReadonlyMap<string, string> }) {
  const [all, setAll] = useState(false)
  const codes = all ? material.codes : material.codes.slice(0, codesAtFirst)
  const amount = material.massG === null ? (material.volumeMl === null ? '' : volumeText(material.volumeMl)) : massText(material.massG)
  const steps = material.steps.map(step => numbers.get(step) ?? step)
  const where =
    steps.length === 0
      ? ''
      : ` ${material.as.includes('made') || material.as.includes('product') ? 'made or used in' : 'in'} step${steps.length > 1 ? 's' : ''} ${listed(steps)}`
  return (
    <li class={`hz ${material.known}`}>
      <span class="pics">
        {material.pictograms.map(code => (
          <Pictogram code={code} key={code} />
        ))}
      </span>
      <div>
        <div class="nm">
          <b>
            <Name text={nameOf(material.material)} />
          </b>
          {material.signalWord !== null && material.signalWord !== 'none' && (
            <span class={`sig ${material.signalWord === 'Danger' ? 'danger' : ''}`}>{material.signalWord}</span>
          )}
        </div>
        <ul class="codes">
          {codes.map(({ code, statement }) => (
            <li key={code}>
              <span>{code}</span>
              <span>{statement}</span>
            </li>
          ))}
        </ul>
        {material.codes.length === 0 && <p>No hazard class assigned.</p>}
        {material.codes.length > codes.length && (
          <button type="button" class="fig" onClick={() => setAll(true)}>
            {counted(material.codes.length - codes.length, 'more', 'more')}
            <span class="unseen"> statements of {nameOf(material.material)}</span>
          </button>
        )}
        <p class="state">
          {material.known === 'seen' ? `Seen: ${material.from ?? 'in a source'}.` : 'Remembered, no source seen.'} {amount}
          {where}
          {amount === '' && where === '' ? '' : '.'} {material.exposureLimit === null ? '' : `Exposure limit ${material.exposureLimit}.`}{' '}
          {material.note ?? ''}
        </p>
      </div>
    </li>
  )
}

const severityWord = { never: 'Never', care: 'With care', note: 'Note' } as const

/** What may not meet. Inside the steps it stands open; cabinet, waste and mere notes are one press away, and all of it is in print. */
function Meetings({ of, numbers }: { readonly of: readonly Meeting[]; readonly numbers: ReadonlyMap<string, string> }) {
  if (of.length === 0) return null
  const inSteps = of.filter(meeting => meeting.where === 'step')
  const serious = inSteps.filter(meeting => meeting.severity !== 'note')
  const folded = [
    ['noted in the steps', inSteps.filter(meeting => meeting.severity === 'note')],
    ['in the cabinet', of.filter(meeting => meeting.where === 'storage')],
    ['in the waste', of.filter(meeting => meeting.where === 'waste')],
  ] as const
  return (
    <div>
      <h3>May not meet</h3>
      <MeetingList of={serious} numbers={numbers} />
      {folded.map(([where, meetings]) =>
        meetings.length === 0 ? null : (
          <details class="more-of" key={where}>
            <summary>
              {capital(counted(meetingGroups(meetings).length, 'more', 'more'))} {where}
            </summary>
            <MeetingList of={meetings} numbers={numbers} />
          </details>
        ),
      )}
    </div>
  )
}

/** What a meeting is meant under, and what the reader has to ask; a condition is never taken as met. */
function conditionsText({ conditions }: Meeting): string {
  const asked = conditions.filter(condition => condition.endsWith('?'))
  const told = conditions.filter(condition => !condition.endsWith('?'))
  return [told.length > 0 ? sentence(`Only so: ${told.join('; ')}`) : '', ...asked].filter(text => text !== '').join(' ')
}

/** The same warning in several places is told once, with the places. */
function meetingGroups(meetings: readonly Meeting[]): readonly (readonly [Meeting, ...Meeting[]])[] {
  const groups = new Map<string, [Meeting, ...Meeting[]]>()
  for (const meeting of meetings) {
    const key = `${meeting.severity} ${meeting.intended} ${meeting.title} ${meeting.conditions.join()}`
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [meeting])
    else group.push(meeting)
  }
  return [...groups.values()]
}

function MeetingList({ of, numbers }: { readonly of: readonly Meeting[]; readonly numbers: ReadonlyMap<string, string> }) {
  if (of.length === 0) return null
  return (
    <ul class="plain-list">
      {meetingGroups(of).map(group => {
        const [first] = group
        const places = [...new Set(group.map(({ place }) => numbers.get(place) ?? place))]
        const materials = [...new Set(group.flatMap(one => one.materials))]
        return (
          <li key={`${first.title} ${first.intended} ${first.conditions.join()}`}>
            <b>
              {first.intended ? 'Meant to meet' : severityWord[first.severity]}: {first.title}.
            </b>{' '}
            {first.where === 'step' ? `Step${places.length > 1 ? 's' : ''} ${listed(places)}: ` : ''}
            {listed(materials.map(nameOf))}. {sentence(first.consequence)} {sentence(first.do)}{' '}
            <span class="soft">{conditionsText(first)}</span>
          </li>
        )
      })}
    </ul>
  )
}

function StepNotes({ hazards, numbers }: { readonly hazards: HazardList; readonly numbers: ReadonlyMap<string, string> }) {
  const steps = hazards.steps.filter(step => step.notes.length > 0)
  if (steps.length === 0) return null
  return (
    <div>
      <h3>Dangers of the steps</h3>
      <ul class="plain-list">
        {steps.map(step => (
          <li key={step.step}>
            <b>Step {numbers.get(step.step) ?? step.step}.</b> {step.notes.map(sentence).join(' ')}
          </li>
        ))}
      </ul>
    </div>
  )
}

function Gas({ hazards, numbers }: { readonly hazards: HazardList; readonly numbers: ReadonlyMap<string, string> }) {
  if (hazards.gas.length === 0) return null
  return (
    <div>
      <h3>Gas</h3>
      <ul class="plain-list">
        {hazards.gas.map(gas => (
          <li key={`${gas.step} ${gas.compound}`}>
            {numberText(gas.litresPerBatch, 2, 1)}
            {noBreakSpace}L {nameOf(gas.compound)} a batch in step {numbers.get(gas.step) ?? gas.step}
            {gas.freeVesselMl === null ? '' : `, over ${volumeText(gas.freeVesselMl)} of free vessel`}: never in a closed vessel.{' '}
            <span class="soft s">Worst case, full conversion, 25 °C{gas.from === 'equation' ? '; from the equation' : ''}.</span>
          </li>
        ))}
      </ul>
    </div>
  )
}

function Waste({ hazards }: { readonly hazards: HazardList }) {
  if (hazards.waste.length === 0) return null
  return (
    <div>
      <h3>Waste</h3>
      <table class="t">
        <thead>
          <tr>
            <th>stream</th>
            <th class="n">amount</th>
          </tr>
        </thead>
        <tbody>
          {hazards.waste.map(waste => (
            <tr key={waste.stream}>
              <th scope="row" class="plain">
                {capital(waste.name)}
                <span class="s soft block">
                  {waste.container}
                  {waste.neverWith.length > 0 ? `; never with ${listed(waste.neverWith)}` : ''}
                </span>
              </th>
              <td class="n">
                {waste.massG !== null ? massText(waste.massG) : waste.volumeMl !== null ? volumeText(waste.volumeMl) : <Unknown />}
                {waste.open ? ' +' : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

const actionWord = {
  stop: 'Stop',
  licence: 'Licence or declaration needed',
  reporting: 'Suspicious transactions are reported',
  note: 'Named in a list',
} as const

function Regulated({ hits, notScreened }: { readonly hits: readonly RegulatedHit[]; readonly notScreened: readonly string[] }) {
  return (
    <div>
      <h3>Regulated</h3>
      {hits.length > 0 && (
        <ul>
          {hits.map(hit => (
            <li class="law" key={`${hit.material} ${hit.list} ${hit.category}`}>
              <div>
                <b>
                  <Name text={capital(nameOf(hit.material))} />.
                </b>{' '}
                {actionWord[hit.action]}: {hit.list}
                {hit.category === '' ? '' : `, ${hit.category}`}. {sentence(hit.reason)}{' '}
                {hit.barred && <b>A private person may not have it.</b>} <span class="s soft">{sentence(hit.legal)}</span>
              </div>
            </li>
          ))}
        </ul>
      )}
      <p class="s soft">
        {hits.length === 0 ? 'No row of the bundled lists names anything here. ' : ''}
        Screened against the bundled lists. The schedules of controlled drugs are not in them; the law’s text decides.
        {notScreened.length > 0 && ` Not screened, having neither CAS number nor structure: ${listed(notScreened.map(nameOf))}.`}
      </p>
    </div>
  )
}
