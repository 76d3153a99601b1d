import type { TermRead } from './equation-term.ts'
import type { NameIndex } from './names.ts'

interface Counted {
  readonly compound: string
  readonly coefficient: number
}

/**
 * The sides of an equation as the library has them: a hydrate that reacts is the compound that it is weighed out for, and the water that it
 * brings is taken off the water of the products; what the products do not give is a reactant.
 *
 * A compound that is not known is left out of its side.
 */
export function withoutCrystalWater(
  left: readonly TermRead[],
  right: readonly TermRead[],
  index: NameIndex,
): { readonly reactants: readonly Counted[]; readonly products: readonly Counted[] } {
  const side = (terms: readonly TermRead[]): Counted[] =>
    terms.flatMap(({ compound, coefficient }) => (compound === null ? [] : [{ compound, coefficient }]))
  const brought = left.reduce((sum, term) => sum + term.coefficient * (term.crystalWater ?? 0), 0)
  const found = index.lookUp('H2O')
  if (brought === 0 || found.kind !== 'material') return { reactants: side(left), products: side(right) }
  const water = found.material
  const of = (terms: readonly Counted[]): number => terms.find(one => one.compound === water)?.coefficient ?? 0
  const net = Math.round((of(side(right)) - of(side(left)) - brought) * 1e6) / 1e6
  return { reactants: withWater(side(left), water, -net), products: withWater(side(right), water, net) }
}

/** The side with so much water, at the place where it stood or else at the end. */
function withWater(terms: readonly Counted[], water: string, coefficient: number): readonly Counted[] {
  if (coefficient <= 0) return terms.filter(one => one.compound !== water)
  const set = { compound: water, coefficient }
  return terms.some(one => one.compound === water) ? terms.map(one => (one.compound === water ? set : one)) : [...terms, set]
}
