import { type Library, materialOf } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { traitsFor } from './regulated.ts'
import { massFractionIn } from './strength.ts'
import type { IncidentRule } from './tables.ts'
import type { Traits } from './traits.ts'

/** A material that stands in a flask, a work-up or a bottle, with what rules ask of it. */
export interface Present {
  readonly material: Material
  readonly traits: Traits
  /** What it is, or what it is at least half of, by id and CAS number. */
  readonly names: ReadonlySet<string>
}

/** From half its mass on, a bottle counts as what it contains (95 % ethanol as ethanol, dilute acid not as the acid). Common practice, no source. */
const countsFrom = 0.5

export function presentAs(library: Library, traits: ReadonlyMap<string, Traits>, id: string): Present {
  const material = materialOf(library, id)
  const names = new Set([material.id])
  const add = (one: Material) => {
    names.add(one.id)
    if (one.cas !== undefined) names.add(one.cas)
  }
  if (material.kind !== 'mixture') add(material)
  else if (material.contains && (massFractionIn(library, material) ?? 1) >= countsFrom) {
    const contained = library.materials.get(material.contains.compound)
    if (contained) add(contained)
  }
  return { material, traits: traitsFor(traits, id), names }
}

type Member = IncidentRule['trigger']['allOf'][number][number]

/** Whether a material is a member of a rule's set: by id, CAS number, reactivity group or structure. */
export const isMember = ({ names, traits }: Present, member: Member): boolean =>
  (member.compound !== undefined && names.has(member.compound)) ||
  (member.cas !== undefined && names.has(member.cas)) ||
  (member.group !== undefined && traits.groups.includes(member.group)) ||
  (member.smarts !== undefined && traits.smarts.includes(member.smarts))

/**
 * Every way in which materials fulfil a rule: one of them for each of its sets, no material for two sets. Empty for a rule without sets,
 * which is about a step and not about what meets.
 */
export function waysToFire(rule: IncidentRule, present: readonly Present[]): readonly (readonly Present[])[] {
  if (rule.trigger.allOf.length === 0) return []
  let ways: readonly (readonly Present[])[] = [[]]
  for (const set of rule.trigger.allOf) {
    const members = present.filter(one => set.some(member => isMember(one, member)))
    ways = ways.flatMap(way => members.filter(one => !way.includes(one)).map(one => [...way, one]))
    if (ways.length === 0) return []
  }
  return ways
}

/** A condition in words is asked, never taken as met. */
export const asQuestion = (condition: string): string => `Is this so here: ${condition}?`
