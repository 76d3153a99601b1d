import type { Structure, Toolkit } from '../chemistry/structure.ts'
import type { ReactivityGroup } from './tables.ts'

/**
 * Reactivity groups of a pure material: those of which it is a named member, by id or CAS number, and those whose patterns it shows.
 *
 * @returns group numbers, rising; empty where neither tells anything, which is not the same as harmless
 */
export function reactivityGroupsOf(
  groups: readonly ReactivityGroup[],
  material: { readonly id: string; readonly cas: string | null },
  structure: Structure | null,
  toolkit: Toolkit | null,
): readonly number[] {
  return groups
    .filter(group => {
      if (group.members.some(member => member.compound === material.id || (member.cas !== undefined && member.cas === material.cas)))
        return true
      if (!structure || !toolkit) return false
      // Glycine drawn as a zwitterion is an amine and an acid all the same; ammonium acetate, of two pieces, is no free acid.
      const forms = structure.fragments.length === 1 ? new Set([structure, toolkit.normalised(structure)]) : [structure]
      return [...forms].some(form => {
        const shows = (smarts: string) => toolkit.matches(form, smarts)
        return group.smartsAny.some(shows) && !group.smartsNone.some(shows)
      })
    })
    .map(group => group.number)
}
