import type { ChargedStep } from '../route/charged.ts'

/**
 * The step whose bad run costs most: the smallest P10 over median. The first of equals.
 *
 * @returns null for no steps
 */
export function riskiestStep(steps: readonly ChargedStep[]): ChargedStep | null {
  let worst: ChargedStep | null = null
  let least = Number.POSITIVE_INFINITY
  for (const step of steps) {
    const ratio = step.medianG > 0 ? step.p10G / step.medianG : 0
    if (ratio < least) {
      least = ratio
      worst = step
    }
  }
  return worst
}
