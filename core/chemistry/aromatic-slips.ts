import type { Problem } from '../problem/problem.ts'
import type { OclConstants, OclMolecule } from './openchemlib-parts.ts'
import { canAllPair } from './pairing.ts'
import { clip, smilesProblem } from './smiles-slips.ts'
import { atomsWritten, eachAtom } from './stereo-groups.ts'

/** What the aromatic atoms of a SMILES are short of. */
export interface AromaticSlip {
  readonly kind: 'outside a ring' | 'no double bonds'
  /** Places of atoms in the SMILES as written, from 0: those outside rings, or the aromatic ones. */
  readonly places: readonly number[]
}

/**
 * What is wrong with the small letters of a SMILES: an atom in no ring, or rings that cannot be given alternating double bonds. The toolkit
 * takes both, leaving an unpaired electron where a hydrogen is missing.
 *
 * @param smiles  as it was read: the molecule holds its heavy atoms in this order
 * @returns null where nothing is
 */
export function aromaticSlip(smiles: string, molecule: OclMolecule, constants: OclConstants): AromaticSlip | null {
  const heavy = atomsWritten(smiles).flatMap((text, place) => (isHydrogen(text) ? [] : [{ text, place }]))
  if (!heavy.some(({ text }) => isAromatic(text))) return null
  molecule.ensureHelperArrays(constants.cHelperRings)
  const held = Array.from({ length: molecule.getAllAtoms() }, (_, atom) => atom).filter(atom => molecule.getAtomLabel(atom) !== 'H')
  const aromatic = held.flatMap((atom, at) => (isAromatic(heavy[at]?.text ?? '') ? [{ atom, place: heavy[at]!.place }] : []))
  const outside = aromatic.filter(({ atom }) => !molecule.isRingAtom(atom))
  if (outside.length > 0) return { kind: 'outside a ring', places: outside.map(one => one.place) }
  if (aromatic.every(({ atom }) => molecule.getAtomRadical(atom) === 0)) return null
  // In rings of rings, such as a porphyrin, it stops before it has found the double bonds that there are.
  const isOpen = new Set(aromatic.map(one => one.atom).filter(atom => molecule.getAtomRadical(atom) !== 0 || hasDouble(molecule, atom)))
  const open = [...isOpen]
  const partners = open.map(atom =>
    bondsOf(molecule, atom).flatMap(({ other, bond }) => (isOpen.has(other) && molecule.isRingBond(bond) ? [open.indexOf(other)] : [])),
  )
  return canAllPair(partners) ? null : { kind: 'no double bonds', places: aromatic.map(one => one.place) }
}

/**
 * The same as a problem, with a way of writing it that can be read, where one is found by trying.
 *
 * @param keyOf  key of a compound whose SMILES is tried; null where it cannot be read
 */
export function aromaticProblem(smiles: string, slip: AromaticSlip, keyOf: (smiles: string) => string | null): Omit<Problem, 'where'> {
  if (slip.kind === 'outside a ring') {
    const capital = eachAtom(smiles, (atom, at) => (slip.places.includes(at) ? upper(atom) : atom))
    return smilesProblem(
      'smiles-aromatic',
      `In "${clip(smiles)}" an atom that is in no ring is written with a small letter, as an aromatic one.`,
      keyOf(capital) === null ? 'Write atoms outside aromatic rings with capitals.' : `Write it with a capital: ${capital}.`,
    )
  }
  const mended = withHydrogen(smiles, slip.places, keyOf)
  const what = `The aromatic rings of "${clip(smiles)}" cannot be given alternating double bonds: a hydrogen or a charge is missing.`
  if (mended.length === 0)
    return smilesProblem(
      'smiles-aromatic',
      what,
      'Write its double bonds and hydrogens out with capitals, as in C1=CC=CC1 for cyclopentadiene.',
    )
  return smilesProblem('smiles-aromatic', what, `Write [nH] for the nitrogen that carries a hydrogen: ${mended.join(' or ')}.`)
}

/** Every different compound that comes of a hydrogen on one of the bare nitrogens, at most three. */
function withHydrogen(smiles: string, places: readonly number[], keyOf: (smiles: string) => string | null): readonly string[] {
  const atoms = atomsWritten(smiles)
  const found = new Map<string, string>()
  for (const place of places.filter(at => atoms[at] === 'n' || atoms[at] === '[n]').slice(0, mostTried)) {
    const text = eachAtom(smiles, (atom, at) => (at === place ? '[nH]' : atom))
    const key = keyOf(text)
    if (key !== null && !found.has(key)) found.set(key, text)
    if (found.size === 3) break
  }
  return [...found.values()]
}

/** Each is read once more: a text of a hundred nitrogens would hold up the reader. */
const mostTried = 12

const symbolOf = (atom: string): string => /^\[?\d*([A-Za-z][a-z]?)/.exec(atom)?.[1] ?? ''
const isAromatic = (atom: string): boolean => /^[a-z]/.test(symbolOf(atom))
const isHydrogen = (atom: string): boolean => /^\[\d*H(?![a-z])/.test(atom)
const upper = (atom: string): string => atom.replace(/[a-z]/, letter => letter.toUpperCase())

const bondsOf = (molecule: OclMolecule, atom: number) =>
  Array.from({ length: molecule.getConnAtoms(atom) }, (_, at) => ({
    other: molecule.getConnAtom(atom, at),
    bond: molecule.getConnBond(atom, at),
  }))

const hasDouble = (molecule: OclMolecule, atom: number): boolean =>
  bondsOf(molecule, atom).some(({ bond }) => molecule.isRingBond(bond) && molecule.getBondOrder(bond) === 2)
