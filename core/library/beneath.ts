import { toldDifferences } from './differences.ts'
import type { Library } from './library.ts'

/** What records of the bench itself stand in place of. */
export interface Beneath {
  /** Typical yields by step, where they differ: percent, or g per 100 g of an isolation. */
  readonly yields: ReadonlyMap<string, number>
  /** What a material's own record says otherwise, field by field in words. */
  readonly materials: ReadonlyMap<string, readonly string[]>
}

export const nothingBeneath: Beneath = { yields: new Map(), materials: new Map() }

type Records = Pick<Library, 'materials' | 'transformations'>

/**
 * What the records of a library, or of a part of one, say otherwise than those that lie beneath them.
 *
 * @param under  the library beneath; absent where nothing was laid over it
 */
export function beneathOf(over: Records, under: Records | undefined): Beneath {
  if (under === undefined) return nothingBeneath
  const nameOf = (id: string): string => over.materials.get(id)?.name ?? under.materials.get(id)?.name ?? id
  return {
    yields: new Map(
      [...over.transformations.values()].flatMap(({ id, yieldPercent: { typical } }) => {
        const before = under.transformations.get(id)?.yieldPercent.typical
        return before === undefined || before === typical ? [] : [[id, before] as const]
      }),
    ),
    materials: new Map(
      [...over.materials.values()].flatMap(material => {
        const before = under.materials.get(material.id)
        if (before === undefined || before === material) return []
        const told = toldDifferences(before, material, nameOf).filter(field => field.key !== 'sources')
        return told.length === 0 ? [] : [[material.id, told.map(field => field.text)] as const]
      }),
    ),
  }
}
