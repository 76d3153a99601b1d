import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { aromaticProblem, aromaticSlip } from './aromatic-slips.ts'
import { elements } from './elements.ts'
import { type Composition, hill } from './formula.ts'
import { groupsAmiss, layGroups, numbered, smilesWithGroups } from './hands-of.ts'
import { normalForm } from './normal-form.ts'
import type { OclMolecule as Molecule, OpenChemLib } from './openchemlib-parts.ts'
import { writtenOut } from './smarts-alternatives.ts'
import { clip, slipOf, smilesProblem } from './smiles-slips.ts'
import { groupedSmiles, withoutLoneHands } from './stereo-groups.ts'
import { stereoBetween } from './stereo-relation.ts'
import type { Stripping, Structure, Toolkit } from './structure.ts'

/** Elements that SMILES lets stand without brackets; their hydrogens are implied. All others carry theirs in the bracket or have none. */
const organicSubset = new Set(['B', 'C', 'N', 'O', 'P', 'S', 'F', 'Cl', 'Br', 'I'])
/** Non-metals, whose valence can be judged. */
const judged = new Set([...organicSubset, 'H', 'Si', 'Se'])
/** Stands in for an open end, which the library would take for a carbon: one bond, and no compound of ours holds any. */
const openEnd = 'At'

/** Solvents that crystals carry. Common practice, no source. */
const solvates = [
  'O',
  'CO',
  'CCO',
  'CC(C)O',
  'CC(C)=O',
  'CC#N',
  'ClCCl',
  'ClC(Cl)Cl',
  'CN(C)C=O',
  'CS(C)=O',
  'CCOC(C)=O',
  'CCOCC',
  'C1CCOC1',
]
/** Acids, anions and cations that make salts of a drug or dye, neutral and charged. Common practice, no source. */
const counterIons = [
  ...['Cl', '[Cl-]', 'Br', '[Br-]', 'I', '[I-]', 'F', '[F-]', '[OH-]', '[H+]', 'N', '[NH4+]'],
  ...['[Li+]', '[Na+]', '[K+]', '[Cs+]', '[Ag+]', '[Mg+2]', '[Ca+2]', '[Sr+2]', '[Ba+2]', '[Zn+2]', '[Al+3]'],
  ...['OS(O)(=O)=O', '[O-]S(O)(=O)=O', '[O-]S([O-])(=O)=O', 'O[N+]([O-])=O', '[O-][N+]([O-])=O'],
  ...['OP(O)(O)=O', '[O-]P(O)(O)=O', '[O-]P([O-])(O)=O', '[O-]P([O-])([O-])=O', 'OCl(=O)(=O)=O', '[O-]Cl(=O)(=O)=O'],
  ...['F[B-](F)(F)F', 'F[P-](F)(F)(F)(F)F', 'OC(O)=O', 'OC([O-])=O', '[O-]C([O-])=O', 'CC(O)=O', 'CC([O-])=O', 'OC=O', '[O-]C=O'],
  ...['OC(=O)C(O)=O', '[O-]C(=O)C(O)=O', '[O-]C(=O)C([O-])=O', 'CS(O)(=O)=O', 'CS([O-])(=O)=O', 'Cc1ccc(cc1)S(O)(=O)=O'],
  ...['Cc1ccc(cc1)S([O-])(=O)=O', 'OC(=O)C=CC(O)=O', 'OC(=O)/C=C/C(O)=O', 'OC(=O)/C=C\\C(O)=O', 'OC(=O)C(F)(F)F', '[O-]C(=O)C(F)(F)F'],
  ...['OC(=O)C(O)C(O)C(O)=O', 'OC(=O)[C@H](O)[C@@H](O)C(O)=O', 'OC(=O)[C@@H](O)[C@H](O)C(O)=O', 'OC(CC(O)=O)(CC(O)=O)C(O)=O'],
]

/**
 * A toolkit made from openchemlib.
 *
 * The library is lax: it takes an empty text, unclosed branches and five-bonded carbon for structures, cuts a text off at a line break and
 * adds hydrogens to bare metal atoms, and leaves an unpaired electron in an aromatic ring that lacks a hydrogen. Each of these is caught here.
 *
 * @param library  the module, imported by the caller when and where it is wanted
 */
export function toolkitFrom(library: OpenChemLib): Toolkit {
  const molecules = new WeakMap<Structure, Molecule>()
  const readings = new WeakMap<Structure, Reading>()
  const normals = new WeakMap<Structure, Structure>()
  const patterns = new Map<string, readonly Molecule[]>()
  const searcher = new library.SSSearcher()

  // `source` is the text as typed: a part's own text comes from the library, invented hydrogens included.
  const structureOf = (smiles: string | null, molecule: Molecule, source: string, read: Reading): Structure => {
    const composition = compositionOf(library, molecule, source)
    // Canonising and taking apart cost more than reading, and most structures are never compared: done when asked for, and once.
    let written = smiles
    let identityKey: string | null = null
    let skeletonKey: string | null = null
    let fragments: readonly Structure[] | null = null
    const partsOf = (): readonly Structure[] => {
      const parts = molecule.getFragments()
      return parts.length <= 1 ? [structure] : parts.map(part => structureOf(null, part, source, read))
    }
    const structure: Structure = {
      get smiles() {
        written ??= smilesWithGroups(molecule, library.Molecule)
        return written
      },
      composition,
      formula: hill(composition),
      get identityKey() {
        identityKey ??= identityOf(library, molecule, source)
        return identityKey
      },
      get skeletonKey() {
        skeletonKey ??= skeletonOf(library, molecule, source)
        return skeletonKey
      },
      get canonicalSmiles() {
        return smilesWithGroups(molecule, library.Molecule)
      },
      get fragments() {
        fragments ??= partsOf()
        return fragments
      },
    }
    molecules.set(structure, molecule)
    readings.set(structure, read)
    return structure
  }

  const keyOf = (smiles: string): string | null => {
    const read = parse(smiles)
    return read.ok ? read.value.identityKey : null
  }
  /** Of a way of writing it that is tried as a cure: one that fails is not cured in turn. */
  const flatKeyOf = (smiles: string): string | null => {
    const read = parse(smiles, [], 'flat', () => null)
    return read.ok ? read.value.identityKey : null
  }

  const parse = (
    smiles: string,
    where: readonly string[] = [],
    read: Reading = 'as written',
    mended: (smiles: string) => string | null = flatKeyOf,
  ): Checked<Structure> => {
    const grouped = groupedSmiles(smiles)
    const slip = slipOf(grouped.smiles)
    if (slip !== null) return bad([{ ...slip, where }])
    const amiss = groupsAmiss(grouped)
    if (amiss !== null) return bad([{ ...badGroups(smiles, amiss), where }])
    const settled = withoutLoneHands(grouped)
    let molecule: Molecule
    let text = ''
    try {
      text = withoutOpenEnds(read === 'flat' ? settled.smiles : numbered(settled))
      molecule =
        read === 'flat'
          ? new library.SmilesParser().parseMolecule(flatText(text), { noCoordinates: true, noStereo: true })
          : new library.SmilesParser().parseMolecule(text)
      molecule.ensureHelperArrays(library.Molecule.cHelperNeighbours)
      if (read !== 'flat') layGroups(molecule, settled.groups, library.Molecule)
    } catch (thrown) {
      // The library's errors open with the names of its own classes; what follows is for people.
      const said = /(?:SmilesParser: )([\s\S]*)$/.exec(String((thrown as { message?: unknown }).message ?? ''))?.[1] ?? 'it cannot be read'
      return bad([
        {
          ...smilesProblem(
            'smiles-unreadable',
            `"${clip(smiles)}" is not a SMILES: ${said.toLowerCase()}.`,
            'Check rings, brackets and symbols.',
          ),
          where,
        },
      ])
    }
    // A bond or a ring mark alone passes the library and leaves nothing behind.
    if (molecule.getAllAtoms() === 0)
      return bad([
        {
          ...smilesProblem(
            'smiles-empty',
            `"${clip(smiles)}" holds no atom.`,
            'Write the atoms of the structure, such as CCO for ethanol.',
          ),
          where,
        },
      ])
    const crowded = crowdedAtom(molecule)
    if (crowded !== null)
      return bad([
        {
          ...smilesProblem(
            'smiles-valence',
            `In "${clip(smiles)}" atom ${crowded.number} (${crowded.label}) has ${crowded.bonds} bonds.`,
            'Correct its bonds or its charge.',
          ),
          where,
        },
      ])
    const aromatic = aromaticSlip(text, molecule, library.Molecule)
    if (aromatic !== null) return bad([{ ...aromaticProblem(grouped.smiles, aromatic, mended), where }])
    return good(structureOf(smiles.trim(), molecule, grouped.smiles, read))
  }

  // What comes off, by how structures are read (flat ones compare with flat ones only) and by formula, which is cheap: a part is canonised
  // only where something of its formula could come off.
  const lists = new Map<string, ReadonlyMap<string, readonly Structure[]>>()
  const listed = (name: 'solvates' | 'counter-ions', read: Reading): ReadonlyMap<string, readonly Structure[]> => {
    const at = `${name}, ${read}`
    const known = lists.get(at)
    if (known) return known
    const byFormula = new Map<string, Structure[]>()
    for (const smiles of name === 'solvates' ? solvates : counterIons) {
      const one = parse(smiles, [], read)
      if (!one.ok) throw new RangeError(smiles)
      byFormula.set(one.value.formula, [...(byFormula.get(one.value.formula) ?? []), one.value])
    }
    lists.set(at, byFormula)
    return byFormula
  }
  const isAmong = (name: 'solvates' | 'counter-ions', part: Structure, read: Reading): boolean =>
    (listed(name, read).get(part.formula) ?? []).some(one => one.identityKey === part.identityKey)

  const normalised = (structure: Structure): Structure => {
    const known = normals.get(structure)
    if (known !== undefined) return known
    const form = normalForm(molecules.get(structure)!, library.Molecule)
    const normal = form === null ? structure : structureOf(null, form, structure.smiles, readings.get(structure)!)
    normals.set(structure, normal)
    return normal
  }

  return {
    parse: (smiles, where, read) => parse(smiles, where, read),

    stereoBetween(one, other) {
      const partsOf = (structure: Structure) => ({ structure, molecule: molecules.get(structure)! })
      return stereoBetween(partsOf(one), partsOf(other), library.Molecule, keyOf)
    },

    normalised,

    matches(structure, smarts) {
      let fragments = patterns.get(smarts)
      if (fragments === undefined) {
        fragments = patternsOf(library, smarts)
        patterns.set(smarts, fragments)
      }
      searcher.setMolecule(molecules.get(structure)!)
      return fragments.some(fragment => {
        searcher.setFragment(fragment)
        return searcher.isFragmentInMolecule()
      })
    },

    essentialKeys(structure, strip: Stripping) {
      const read = readings.get(structure)!
      // A salt drawn with a bond to its metal has its parts too.
      const parts = normalised(structure).fragments
      const dry = parts.filter(part => !isAmong('solvates', part, read))
      const kept = dry.length === 0 ? parts : dry
      if (strip === 'solvates') return unique(kept.map(part => part.identityKey))
      const heart = kept.filter(part => !isAmong('counter-ions', part, read))
      if (heart.length === 0) return unique(kept.map(part => part.identityKey))
      return unique(heart.map(part => neutralKey(library, part, molecules.get(part)!)))
    },
  }
}

/** How a SMILES is read: see `Toolkit.parse`. */
type Reading = 'as written' | 'flat'

const unique = (keys: readonly string[]): readonly string[] => [...new Set(keys)].sort()
/** Without marks of hand, of cis and trans, and of isotopes. */
const flatText = (smiles: string): string => smiles.replace(/[@/\\]/g, '').replace(/\[\d+/g, '[')

const withoutOpenEnds = (smiles: string): string => smiles.replace(/\[\d*\*(?::\d+)?\]|\*/g, `[${openEnd}]`)

function crowdedAtom(molecule: Molecule): { number: number; label: string; bonds: number } | null {
  for (let atom = 0; atom < molecule.getAllAtoms(); atom++) {
    const label = molecule.getAtomLabel(atom)
    if (!judged.has(label)) continue
    const bonds = molecule.getOccupiedValence(atom)
    if (bonds > molecule.getMaxValence(atom)) return { number: atom + 1, label, bonds }
  }
  return null
}

/** Hydrogens the library added to a bare atom in brackets, such as [Al]: their count. */
function inventedHydrogens(molecule: Molecule, atom: number, smiles: string): number {
  const label = molecule.getAtomLabel(atom)
  if (organicSubset.has(label) || new RegExp(`\\[\\d*${label}@*H`).test(smiles)) return 0
  return molecule.getImplicitHydrogens(atom)
}

function compositionOf(library: OpenChemLib, molecule: Molecule, smiles: string): Composition {
  molecule.ensureHelperArrays(library.Molecule.cHelperNeighbours)
  const counts = new Map<string, number>()
  let charge = 0
  const add = (symbol: string, count: number): void => {
    if (count > 0) counts.set(symbol, (counts.get(symbol) ?? 0) + count)
  }
  for (let atom = 0; atom < molecule.getAllAtoms(); atom++) {
    const label = molecule.getAtomLabel(atom)
    charge += molecule.getAtomCharge(atom)
    if (label === openEnd) continue
    const mass = molecule.getAtomMass(atom)
    add(label === 'H' && mass === 2 ? 'D' : label === 'H' && mass === 3 ? 'T' : elements.has(label) ? label : 'C', 1)
    // Hydrogens that stand as atoms of their own are counted when the loop comes to them.
    add('H', molecule.getImplicitHydrogens(atom) - inventedHydrogens(molecule, atom, smiles))
  }
  return { counts, charge }
}

function skeletonOf(library: OpenChemLib, molecule: Molecule, smiles: string): string {
  const copy = molecule.getCompactCopy()
  copy.stripStereoInformation()
  return identityOf(library, copy, smiles)
}

const badGroups = (smiles: string, amiss: string): Omit<Problem, 'where'> =>
  smilesProblem(
    'smiles-stereo-groups',
    `"${clip(smiles)}" cannot be read to its end: ${amiss}.`,
    'Write which atoms are there in both hands, as in O[C@@H]1CCCC[C@H]1O |&1:1,6|; or the SMILES alone.',
  )

/** The library's code; a bare metal gets a mark, since the code cannot tell it from its hydride. */
function identityOf(library: OpenChemLib, molecule: Molecule, smiles: string): string {
  molecule.ensureHelperArrays(library.Molecule.cHelperNeighbours)
  let invented = 0
  for (let atom = 0; atom < molecule.getAllAtoms(); atom++) invented += inventedHydrogens(molecule, atom, smiles)
  return molecule.getIDCode() + (invented > 0 ? '~' : '')
}

/** The key with charges taken off atoms that can give or take a hydrogen: R-NH3+ is R-NH2, R-COO- is R-COOH. */
function neutralKey(library: OpenChemLib, part: Structure, molecule: Molecule): string {
  const copy = molecule.getCompactCopy()
  copy.ensureHelperArrays(library.Molecule.cHelperNeighbours)
  let changed = false
  for (let atom = 0; atom < copy.getAllAtoms(); atom++) {
    const charge = copy.getAtomCharge(atom)
    const label = copy.getAtomLabel(atom)
    const besideOpposite = Array.from({ length: copy.getConnAtoms(atom) }, (_, at) => copy.getAtomCharge(copy.getConnAtom(atom, at))).some(
      other => other * charge < 0,
    )
    const loses = charge === 1 && (label === 'N' || label === 'O') && copy.getAllHydrogens(atom) > 0
    const gains = charge === -1 && (label === 'O' || label === 'S' || label === 'N')
    if (besideOpposite || !(loses || gains)) continue
    copy.setAtomCharge(atom, 0)
    changed = true
  }
  return changed ? identityOf(library, copy, part.smiles) : part.identityKey
}

/**
 * The pattern as query molecules, any of which may match. Where the library refuses alternatives within an atom, the first list of them is
 * written out, one pattern each.
 */
function patternsOf(library: OpenChemLib, smarts: string, depth = 0): readonly Molecule[] {
  try {
    const fragment = new library.SmilesParser({ smartsMode: 'smarts' }).parseMolecule(smarts, { noCoordinates: true, noStereo: true })
    fragment.setFragment(true)
    return [fragment]
  } catch {
    const alternatives = depth < 4 ? writtenOut(smarts) : null
    if (alternatives === null) throw new RangeError(`the pattern ${smarts} cannot be read`)
    return alternatives.flatMap(one => patternsOf(library, one, depth + 1))
  }
}
