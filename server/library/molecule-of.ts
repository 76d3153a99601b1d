import { Molecule } from 'openchemlib'
import { withGroups } from '../../core/chemistry/hands-of.ts'

/**
 * The molecule of a SMILES, all its pieces in one, with its stereo groups: a molfile then says of a racemate that it is no single hand (chiral
 * flag 0). A metal written bare stays bare in a molfile: its valence is told there, since a reader
 * fills up one that is not with hydrogens.
 */
export function moleculeOf(smiles: string): Molecule {
  const molecule = withGroups(smiles, text => Molecule.fromSmiles(text), Molecule)
  molecule.ensureHelperArrays(Molecule.cHelperNeighbours)
  for (let atom = 0; atom < molecule.getAllAtoms(); atom++) {
    const isBare =
      molecule.getConnAtoms(atom) === 0 && molecule.getAtomCharge(atom) === 0 && smiles.includes(`[${molecule.getAtomLabel(atom)}]`)
    if (isBare) molecule.setAtomAbnormalValence(atom, 0)
  }
  return molecule
}
