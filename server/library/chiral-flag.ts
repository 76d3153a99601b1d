import { Molecule } from 'openchemlib'

/**
 * Whether a molfile draws hands and says, by the chiral flag 0 of its fourth line alone, that both are there: what was meant is often the hand
 * as drawn, since many programs write 0 whatever is drawn. Source: CTfile formats, "chiral flag" of the counts line.
 *
 * @param molfile   V2000, from its name line on; a V3000 one writes its groups out, and its flag is not looked at
 * @param molecule  as it was read
 */
export function isBothByFlag(molfile: string, molecule: Molecule): boolean {
  const counts = molfile.split('\n').find(line => /V2000\s*$/.test(line))
  if (counts === undefined || !/^\s*0?\s*$/.test(counts.slice(12, 15))) return false
  molecule.ensureHelperArrays(Molecule.cHelperParities)
  return Array.from({ length: molecule.getAllAtoms() }, (_, atom) => atom).some(
    atom =>
      (molecule.getAtomParity(atom) === Molecule.cAtomParity1 || molecule.getAtomParity(atom) === Molecule.cAtomParity2) &&
      molecule.getAtomESRType(atom) === Molecule.cESRTypeAnd,
  )
}
