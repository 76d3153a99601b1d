import { type Equation, type Term, unbalanced } from '../../chemistry/equation.ts'
import type { Reactant, Transformation } from '../transformation.ts'
import type { CheckContext, Finding } from './check.ts'

/** Atoms and charge balance over all reactants and products, by-products included. Isolations start from a feedstock and are exempt. */
export function equationBalances({ kind, reactants, products }: Transformation, context: CheckContext): readonly Finding[] {
  if (kind === 'isolation') return []
  const equation: Equation = { reactants: termsOf(reactants, context), products: termsOf(products, context) }
  // A formula that cannot be read has been told at its material.
  if (equation.reactants.length < reactants.length || equation.products.length < products.length) return []
  const problem = unbalanced(equation, [])
  if (problem === null) return []
  const { code, what, why, cure } = problem
  return [{ severity: 'error', code, field: ['products'], what, why, cure }]
}

function termsOf(entries: readonly Reactant[], { compositions }: CheckContext): Term[] {
  return entries.flatMap(({ compound, coefficient }) => {
    const composition = compositions.get(compound)
    return composition === undefined ? [] : [{ name: compound, coefficient, composition }]
  })
}
