import { recordFigure, stepFigures } from '../../core/library/figure-trust.ts'
import { transformationOf } from '../../core/library/library.ts'
import type { Marked as MarkedFigure } from '../../core/library/mark.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { lineMark } from '../../core/plan/line-mark.ts'
import { massText, numberText, volumeText } from '../../core/quantity/print.ts'
import { millimolText } from '../../core/report/amounts.ts'
import { chargeAmountText } from '../../core/report/charge-amount.ts'
import { chargeCaution, stepCaution } from '../../core/report/charge-cautions.ts'
import { counted } from '../../core/report/words.ts'
import type { ChargedLine, ChargedStep } from '../../core/route/charged.ts'
import { Figure, figureOf } from '../parts/figure.tsx'
import { Marked } from '../parts/mark.tsx'
import { Triangle } from '../parts/problem.tsx'
import { Name, Unknown } from '../parts/words.tsx'
import { WorkingRow } from '../parts/working.tsx'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { change, plan } from '../state/store.ts'
import { StepTrust } from './step-trust.tsx'
import { StepYield } from './step-yield.tsx'

const batchesText = (step: ChargedStep): string => {
  const volume = step.volumeMl.perBatch
  const size = volume === null ? '' : `, ${step.volumeMl.assumed ? 'about ' : ''}${volumeText(volume)}${step.batches > 1 ? ' each' : ''}`
  return `${counted(step.batches, 'batch', 'batches')}${size}`
}

/** How sure the scale is that the notes of a step measure it by. */
const scaleOf = (step: ChargedStep): MarkedFigure => {
  const transformation = transformationOf(facts.value.library, step.transformation)
  return stepFigures(transformation).find(one => one.figure === 'largest scale') ?? recordFigure(transformation)
}

/** One step: what is charged, with amount, mmol and equivalents, and what comes out. */
export function StepTable({ step, evaluation }: { readonly step: ChargedStep; readonly evaluation: Evaluation }) {
  const goesOn = step.goesTo.filter(to => to.massG > 0)
  const made = figureOf({ of: 'product', step: step.transformation })
  const caution = stepCaution(evaluation.hazards, step.number)
  // Of the amounts in this table; a step that is done stands with what it gave.
  const running = step.ofCharge.chargeG > 0
  const gives = running ? step.ofCharge : step
  const theoryG = running ? step.ofCharge.theoryG : step.theoreticalG
  const ofChain = running && !step.done && step.charges.some(line => line.supply === 'made')
  return (
    <div class="step">
      <table class="t chg">
        <caption>
          Step {step.number}, <Name text={nameOf(step.makes)} />:{' '}
          <span class="cap-soft" data-mark="reckoned">
            {batchesText(step)}
          </span>
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
              step={step.transformation}
              line={line}
              sure={lineMark(facts.value.library, evaluation, step, line)}
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
            <td class="n" colSpan={3} data-mark="reckoned">
              {numberText(gives.p10G, 3, 2)} /{' '}
              <Figure name={made} label={`${nameOf(step.makes)} made`}>
                <b>{massText(gives.medianG)}</b>
              </Figure>{' '}
              / {numberText(gives.p90G, 3, 2)}
              <span class="soft"> of {theoryG === null ? <Unknown>no theory</Unknown> : massText(theoryG)}</span>
              {ofChain && (
                <span class="soft s block">
                  with the spread of the steps before {numberText(step.p10G, 3, 2)} / {numberText(step.medianG, 3, 2)} /{' '}
                  {massText(step.p90G)}
                </span>
              )}
              {step.done != null && step.done.leftToRun > 0 && (
                <span class="soft s block">beside {massText(step.done.isolatedG)} isolated</span>
              )}
            </td>
          </tr>
          <WorkingRow name={made} span={4} />
          {step.coProducts.map(({ compound, expectedG }) => (
            <tr key={compound}>
              <th scope="row" class="plain">
                <Name text={nameOf(compound)} />
                <span class="soft s">, second product, to the shelf</span>
              </th>
              <td class="n" colSpan={3} data-mark="reckoned">
                {massText(expectedG)} <span class="soft s">at typical yields</span>
              </td>
            </tr>
          ))}
          <StepYield step={step} />
          <StepTrust step={step} />
        </tbody>
      </table>
      {step.notes.map(note => (
        <p class="s soft" key={note}>
          <Triangle />
          {/\d/.test(note) ? <Marked of={scaleOf(step)}>{note}</Marked> : note}
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
  readonly step: string
  readonly line: ChargedLine
  readonly sure: MarkedFigure
  readonly name: string
  /** What stands beside the amount of something dangerous or unknown. */
  readonly caution: string | null
}

function ChargeRow({ step, line, sure, name, caution }: ChargeProps) {
  const open = line.massG === null && line.volumeMl === null
  const { library } = facts.value
  const amount = chargeAmountText(library, transformationOf(library, step), line) ?? 'as needed'
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
          <Marked of={sure}>
            {open ? (
              <Unknown>{amount}</Unknown>
            ) : (
              <Figure name={name} label={nameOf(line.material)}>
                {weak ? <i>{amount} +</i> : amount}
              </Figure>
            )}
          </Marked>
        </td>
        <td class="n" data-mark="reckoned">
          {line.amountMol === null || line.at === 'workup' ? '' : millimolText(line.amountMol)}
        </td>
        <td class="n" data-mark="reckoned">
          {line.equivalents === null || line.at === 'workup' ? '' : numberText(line.equivalents, 3, 2)}
        </td>
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
              <td class="n" data-mark="reckoned">
                {massText(to.massG)}
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
