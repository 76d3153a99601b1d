import { useState } from 'preact/hooks'
import type { HazardList, LabelledMaterial, Meeting, RegulatedHit } from '../../core/hazards/hazard-list.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { massText, noBreakSpace, numberText, volumeText } from '../../core/quantity/print.ts'
import { peroxideText, quenchText, roomAssumption, roomText, roomWarnings, wasteByDay } from '../../core/report/air-and-age.ts'
import { hurtAnswer } from '../../core/report/answers.ts'
import { listsHold } from '../../core/report/cautions.ts'
import { severityText, sharedMeetings, togetherText } from '../../core/report/hazard-sheet.ts'
import { sharedNotes } from '../../core/report/shared-notes.ts'
import { capital, counted, listed, sentence, stepsText } from '../../core/report/words.ts'
import { Pictogram } from '../parts/pictogram.tsx'
import { Clauses, Name, Unknown } from '../parts/words.tsx'
import { nameOf } from '../state/names.ts'
import { facts } from '../state/questions.ts'
import { standing } from '../state/reckoner.ts'
import { Question } from './question.tsx'
import { Stop } from './refusal.tsx'
import { hazardText } from './way-answer.ts'

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
      <Barred hits={hazards.regulated} />
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
      <Meetings of={hazards.meetings} />
      <StepNotes hazards={hazards} />
      <Gas hazards={hazards} numbers={numbers} />
      <AirAndAge hazards={hazards} />
      <Waste hazards={hazards} />
      <Regulated hits={hazards.regulated} notScreened={hazards.notScreened} />
      <p class="s soft">
        Quantities are estimates. Read the safety data sheets; local codes and licensed practice decide; do not work alone.
      </p>
    </>
  )
}

/** What this buyer may not have stands before everything else. */
function Barred({ hits }: { readonly hits: readonly RegulatedHit[] }) {
  const barred = [...new Map(hits.filter(hit => hit.barred).map(hit => [hit.material, hit])).values()]
  if (barred.length === 0) return null
  return (
    <ul>
      {barred.map(hit => (
        <li class="law" key={hit.material}>
          <div>
            <b>
              The public cannot have <Name text={nameOf(hit.material)} />.
            </b>{' '}
            {sentence(hit.reason)} Question 3 names the next way that they can have.
          </div>
        </li>
      ))}
    </ul>
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
          {material.storedDays === null ? '' : `, kept ${counted(material.storedDays, 'day')}`}
          {amount === '' && where === '' ? '' : '.'} {material.exposureLimit === null ? '' : `Exposure limit ${material.exposureLimit}.`}{' '}
          {material.note ?? ''}
        </p>
      </div>
    </li>
  )
}

/** What may not meet. Inside the steps it stands open; cabinet, waste and mere notes are one press away, and all of it is in print. */
function Meetings({ of }: { readonly of: readonly Meeting[] }) {
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
      <MeetingList of={serious} />
      {folded.map(([where, meetings]) =>
        meetings.length === 0 ? null : (
          <details class="more-of" key={where}>
            <summary>
              {capital(counted(sharedMeetings(meetings).length, 'more', 'more'))} {where}
            </summary>
            <MeetingList of={meetings} />
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

function MeetingList({ of }: { readonly of: readonly Meeting[] }) {
  if (of.length === 0) return null
  return (
    <ul class="plain-list">
      {sharedMeetings(of).map(({ meeting, places }, at) => (
        <li key={`${meeting.title}${at}`}>
          <b>
            {severityText(meeting)}: {meeting.title}.
          </b>{' '}
          {meeting.where === 'step' ? `${capital(places)}: ` : ''}
          {listed(meeting.materials.map(nameOf))}. {sentence(meeting.consequence)} {sentence(meeting.do)}
          {togetherText(meeting)} <span class="soft">{conditionsText(meeting)}</span>
        </li>
      ))}
    </ul>
  )
}

/** What each step brings by itself; what several share is told once. */
function StepNotes({ hazards }: { readonly hazards: HazardList }) {
  const shared = sharedNotes(hazards.steps)
  if (shared.length === 0) return null
  return (
    <div>
      <h3>Dangers of the steps</h3>
      <ul class="plain-list">
        {shared.map(({ steps, notes }) => (
          <li key={steps.join(' ')}>
            <b>{capital(stepsText(steps))}.</b> {steps.length === 1 && <StepWorst hazards={hazards} step={steps[0]!} />} {notes.join(' ')}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** The hazard of one step, counted as that of a route is. */
function StepWorst({ hazards, step }: { readonly hazards: HazardList; readonly step: string }) {
  const here = hazards.steps.find(one => one.step === step)
  return here === undefined ? null : <span class="soft">{capital(hazardText(here.counts))}.</span>
}

/** Peroxide formers with their test dates, and what the room could take of a volatile liquid. */
function AirAndAge({ hazards }: { readonly hazards: HazardList }) {
  const { library } = facts.value
  const { peroxides } = hazards
  const room = roomWarnings(hazards)
  return (
    <>
      {peroxides.length > 0 && (
        <div>
          <h3>Peroxide formers</h3>
          <ul class="plain-list">
            {peroxides.map(line => (
              <li key={line.material}>{peroxideText(library, line)}</li>
            ))}
          </ul>
        </div>
      )}
      {room.length > 0 && (
        <div>
          <h3>Vapour and the room</h3>
          <ul class="plain-list">
            {room.map(line => (
              <li key={line.material}>{roomText(library, line)}</li>
            ))}
          </ul>
          <p class="s soft">{roomAssumption}</p>
        </div>
      )}
    </>
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
                  {wasteByDay(waste) === '' ? '' : `. By day: ${wasteByDay(waste)}`}
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
      {hazards.quench.length > 0 && (
        <ul class="plain-list">
          {hazards.quench.map(line => (
            <li key={line.step + line.destroys}>{quenchText(facts.value.library, line)}</li>
          ))}
        </ul>
      )}
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
        {listsHold}
        {notScreened.length > 0 && ` Not screened, having neither CAS number nor structure: ${listed(notScreened.map(nameOf))}.`}
      </p>
    </div>
  )
}
