import type { Toolkit } from '../chemistry/structure.ts'

/** A reaction SMILES: reactants, what stands over the arrow, products, parted by two angle brackets, without a blank. */
const reaction = /^[^\s>{}]+>[^\s>{}]*>[^\s>{}]+$/

/** Longest that is read, characters. */
const longest = 20_000

export const isReactionSmiles = (text: string): boolean => text.length <= longest && reaction.test(text.trim())

/**
 * The molecules on the two sides of a reaction SMILES, as SMILES. What stands over the arrow is left out: it is no reactant.
 *
 * Dots part molecules; ions that stand one after the other are one compound until their charges cancel.
 */
export function sidesOfReactionSmiles(text: string, toolkit: Toolkit): readonly [readonly string[], readonly string[]] {
  const [left, , right] = text.trim().split('>') as [string, string, string]
  return [moleculesOf(left, toolkit), moleculesOf(right, toolkit)]
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
