import type { Checked } from '../problem/problem.ts'
import type { Composition } from './formula.ts'

/** A structure that was read and found possible. What it holds is computed when asked for. */
export interface Structure {
  /** As it was written. */
  readonly smiles: string
  /** Atoms and charge; the `*` of a repeat unit's open ends counts nothing. */
  readonly composition: Composition
  /** In Hill order, without the charge. */
  readonly formula: string
  /** The same for every way of writing the same structure (stereo, isotopes and charges included), different for different ones. */
  readonly identityKey: string
  /** The same for all that differ by hands and by cis and trans alone. */
  readonly skeletonKey: string
  /** The toolkit's own way of writing it. */
  readonly canonicalSmiles: string
  /** Its parts that no bond connects, as written: ions, solvate molecules, the compound. One for a single molecule. */
  readonly fragments: readonly Structure[]
}

/**
 * What another structure of the same skeleton is, beside this one: of its hands and double bonds. `same` is the same compound, in the same
 * hand or as the same mixture of hands.
 */
export type StereoRelation =
  | 'same'
  /** It is both hands of this one; this one is both hands of it; it is the mirror image. */
  | 'racemate'
  | 'one hand'
  | 'other hand'
  /** It states less than this one, or more: hands, cis and trans. */
  | 'states less'
  | 'states more'
  | 'other geometry'
  /** Neither a mirror image nor one of cis and trans: a diastereomer, or another mixture of hands. */
  | 'other stereoisomer'

/** What is taken off before two structures are compared. Solvates always come off; counter-ions only where a rule says so. */
export type Stripping = 'solvates' | 'solvates and counter-ions'

/**
 * What the core needs of a chemistry toolkit. It is handed in, so that a page that reads no structure loads none.
 *
 * The one made from openchemlib is in `openchemlib.ts`.
 */
export interface Toolkit {
  /**
   * Reads a SMILES, with the stereo groups of CXSMILES behind it where there are any: `O[C@@H]1CCCC[C@H]1O |&1:1,6|` is both hands.
   *
   * @param read  `flat`: hands, cis and trans and isotopes are left out, so that all of them are one structure; compared with `flat` ones
   *              only. Much the faster, since nothing is laid out.
   * @returns the structure; or one Problem: smiles-empty, smiles-unreadable, smiles-bracket, smiles-valence,
   *          smiles-stereo-groups
   */
  parse(smiles: string, where?: readonly string[], read?: 'as written' | 'flat'): Checked<Structure>
  /**
   * What the other is beside the one, of two structures read as written.
   *
   * @returns null where they differ by more than stereo
   */
  stereoBetween(one: Structure, other: Structure): StereoRelation | null
  /**
   * The structure in one way of writing it where several mean one substance: salts of light metals as ions, sulfoxides with a double bond,
   * protons on the acid where a base holds them. Formula and charge are the same.
   *
   * @returns the structure itself where it is written so
   */
  normalised(structure: Structure): Structure
  /**
   * Whether a substructure is there. A screen: on aromatic rings and on hydrogens it is, in places, broader than the pattern.
   *
   * @param smarts  from our tables
   * @throws RangeError for a pattern that cannot be read: our mistake
   */
  matches(structure: Structure, smarts: string): boolean
  /**
   * The identity keys that remain once solvate molecules (and counter-ions) are off, each part once and, where counter-ions came off, with
   * its own charges neutralised as far as hydrogens allow, so that an amine and its salts have one key.
   *
   * @returns at least one key: what consists of nothing but solvent or counter-ions keeps its parts
   */
  essentialKeys(structure: Structure, strip: Stripping): readonly string[]
}
