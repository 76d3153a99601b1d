import type { Evaluation } from '../../core/plan/evaluation.ts'
import { byNumber } from '../../core/plan/merged-steps.ts'
import { inBase } from '../../core/quantity/convert.ts'
import { massText, numberText, percentText, volumeText } from '../../core/quantity/print.ts'
import { spreadText } from '../../core/report/answers.ts'
import { chargeCaution, stepCaution } from '../../core/report/charge-cautions.ts'
import { startSentence } from '../../core/report/start-sentence.ts'
import { counted } from '../../core/report/words.ts'
import type { ChargedLine, ChargedStep } from '../../core/route/charged.ts'
import { AmountField } from '../parts/amount-field.tsx'
import { Figure, figureOf } from '../parts/figure.tsx'
import { Problems, Triangle } from '../parts/problem.tsx'
import { Clauses, Name, Unknown } from '../parts/words.tsx'
import { WorkingRow } from '../parts/working.tsx'
import { nameOf } from '../state/names.ts'
import { askFactsAgain, facts, factsAsked } from '../state/questions.ts'
import { standing } from '../state/reckoner.ts'
import { change, plan } from '../state/store.ts'
import { amountAnswer, chanceText } from './amount-answer.ts'
import { GroupsOf } from './groups.tsx'
import { StartAmount } from './have.tsx'
import { MassMetricsTable } from './mass-metrics.tsx'
import { KeptBack } from './kept-back.tsx'
import { Question } from './question.tsx'
import { Refusal } from './refusal.tsx'
import { StepYield } from './step-yield.tsx'

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
        of={amountAnswer(evaluation).map((clause, at, all) => (
          <>
            {clause.amount} <Name text={nameOf(clause.target)} /> <span class="sp nb">{clause.spread}</span>
            {at < all.length - 1 ? ',' : ''}
          </>
        ))}
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
  if (factsAsked.value.problems.length > 0)
    return (
      <Problems of={factsAsked.value.problems}>
        <button type="button" class="do" onClick={askFactsAgain}>
          Try again
        </button>
      </Problems>
    )
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
          {evaluation.notes.length > 0 && <Problems of={evaluation.notes} />}
          <MassMetricsTable evaluation={evaluation} />
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

function Goals({ evaluation }: { readonly evaluation: Evaluation | null }) {
  const { goals, start, settings } = plan.value
  return (
    <>
      <table class="t goals">
        <thead>
          <tr>
            <th>Goal</th>
            <th>wanted</th>
            <th class="n">median</th>
            <th class="n">P10–P90, g</th>
          </tr>
        </thead>
        <tbody>
          {goals.map(goal => {
            const result = evaluation?.goals.find(one => one.target === goal.target)
            const name = nameOf(goal.target)
            const figure = figureOf({ of: 'goal', target: goal.target })
            return [
              <tr key={goal.target}>
                <th scope="row">
                  <Name text={name} />
                </th>
                <td>
                  <GoalAmountField target={goal.target} name={name} massOnly={start.massG === null} />
                  <GroupsOf goal={goal} result={result} />
                </td>
                <td class="n">
                  {result === undefined ? (
                    '…'
                  ) : (
                    <Figure name={figure} label={`median of ${name}`} class="answer">
                      {massText(result.medianG)}
                    </Figure>
                  )}
                </td>
                <td class="n">{result === undefined ? '' : spreadText(result.p10G, result.p90G)}</td>
              </tr>,
              <WorkingRow name={figure} span={4} key={`${goal.target} working`} />,
              result === undefined ? null : (
                <tr class="in" key={`${goal.target} more`}>
                  <td colSpan={4} class="s soft under">
                    At typical yields {massText(result.expectedG)}; {settings.hand === 'practised' ? 'first attempts' : 'a practised hand'}{' '}
                    {massText(result.otherHandG)}. Overall yield on start {percentText(result.overallYieldOnStart)}, yield of the longest
                    chain {percentText(result.longestLinearYield)}.
                    {result.chance === null ? '' : ` The mass is reached with a chance of ${chanceText(result.chance)}.`}
                  </td>
                </tr>
              ),
            ]
          })}
        </tbody>
      </table>
      {evaluation?.start.recoveryPercent != null && (
        <p class="s soft">
          The feedstock gives {numberText(evaluation.start.recoveryPercent, 2, 1)} g per 100 g at its first step; this recovery is not
          multiplied into the yields.
        </p>
      )}
      <Confidence evaluation={evaluation} />
    </>
  )
}

/** So many grams, a share of the start, or the rest. */
function GoalAmountField({ target, name, massOnly }: { readonly target: string; readonly name: string; readonly massOnly: boolean }) {
  const amount = plan.value.goals.find(goal => goal.target === target)?.amount
  if (amount === undefined) return null
  const text = amount.kind === 'mass' ? massText(amount.massG) : amount.kind === 'share' ? percentText(amount.fraction) : 'the rest'
  return (
    <span class="nb">
      {amount.kind === 'rest' ? (
        <span class="own">the rest</span>
      ) : (
        <AmountField
          text={text}
          label={`amount of ${name} wanted`}
          dimensions={massOnly ? ['mass'] : ['mass', 'share']}
          size={6}
          onWritten={quantity => {
            if (quantity === null) return
            change({
              do: 'goal-amount',
              target,
              amount:
                quantity.unit === '%'
                  ? { kind: 'share', fraction: Math.min(1, inBase(quantity)) }
                  : { kind: 'mass', massG: inBase(quantity) },
            })
          }}
        />
      )}
      {!massOnly && (
        <button
          type="button"
          class="do s"
          onClick={() =>
            change({ do: 'goal-amount', target, amount: amount.kind === 'rest' ? { kind: 'mass', massG: 5 } : { kind: 'rest' } })
          }
        >
          {amount.kind === 'rest' ? 'as mass' : 'rest'}
          <span class="unseen">, {name}</span>
        </button>
      )}
    </span>
  )
}

const confidences = [0.5, 0.8, 0.9, 0.95]

function Confidence({ evaluation }: { readonly evaluation: Evaluation | null }) {
  const { settings, goals } = plan.value
  if (!goals.some(goal => goal.amount.kind === 'mass')) return null
  return (
    <label class="line">
      <span>How sure</span>
      <span>
        <select
          class="blank"
          value={settings.confidence ?? ''}
          onChange={event =>
            change({ do: 'settings', patch: { confidence: event.currentTarget.value === '' ? null : Number(event.currentTarget.value) } })
          }
        >
          <option value="">planned at typical yields</option>
          {confidences.map(chance => (
            <option value={chance} key={chance}>
              {Math.round(chance * 100)} of 100 times all masses reached
            </option>
          ))}
        </select>
        {evaluation?.chanceAll != null && <span class="soft s block">All masses together: {chanceText(evaluation.chanceAll)}</span>}
        {evaluation !== null && <span class="s block">{startSentence(facts.value.library, evaluation)}</span>}
      </span>
    </label>
  )
}

const batchesText = (step: ChargedStep): string => {
  const volume = step.volumeMl.perBatch
  const size = volume === null ? '' : `, ${step.volumeMl.assumed ? 'about ' : ''}${volumeText(volume)}${step.batches > 1 ? ' each' : ''}`
  return `${counted(step.batches, 'batch', 'batches')}${size}`
}

/** One step: what is charged, with amount, mmol and equivalents, and what comes out. */
function StepTable({ step, evaluation }: { readonly step: ChargedStep; readonly evaluation: Evaluation }) {
  const goesOn = step.goesTo.filter(to => to.massG > 0)
  const made = figureOf({ of: 'product', step: step.transformation })
  const caution = stepCaution(evaluation.hazards, step.number)
  return (
    <div class="step">
      <table class="t chg">
        <caption>
          Step {step.number}, <Name text={nameOf(step.makes)} />: <span class="cap-soft">{batchesText(step)}</span>
        </caption>
        <thead>
          <tr>
            <th>charge</th>
            <th class="n">amount</th>
            <th class="n">mmol</th>
            <th class="n">eq</th>
          </tr>
        </thead>
        <tbody>
          {caution !== null && (
            <tr class="in">
              <td colSpan={4} class="s">
                <Triangle label="Caution" /> {caution}
              </td>
            </tr>
          )}
          {step.charges.map((line, at) => (
            <ChargeRow
              line={line}
              caution={chargeCaution(evaluation.hazards, line.material)}
              name={figureOf({ of: 'charge', step: step.transformation, index: at })}
              key={`${line.material} ${at}`}
            />
          ))}
          <tr class="sum">
            <th scope="row">
              <Name text={nameOf(step.makes)} />
              <span class="plain">, P10 / median / P90</span>
            </th>
            <td class="n" colSpan={3}>
              {numberText(step.p10G, 3, 2)} /{' '}
              <Figure name={made} label={`${nameOf(step.makes)} made`}>
                <b>{massText(step.medianG)}</b>
              </Figure>{' '}
              / {numberText(step.p90G, 3, 2)}
              <span class="soft"> of {step.theoreticalG === null ? <Unknown>no theory</Unknown> : massText(step.theoreticalG)}</span>
            </td>
          </tr>
          <WorkingRow name={made} span={4} />
          <StepYield step={step} />
        </tbody>
      </table>
      {step.notes.map(note => (
        <p class="s soft" key={note}>
          <Triangle />
          {note}
        </p>
      ))}
      {step.combine != null && !step.done && (
        <button
          type="button"
          class="do s"
          onClick={() =>
            change({
              do: 'settings',
              patch: { batches: { ...plan.value.settings.batches, [step.transformation]: step.combine ?? 1 } },
            })
          }
        >
          Run it {step.combine === 2 ? 'twice' : `${step.combine} times`} and combine
          <span class="unseen">, {nameOf(step.makes)}</span>
        </button>
      )}
      {plan.value.settings.batches[step.transformation] !== undefined && <AsVesselsNeed step={step} />}
      {goesOn.length > 1 && <GoesOn step={step} evaluation={evaluation} />}
    </div>
  )
}

/** Batches were asked for: back to as many as the vessels need. */
function AsVesselsNeed({ step }: { readonly step: ChargedStep }) {
  const { [step.transformation]: asked, ...others } = plan.value.settings.batches
  return (
    <button type="button" class="do s" onClick={() => change({ do: 'settings', patch: { batches: others } })}>
      {counted(asked ?? 1, 'batch', 'batches')} asked for: as the vessels need instead
      <span class="unseen">, {nameOf(step.makes)}</span>
    </button>
  )
}

const basisText: Partial<Record<ChargedLine['basis'], string>> = {
  'at-least': 'source gives none; at least',
  planned: 'planned, not from the source',
  derived: 'reckoned by the library',
}

interface ChargeProps {
  readonly line: ChargedLine
  readonly name: string
  /** What stands beside the amount of something dangerous or unknown. */
  readonly caution: string | null
}

function ChargeRow({ line, name, caution }: ChargeProps) {
  const open = line.massG === null && line.volumeMl === null
  const amount = open
    ? 'as needed'
    : line.volumeMl !== null && line.massG !== null && byVolume(line)
      ? volumeText(line.volumeMl)
      : line.massG !== null
        ? massText(line.massG)
        : volumeText(line.volumeMl ?? 0)
  const weak = line.basis === 'at-least' || line.basis === 'planned'
  const stage = line.at === 'vessel' ? '' : line.at === 'quench' ? 'quench' : line.role
  return (
    <>
      <tr class={line.at === 'vessel' ? '' : 'later'}>
        <th scope="row" class="plain">
          <Name text={nameOf(line.material)} />
          {stage !== '' && <span class="soft s">, {stage}</span>}
          {line.supply === 'made' && <span class="soft s">, made before</span>}
          {caution !== null && <span class="soft s block">{caution}</span>}
        </th>
        <td class="n">
          {open ? (
            <Unknown>{amount}</Unknown>
          ) : line.supply === 'start' && plan.value.start.massG !== null ? (
            <Figure name={name} label={nameOf(line.material)}>
              {amount}
            </Figure>
          ) : (
            <Figure name={name} label={nameOf(line.material)}>
              {weak ? <i>{amount} +</i> : amount}
            </Figure>
          )}
        </td>
        <td class="n">{line.amountMol === null || line.at === 'workup' ? '' : millimoles(line.amountMol)}</td>
        <td class="n">{line.equivalents === null || line.at === 'workup' ? '' : numberText(line.equivalents, 3, 2)}</td>
      </tr>
      {basisText[line.basis] !== undefined && line.at === 'vessel' && (
        <tr class="in">
          <td colSpan={4} class="s soft under">
            {basisText[line.basis]}
          </td>
        </tr>
      )}
      <WorkingRow name={name} span={4} />
    </>
  )
}

const millimoles = (amountMol: number): string => numberText(amountMol * 1000, amountMol >= 0.1 ? 4 : 3, 1)

/** Liquids are measured, all else is weighed. */
function byVolume(line: ChargedLine): boolean {
  const form = facts.value.library.materials.get(line.material)?.form
  return form === 'liquid' || form === 'solution'
}

/** Where a shared intermediate goes. */
function GoesOn({ step, evaluation }: { readonly step: ChargedStep; readonly evaluation: Evaluation }) {
  return (
    <table class="t goes">
      <thead>
        <tr>
          <th>
            <Name text={nameOf(step.makes)} /> goes on to
          </th>
          <th class="n">{nameOf(step.makes)}</th>
        </tr>
      </thead>
      <tbody>
        {step.goesTo.map((to, at) => {
          const next =
            to.step === null ? null : (evaluation.steps.find(one => one.number === to.step || one.transformation === to.step) ?? null)
          const goal = to.goal === null ? null : (evaluation.goals[to.goal] ?? null)
          return (
            <tr key={`${to.step} ${at}`}>
              <th scope="row" class="plain">
                {next !== null ? (
                  <>
                    <Name text={nameOf(next.makes)} />, step {next.number}
                  </>
                ) : goal !== null ? (
                  <>the goal {nameOf(goal.target)}</>
                ) : (
                  'kept back'
                )}
              </th>
              <td class="n">{massText(to.massG)}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
