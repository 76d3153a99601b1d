import { stepFigures } from '../../core/library/figure-trust.ts'
import type { Marked } from '../../core/library/mark.ts'
import { beliefAbout } from '../../core/plan/beliefs.ts'
import { withEnd } from '../../core/plan/own-yield.ts'
import type { Settings } from '../../core/plan/settings.ts'
import { noBreakSpace, numberText } from '../../core/quantity/print.ts'
import { yieldInPlace } from '../../core/report/in-place-of.ts'
import type { ChargedStep } from '../../core/route/charged.ts'
import { Figure, figureOf } from '../parts/figure.tsx'
import { MarkSign } from '../parts/mark.tsx'
import { WorkingRow } from '../parts/working.tsx'
import { beneathFor } from '../state/facts.ts'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { change, plan } from '../state/store.ts'

type Range = Settings['yields'][string]
const typed = { mark: 'typed', source: null } as const
const ends = ['low', 'typical', 'high'] as const
const meaning = { low: 'one run in ten is below', typical: 'what a run usually gives', high: 'one run in ten is above' } as const

const percents = ({ low, typical, high }: Range): Range => ({ low: low * 100, typical: typical * 100, high: high * 100 })

/** What is believed about the yield of a step: the range it plans with, what it rests on, and own figures in its place. Rows of its table. */
export function StepYield({ step }: { readonly step: ChargedStep }) {
  const name = figureOf({ of: 'yield', step: step.transformation })
  const transformation = facts.value.library.transformations.get(step.transformation)
  const own = plan.value.settings.yields[step.transformation]
  if (transformation === undefined) return null
  // What is believed before own runs: that is what can be changed; what they made of it stands under it.
  const shown = own ?? percents(beliefAbout(facts.value.library, step.transformation, plan.value.settings).range)
  const moved = step.done && step.done.ownRuns > 0 ? percents(step.yieldFraction) : null
  const isolation = transformation.kind === 'isolation'
  const inPlace = yieldInPlace(facts.value.library, plan.value, beneathFor(facts.value), step.transformation)
  const label = isolation ? 'recovery' : 'yield'
  const figures = stepFigures(transformation)
  const typical = figures.find(one => one.figure === 'yield')!
  const range = figures.find(one => one.figure === 'range of the yield')!
  // The ends of the range share a letter, which stands behind the second.
  const markOf = (end: (typeof ends)[number]): Marked => (own !== undefined ? typed : end === 'typical' ? typical : range)
  const set = (range: Range | null): void => {
    const { [step.transformation]: _old, ...others } = plan.value.settings.yields
    change({ do: 'settings', patch: { yields: range === null ? others : { ...others, [step.transformation]: range } } })
  }
  return (
    <>
      <tr>
        <th scope="row" class="plain">
          {label}, low / typical / high
          {inPlace !== null && <span class="own block">{inPlace}</span>}
        </th>
        <td class="n" colSpan={3}>
          {ends.map((end, at) => (
            <span key={end}>
              {at > 0 && ' / '}
              <span data-mark={markOf(end).mark}>
                <input
                  class="blank n"
                  size={4}
                  inputMode="decimal"
                  aria-label={`${label} of ${nameOf(step.makes)}, ${end}: ${meaning[end]}, percent`}
                  value={numberText(shown[end], 3, 1)}
                  onChange={event => {
                    const next = withEnd(shown, end, Number(event.currentTarget.value.replace(',', '.').replace('%', '')))
                    if (next === null) event.currentTarget.value = numberText(shown[end], 3, 1)
                    else set(next)
                  }}
                />
                {end !== 'low' && <MarkSign of={markOf(end)} />}
              </span>
            </span>
          ))}
          {noBreakSpace}
          <Figure name={name} label={`${label} of ${nameOf(step.makes)}`}>
            {isolation ? 'g/100 g' : '%'}
          </Figure>
          {moved !== null && (
            <span class="soft s block">
              moved by {step.done?.ownRuns === 1 ? 'one own run' : `${step.done?.ownRuns} own runs`} to{' '}
              {ends.map(end => numberText(moved[end], 3, 1)).join(' / ')}
            </span>
          )}
          {own !== undefined && (
            <button type="button" class="do s" onClick={() => set(null)}>
              back to the sources<span class="unseen">, {nameOf(step.makes)}</span>
            </button>
          )}
        </td>
      </tr>
      <WorkingRow name={name} span={4} />
    </>
  )
}
