import type { OclConstants, OclMolecule } from './openchemlib-parts.ts'
import { type GroupedSmiles, groupedSmiles, mirrored, withoutLoneHands } from './stereo-groups.ts'
import type { StereoRelation, Structure } from './structure.ts'

interface Read {
  readonly structure: Structure
  readonly molecule: OclMolecule
}

/**
 * What the other structure is beside the one.
 *
 * @param keyOf  identity key of a SMILES; null where it cannot be read
 * @returns null where they differ by more than stereo
 */
export function stereoBetween(
  one: Read,
  other: Read,
  constants: OclConstants,
  keyOf: (smiles: string) => string | null,
): StereoRelation | null {
  if (one.structure.identityKey === other.structure.identityKey) return 'same'
  if (one.structure.skeletonKey !== other.structure.skeletonKey) return null
  const [open, otherOpen] = [openIn(one.molecule, constants), openIn(other.molecule, constants)]
  const [grouped, otherGrouped] = [groupedIn(one), groupedIn(other)]
  if (keyOf(withoutHands(grouped.smiles)) !== keyOf(withoutHands(otherGrouped.smiles))) {
    if (open.bonds !== otherOpen.bonds) return open.bonds > otherOpen.bonds ? 'states more' : 'states less'
    return 'other geometry'
  }
  if (open.atoms !== otherOpen.atoms) return open.atoms > otherOpen.atoms ? 'states more' : 'states less'
  const [isMixed, isOtherMixed] = [grouped, otherGrouped].map(({ groups }) => groups.some(group => group.kind !== 'a'))
  if (!isMixed && !isOtherMixed && keyOf(mirrored(grouped.smiles)) === other.structure.identityKey) return 'other hand'
  if (!isMixed && bothHandsKey(one, constants) === other.structure.identityKey) return 'racemate'
  if (!isOtherMixed && bothHandsKey(other, constants) === one.structure.identityKey) return 'one hand'
  return 'other stereoisomer'
}

/** What it states: a hand that is written and then said to be both is none, one that is said to be as drawn is just written. */
const groupedIn = ({ structure }: Read): GroupedSmiles => withoutLoneHands(groupedSmiles(structure.smiles))

/** The same with cis and trans alone. */
const withoutHands = (smiles: string): string => smiles.replace(/@/g, '')

/** Centres and double bonds of which no hand and no side is stated. */
function openIn(molecule: OclMolecule, constants: OclConstants): { readonly atoms: number; readonly bonds: number } {
  molecule.ensureHelperArrays(constants.cHelperParities)
  const count = (all: number, isOpen: (at: number) => boolean): number => Array.from({ length: all }, (_, at) => at).filter(isOpen).length
  return {
    atoms: count(molecule.getAllAtoms(), atom => molecule.getAtomParity(atom) === constants.cAtomParityUnknown),
    bonds: count(molecule.getAllBonds(), bond => molecule.getBondParity(bond) === constants.cBondParityUnknown),
  }
}

/** Key of the racemate of one hand. */
function bothHandsKey({ molecule }: Read, constants: OclConstants): string {
  const copy = molecule.getCompactCopy()
  copy.ensureHelperArrays(constants.cHelperParities)
  for (let atom = 0; atom < copy.getAllAtoms(); atom++)
    if (copy.getAtomParity(atom) !== constants.cAtomParityNone) copy.setAtomESR(atom, constants.cESRTypeAnd, 0)
  return copy.getIDCode()
}
