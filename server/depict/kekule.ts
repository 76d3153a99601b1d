import { Molecule } from 'openchemlib'

/** Bonds that an uncharged atom of an aromatic ring forms. */
const valence: Readonly<Record<string, number>> = { C: 4, N: 3, O: 2, S: 2 }

function spare(molecule: Molecule, atom: number, orderOf: (bond: number) => number): number {
  const bonds = valence[molecule.getAtomLabel(atom)]
  // In a ring the toolkit takes the missing bond for an unpaired electron; outside one (TEMPO) it is one.
  if (bonds === undefined || (molecule.getAtomRadical(atom) !== 0 && !molecule.isRingAtom(atom))) return 0
  let used = molecule.getImplicitHydrogens(atom)
  for (let k = 0; k < molecule.getConnAtoms(atom); k++) used += orderOf(molecule.getConnBond(atom, k))
  // A charge on nitrogen, oxygen or sulfur changes how many bonds it forms; on carbon either sign takes one away.
  const charge = molecule.getAtomCharge(atom)
  return bonds + (molecule.getAtomLabel(atom) === 'C' ? -Math.abs(charge) : charge) - used
}

/**
 * Sets double bonds where the toolkit left a large aromatic ring without some of its own (it does so in porphyrins): every atom with a bond to
 * spare gets one. Does nothing to a molecule in which none is missing.
 *
 * @returns false where they cannot be set so that all atoms are served: the structure is then not to be drawn
 */
export function completeKekule(molecule: Molecule): boolean {
  molecule.ensureHelperArrays(Molecule.cHelperRings)
  const atoms = Array.from({ length: molecule.getAllAtoms() }, (_, i) => i)
  if (atoms.every(atom => spare(molecule, atom, bond => molecule.getBondOrder(bond)) <= 0)) return true
  const loose = Array.from({ length: molecule.getAllBonds() }, (_, i) => i).filter(bond => molecule.isRingBond(bond))
  const inLoose = new Set(loose)
  const single = (bond: number) => (inLoose.has(bond) ? 1 : molecule.getBondOrder(bond))
  const open = new Set(atoms.filter(atom => spare(molecule, atom, single) > 0))
  const options = (atom: number) =>
    loose.filter(bond => {
      const [a, b] = [molecule.getBondAtom(0, bond), molecule.getBondAtom(1, bond)]
      return (a === atom || b === atom) && open.has(a) && open.has(b)
    })
  const doubles: number[] = []
  const pair = (): boolean => {
    let tightest: { atom: number; bonds: number[] } | null = null
    for (const atom of open) {
      const bonds = options(atom)
      if (!tightest || bonds.length < tightest.bonds.length) tightest = { atom, bonds }
    }
    if (!tightest) return true
    for (const bond of tightest.bonds) {
      const [a, b] = [molecule.getBondAtom(0, bond), molecule.getBondAtom(1, bond)]
      open.delete(a)
      open.delete(b)
      doubles.push(bond)
      if (pair()) return true
      doubles.pop()
      open.add(a)
      open.add(b)
    }
    return false
  }
  if (!pair()) return false
  const served = doubles.flatMap(bond => [molecule.getBondAtom(0, bond), molecule.getBondAtom(1, bond)])
  for (const atom of served) molecule.setAtomRadical(atom, 0)
  for (const bond of loose) molecule.setBondOrder(bond, doubles.includes(bond) ? 2 : 1)
  molecule.ensureHelperArrays(Molecule.cHelperRings)
  return true
}
