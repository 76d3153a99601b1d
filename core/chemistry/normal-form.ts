import type { OclConstants, OclMolecule } from './openchemlib-parts.ts'

/** Metals whose bonds to these elements are drawn by some and left out by others. */
const ionic = new Set(['Li', 'Na', 'K', 'Rb', 'Cs', 'Mg', 'Ca', 'Sr', 'Ba'])
const anions = new Set(['O', 'S', 'N', 'F', 'Cl', 'Br', 'I'])
/** Of these a bond to an oxygen is drawn double by some and as two charges by others. Nitrogen's is always read as charges. */
const dative = new Set(['S', 'P', 'Se'])
/** Takers of a proton, the most basic kinds first. */
const takers = ['N', 'O', 'S', 'F', 'Cl', 'Br', 'I']

/**
 * A molecule in one way of writing it out of several that mean one substance: ions of the light metals apart, sulfoxides and phosphine oxides
 * with a double bond, protons on the acid rather than the base wherever both are there (a zwitterion, an ammonium salt). Formula and charge
 * stay as they are.
 *
 * Source: the InChI Technical Manual (IUPAC), "Normalization": bonds to metals, charges of opposite sign beside each other, mobile protons.
 *
 * @returns null where it is written so already
 */
export function normalForm(molecule: OclMolecule, constants: OclConstants): OclMolecule | null {
  const copy = molecule.getCompactCopy()
  const atoms = (): readonly number[] => {
    copy.ensureHelperArrays(constants.cHelperNeighbours)
    return Array.from({ length: copy.getAllAtoms() }, (_, atom) => atom)
  }
  const charge = (atom: number, more: number) => copy.setAtomCharge(atom, copy.getAtomCharge(atom) + more)
  let changed = false

  const isMetal = (atom: number) => ionic.has(copy.getAtomLabel(atom))
  const drawn = atoms().flatMap(atom => {
    const near = Array.from({ length: copy.getConnAtoms(atom) }, (_, at) => ({
      other: copy.getConnAtom(atom, at),
      bond: copy.getConnBond(atom, at),
    }))
    // A Grignard reagent or an organolithium is no salt: all bonds of a metal that holds carbon stay.
    return isMetal(atom) && near.length > 0 && near.every(one => anions.has(copy.getAtomLabel(one.other)))
      ? near.map(one => ({ ...one, atom }))
      : []
  })
  for (const { atom, other, bond } of drawn) {
    const order = copy.getBondOrder(bond)
    charge(atom, order)
    charge(other, -order)
    copy.markBondForDeletion(bond)
    changed = true
  }
  if (drawn.length > 0) copy.deleteMarkedAtomsAndBonds()

  for (const atom of atoms()) {
    if (!dative.has(copy.getAtomLabel(atom))) continue
    for (let at = 0; at < copy.getConnAtoms(atom) && copy.getAtomCharge(atom) > 0; at++) {
      const [other, bond] = [copy.getConnAtom(atom, at), copy.getConnBond(atom, at)]
      if (copy.getAtomLabel(other) !== 'O' || copy.getAtomCharge(other) !== -1 || copy.getBondOrder(bond) !== 1) continue
      charge(atom, -1)
      charge(other, 1)
      copy.setBondOrder(bond, 2)
      changed = true
    }
  }

  const all = atoms()
  const isBesideOpposite = (atom: number) =>
    Array.from({ length: copy.getConnAtoms(atom) }, (_, at) => copy.getAtomCharge(copy.getConnAtom(atom, at))).some(
      other => other * copy.getAtomCharge(atom) < 0,
    )
  const givers = all.filter(
    atom =>
      copy.getAtomCharge(atom) === 1 &&
      ['N', 'O'].includes(copy.getAtomLabel(atom)) &&
      copy.getAllHydrogens(atom) > 0 &&
      !isBesideOpposite(atom),
  )
  const taking = all.filter(atom => copy.getAtomCharge(atom) === -1 && takers.includes(copy.getAtomLabel(atom)) && !isBesideOpposite(atom))
  taking.sort((one, other) => takers.indexOf(copy.getAtomLabel(one)) - takers.indexOf(copy.getAtomLabel(other)))
  for (const [at, giver] of givers.entries()) {
    const taker = taking[at]
    if (taker === undefined) break
    copy.setAtomCharge(giver, 0)
    copy.setAtomCharge(taker, 0)
    changed = true
  }
  if (!changed) return null
  copy.ensureHelperArrays(constants.cHelperNeighbours)
  return copy
}
