import { hill, parseFormula } from '../chemistry/formula.ts'
import { groupedSmiles } from '../chemistry/stereo-groups.ts'
import type { Structure, Toolkit } from '../chemistry/structure.ts'
import type { Material } from '../library/material.ts'
import { nearest } from '../problem/nearest.ts'
import { groupsElsewhere, sameLocants } from './locants.ts'
import { nameKey } from './name-key.ts'
import { formWords, type StereoForm } from './stereo-forms.ts'

/** A name that means several bottles. Rows of `routes-data/tables/ambiguous-names.json`. */
export interface AmbiguousName {
  readonly name: string
  readonly candidates: readonly string[]
  /** Taken with a word about it; null = ask. */
  readonly default: string | null
  readonly why: string
}

export type Found =
  | { readonly kind: 'material'; readonly material: string; readonly assumed: string | null }
  | {
      readonly kind: 'ambiguous'
      readonly candidates: readonly string[]
      readonly why: string
      /** None of them is what was written: they are other stereo forms of it, and even a single one is asked about. */
      readonly none?: true
    }
  | { readonly kind: 'unknown' }

/** A name near to one that was typed. */
export interface Meant {
  readonly name: string
  /** Another compound, and not a slip of the pen. */
  readonly another: boolean
  /** It has the same groups at other places. */
  readonly elsewhere: boolean
}

const unknown: Found = { kind: 'unknown' }

interface Held {
  readonly id: string
  readonly structure: Structure
}

interface Entry {
  table: AmbiguousName | null
  readonly ids: Set<string>
}

/** Names, synonyms, ids, formulas and structures of a list of materials, with the table of ambiguous names above them all. */
export class NameIndex {
  readonly materials: ReadonlyMap<string, Material>
  readonly #exact = new Map<string, Entry>()
  readonly #folded = new Map<string, Entry>()
  readonly #formulas = new Map<string, string[]>()
  readonly #cas = new Map<string, string[]>()
  readonly #toolkit: Toolkit | null
  readonly #structures = new Map<string, readonly Held[]>()
  #words: readonly string[] | null = null
  #mixtures: readonly Held[] | null = null
  readonly #meant = new Map<string, Meant | null>()

  /**
   * @param materials  by id
   * @param table      names that are asked about; they win over names, synonyms, formulas and ids in typed text
   * @param toolkit    reads SMILES; without one, SMILES stay unknown
   */
  constructor(materials: ReadonlyMap<string, Material>, table: readonly AmbiguousName[], toolkit: Toolkit | null = null) {
    this.materials = materials
    this.#toolkit = toolkit
    for (const material of materials.values()) {
      const names = [
        material.id,
        material.name,
        ...(material.synonyms ?? []),
        ...(material.displayFormula ? [material.displayFormula] : []),
      ]
      for (const name of names) this.#entries(name, entry => entry.ids.add(material.id))
      if (material.cas !== undefined) this.#cas.set(material.cas, [...(this.#cas.get(material.cas) ?? []), material.id])
      if (material.kind === 'compound' && material.formula !== undefined) {
        const key = formulaKey(material.formula)
        if (key !== null) this.#formulas.set(key, [...(this.#formulas.get(key) ?? []), material.id])
      }
    }
    for (const row of table)
      this.#entries(row.name, entry => {
        entry.table ??= row
      })
  }

  #entries(name: string, change: (entry: Entry) => void): void {
    const key = nameKey(name)
    for (const [map, at] of [
      [this.#exact, key],
      [this.#folded, key.toLowerCase()],
    ] as const) {
      let entry = map.get(at)
      if (entry === undefined) {
        entry = { table: null, ids: new Set() }
        map.set(at, entry)
      }
      change(entry)
    }
  }

  /** The row of the table for this very name, or null. */
  ambiguous(phrase: string): AmbiguousName | null {
    const key = nameKey(phrase)
    const exact = this.#exact.get(key)?.table ?? null
    return exact ?? (isFormula(key) ? null : (this.#folded.get(key.toLowerCase())?.table ?? null))
  }

  /** What a name, synonym, id, display formula, CAS number, formula or SMILES stands for; nothing is guessed. */
  lookUp(phrase: string): Found {
    const named = idNamed(phrase)
    if (named !== null) return this.materials.has(named.id) ? { kind: 'material', material: named.id, assumed: null } : unknown
    const key = nameKey(phrase)
    if (key === '') return unknown
    const row = this.ambiguous(phrase)
    if (row !== null)
      return row.default === null
        ? { kind: 'ambiguous', candidates: row.candidates, why: row.why }
        : { kind: 'material', material: row.default, assumed: row.why }
    // Co is cobalt, CO is not: what is a formula as it stands is not looked up without its capitals.
    const ids = this.#exact.get(key)?.ids ?? (isFormula(key) ? undefined : this.#folded.get(key.toLowerCase())?.ids)
    // TEA is triethylamine or triethanolamine, and tea is leaves.
    if (ids !== undefined && ids.size > 0 && /^[A-Z]{2,3}$/.test(key) && !this.#exact.has(key))
      return { kind: 'ambiguous', candidates: [...ids].sort(), why: 'three capitals are often an abbreviation of something else' }
    if (ids !== undefined && ids.size > 0) return this.#one([...ids], 'several materials carry this name')
    const byCas = this.#cas.get(key)
    if (byCas !== undefined) return this.#one(byCas, 'several materials have this CAS number')
    const structure = this.#bySmiles(phrase)
    if (structure.kind !== 'unknown' || isSmilesLike(phrase)) return structure
    const formula = formulaKey(key)
    const byFormula = formula === null ? [] : (this.#formulas.get(formula) ?? [])
    return byFormula.length > 0 ? this.#one(byFormula, 'several compounds have this formula') : unknown
  }

  #one(ids: readonly string[], why: string): Found {
    const sorted = [...ids].sort()
    return sorted.length === 1 ? { kind: 'material', material: sorted[0]!, assumed: null } : { kind: 'ambiguous', candidates: sorted, why }
  }

  #bySmiles(phrase: string): Found {
    const text = phrase.trim()
    if (this.#toolkit === null || !isSmilesLike(text)) return unknown
    const read = this.#toolkit.parse(text)
    if (!read.ok) return unknown
    const ids = this.ofStructure(read.value)
    return ids.length > 0 ? this.#one(ids, 'several compounds have this structure') : (this.otherForms(read.value) ?? unknown)
  }

  /** Compounds whose formula holds the same atoms, in whatever way it is written, "CuSO4.5H2O"; and hydrates and salts held as mixtures. */
  ofFormula(formula: string): readonly string[] {
    const key = formulaKey(formula)
    return key === null ? [] : [...(this.#formulas.get(key) ?? []), ...this.#mixturesWithFormula(key.split(' ')[0]!).map(one => one.id)]
  }

  /** Compounds and polymers with this very structure, hands and double bonds as written. */
  ofStructure(structure: Structure): readonly string[] {
    // Canonising is the dear part: nothing is canonised where no compound has the formula.
    const known = this.#withFormula(structure.formula)
    return known.filter(one => one.structure.identityKey === structure.identityKey).map(one => one.id)
  }

  /**
   * Materials that are the very structure when charges, bonds to metals and protons are written in one way: the salt drawn with a bond, the
   * zwitterion, the hydrochloride that is held as something to weigh a compound from.
   */
  writtenOtherwise(structure: Structure): readonly string[] {
    const same = this.ofStructure(structure)
    const key = this.#toolkit!.normalised(structure).identityKey
    return [...this.#withFormula(structure.formula), ...this.#mixturesWithFormula(structure.formula)]
      .filter(one => !same.includes(one.id) && this.#toolkit!.normalised(one.structure).identityKey === key)
      .map(one => one.id)
      .sort()
  }

  #mixturesWithFormula(formula: string): readonly Held[] {
    if (this.#toolkit === null) return []
    this.#mixtures ??= [...this.materials.values()].flatMap(({ id, kind, form, smiles }): Held[] => {
      // The structure of a solution is that of what is dissolved.
      const read = kind === 'mixture' && form !== 'solution' && smiles !== undefined ? this.#toolkit!.parse(smiles) : null
      return read?.ok === true ? [{ id, structure: read.value }] : []
    })
    return this.#mixtures.filter(one => one.structure.formula === formula)
  }

  /** Compounds that differ from it by stereo alone, with what each is beside it, in order of id. */
  stereoForms(structure: Structure): readonly StereoForm[] {
    return this.#withFormula(structure.formula)
      .flatMap(({ id, structure: own }) => {
        const relation = this.#toolkit!.stereoBetween(structure, own)
        return relation === null || relation === 'same' ? [] : [{ id, relation }]
      })
      .sort((one, other) => (one.id < other.id ? -1 : 1))
  }

  /** What to ask where the library holds other stereo forms of a structure and not the structure itself; null where it holds none. */
  otherForms(structure: Structure): Extract<Found, { kind: 'ambiguous' }> | null {
    const forms = this.stereoForms(structure)
    if (forms.length === 0) return null
    const told = forms.map(({ id, relation }) => `${id} ${formWords[relation]}`).join('; ')
    return {
      kind: 'ambiguous',
      candidates: forms.map(one => one.id),
      why: `hands and double bonds are not guessed: ${told}`,
      none: true,
    }
  }

  /**
   * The name or synonym that a mistyped one was probably meant to be, or null; one with the same locants goes before any other. Remembered: a
   * text is read anew at every letter typed.
   */
  meant(text: string): Meant | null {
    const known = this.#meant.get(text)
    if (known !== undefined) return known
    this.#words ??= [...this.materials.values()].flatMap(material => [material.name, ...(material.synonyms ?? [])])
    const alike = nearest(
      text,
      this.#words.filter(word => sameLocants(word, text)),
    )
    const other = alike ?? nearest(text, this.#words)
    const found =
      other === null ? null : { name: other, another: alike === null, elsewhere: alike === null && groupsElsewhere(other, text) }
    if (this.#meant.size >= mostRemembered) this.#meant.clear()
    this.#meant.set(text, found)
    return found
  }

  /** Structures are canonised only where the formula, which is cheap, is the same. */
  #withFormula(formula: string): readonly Held[] {
    const known = this.#structures.get(formula)
    if (known !== undefined) return known
    const held: Held[] = []
    for (const { id, kind, smiles, formula: written } of this.materials.values()) {
      if (smiles === undefined || kind === 'mixture' || kind === 'feedstock') continue
      const stated = written === undefined ? null : (formulaKey(written)?.split(' ')[0] ?? null)
      if (stated !== null && stated !== formula) continue
      const read = this.#toolkit!.parse(smiles)
      if (read.ok) held.push({ id, structure: read.value })
    }
    this.#structures.set(formula, held)
    return held
  }
}

/**
 * An id in braces is exact, whatever stands before it: "25 mL HCl {hydrochloric-acid-37}" keeps what was typed and says which bottle.
 *
 * @returns the id, and the text without it; null where the text names none
 */
export function idNamed(text: string): { readonly id: string; readonly rest: string } | null {
  const match = /\{\s*([a-z0-9]+(?:-[a-z0-9]+)*)\s*\}/.exec(text)
  if (match === null) return null
  return { id: match[1]!, rest: `${text.slice(0, match.index)} ${text.slice(match.index + match[0].length)}`.replace(/\s+/g, ' ').trim() }
}

/** Mistyped names kept with what was meant. */
const mostRemembered = 2000

/** A structure typed into a line of text is shorter; canonising a longer one would hold up the reader. In characters. */
const longestSmiles = 150

/**
 * Whether a text is a SMILES rather than a formula. Where it could be both ("OC1CCCCC1", "CCO"): a formula of an organic compound writes
 * its hydrogens, never the same symbol twice running, nor the count 1. "CO" stays a formula, carbon monoxide.
 */
export function isSmilesLike(text: string): boolean {
  const { smiles } = groupedSmiles(text)
  if (smiles === '' || smiles.length > longestSmiles || /\s/.test(smiles) || /H/.test(smiles.replace(/\[[^\]]*\]/g, ''))) return false
  if (!parseFormula(smiles).ok) return true
  return /^\[(?:Cl|Br|[BCNOPSFI])H\d?\]$|([BCNOPSFI])\1(?![a-z])|[A-Z][a-z]?1(?!\d)|^[BCNOPSFI]{3,}$|[=#@/\\]/.test(smiles)
}

const isFormula = (text: string): boolean => text.length <= 12 && parseFormula(text).ok

function formulaKey(text: string): string | null {
  const read = parseFormula(text)
  return read.ok ? `${hill(read.value)} ${read.value.charge}` : null
}
