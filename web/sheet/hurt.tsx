import { useState } from 'preact/hooks'
import type { HazardList, RegulatedHit } from '../../core/hazards/hazard-list.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { hurtAnswer } from '../../core/report/answers.ts'
import { sharedNotes } from '../../core/report/shared-notes.ts'
import { capital, counted, sentence, stepsText } from '../../core/report/words.ts'
import { Clauses, Name } from '../parts/words.tsx'
import { nameOf } from '../state/names.ts'
import { standing } from '../state/reckoner.ts'
import { LabelRow, UnknownRow } from './hurt-labels.tsx'
import { Regulated } from './hurt-law.tsx'
import { Meetings } from './hurt-meetings.tsx'
import { AirAndAge, Gas, Waste } from './hurt-waste.tsx'
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
      <Waste hazards={hazards} numbers={numbers} />
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
