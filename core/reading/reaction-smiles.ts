import type { Toolkit } from '../chemistry/structure.ts'

/**
 * A reaction SMILES: reactants, what stands over the arrow, products, parted by two angle brackets, without a blank; behind it, between
 * bars, what CXSMILES adds.
 */
const reaction = /^([^\s>{}]+>[^\s>{}]*>[^\s>{}]+)(?:\s+\|([^|]*)\|)?$/

/** Longest that is read, characters. */
const longest = 20_000

export const isReactionSmiles = (text: string): boolean => text.length <= longest && reaction.test(text.trim())

/** A reaction SMILES with what CXSMILES adds to it, and the name behind. */
export function smilesLine(line: string): { readonly body: string; readonly title: string } {
  const [, smiles = line.trim(), extension, title = ''] = /^\s*(\S+)(?:[ \t]+(\|[^|\n]*\|))?[ \t]*(.*)$/m.exec(line) ?? []
  return { body: extension === undefined ? smiles : `${smiles} ${extension}`, title: title.trim() }
}

export interface ReactionSmiles {
  readonly reactants: readonly string[]
  /** What stands over the arrow: charged, but no reactant of the equation. */
  readonly agents: readonly string[]
  readonly products: readonly string[]
}

/**
 * The compounds of a reaction SMILES, as SMILES.
 *
 * Dots part molecules. What CXSMILES groups (`|f:0.1,3.4|`: pieces counted from 0 over the whole reaction) is one compound; where it groups
 * nothing, ions that stand one after the other are one compound until their charges cancel.
 *
 * Source of the grouping: ChemAxon Extended SMILES, "fragment level grouping".
 */
export function partsOfReactionSmiles(text: string, toolkit: Toolkit): ReactionSmiles {
  const [, body = '', extension = ''] = reaction.exec(text.trim()) ?? []
  const groups = groupsOf(extension)
  let before = 0
  const [reactants, agents, products] = body.split('>').map(side => {
    const pieces = side.split('.').filter(one => one !== '')
    const own = groups.map(group => group.map(one => one - before).filter(one => one >= 0 && one < pieces.length))
    before += pieces.length
    return groups.length === 0 ? moleculesOf(pieces, toolkit) : grouped(pieces, own)
  })
  return { reactants: reactants ?? [], agents: agents ?? [], products: products ?? [] }
}

/** Compounds as a reaction SMILES; one of several pieces is held together by a group. */
export function reactionSmiles({ reactants, agents, products }: ReactionSmiles): string {
  const groups: string[] = []
  let at = 0
  const side = (list: readonly string[]): string =>
    list
      .map(smiles => {
        const count = smiles.split('.').length
        if (count > 1) groups.push(Array.from({ length: count }, (_, piece) => at + piece).join('.'))
        at += count
        return smiles
      })
      .join('.')
  const body = [reactants, agents, products].map(side).join('>')
  return groups.length === 0 ? body : `${body} |f:${groups.join(',')}|`
}

/** "f:0.1,3.4" among the features of an extension, which commas part too. */
function groupsOf(extension: string): readonly (readonly number[])[] {
  const found = /(?:^|,)f:(\d+(?:\.\d+)+(?:,\d+(?:\.\d+)+)*)/.exec(extension)?.[1]
  return found === undefined ? [] : found.split(',').map(group => group.split('.').map(Number))
}

/** Each group where its first piece stands, the pieces beside them alone. */
function grouped(pieces: readonly string[], groups: readonly (readonly number[])[]): readonly string[] {
  const list: string[] = []
  const placed = new Set<number>()
  for (const [at, piece] of pieces.entries()) {
    if (placed.has(at)) continue
    const group = groups.find(one => one.includes(at)) ?? [at]
    for (const one of group) placed.add(one)
    list.push(group.length === 1 ? piece : group.map(one => pieces[one]!).join('.'))
  }
  return list
}

function moleculesOf(pieces: readonly string[], toolkit: Toolkit): readonly string[] {
  const list: string[] = []
  let ions: string[] = []
  let charge = 0
  for (const piece of pieces) {
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
