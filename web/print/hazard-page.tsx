import type { LabelledMaterial, Meeting } from '../../core/hazards/hazard-list.ts'
import { nothingBeneath } from '../../core/library/beneath.ts'
import { peroxideText, quenchText, roomAssumption, roomText, roomWarnings, wasteByDay } from '../../core/report/air-and-age.ts'
import { noHazardData } from '../../core/report/cautions.ts'
import {
  gasText,
  hazardTitle,
  meetingMark,
  meetingText,
  severityText,
  sharedMeetings,
  storageGroups,
  wasteAmount,
  wasteFrom,
} from '../../core/report/hazard-sheet.ts'
import { materialInPlace } from '../../core/report/in-place-of.ts'
import { meetingRows } from '../../core/report/meeting-rows.ts'
import { nameIn } from '../../core/report/names.ts'
import { exposureTold } from '../../core/report/physical-words.ts'
import { recordMark } from '../../core/report/record-mark.ts'
import { lawByList } from '../../core/report/regulated.ts'
import { sharedNotes } from '../../core/report/shared-notes.ts'
import { capital, counted, listed, sentence, stepsText } from '../../core/report/words.ts'
import { Marked, MarkSign } from '../parts/mark.tsx'
import { Name } from '../parts/words.tsx'
import { FullLabel } from './hazard-label.tsx'
import { Law } from './law.tsx'
import type { PackProps } from './pack-props.ts'
import { Blank, Leaf } from './parts.tsx'

/** Everything that can hurt, in full: labels unknown first, meetings, gas, waste, the steps' own dangers, the law. */
export function HazardPage(props: PackProps) {
  const { library, evaluation } = props
  const { hazards } = evaluation
  const unknown = hazards.materials.filter(one => one.known === 'unknown')
  const known = hazards.materials.filter(one => one.known !== 'unknown')
  return (
    <Leaf
      title={hazardTitle(hazards)}
      used={[
        ...hazards.materials.flatMap(one => exposureTold(library, one)?.sure.mark ?? []),
        ...lawByList(hazards.regulated).map(one => one.sure.mark),
        ...hazards.meetings.map(one => meetingMark(one).mark),
        ...evaluation.steps.map(step => recordMark(library, evaluation, [step.number]).mark),
      ]}
    >
      <p class="key s soft">
        <span class="seen">seen in a source</span>
        <span class="remembered">remembered</span>
        <span class="unknown">unknown: not safe</span>
      </p>
      {unknown.length > 0 && <UnknownRow {...props} unknown={unknown} />}
      <div class="label-grid">
        {known.map(material => (
          <FullLabel library={library} beneath={props.beneath ?? nothingBeneath} material={material} key={material.material} />
        ))}
      </div>
      <Meetings {...props} />
      <Gas {...props} />
      <StepDangers {...props} />
      <AirAndAge {...props} />
      <Waste {...props} />
      <Law {...props} />
    </Leaf>
  )
}

function UnknownRow({ library, unknown, beneath = nothingBeneath }: PackProps & { readonly unknown: readonly LabelledMaterial[] }) {
  const names = unknown.map(one => nameIn(library)(one.material))
  return (
    <article class="hz unknown wide">
      <span class="pics">
        <span class="q-mark">?</span>
      </span>
      <div>
        <b>
          {names.map((name, at) => (
            <span key={name}>
              {at > 0 && '; '}
              <Name text={name} />
            </span>
          ))}
        </b>
        <p>{noHazardData}</p>
        <p class="s soft">
          {unknown
            .map(one => materialInPlace(beneath, one.material))
            .filter(Boolean)
            .join(' ')}{' '}
          {capital(counted(unknown.length, 'material'))} unknown. Unknown is not safe: until the sheet is read, treat as toxic.
        </p>
      </div>
    </article>
  )
}

const groups: readonly (readonly [title: string, where: Meeting['where']])[] = [
  ['May not meet in a step', 'step'],
  ['Storage: what stands where, and what not together', 'storage'],
  ['May not meet in a waste bottle', 'waste'],
]

function Meetings({ library, evaluation }: PackProps) {
  return (
    <>
      {groups.map(([title, where]) => {
        const shared = sharedMeetings(evaluation.hazards.meetings.filter(one => one.where === where))
        if (shared.length === 0) return null
        return (
          <section key={where}>
            <h2>{title}</h2>
            {where === 'storage' &&
              storageGroups(library, evaluation.hazards).map(({ group, names }) => (
                <p class="row-p" key={group} data-mark="reckoned">
                  <b>{capital(group.replaceAll('-', ' '))}:</b> {names.join('; ')}.
                </p>
              ))}
            {where === 'step'
              ? shared.map(({ meeting, places }, at) => (
                  <p class="row-p" key={`${meeting.title}${at}`} data-mark={meetingMark(meeting).mark}>
                    <b>
                      {severityText(meeting)}, {places}: {sentence(meeting.title)}
                    </b>{' '}
                    {meetingText(library, meeting)}
                    <MarkSign of={meetingMark(meeting)} />
                  </p>
                ))
              : meetingRows(library, shared).map(({ head, text }) => (
                  <p class="row-p" key={head + text} data-mark="reckoned">
                    <b>{head}</b> {text}
                  </p>
                ))}
          </section>
        )
      })}
    </>
  )
}

function Gas({ library, evaluation }: PackProps) {
  if (evaluation.hazards.gas.length === 0) return null
  return (
    <section data-mark="reckoned">
      <h2>Gas, worst case at full conversion, 25 °C</h2>
      {evaluation.hazards.gas.map(gas => (
        <p class="row-p" key={gas.step + gas.compound} data-mark="reckoned">
          {gasText(library, gas, evaluation.steps.find(step => step.number === gas.step)?.batches ?? 1)}
        </p>
      ))}
    </section>
  )
}

function StepDangers({ library, evaluation }: PackProps) {
  const shared = sharedNotes(evaluation.hazards.steps)
  if (shared.length === 0) return null
  return (
    <section>
      <h2>Dangers of the steps</h2>
      {shared.map(({ steps, notes }) => (
        <p class="row-p" key={steps.join(' ')}>
          <b>{capital(stepsText(steps))}.</b> <Marked of={recordMark(library, evaluation, steps)}>{notes.join(' ')}</Marked>
        </p>
      ))}
    </section>
  )
}

function AirAndAge({ library, evaluation }: PackProps) {
  const { peroxides } = evaluation.hazards
  const room = roomWarnings(evaluation.hazards)
  return (
    <>
      {peroxides.length > 0 && (
        <section>
          <h2>Peroxide formers</h2>
          {peroxides.map(line => (
            <p class="row-p" key={line.material} data-mark="seen">
              {peroxideText(library, line)}{' '}
              <span class="nb">
                tested <Blank mm={20} />
              </span>
            </p>
          ))}
        </section>
      )}
      {room.length > 0 && (
        <section>
          <h2>Vapour and the room</h2>
          {room.map(line => (
            <p class="row-p" key={line.material} data-mark="reckoned">
              {roomText(library, line)}
            </p>
          ))}
          <p class="s soft" data-mark="reckoned">
            {roomAssumption}
          </p>
        </section>
      )}
    </>
  )
}

function Waste({ library, evaluation }: PackProps) {
  const { waste } = evaluation.hazards
  if (waste.length === 0) return null
  return (
    <section>
      <h2>Waste bottles</h2>
      {waste.map(stream => (
        <p class="row-p" key={stream.name} data-mark="reckoned">
          <b>
            {stream.name}, {wasteAmount(stream)}.
          </b>{' '}
          {sentence(stream.container)} From {wasteFrom(library, stream)}.
          {wasteByDay(stream) === '' ? '' : ` By day: ${wasteByDay(stream)}.`}{' '}
          {stream.neverWith.length > 0 && <b>Never with {listed(stream.neverWith)}. </b>}
          <span class="nb">
            bottle <Blank mm={20} />
          </span>
        </p>
      ))}
      {evaluation.hazards.quench.length > 0 && <h2>Destroyed before the bottle</h2>}
      {evaluation.hazards.quench.map(line => (
        <p
          class="row-p"
          key={line.step + line.destroys}
          data-mark={line.from === 'source' ? recordMark(library, evaluation, [line.step]).mark : 'planned'}
        >
          {quenchText(library, line)}
        </p>
      ))}
    </section>
  )
}
