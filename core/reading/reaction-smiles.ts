import type { Toolkit } from '../chemistry/structure.ts'

/** A reaction SMILES: reactants, what stands over the arrow, products, parted by two angle brackets, without a blank. */
const reaction = /^[^\s>{}]+>[^\s>{}]*>[^\s>{}]+$/

/** Longest that is read, characters. */
const longest = 20_000

export const isReactionSmiles = (text: string): boolean => text.length <= longest && reaction.test(text.trim())

export interface ReactionSmiles {
  readonly reactants: readonly string[]
  /** What stands over the arrow: charged, but no reactant of the equation. */
  readonly agents: readonly string[]
  readonly products: readonly string[]
}

/**
 * The molecules of a reaction SMILES, as SMILES.
 *
 * Dots part molecules; ions that stand one after the other are one compound until their charges cancel.
 */
export function partsOfReactionSmiles(text: string, toolkit: Toolkit): ReactionSmiles {
  const [left, over, right] = text.trim().split('>') as [string, string, string]
  return { reactants: moleculesOf(left, toolkit), agents: moleculesOf(over, toolkit), products: moleculesOf(right, toolkit) }
}

function moleculesOf(side: string, toolkit: Toolkit): readonly string[] {
  const list: string[] = []
  let ions: string[] = []
  let charge = 0
  for (const piece of side.split('.').filter(one => one !== '')) {
    const read = /[+-]/.test(piece) ? toolkit.parse(piece) : null
    const own = read?.ok ? read.value.composition.charge : 0
    if (own === 0 && ions.length === 0) {
      list.push(piece)
      continue
    }
    ions.push(piece)
    charge += own
    if (charge !== 0) continue
    list.push(ions.join('.'))
    ions = []
  }
  return [...list, ...ions]
}
