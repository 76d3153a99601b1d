import type { OclConstants, OclMolecule } from './openchemlib-parts.ts'
import { groupedSmiles, mirrored } from './stereo-groups.ts'
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
  const [plain, otherPlain] = [one, other].map(({ structure }) => groupedSmiles(structure.smiles).smiles) as [string, string]
  if (keyOf(withoutHands(plain)) !== keyOf(withoutHands(otherPlain))) {
    if (open.bonds !== otherOpen.bonds) return open.bonds > otherOpen.bonds ? 'states more' : 'states less'
    return 'other geometry'
  }
  if (open.atoms !== otherOpen.atoms) return open.atoms > otherOpen.atoms ? 'states more' : 'states less'
  const [isGrouped, isOtherGrouped] = [one, other].map(({ structure }) => groupedSmiles(structure.smiles).groups.length > 0)
  if (!isGrouped && !isOtherGrouped && keyOf(mirrored(plain)) === other.structure.identityKey) return 'other hand'
  if (!isGrouped && bothHandsKey(one, constants) === other.structure.identityKey) return 'racemate'
  if (!isOtherGrouped && bothHandsKey(other, constants) === one.structure.identityKey) return 'one hand'
  return 'other stereoisomer'
}

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
