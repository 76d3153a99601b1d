import type { Equation, Term } from './equation.ts'
import { type Composition, hill, parseFormula } from './formula.ts'
import { type Proposal, recountedWith } from './proposal.ts'

/** A compound that gives hydrogen to a carbonyl by itself: hydrogen bound to boron or aluminium, and no oxygen. Common practice, no source. */
export const givesHydride = ({ counts }: Composition): boolean =>
  counts.has('H') && (counts.has('B') || counts.has('Al')) && !counts.has('O')

/** Hydrogen as a reactant, which nobody charges where a hydride is there. */
export const takesHydrogen = ({ added }: Proposal): boolean => added.some(({ formula, side }) => formula === 'H2' && side === 'left')

/** What a borohydride becomes in water, and the water. Source: the overall equation 4 R2CO + NaBH4 + 4 H2O -> 4 R2CHOH + NaB(OH)4, from memory. */
const borohydrideEquations = [
  { hydride: 'NaBH4', name: 'sodium borohydride', borate: 'NaB(OH)4', borateName: 'sodium tetrahydroxyborate' },
] as const

/**
 * The reduction written with the borohydride that is charged, in place of hydrogen that nobody charges.
 *
 * @param charged  what stands over the arrow or among the charges
 * @returns null where no borohydride is charged, or its equation does not come out
 */
export function hydrideProposal(equation: Equation, charged: readonly Composition[]): Proposal | null {
  const there = new Set([...equation.reactants.map(one => hill(one.composition)), ...charged.map(one => hill(one))])
  const row = borohydrideEquations.find(({ hydride }) => there.has(hill(compositionOf(hydride))))
  if (row === undefined) return null
  const isNamed = (side: readonly Term[], formula: string): boolean =>
    side.some(one => hill(one.composition) === hill(compositionOf(formula)))
  const wanted = [
    { formula: row.hydride, name: row.name, side: 'left' },
    { formula: 'H2O', name: 'water', side: 'left' },
    { formula: row.borate, name: row.borateName, side: 'right' },
  ] as const
  const added = wanted.filter(one => !isNamed(one.side === 'left' ? equation.reactants : equation.products, one.formula))
  return added.length === 0 ? null : recountedWith(equation, added)
}

function compositionOf(formula: string): Composition {
  const read = parseFormula(formula)
  if (!read.ok) throw new RangeError(formula)
  return read.value
}
