import type { OclConstants, OclMolecule } from './openchemlib-parts.ts'
import {
  atomsWritten,
  eachAtom,
  type GroupedSmiles,
  groupedSmiles,
  type StereoGroup,
  withoutLoneHands,
  writtenGroups,
} from './stereo-groups.ts'

/**
 * The molecule of a SMILES with its stereo groups.
 *
 * @param read  the toolkit's own reader, of a SMILES alone
 */
export function withGroups<M extends OclMolecule>(smiles: string, read: (smiles: string) => M, constants: OclConstants): M {
  const grouped = withoutLoneHands(groupedSmiles(smiles))
  const molecule = read(numbered(grouped))
  layGroups(molecule, grouped.groups, constants)
  return molecule
}

/** What is wrong with the stereo groups of a SMILES, as half a sentence; null where nothing is. */
export function groupsAmiss({ smiles, groups, rest }: GroupedSmiles): string | null {
  if (rest !== null) return `of what stands between the bars only stereo groups (&1:, o1:, a:) are read, and "${rest}" is none`
  const written = atomsWritten(smiles)
  const amiss = groups.flatMap(group => group.atoms).find(atom => written[atom]?.includes('@') !== true)
  return amiss === undefined
    ? null
    : `atom ${amiss} of its stereo groups, counted from 0, ${amiss in written ? 'states no hand' : 'is not there'}`
}

/** The SMILES with its grouped atoms alone numbered, so that they are found again wherever the toolkit puts them. */
export function numbered({ smiles, groups }: GroupedSmiles): string {
  const grouped = new Set(groups.flatMap(group => group.atoms))
  return grouped.size === 0 ? smiles : eachAtom(smiles, (atom, at) => atom.replace(/(?::\d+)?\]$/, grouped.has(at) ? `:${at + 1}]` : ']'))
}

/** Lays stereo groups upon the molecule of a numbered SMILES, and takes the numbers off. */
export function layGroups(molecule: OclMolecule, groups: readonly StereoGroup[], constants: OclConstants): void {
  if (groups.length === 0) return
  for (let at = 0; at < molecule.getAllAtoms(); at++) {
    const group = groups.find(one => one.atoms.includes(molecule.getAtomMapNo(at) - 1))
    if (group === undefined) continue
    molecule.setAtomMapNo(at, 0, false)
    const type = { '&': constants.cESRTypeAnd, o: constants.cESRTypeOr, a: constants.cESRTypeAbs }[group.kind]
    molecule.setAtomESR(at, type, numbersOf(groups, group.kind).indexOf(group.number))
  }
}

const numbersOf = (groups: readonly StereoGroup[], kind: StereoGroup['kind']): readonly (number | null)[] => [
  ...new Set(groups.filter(one => one.kind === kind).map(one => one.number)),
]

/** A molecule as SMILES, with its stereo groups where it has any: a racemate is not written as one of its hands. */
export function smilesWithGroups(molecule: OclMolecule, constants: OclConstants): string {
  molecule.ensureHelperArrays(constants.cHelperParities)
  const plain = molecule.toIsomericSmiles()
  const groups = new Map<string, { readonly kind: '&' | 'o'; readonly number: number; readonly atoms: number[] }>()
  const written = atomsWritten(plain)
  for (const [place, atom] of orderOf(molecule).entries()) {
    const type = molecule.getAtomESRType(atom)
    const kind = type === constants.cESRTypeAnd ? '&' : type === constants.cESRTypeOr ? 'o' : null
    if (kind === null || written[place]?.includes('@') !== true) continue
    const number = molecule.getAtomESRGroup(atom) + 1
    const group = groups.get(`${kind}${number}`) ?? { kind, number, atoms: [] }
    group.atoms.push(place)
    groups.set(`${kind}${number}`, group)
  }
  return `${plain}${writtenGroups([...groups.values()])}`
}

/** Its atoms in the order in which the toolkit writes them: read off the numbers that it writes beside them. */
function orderOf(molecule: OclMolecule): readonly number[] {
  const copy = molecule.getCompactCopy()
  for (let atom = 0; atom < copy.getAllAtoms(); atom++) copy.setAtomMapNo(atom, atom + 1, false)
  return [...copy.toIsomericSmiles({ includeMapping: true }).matchAll(/:(\d+)\]/g)].map(([, number]) => Number(number) - 1)
}
