import { atomsWritten, groupedSmiles, type StereoGroup, stereoGroups, writtenGroups } from '../chemistry/stereo-groups.ts'
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
 * Source of the grouping: ChemAxon Extended SMILES, "fragment level grouping"; of racemates: "enhanced stereo", its atoms counted from 0 over
 * the whole reaction too.
 */
export function partsOfReactionSmiles(text: string, toolkit: Toolkit): ReactionSmiles {
  const [, body = '', extension = ''] = reaction.exec(text.trim()) ?? []
  const fragments = groupsOf(extension)
  const stereo = stereoGroups(extension).groups
  let before = 0
  let atomsBefore = 0
  const [reactants, agents, products] = withoutMap(body)
    .split('>')
    .map(side => {
      const pieces = side.split('.').filter(one => one !== '')
      const own = fragments.map(group => group.map(one => one - before).filter(one => one >= 0 && one < pieces.length))
      before += pieces.length
      const first = pieces.map(piece => {
        const at = atomsBefore
        atomsBefore += atomsWritten(piece).length
        return at
      })
      const molecules = fragments.length === 0 ? moleculesOf(pieces, toolkit) : grouped(pieces, own)
      return molecules.map(list => joined(list, pieces, first, stereo))
    })
  return { reactants: reactants ?? [], agents: agents ?? [], products: products ?? [] }
}

/** Without the numbers of an atom map: they say which atom becomes which, and are no part of a structure. */
const withoutMap = (smiles: string): string => smiles.replace(/:\d+\]/g, ']')

/** Pieces as one compound, with those of the stereo groups that lie in it, whose atoms are counted over the whole reaction. */
function joined(list: readonly number[], pieces: readonly string[], first: readonly number[], stereo: readonly StereoGroup[]): string {
  const places = new Map<number, number>()
  for (const piece of list) for (const [at] of atomsWritten(pieces[piece]!).entries()) places.set(first[piece]! + at, places.size)
  const inIt = stereo
    .map(group => ({ ...group, atoms: group.atoms.flatMap(atom => places.get(atom) ?? []) }))
    .filter(group => group.atoms.length > 0)
  // Counted anew, so that the same compound is written alike wherever it stands.
  const numbers = [...new Set(inIt.map(group => group.number))]
  const groups = inIt.map(group => ({ ...group, number: group.number === null ? null : numbers.indexOf(group.number) + 1 }))
  return `${list.map(piece => pieces[piece]!).join('.')}${writtenGroups(groups)}`
}

/** Compounds as a reaction SMILES; one of several pieces is held together by a group, and a racemate stays one. */
export function reactionSmiles({ reactants, agents, products }: ReactionSmiles): string {
  const fragments: string[] = []
  const stereo: StereoGroup[] = []
  let at = 0
  let atoms = 0
  const side = (list: readonly string[]): string =>
    list
      .map(compound => {
        const { smiles, groups } = groupedSmiles(compound)
        const count = smiles.split('.').length
        if (count > 1) fragments.push(Array.from({ length: count }, (_, piece) => at + piece).join('.'))
        const taken = Math.max(0, ...stereo.map(one => one.number ?? 0))
        for (const { kind, number, atoms: own } of groups)
          stereo.push({ kind, number: number === null ? null : taken + number, atoms: own.map(atom => atom + atoms) })
        at += count
        atoms += atomsWritten(smiles).length
        return smiles
      })
      .join('.')
  const body = [reactants, agents, products].map(side).join('>')
  const held = fragments.length === 0 ? '' : `f:${fragments.join(',')}`
  const extension = [held, writtenGroups(stereo).trim().slice(1, -1)].filter(one => one !== '').join(',')
  return extension === '' ? body : `${body} |${extension}|`
}

/** "f:0.1,3.4" among the features of an extension, which commas part too. */
function groupsOf(extension: string): readonly (readonly number[])[] {
  const found = /(?:^|,)f:(\d+(?:\.\d+)+(?:,\d+(?:\.\d+)+)*)/.exec(extension)?.[1]
  return found === undefined ? [] : found.split(',').map(group => group.split('.').map(Number))
}

/** Each group where its first piece stands, the pieces beside them alone: their places. */
function grouped(pieces: readonly string[], groups: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const list: (readonly number[])[] = []
  const placed = new Set<number>()
  for (const at of pieces.keys()) {
    if (placed.has(at)) continue
    const group = groups.find(one => one.includes(at)) ?? [at]
    for (const one of group) placed.add(one)
    list.push(group)
  }
  return list
}

function moleculesOf(pieces: readonly string[], toolkit: Toolkit): readonly (readonly number[])[] {
  const list: (readonly number[])[] = []
  let ions: number[] = []
  let charge = 0
  for (const [at, piece] of pieces.entries()) {
    const read = /[+-]/.test(piece) ? toolkit.parse(piece) : null
    const own = read?.ok ? read.value.composition.charge : 0
    if (own === 0 && ions.length === 0) {
      list.push([at])
      continue
    }
    ions.push(at)
    charge += own
    if (charge !== 0) continue
    list.push(ions)
    ions = []
  }
  return [...list, ...ions.map(at => [at])]
}
