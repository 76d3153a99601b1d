import { Molecule } from 'openchemlib'

/** Groups a chain atom may carry and still be written on one line. */
const branchFormula: Readonly<Record<string, string>> = { C: 'CH3', O: 'OH', N: 'NH2' }

interface Unit {
  readonly molecule: Molecule
  readonly ends: readonly number[]
}

function unitOf(smiles: string): Unit | null {
  // The toolkit takes `*` for a query and forgets hydrogens; an element that no polymer holds stands in for the open ends.
  const molecule = Molecule.fromSmiles(smiles.replaceAll(/\[\*\]|\*/g, '[At]'))
  molecule.ensureHelperArrays(Molecule.cHelperRings)
  const ends: number[] = []
  for (let i = 0; i < molecule.getAllAtoms(); i++) if (molecule.getAtomLabel(i) === 'At') ends.push(i)
  return ends.length === 2 ? { molecule, ends } : null
}

/** Text of what hangs on a chain atom; null where it is more than one line can say. */
function branchText(molecule: Molecule, atom: number, from: number, order: number): string | null {
  const label = molecule.getAtomLabel(atom)
  if (order === 2) return label === 'O' ? 'O' : null
  if (molecule.isAromaticAtom(atom)) {
    // A bare phenyl: six aromatic carbons in the ring, none of them carrying anything but the chain.
    const ring = phenylOf(molecule, atom, from)
    return ring ? 'C6H5' : null
  }
  if (molecule.getConnAtoms(atom) === 1) return branchFormula[label] ?? null
  return esterText(molecule, atom, from)
}

function phenylOf(molecule: Molecule, atom: number, from: number): boolean {
  const seen = new Set([atom])
  for (const at of seen) {
    for (let k = 0; k < molecule.getConnAtoms(at); k++) {
      const next = molecule.getConnAtom(at, k)
      if (next !== from) seen.add(next)
    }
  }
  return seen.size === 6 && [...seen].every(at => molecule.isAromaticAtom(at) && molecule.getAtomLabel(at) === 'C')
}

/** CO2CH3, the one ester that comes up as a side group. */
function esterText(molecule: Molecule, atom: number, from: number): string | null {
  if (molecule.getAtomLabel(atom) !== 'C') return null
  let carbonyl = false
  let methoxy = false
  for (let k = 0; k < molecule.getConnAtoms(atom); k++) {
    const next = molecule.getConnAtom(atom, k)
    if (next === from) continue
    if (molecule.getAtomLabel(next) !== 'O') return null
    if (molecule.getConnBondOrder(atom, k) === 2) carbonyl = true
    else {
      for (let j = 0; j < molecule.getConnAtoms(next); j++) {
        const far = molecule.getConnAtom(next, j)
        if (far !== atom) methoxy = molecule.getAtomLabel(far) === 'C' && molecule.getConnAtoms(far) === 1
      }
    }
  }
  return carbonyl && methoxy ? 'CO2CH3' : null
}

function groupText(molecule: Molecule, atom: number, onPath: ReadonlySet<number>): string | null {
  if (molecule.isRingAtom(atom)) return null
  const label = molecule.getAtomLabel(atom)
  const hydrogens = molecule.getImplicitHydrogens(atom)
  let text = label + (hydrogens === 0 ? '' : hydrogens === 1 ? 'H' : `H${hydrogens}`)
  for (let k = 0; k < molecule.getConnAtoms(atom); k++) {
    const next = molecule.getConnAtom(atom, k)
    if (onPath.has(next)) continue
    const branch = branchText(molecule, next, atom, molecule.getConnBondOrder(atom, k))
    if (branch === null) return null
    text += branch === 'O' ? 'O' : `(${branch})`
  }
  return text
}

/** Chain from one open end to the other, ends left out. */
function backbone({ molecule, ends }: Unit): number[] {
  const before = new Map([[ends[0]!, -1]])
  for (const at of before.keys()) {
    for (let k = 0; k < molecule.getConnAtoms(at); k++) {
      const next = molecule.getConnAtom(at, k)
      if (!before.has(next)) before.set(next, at)
    }
  }
  const path: number[] = []
  for (let at = before.get(ends[1]!) ?? -1; at !== -1 && at !== ends[0]; at = before.get(at) ?? -1) path.unshift(at)
  return path
}

/**
 * Condensed repeat unit of a polymer: `[NH(CH2)6NHCO(CH2)8CO]n`.
 *
 * @param smiles repeat unit with `*` at its two open ends
 * @param formula what stands in the brackets where the unit cannot be written on one line (a ring in the chain)
 */
export function condensedUnit(smiles: string, formula: string): string {
  const unit = unitOf(smiles)
  const path = unit ? backbone(unit) : []
  const groups = unit ? path.map(atom => groupText(unit.molecule, atom, new Set([...path, ...unit.ends]))) : []
  if (groups.length === 0 || groups.includes(null)) return `[${formula}]n`
  let text = ''
  for (let i = 0; i < groups.length; ) {
    const group = groups[i]!
    let count = 1
    while (groups[i + count] === group) count++
    text += count > 1 ? `(${group})${count}` : group
    i += count
  }
  return `[${text}]n`
}
