/**
 * Stereo groups of CXSMILES, written behind a SMILES between bars: `|&1:3,5|`.
 *
 * `&` says that both hands are there, of all atoms of the group together (a racemate of one relative configuration); `o` that it is one of the
 * two and not known which; `a` that the hand is as drawn. A SMILES by itself can state the last alone.
 *
 * Source: ChemAxon Extended SMILES, "enhanced stereo"; read and written so by RDKit too.
 */
export interface StereoGroup {
  readonly kind: '&' | 'o' | 'a'
  /** Groups of one kind with one number are one; null for `a`. */
  readonly number: number | null
  /** Counted from 0 in the order of the SMILES, hydrogens in brackets of their own among them. */
  readonly atoms: readonly number[]
}

export interface GroupedSmiles {
  /** The SMILES itself. */
  readonly smiles: string
  readonly groups: readonly StereoGroup[]
  /** What stands between the bars besides stereo groups; null = nothing. */
  readonly rest: string | null
}

const extended = /^(\S+)\s+\|([^|]*)\|$/

/** A SMILES parted from what CXSMILES adds to it. */
export function groupedSmiles(text: string): GroupedSmiles {
  const [, smiles, extension] = extended.exec(text.trim()) ?? []
  return smiles === undefined ? { smiles: text.trim(), groups: [], rest: null } : { smiles, ...stereoGroups(extension ?? '') }
}

/** The stereo groups of an extension, without its bars. */
export function stereoGroups(extension: string): Pick<GroupedSmiles, 'groups' | 'rest'> {
  const groups: StereoGroup[] = []
  const others = extension.replace(
    /(?:^|,)(?:([&o])(\d+)|(a)):(\d+(?:,\d+)*)(?=,|$)/g,
    (_, kind: '&' | 'o' | undefined, number, a, atoms) => {
      groups.push({ kind: kind ?? a, number: number === undefined ? null : Number(number), atoms: atoms.split(',').map(Number) })
      return ''
    },
  )
  const rest = others.replace(/^,/, '')
  return { groups, rest: rest === '' ? null : rest }
}

/** `|&1:3,5|` with a blank before it, empty where there are no groups. */
export const writtenGroups = (groups: readonly StereoGroup[]): string =>
  groups.length === 0 ? '' : ` |${groups.map(({ kind, number, atoms }) => `${kind}${number ?? ''}:${atoms.join(',')}`).join(',')}|`

/** The atoms of a SMILES as written, in their order. */
export const atomsWritten = (smiles: string): readonly string[] => smiles.match(atom) ?? []

const atom = /\[[^\]]*\]|Cl|Br|[BCNOPSFIbcnops*]/g

/** The mirror image, written. */
export const mirrored = (smiles: string): string => smiles.replace(/@{1,2}/g, mark => (mark === '@' ? '@@' : '@'))

/**
 * A group of both hands with one atom alone says no more than a SMILES that states no hand there: it is written so, and told apart from it by
 * nothing.
 */
export function withoutLoneHands({ smiles, groups, rest }: GroupedSmiles): GroupedSmiles {
  const atomsOf = (group: StereoGroup): number =>
    groups.filter(one => one.kind === group.kind && one.number === group.number).reduce((sum, one) => sum + one.atoms.length, 0)
  const isLone = (group: StereoGroup): boolean => group.kind === '&' && atomsOf(group) === 1
  const lone = new Set(groups.filter(isLone).flatMap(group => group.atoms))
  const flat = lone.size === 0 ? smiles : eachAtom(smiles, (text, at) => (lone.has(at) ? text.replace(/@/g, '') : text))
  return { smiles: flat, groups: groups.filter(group => !isLone(group)), rest }
}

/** A SMILES with each of its atoms written anew. */
export function eachAtom(smiles: string, written: (atom: string, at: number) => string): string {
  let at = 0
  return smiles.replace(atom, text => written(text, at++))
}
