import { byNumber } from '../../core/plan/merged-steps.ts'
import { massText } from '../../core/quantity/print.ts'
import { marksOfStep } from '../../core/report/plan-figures.ts'
import { shortClauses } from '../../core/report/short-start.ts'
import { mapName } from '../map/map-name.ts'
import { MarkLegend } from '../parts/mark.tsx'
import { Problems } from '../parts/problem.tsx'
import { Clauses, Name } from '../parts/words.tsx'
import { factsTrouble } from '../state/facts-asked.ts'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { standing } from '../state/reckoner.ts'
import { change, plan } from '../state/store.ts'
import { amountAnswer } from './amount-answer.ts'
import { Assumptions } from './assumptions.tsx'
import { Goals } from './goals-table.tsx'
import { StartAmount } from './have.tsx'
import { KeptBack } from './kept-back.tsx'
import { MassMetricsTable } from './mass-metrics.tsx'
import { PlanFigures } from './plan-figures.tsx'
import { Question } from './question.tsx'
import { Refusal } from './refusal.tsx'
import { StepTable } from './step-table.tsx'
import { StepUnknown } from './step-unknown.tsx'

/** Question 4: the goals, the slider, and what goes into the vessel at every step. */
export function Amount() {
  const { evaluation, refused, fresh } = standing.value
  const empty = evaluation === null
  const answer =
    refused !== null ? (
      refused.ok === 'stopped' ? (
        'Stopped: nothing is reckoned'
      ) : (
        'This plan could not be reckoned'
      )
    ) : evaluation === null ? (
      plan.value.goals.length === 0 ? (
        'No route chosen'
      ) : (
        'Being reckoned'
      )
    ) : (
      <Clauses
        of={[
          ...shortClauses(evaluation, nameOf).map(text => <Name text={text} key={text} />),
          ...amountAnswer(evaluation).map((clause, at, all) => (
            <>
              {clause.amount} <Name text={mapName(nameOf(clause.target))} /> <span class="sp nb">{clause.spread}</span>
              {at < all.length - 1 ? ',' : ''}
            </>
          )),
        ]}
      />
    )
  return (
    <Question no={4} ask="How much?" empty={empty} stale={!fresh} answer={answer}>
      {() => <AmountBody />}
    </Question>
  )
}

function AmountBody() {
  const { evaluation, refused, fresh } = standing.value
  if (factsTrouble.value.length > 0) return <StepUnknown problems={factsTrouble.value} />
  if (refused !== null) return <Refusal of={refused} />
  if (plan.value.goals.length === 0) return <p>Choose a goal in question 2; its amounts then stand here, step by step.</p>
  return (
    <>
      <InHand />
      <Goals evaluation={evaluation} />
      <KeptBack />
      {evaluation !== null && (
        <div data-stale={fresh ? undefined : ''} class="steps">
          {[...evaluation.steps]
            .sort((a, b) => byNumber(a.number, b.number))
            .map(step => (
              <StepTable step={step} evaluation={evaluation} key={step.transformation} />
            ))}
          <MarkLegend used={evaluation.steps.flatMap(step => marksOfStep(facts.value.library, plan.value, evaluation, step))} />
          <PlanFigures evaluation={evaluation} />
          {evaluation.notes.length > 0 && <Problems of={evaluation.notes} />}
          <MassMetricsTable evaluation={evaluation} />
          <Assumptions />
        </div>
      )}
    </>
  )
}

/** Far enough to see what ten times more would be, and not so far that a pixel is a gram. */
const sliderSpan = 2.5

/** What is in hand, as a figure and as a slider. */
function InHand() {
  const { start } = plan.value
  const { evaluation } = standing.value
  if (start.massG === null)
    return (
      <p>
        Reckoned backwards: {evaluation === null ? 'the goals' : massText(evaluation.start.massG)} of <Name text={nameOf(start.material)} />{' '}
        {evaluation === null ? 'say how much is' : 'are'} needed. Or start from what there is: <StartAmount class="n" />
      </p>
    )
  const onShelf = plan.value.shelf.find(item => item.material === start.material && item.unit === 'g')?.amount ?? 0
  const most = niceAbove(Math.max(start.massG * sliderSpan * 0.6, onShelf, 1))
  const step = stepOf(most)
  return (
    <div class="slider">
      <span>
        <Name text={nameOf(start.material)} /> in hand
      </span>
      <input
        type="range"
        aria-label={`${nameOf(start.material)} in hand, g`}
        min={step}
        max={most}
        step={step}
        value={start.massG}
        aria-valuetext={massText(start.massG)}
        onInput={event => change({ do: 'have', massG: Number(event.currentTarget.value) })}
      />
      <span class="n">
        <StartAmount />
      </span>
    </div>
  )
}

const niceAbove = (value: number): number => {
  const decade = 10 ** Math.floor(Math.log10(value))
  return [1, 2, 3, 4, 5, 6, 8, 10].map(times => times * decade).find(nice => nice >= value) ?? 10 * decade
}
const stepOf = (most: number): number => 10 ** Math.floor(Math.log10(most / 40))
