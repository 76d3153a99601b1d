import { type Equation, imbalancesOf, type Term, unbalanced } from '../chemistry/equation.ts'
import { proposalsFor } from '../chemistry/proposal.ts'
import type { Problem } from '../problem/problem.ts'
import type { EquationRead, TermRead } from './equation-line.ts'

/** Whether the equation may be used, and if not, what is off with a proposal. */
export function balanceOf(read: EquationRead): { readonly balanced: boolean; readonly problem: Problem | null } {
  const terms = [...read.reactants, ...read.products]
  if (read.reactants.length === 0 || read.products.length === 0) return { balanced: false, problem: null }
  // What has no composition cannot be balanced; the name itself has already been asked about.
  if (terms.some(term => term.composition === null)) return { balanced: false, problem: null }
  const side = (list: readonly TermRead[]): Term[] =>
    list.map(term => ({ name: term.text, coefficient: term.coefficient, composition: term.composition! }))
  const equation: Equation = { reactants: side(read.reactants), products: side(read.products) }
  if (imbalancesOf(equation).length === 0) return { balanced: true, problem: null }
  const proposals = proposalsFor(equation)
  const cure =
    proposals.length === 0
      ? 'Add the missing compounds or correct the coefficients; nothing simple was found that would do.'
      : `${proposals[0]!.text}${
          proposals.length > 1
            ? ` Or: ${proposals
                .slice(1)
                .map(one => one.text)
                .join(' Or: ')}`
            : ''
        }`
  return { balanced: false, problem: unbalanced(equation, ['line 1'], cure) }
}
