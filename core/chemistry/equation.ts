import type { Problem } from '../problem/problem.ts'
import type { Composition } from './formula.ts'

/** One compound of an equation with its coefficient. */
export interface Term {
  readonly name: string
  readonly coefficient: number
  readonly composition: Composition
}

export interface Equation {
  readonly reactants: readonly Term[]
  readonly products: readonly Term[]
}

/** What does not balance: an element, or the charge, with what stands on either side. */
export interface Imbalance {
  readonly of: string
  readonly left: number
  readonly right: number
}

/** Half molecules and hemihydrates make sums of fractions; beyond this a difference is real. */
const sameCount = 1e-6

/**
 * Elements, then the charge, that differ between the two sides over all products, by-products included.
 *
 * @returns empty for a balanced equation; elements in alphabetical order, `charge` last
 */
export function imbalancesOf(equation: Equation): readonly Imbalance[] {
  const left = totals(equation.reactants)
  const right = totals(equation.products)
  const elements = [...new Set([...left.counts.keys(), ...right.counts.keys()])].sort()
  const off = elements
    .map(of => ({ of, left: tidy(left.counts.get(of) ?? 0), right: tidy(right.counts.get(of) ?? 0) }))
    .filter(one => Math.abs(one.left - one.right) > sameCount * Math.max(1, one.left, one.right))
  if (Math.abs(left.charge - right.charge) > sameCount) off.push({ of: 'charge', left: tidy(left.charge), right: tidy(right.charge) })
  return off
}

/** Atoms and charge of one side. */
export function totals(terms: readonly Term[]): Composition {
  const counts = new Map<string, number>()
  let charge = 0
  for (const { coefficient, composition } of terms) {
    for (const [symbol, count] of composition.counts) counts.set(symbol, (counts.get(symbol) ?? 0) + coefficient * count)
    charge += coefficient * composition.charge
  }
  return { counts, charge }
}

const tidy = (value: number): number => Math.round(value * 1e6) / 1e6

/**
 * The refusal of an unbalanced equation, naming each element that is off.
 *
 * @param cure  what to do; where a proposal was found, in its words
 * @returns null where nothing is off
 */
export function unbalanced(equation: Equation, where: readonly string[], cure?: string): Problem | null {
  const off = imbalancesOf(equation)
  if (off.length === 0) return null
  const parts = off.map(({ of, left, right }) => `${of === 'charge' ? 'charge' : of}: ${left} on the left, ${right} on the right`)
  return {
    code: 'equation-unbalanced',
    where,
    what: `The equation does not balance (${parts.join('; ')}).`,
    why: 'By-products and every amount are computed from this equation.',
    cure: cure ?? 'Add the missing compound, for example water, or correct a coefficient.',
  }
}
