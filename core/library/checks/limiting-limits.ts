import { coefficientOf, freeCompounds, referenceFeedstockG, referenceMoles } from '../reference-charge.ts'
import type { Transformation } from '../transformation.ts'
import type { CheckContext, Finding } from './check.ts'

/** Source weights are rounded: a reactant within 2 % of its share is charged in proportion. */
const shareBelowWhichWarned = 0.98

/**
 * The limiting reactant has an amount and really limits: the typical yield on any other reactant as charged is at most 1 (an error),
 * and none is charged below 0.98 of its share (a warning). Reactants without an amount are demanded in proportion and cannot be short.
 */
export function limitingLimits(transformation: Transformation, { library }: CheckContext): readonly Finding[] {
  const { kind, limiting, reactants } = transformation
  const isIsolation = kind === 'isolation'
  const reference = isIsolation ? referenceFeedstockG(library, transformation) : referenceMoles(library, transformation, limiting)
  if (reference === null)
    return [
      {
        severity: 'error',
        code: 'limiting-amount',
        field: ['charge'],
        what: `No line gives an amount of the limiting reactant ${limiting}${isIsolation ? ' by mass' : ''}.`,
        why: 'The scale of the step, and every other amount with it, is reckoned from that line.',
        cure: 'Give the amount the source used, in a line whose role is not wash, drying, extraction or recrystallisation.',
      },
    ]
  if (isIsolation) return []

  const perCoefficient = reference / coefficientOf(transformation, limiting)
  return reactants.flatMap(({ compound }): Finding[] => {
    const charged = compound === limiting || freeCompounds.has(compound) ? null : referenceMoles(library, transformation, compound)
    if (charged === null) return []
    const share = charged / coefficientOf(transformation, compound) / perCoefficient
    if (share >= shareBelowWhichWarned) return []
    const yieldOnIt = transformation.yieldPercent.typical / 100 / share
    const isImpossible = yieldOnIt > 1
    return [
      {
        severity: isImpossible ? 'error' : 'warning',
        code: isImpossible ? 'limiting-exceeded' : 'limiting-short',
        field: ['limiting'],
        what: isImpossible
          ? `The typical yield would be ${(yieldOnIt * 100).toFixed(1)} % on ${compound}, which is charged at ${share.toFixed(3)} of its share.`
          : `${compound} is charged at ${share.toFixed(3)} of its share and runs out before ${limiting}.`,
        why: 'Yields are counted on the limiting reactant: the one that runs out first.',
        cure: `Check the amounts and strengths of both; if they are right, make ${compound} the limiting reactant and restate the yields on it.`,
      },
    ]
  })
}
