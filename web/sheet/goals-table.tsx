import type { Evaluation } from '../../core/plan/evaluation.ts'
import { inBase } from '../../core/quantity/convert.ts'
import { massText, numberText, percentText } from '../../core/quantity/print.ts'
import { spreadText } from '../../core/report/answers.ts'
import { medianAndTypical, outsideSpread, startSentence } from '../../core/report/start-sentence.ts'
import { AmountField } from '../parts/amount-field.tsx'
import { Figure, figureOf } from '../parts/figure.tsx'
import { Name } from '../parts/words.tsx'
import { WorkingRow } from '../parts/working.tsx'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { change, plan } from '../state/store.ts'
import { chanceText } from './amount-answer.ts'
import { GroupsOf } from './groups.tsx'

/** The goals: what is wanted, what comes with its spread and by the other hand, and how sure it is to be. */
export function Goals({ evaluation }: { readonly evaluation: Evaluation | null }) {
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
                    <GroupsOf goal={goal} result={result} />
                  </td>
                </tr>
              ),
            ]
          })}
        </tbody>
      </table>
      {goals.length > 0 && <p class="s soft">{`${medianAndTypical} ${outsideSpread}`}</p>}
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
