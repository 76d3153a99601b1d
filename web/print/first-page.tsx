import { transformationOf } from '../../core/library/library.ts'
import type { Marked as MarkedFigure } from '../../core/library/mark.ts'
import { durationText, massText } from '../../core/quantity/print.ts'
import type { Answer } from '../../core/report/answers.ts'
import { answersOf, spreadText, windowWord } from '../../core/report/answers.ts'
import { shortDate } from '../../core/report/dates.ts'
import { aloneText } from '../../core/report/hazard-sheet.ts'
import { lowMelts } from '../../core/report/low-melts.ts'
import { nameIn } from '../../core/report/names.ts'
import { noWindowText, wouldDoText } from '../../core/report/no-window.ts'
import { madeGoals, shortClauses, shortNotes } from '../../core/report/short-start.ts'
import { groupsSentence, medianAndTypical, outsideSpread, startSentence } from '../../core/report/start-sentence.ts'
import { capital, counted, listed, sentence, stepsText } from '../../core/report/words.ts'
import { arrowMarks } from '../map/conditions.ts'
import type { SchemeIn } from '../map/scheme/types.ts'
import { StaircaseAxis, YieldStaircase } from '../map/staircase.tsx'
import { Marked } from '../parts/mark.tsx'
import { Clauses, Name } from '../parts/words.tsx'
import { Changes } from './changes.tsx'
import { DaysStrip } from './days-strip.tsx'
import type { PackProps } from './pack-props.ts'
import { Leaf } from './parts.tsx'
import { flattest, SchemeFigure } from './scheme-figure.tsx'
import { WaysCompared } from './ways-compared.tsx'

/** Page 1: the scheme, the seven answers, what survives of the start, the days. */
export function FirstPage(props: PackProps & { readonly scheme: SchemeIn | null }) {
  const { library, plan, evaluation, depictions, scheme } = props
  const nameOf = nameIn(library)
  const short = shortNotes(evaluation)
  const targets = listed(evaluation.goals.map(goal => nameOf(goal.target)))
  const start = nameOf(plan.start.material)
  const startMark: MarkedFigure = { mark: plan.start.massG === null ? 'reckoned' : 'typed', source: null }
  return (
    <Leaf
      used={[startMark.mark, ...evaluation.steps.flatMap(step => [...arrowMarks(library, transformationOf(library, step.transformation))])]}
      legend="Arrows: solid, seen in a source; dashed, remembered."
      title={
        <>
          <Marked of={startMark}>{massText(plan.start.massG ?? evaluation.start.massG)}</Marked> of {start} becomes{' '}
          {madeGoals(evaluation).map((goal, at, all) => (
            <span key={goal.target}>
              <span class="nb">
                <Name text={nameOf(goal.target)} />
                {at < all.length - 2 && ','}
              </span>
              {at < all.length - 2 ? ' ' : at === all.length - 2 ? ' and ' : ''}
            </span>
          ))}
        </>
      }
    >
      {props.breach != null && (
        <p class="note">
          <b>{props.breach}</b>
        </p>
      )}
      {short.length > 0 && (
        <p class="note" data-mark="reckoned">
          <b>{shortClauses(evaluation, nameOf).join(' ').replace(/[:;]$/, '.')}</b>{' '}
          {short.map(note => `${note.what} ${note.cure}`).join(' ')}
        </p>
      )}
      {scheme !== null && <SchemeFigure input={flattest(scheme)} depictions={depictions} label={`Scheme: ${start} to ${targets}`} />}
      <Changes {...props} />
      <Seven answers={props.answers ?? answersOf(library, plan, evaluation, props.reach)} />
      <WaysCompared {...props} />
      <Survivors {...props} />
      {[
        startSentence(library, evaluation),
        ...evaluation.goals.map(goal => named(nameOf(goal.target), groupsSentence(goal))),
        `${medianAndTypical} ${outsideSpread}`,
      ].map(
        text =>
          text !== null && (
            <p key={text} data-mark="reckoned">
              {text}
            </p>
          ),
      )}
      {(props.choice ?? []).map(text => (
        <p class="s" key={text} data-mark="reckoned">
          <Name text={text} />
        </p>
      ))}
      <Timetable {...props} />
      {[...evaluation.notes.filter(note => !short.includes(note)), ...lowMelts(library, plan)].map(note => (
        <p class="note" key={note.code + note.where.join()} data-mark="reckoned">
          <b>{note.what}</b> {note.why} {note.cure}
        </p>
      ))}
    </Leaf>
  )
}

const named = (name: string, text: string | null): string | null => (text === null ? null : `${capital(name)}: ${text}`)

const Seven = ({ answers }: { readonly answers: readonly Answer[] }) => (
  <ol class="seven" data-mark="reckoned">
    {answers.map(({ no, ask, clauses }) => (
      <li key={no}>
        <span class="soft">{no}</span>
        <span class="soft">{ask}</span>
        <b>
          <Clauses of={clauses.map((clause, at) => <Name text={clause} key={at} />)} />
        </b>
      </li>
    ))}
  </ol>
)

/** Width of a staircase between its name and its grams, px. */
const stairPx = 300

/** Staircases on one axis, a goal a row: typical yields with P10 and P90. */
function Survivors({ library, plan, evaluation }: PackProps) {
  const nameOf = nameIn(library)
  const { recoveryPercent } = evaluation.start
  return (
    <section class="survivors" data-mark="reckoned">
      <div class="row axis s soft">
        <span>What survives of the start at typical yields</span>
        <StaircaseAxis width={stairPx} />
        <span class="n">P10 / median / P90</span>
      </div>
      {evaluation.goals.map(goal => (
        <div class="row" key={goal.target}>
          <b>
            <Name text={nameOf(goal.target)} />
          </b>
          <YieldStaircase
            stairs={goal.stairs.map(({ compound, ...stair }) => ({ ...stair, name: nameOf(compound) }))}
            chosen
            width={stairPx}
          />
          <span class="n">
            {spreadText(goal.p10G, goal.p90G).split('–')[0]} / <b>{massText(goal.medianG).replace(/\u00a0g$/, '')}</b> /{' '}
            {massText(goal.p90G)}
            <span class="s soft block">
              {massText(goal.expectedG)} at typical yields; {plan.settings.hand === 'practised' ? 'first attempts' : 'practised hand'}{' '}
              {massText(goal.otherHandG)}
            </span>
          </span>
        </div>
      ))}
      {recoveryPercent !== null && (
        <p class="s soft">
          The feedstock gives {String(Math.round(recoveryPercent * 100) / 100)} g per 100 g; the stairs begin at what is isolated.
        </p>
      )}
    </section>
  )
}

function Timetable({ library, plan, evaluation }: PackProps) {
  const { days, steps } = evaluation
  const nameOf = nameIn(library)
  const { windows } = plan.settings
  const [one, many] = windowWord(windows)
  const numberOf = (id: string): string => {
    const step = steps.find(other => other.transformation === id || other.number === id)
    return step === undefined ? id : `step ${step.number}`
  }
  // What runs hot with nobody there is said in full; what dries or cools is named by its step, and its notice says the rest.
  const heated = days.unattended.filter(one => one.heated).map(one => `${numberOf(one.step)}, ${aloneText(one.do, one.hours, true)}`)
  const cold = [...new Set(days.unattended.filter(one => !one.heated).map(one => numberOf(one.step).replace('step ', '')))]
  const alone = [...heated, ...(cold.length === 0 ? [] : [`unheated, ${stepsText(cold)}`])]
  const hands = days.handsOnH === null ? 'hands-on hours unknown' : `${durationText(days.handsOnH)} hands-on`
  const title =
    days.windowsUsed === null
      ? `${hands}; the longest chain takes ${durationText(days.elapsedH)}`
      : `${counted(days.windowsUsed, one, many)}${days.finishDate === null ? '' : `, done ${shortDate(days.finishDate, true)}`}; ${hands}`
  return (
    <section class="days" data-mark="reckoned">
      <h2>{capital(title)}</h2>
      <DaysStrip booked={days.booked} steps={steps} windows={windows} nameOf={nameOf} />
      {alone.length > 0 && (
        <p class="s">
          <b>Runs or stands alone:</b> {alone.join('; ')}.
        </p>
      )}
      {days.tooLong.map(long => (
        <p class="s" key={long.step + long.do}>
          <b>No place, {numberOf(long.step)}:</b> {noWindowText(long, windows, numberOf)}
        </p>
      ))}
      {days.tooLong.length > 0 && <p class="s">{wouldDoText(days)}</p>}
      {days.notes.map(note => (
        <p class="s soft" key={note}>
          {sentence(note)}
        </p>
      ))}
    </section>
  )
}
