import type { Structure, Toolkit } from '../chemistry/structure.ts'
import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { comparable } from './listed-names.ts'
import { type Pattern, shows } from './pattern.ts'
import { reactivityGroupsOf } from './reactivity-groups.ts'
import { type RegulatedMatch, screenFrom } from './screening.ts'
import { massFractionIn } from './strength.ts'
import type { HazardTables, IncidentRule } from './tables.ts'

/**
 * What a material is, as far as danger and law are concerned, worked out once where the toolkit is and handed on as plain JSON: a page that
 * reckons hazards loads no toolkit.
 */
export interface Traits {
  /** False = neither CAS number nor structure: no list could find it but by name. */
  readonly screened: boolean
  /** Rows of regulated lists it meets, before region, buyer, strength and role. */
  readonly regulated: readonly RegulatedMatch[]
  /** Reactivity groups, from the library or, where it states none, from name, CAS number and structure. */
  readonly groups: readonly number[]
  /** Structural patterns of incident rules that it shows. */
  readonly smarts: readonly string[]
}

/** Reactivity group of water and of what contains it. */
const waterGroup = 106

/**
 * Traits of every material of a library. A mixture is screened for what it contains and for what it is made up with.
 *
 * @param toolkit null where none is at hand: structures are then not looked at, and the traits say less
 * @returns by material id
 */
export function traitsOf(library: Library, tables: HazardTables, toolkit: Toolkit | null): ReadonlyMap<string, Traits> {
  const screen = screenFrom(tables.regulated, toolkit)
  const patterns = patternsOf(tables.incidentRules)
  const structures = new Map<string, Structure | null>()
  const structureOf = (material: Material): Structure | null => {
    const known = structures.get(material.id)
    if (known !== undefined) return known
    const read = material.smiles === undefined || toolkit === null ? null : toolkit.parse(material.smiles, [], 'flat')
    const structure = read?.ok ? read.value : null
    structures.set(material.id, structure)
    return structure
  }
  const own = new Map<string, Traits>()
  const ownTraits = (material: Material): Traits => {
    const known = own.get(material.id)
    if (known) return known
    const structure = structureOf(material)
    const cas = material.cas ?? null
    const names = [material.id, material.name, ...(material.synonyms ?? [])].map(comparable)
    const traits: Traits = {
      screened: cas !== null || structure !== null,
      regulated: screen({ names, cas, structure }).map(match => ({ ...match, massFraction: 1 })),
      groups: material.reactivityGroups ?? reactivityGroupsOf(tables.reactivityGroups, { id: material.id, cas }, structure, toolkit),
      smarts: structure && toolkit ? patterns.filter(pattern => shows(toolkit, structure, pattern)).map(pattern => pattern.smarts) : [],
    }
    own.set(material.id, traits)
    return traits
  }

  const traits = new Map<string, Traits>()
  for (const material of library.materials.values()) {
    const itself = ownTraits(material)
    if (material.kind !== 'mixture') {
      traits.set(material.id, itself)
      continue
    }
    const fraction = massFractionIn(library, material)
    const contained = material.contains ? library.materials.get(material.contains.compound) : undefined
    const rest = material.contains?.rest === undefined ? undefined : library.materials.get(material.contains.rest)
    const parts: { readonly of: Traits; readonly fraction: number | null; readonly name: string | null }[] = [
      // A bottle of a solution carries the CAS number and the name of what is in it.
      { of: itself, fraction, name: null },
      ...(contained ? [{ of: ownTraits(contained), fraction, name: contained.name }] : []),
      ...(rest ? [{ of: ownTraits(rest), fraction: fraction === null ? null : 1 - fraction, name: rest.name }] : []),
    ]
    const wet = material.contains !== undefined && material.contains.rest === undefined && material.form === 'solution'
    traits.set(material.id, {
      screened: parts.some(part => part.of.screened),
      regulated: merged(parts),
      groups: material.reactivityGroups ?? risen([...parts.flatMap(part => part.of.groups), ...(wet ? [waterGroup] : [])]),
      smarts: [...new Set(parts.flatMap(part => part.of.smarts))],
    })
  }
  return traits
}

/** The structural patterns of all rules, each once. */
function patternsOf(rules: readonly IncidentRule[]): readonly Pattern[] {
  const members = rules.flatMap(rule => rule.trigger.allOf.flat())
  const patterns = members.flatMap(({ smarts, needs }): [string, Pattern][] => (smarts === undefined ? [] : [[smarts, { smarts, needs }]]))
  return [...new Map(patterns).values()]
}

const risen = (numbers: readonly number[]): readonly number[] => [...new Set(numbers)].sort((a, b) => a - b)

/** Each row once, at the largest fraction (null, not known, is the largest of all). */
function merged(
  parts: readonly { readonly of: Traits; readonly fraction: number | null; readonly name: string | null }[],
): readonly RegulatedMatch[] {
  const rows = new Map<string, RegulatedMatch>()
  for (const { of, fraction, name } of parts) {
    for (const match of of.regulated) {
      const key = `${match.list}|${match.category}|${match.action}|${match.reason}`
      const known = rows.get(key)
      if (known && (known.massFraction === null || (fraction !== null && fraction <= known.massFraction))) continue
      rows.set(key, {
        ...match,
        massFraction: fraction,
        reason: name === null || known ? match.reason : `it contains ${name}: ${match.reason}`,
      })
    }
  }
  return [...rows.values()]
}
