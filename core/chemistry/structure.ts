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
  /** The toolkit's own way of writing it. */
  readonly canonicalSmiles: string
  /** Its parts that no bond connects, as written: ions, solvate molecules, the compound. One for a single molecule. */
  readonly fragments: readonly Structure[]
}

/** What is taken off before two structures are compared. Solvates always come off; counter-ions only where a rule says so. */
export type Stripping = 'solvates' | 'solvates and counter-ions'

/**
 * What the core needs of a chemistry toolkit. It is handed in, so that a page that reads no structure loads none.
 *
 * The one made from openchemlib is in `openchemlib.ts`.
 */
export interface Toolkit {
  /**
   * Reads a SMILES.
   *
   * @param read  `flat`: hands, cis and trans and isotopes are left out, so that all of them are one structure; compared with `flat` ones
   *              only. Much the faster, since nothing is laid out.
   * @returns the structure; or one Problem: smiles-empty, smiles-unreadable, smiles-bracket, smiles-valence
   */
  parse(smiles: string, where?: readonly string[], read?: 'as written' | 'flat'): Checked<Structure>
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
