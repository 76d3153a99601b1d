import { Molecule } from 'openchemlib'
import type { Drawing, DrawnAtom, DrawnBond } from '../../core/chemistry/drawing.ts'
import { groupedSmiles, withoutLoneHands } from '../../core/chemistry/stereo-groups.ts'
import { moleculeOf } from '../library/molecule-of.ts'
import { completeKekule } from './kekule.ts'
import { labelBox, labelSide } from './labels.ts'
import { arrangePieces } from './pieces.ts'
import type { Sketch, SketchBond } from './sketch.ts'

/** One bond length on every drawing, px. */
export const bondPx = 13.5

const tenth = (value: number): number => Math.round(value * 10) / 10 + 0
const memo = new Map<string, Drawing>()

function sketchOf(molecule: Molecule): Sketch {
  const atoms = Array.from({ length: molecule.getAllAtoms() }, (_, i) => i)
  const bonds: SketchBond[] = Array.from({ length: molecule.getAllBonds() }, (_, i) => ({
    a: molecule.getBondAtom(0, i),
    b: molecule.getBondAtom(1, i),
    order: molecule.getBondOrder(i),
    inRing: molecule.isRingBond(i),
  }))
  const at: number[][] = atoms.map(() => [])
  bonds.forEach((bond, i) => {
    at[bond.a]!.push(i)
    at[bond.b]!.push(i)
  })
  // Bridged rings have odd bonds, so the median and not the mean is the unit.
  const lengths = bonds
    .map(({ a, b }) => Math.hypot(molecule.getAtomX(a) - molecule.getAtomX(b), molecule.getAtomY(a) - molecule.getAtomY(b)))
    .sort((p, q) => p - q)
  const unit = lengths[lengths.length >> 1] || 1
  return {
    x: atoms.map(i => molecule.getAtomX(i) / unit),
    y: atoms.map(i => molecule.getAtomY(i) / unit),
    el: atoms.map(i => molecule.getAtomLabel(i)),
    h: atoms.map(i => molecule.getImplicitHydrogens(i)),
    bonds,
    at,
  }
}

/** Centre of the smallest ring a bond lies in; of several, the one of six. */
function ringCentres(molecule: Molecule, sketch: Sketch): Map<number, { x: number; y: number }> {
  const rings = molecule.getRingSet()
  const found = new Map<number, { x: number; y: number; rank: number }>()
  for (let r = 0; r < rings.getSize(); r++) {
    const atoms = [...rings.getRingAtoms(r)]
    const rank = atoms.length === 6 ? 0 : atoms.length
    const x = atoms.reduce((sum, i) => sum + sketch.x[i]!, 0) / atoms.length
    const y = atoms.reduce((sum, i) => sum + sketch.y[i]!, 0) / atoms.length
    for (const bond of rings.getRingBonds(r)) {
      const last = found.get(bond)
      if (!last || rank < last.rank) found.set(bond, { x, y, rank })
    }
  }
  return found
}

function sideOf(sketch: Sketch, index: number, centre: { x: number; y: number } | undefined): -1 | 0 | 1 {
  const bond = sketch.bonds[index]!
  const ax = sketch.x[bond.a]!
  const ay = sketch.y[bond.a]!
  const dx = sketch.x[bond.b]! - ax
  const dy = sketch.y[bond.b]! - ay
  const offset = (x: number, y: number) => dx * (y - ay) - dy * (x - ax)
  if (centre) return offset(centre.x, centre.y) > 0 ? 1 : -1
  const ends = [bond.a, bond.b]
  // A terminal hetero atom (C=O), or no other bonds at all: symmetric.
  if (ends.some(end => sketch.at[end]!.length === 1 && sketch.el[end] !== 'C')) return 0
  let busier = 0
  for (const end of ends) {
    for (const other of sketch.at[end]!) {
      if (other === index) continue
      const far = sketch.bonds[other]!.a === end ? sketch.bonds[other]!.b : sketch.bonds[other]!.a
      busier += Math.sign(offset(sketch.x[far]!, sketch.y[far]!))
    }
  }
  if (busier !== 0) return busier > 0 ? 1 : -1
  return ends.some(end => sketch.at[end]!.length > 2) ? 0 : 1
}

function isLabelled(molecule: Molecule, sketch: Sketch, atom: number): boolean {
  return sketch.el[atom] !== 'C' || molecule.getAtomCharge(atom) !== 0 || molecule.getAtomMass(atom) !== 0 || sketch.at[atom]!.length === 0
}

/** Readable coordinates; the molecule takes them over and its wedges are set anew from its parities. */
function arrange(molecule: Molecule): Sketch {
  molecule.inventCoordinates()
  molecule.ensureHelperArrays(Molecule.cHelperParities)
  const sketch = sketchOf(molecule)
  arrangePieces(sketch)
  for (let i = 0; i < sketch.x.length; i++) {
    molecule.setAtomX(i, sketch.x[i]!)
    molecule.setAtomY(i, sketch.y[i]!)
  }
  molecule.setStereoBondsFromParity()
  return sketch
}

/**
 * The structure as a textbook draws it: one bond length, chain lying flat, rings at its ends, wedges right.
 *
 * @param smiles a structure the library has checked
 * @throws RangeError for text without atoms: our mistake, since the loader refuses such data
 */
export function drawingOf(smiles: string): Drawing {
  const known = memo.get(smiles)
  if (known) return known
  const molecule = moleculeOf(smiles)
  if (molecule.getAllAtoms() === 0) throw new RangeError(`no atoms in ${JSON.stringify(smiles)}`)
  // The same compound written two ways is drawn alike, and only once.
  const identity = molecule.getIDCode()
  const drawing = memo.get(identity) ?? drawn(molecule, captionOf(smiles))
  memo.set(identity, drawing)
  memo.set(smiles, drawing)
  return drawing
}

/** A racemate is drawn by one of its hands, and the words under it say that both are there. */
function captionOf(smiles: string): string | null {
  const kinds = withoutLoneHands(groupedSmiles(smiles)).groups.map(one => one.kind)
  return kinds.includes('&') ? 'both hands' : kinds.includes('o') ? 'one hand or the other' : null
}

const captionPx = { high: 13, letter: 4.6 }

function drawn(molecule: Molecule, caption: string | null): Drawing {
  completeKekule(molecule)
  const sketch = arrange(molecule)
  const centres = ringCentres(molecule, sketch)
  const sides = sketch.x.map((_, i) => (isLabelled(molecule, sketch, i) ? labelSide(sketch, i) : undefined))
  let left = Number.POSITIVE_INFINITY
  let right = Number.NEGATIVE_INFINITY
  let top = Number.POSITIVE_INFINITY
  let bottom = Number.NEGATIVE_INFINITY
  sketch.x.forEach((_, i) => {
    const side = sides[i]
    const box = side ? labelBox(sketch.el[i]!, sketch.h[i]!, molecule.getAtomCharge(i), side) : { l: 1, r: 1, t: 1, b: 1 }
    left = Math.min(left, sketch.x[i]! * bondPx - box.l)
    right = Math.max(right, sketch.x[i]! * bondPx + box.r)
    top = Math.min(top, sketch.y[i]! * bondPx - box.t)
    bottom = Math.max(bottom, sketch.y[i]! * bondPx + box.b)
  })
  if (caption !== null) {
    const wanting = Math.max(0, captionPx.letter * caption.length - (right - left)) / 2
    left -= wanting
    right += wanting
    bottom += captionPx.high
  }
  const cx = (left + right) / 2
  const cy = (top + bottom) / 2
  const atoms: DrawnAtom[] = sketch.x.map((_, i) => {
    const charge = molecule.getAtomCharge(i)
    const isotope = molecule.getAtomMass(i)
    const radical = molecule.getAtomRadical(i) !== 0
    return {
      x: tenth(sketch.x[i]! * bondPx - cx),
      y: tenth(sketch.y[i]! * bondPx - cy),
      el: sketch.el[i]!,
      ...(sketch.h[i]! > 0 ? { h: sketch.h[i]! } : {}),
      ...(charge !== 0 ? { charge } : {}),
      ...(isotope !== 0 ? { isotope } : {}),
      ...(radical ? { radical: true as const } : {}),
      ...(sides[i] ? { label: sides[i] } : {}),
    }
  })
  const bonds: DrawnBond[] = sketch.bonds.map((bond, i) => {
    const type = molecule.getBondType(i)
    const wedge = type === Molecule.cBondTypeUp ? 'up' : type === Molecule.cBondTypeDown ? 'down' : undefined
    const order = Math.max(1, Math.min(3, bond.order)) as 1 | 2 | 3
    // A wedge has its point at the toolkit's first atom, which setStereoBondsFromParity may have exchanged.
    return {
      a: molecule.getBondAtom(0, i),
      b: molecule.getBondAtom(1, i),
      order,
      ...(wedge ? { wedge } : {}),
      ...(order === 2 ? { side: seenFromA(molecule, sketch, i, sideOf(sketch, i, centres.get(i))) } : {}),
    }
  })
  let highest = atoms[0]!
  for (const atom of atoms)
    if (atom.y < highest.y - 0.5 || (atom.y < highest.y + 0.5 && Math.abs(atom.x) < Math.abs(highest.x))) highest = atom
  return {
    atoms,
    bonds,
    ...(caption === null ? {} : { caption }),
    w: Math.ceil(right - left),
    h: Math.ceil(bottom - top),
    topX: highest.x,
    topY: highest.y,
  }
}

/** The side of a second line, turned round where the toolkit has exchanged the ends of a bond since it was sketched. */
function seenFromA(molecule: Molecule, sketch: Sketch, index: number, side: -1 | 0 | 1): -1 | 0 | 1 {
  if (side === 0 || molecule.getBondAtom(0, index) === sketch.bonds[index]!.a) return side
  return side === 1 ? -1 : 1
}
