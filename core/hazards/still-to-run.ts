import type { ChargedStep } from '../route/charged.ts'

/**
 * The part of a step that is still to be run, as a step by itself. Charges cover only that part, while the step's own charge and product count
 * what was run and logged as well: a balance of the two would use up what is not there.
 */
export function stillToRun(step: ChargedStep): ChargedStep {
  if (step.done == null) return step
  const { limiting, ofCharge, coProducts, expectedG, done } = step
  const part = limiting.massG > 0 ? ofCharge.chargeG / limiting.massG : 0
  return {
    ...step,
    limiting: {
      compound: limiting.compound,
      massG: limiting.massG * part,
      amountMol: limiting.amountMol === null ? null : limiting.amountMol * part,
    },
    expectedG: Math.max(0, expectedG - done.isolatedG),
    coProducts: coProducts.map(product => ({ ...product, expectedG: product.expectedG * part })),
  }
}
