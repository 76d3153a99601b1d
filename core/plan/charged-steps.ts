import { type Library, transformationOf } from '../library/library.ts'
import { coefficientOf, freeCompounds, productCoefficientOf } from '../library/reference-charge.ts'
import type { ChargedStep, Spread } from '../route/charged.ts'
import { type Flow, flowOf } from '../route/flow.ts'
import { reactantLines } from '../route/reactant-lines.ts'
import { type Drawn, spreadOf } from '../route/spread.ts'
import { beliefOf, firstTimeRange, predicted, yieldAt } from '../yields/belief.ts'
import { percentiles } from '../yields/percentiles.ts'
import type { Amounts, StepAmounts } from './amounts.ts'

/** The steps of a plan as everything downstream takes them: charges, yields, spread, where the product goes. */
export function chargedSteps(library: Library, amounts: Amounts, drawn: Drawn): readonly ChargedStep[] {
  return amounts.steps.map(step => {
    const { p10G, medianG, p90G } = spreadOf(drawn.productG.get(step.transformation)!, step.expectedG)
    const before = takenBefore(amounts, step)
    const spread: Spread = { expectedG: step.expectedG, p10G: p10G + before, medianG: medianG + before, p90G: p90G + before }
    return chargedStep(library, amounts, step, spread, percentiles(drawn.yields.get(step.transformation)!))
  })
}

/** The same without draws, every figure at planning yields: enough for what is charged and bought. */
export function plannedSteps(library: Library, amounts: Amounts): readonly ChargedStep[] {
  return amounts.steps.map(step => {
    const massG = step.expectedG
    const { typical } = predicted(amounts.beliefs.get(step.transformation)!)
    const yields = { p10: typical, median: typical, p90: typical }
    return chargedStep(library, amounts, step, { expectedG: massG, p10G: massG, medianG: massG, p90G: massG }, yields)
  })
}

/** Draws start from what is left of a logged product; the step's own figure is what was isolated in all. */
function takenBefore(amounts: Amounts, step: StepAmounts): number {
  const flowing = amounts.flowing.steps.find(s => s.flow.transformation === step.transformation)
  return step.logged && flowing ? step.logged.isolatedG - flowing.inHandG : 0
}

/** @param yields percentiles of the yield of the batches still to run */
function chargedStep(
  library: Library,
  amounts: Amounts,
  step: StepAmounts,
  spread: Spread,
  yields: ReturnType<typeof percentiles>,
): ChargedStep {
  const flow = flowOf(library, step.transformation)
  const limitingMass = library.molarMass.get(flow.limiting)
  // What has been charged counts for theory, scale and all, also where nothing is left to run.
  const chargedG = step.limitingG + (step.logged?.chargedG ?? 0)
  return {
    transformation: step.transformation,
    makes: step.makes,
    number: amounts.merged.numbers.get(step.transformation) ?? '',
    scale: chargedG / flow.referenceG,
    limiting: {
      compound: flow.limiting,
      massG: chargedG,
      amountMol: flow.isolation || limitingMass === undefined ? null : chargedG / limitingMass,
    },
    charges: step.charges,
    theoreticalG: flow.isolation ? null : chargedG * flow.theoryPerG,
    ofCharge: ofCharge(flow, step, yields),
    yieldFraction: predicted(amounts.beliefs.get(step.transformation)!),
    batches: step.batches + (step.logged?.batchesDone ?? 0),
    goesTo: goesTo(amounts, step.makes),
    coProducts: coProducts(library, amounts, step, chargedG),
    ...(step.combine === null ? {} : { combine: step.combine }),
    volumeMl: { perBatch: step.perBatchMl, assumed: step.volumeAssumed },
    ...(step.logged
      ? { done: { isolatedG: step.logged.isolatedG, leftToRun: step.logged.leftToRun, ownRuns: step.logged.yields.length } }
      : {}),
    notes: [...step.notes, ...chargeNotes(library, amounts, step)],
    ...spread,
  }
}

function ofCharge(flow: Flow, { limitingG, batches }: StepAmounts, yields: ReturnType<typeof percentiles>): ChargedStep['ofCharge'] {
  const given = (fraction: number): number => Math.max(0, limitingG * flow.theoryPerG * fraction - flow.lossG * batches)
  return {
    chargeG: limitingG,
    theoryG: flow.isolation ? null : limitingG * flow.theoryPerG,
    p10G: given(yields.p10),
    medianG: given(yields.median),
    p90G: given(yields.p90),
  }
}

/** Uses of a product, those of one step for one goal together, in order of goals; what is kept back last. */
function goesTo(amounts: Amounts, compound: string): ChargedStep['goesTo'] {
  const uses = (amounts.flowing.uses.get(compound) ?? []).filter(u => u.massG > 0)
  const rows = [...uses].sort((a, b) => a.goal - b.goal).map(u => ({ step: u.step, goal: u.goal, massG: u.massG }))
  const keptG = amounts.flowing.keptG.get(compound) ?? 0
  return keptG > 0 ? [...rows, { step: null, goal: null, massG: keptG }] : rows
}

function coProducts(library: Library, amounts: Amounts, step: StepAmounts, chargedG: number): ChargedStep['coProducts'] {
  const transformation = transformationOf(library, step.transformation)
  const flow = flowOf(library, step.transformation)
  const belief = amounts.beliefs.get(step.transformation)!
  return (transformation.coProducts ?? []).map(({ compound, yieldPercent }) => {
    const stated = { low: yieldPercent.low / 100, typical: yieldPercent.typical / 100, high: yieldPercent.high / 100 }
    const shifted =
      amounts.settings.hand === 'first-time' ? firstTimeRange(stated, flow.isolation, []) : { range: stated, origin: 'library' as const }
    // It shares its step's score: a bench that gets more of the one gets more of the other.
    const own = beliefOf(shifted.range, flow.isolation, amounts.settings.benchShare, shifted.origin)
    const fraction = belief.runs === 0 ? own.range.typical : yieldAt(own, belief.benchMean)
    const limitingMass = library.molarMass.get(flow.limiting)
    const productMass = library.molarMass.get(compound)
    const ratio = productCoefficientOf(transformation, compound) / coefficientOf(transformation, flow.limiting)
    const theoryG =
      flow.isolation || limitingMass === undefined || productMass === undefined ? chargedG : (chargedG / limitingMass) * ratio * productMass
    return { compound, expectedG: theoryG * fraction }
  })
}

/** What the bench should know about the charge. */
function chargeNotes(library: Library, amounts: Amounts, step: StepAmounts): string[] {
  const transformation = transformationOf(library, step.transformation)
  const name = (id: string): string => library.materials.get(id)?.name ?? id
  const notes: string[] = []
  for (const line of step.charges) {
    if (line.basis === 'at-least') notes.push(`${name(line.material)}: source gives none; at least what the equation takes.`)
    if (line.basis === 'about') notes.push(`${name(line.material)}: about; what the solution is made up with, at the solution's volume.`)
  }
  const made = new Set(amounts.merged.steps.map(s => s.makes))
  for (const reactant of reactantLines(library, transformation)) {
    if (reactant.free && freeCompounds.has(reactant.compound) && reactant.compound === 'oxygen') notes.push('Oxygen comes from the air.')
    if (!made.has(reactant.compound) || reactant.compound === transformation.limiting) continue
    const need = flowOf(library, step.transformation).needs.find(n => n.compound === reactant.compound)
    if (need && need.perG > need.exactPerG * 1.02) {
      notes.push(`${name(reactant.compound)} is charged in excess; what could be got back of it is not reckoned.`)
    }
  }
  if (step.logged && step.logged.aboveTheory.length > 0) {
    notes.push('More was weighed than theory allows: wet, impure or mis-weighed. It counts as weighed and teaches no yield.')
  }
  return notes
}
