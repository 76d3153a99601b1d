import { type Equation, imbalancesOf, type Term, unbalanced } from '../chemistry/equation.ts'
import type { Composition } from '../chemistry/formula.ts'
import { givesHydride, hydrideProposal, takesHydrogen } from '../chemistry/hydride-proposal.ts'
import { type Proposal, proposalsFor } from '../chemistry/proposal.ts'
import type { Problem } from '../problem/problem.ts'
import type { EquationRead } from './equation-line.ts'
import type { TermRead } from './equation-term.ts'

/**
 * Whether the equation may be used, and if not, what is off with a proposal.
 *
 * @param charged  compositions of what is charged or stands over the arrow: a hydride there gives the hydrogen that an equation lacks
 */
export function balanceOf(
  read: EquationRead,
  charged: readonly Composition[] = [],
): {
  readonly balanced: boolean
  readonly problem: Problem | null
  readonly proposals: readonly ProposedEquation[]
} {
  const terms = [...read.reactants, ...read.products]
  if (read.reactants.length === 0 || read.products.length === 0) return { balanced: false, problem: null, proposals: [] }
  // What has no composition cannot be balanced; the name itself has already been asked about.
  if (terms.some(term => term.composition === null)) return { balanced: false, problem: null, proposals: [] }
  const side = (list: readonly TermRead[]): Term[] =>
    list.map(term => ({ name: term.text, coefficient: term.coefficient, composition: term.composition! }))
  const equation: Equation = { reactants: side(read.reactants), products: side(read.products) }
  if (imbalancesOf(equation).length === 0) return { balanced: true, problem: null, proposals: [] }
  const found = withoutHydrogen(equation, charged, proposalsFor(equation))
  // Where something forgotten mends the equation as it stands, other coefficients are arithmetic, not chemistry.
  const asItStands = found.filter(one => !one.recounted)
  const proposals = asItStands.length > 0 ? asItStands : found
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
  return {
    balanced: false,
    problem: unbalanced(equation, ['line 1'], cure),
    proposals: proposals.map(proposal => ({ text: proposal.text, equation: lineOf(proposal) })),
  }
}

/** Where a hydride is there, hydrogen is not proposed: what a borohydride does with water is, where it comes out. */
function withoutHydrogen(equation: Equation, charged: readonly Composition[], found: readonly Proposal[]): readonly Proposal[] {
  const compositions = [...charged, ...equation.reactants.map(one => one.composition)]
  if (!compositions.some(givesHydride)) return found
  const rest = found.filter(one => !takesHydrogen(one))
  const instead = rest.length === found.length && found.length > 0 ? null : hydrideProposal(equation, charged)
  return instead === null ? rest : [instead, ...rest.filter(one => one.text !== instead.text)]
}

/** A proposal as the line it would make, so that it can be taken as it stands. */
export interface ProposedEquation {
  /** As an order: "Add 2 H2O (water) on the right." */
  readonly text: string
  /** The whole equation, names as typed and what was added by its trade name. */
  readonly equation: string
}

const lineOf = ({ equation }: Proposal): string =>
  [equation.reactants, equation.products]
    .map(side => side.map(({ name, coefficient }) => (coefficient === 1 ? name : `${coefficient} ${name}`)).join(' + '))
    .join(' -> ')
