import { type Library, materialOf } from '../library/library.ts'
import { chargedRoles, type Transformation } from '../library/transformation.ts'
import { inUnit } from './measure.ts'
import type { Quantity, ShoppingLine } from './shopping.ts'

/** A transformation that a left-over could serve. */
export interface NextUse {
  readonly transformation: string
  readonly makes: string
  /** How many reference charges it suffices for. */
  readonly times: number
  /** It takes something that the plan starts from or makes. */
  readonly downstream: boolean
}

/** What is left over of one material once everything is made, and what it could serve next. */
export interface LeftOver {
  readonly material: string
  readonly left: Quantity
  readonly couldServe: readonly NextUse[]
}

const mostUses = 3

/**
 * Left-overs with what they could serve next: transformations that charge the material (not as a wash or for recrystallisation, which take
 * anything), that make something else than the plan does, and for whose reference charge what is left suffices; those first that go on from what the plan starts
 * from or makes, then those that it suffices for most often, then ids.
 *
 * @param plan the compounds it starts from and makes, and its transformations
 */
export function leftOvers(
  library: Library,
  lines: readonly Pick<ShoppingLine, 'material' | 'left'>[],
  plan: { readonly compounds: ReadonlySet<string>; readonly transformations: ReadonlySet<string> },
): readonly LeftOver[] {
  return lines.flatMap(({ material, left }) => {
    if (left.amount === null || !(left.amount > 0)) return []
    const uses: NextUse[] = []
    for (const t of library.transformations.values()) {
      if (plan.transformations.has(t.id) || plan.compounds.has(t.mainProduct)) continue
      const charge = chargeOf(library, t, material, left.unit)
      if (charge === null || left.amount < charge) continue
      const downstream = t.reactants.some(r => r.compound !== material && plan.compounds.has(r.compound))
      uses.push({ transformation: t.id, makes: t.mainProduct, times: Math.floor(left.amount / charge + 1e-9), downstream })
    }
    uses.sort((a, b) => Number(b.downstream) - Number(a.downstream) || b.times - a.times || (a.transformation < b.transformation ? -1 : 1))
    return [{ material, left, couldServe: uses.slice(0, mostUses) }]
  })
}

/** How much of a material one reference charge takes; null where it takes none, or the library cannot tell. */
function chargeOf(library: Library, t: Transformation, material: string, unit: Quantity['unit']): number | null {
  let sum = 0
  for (const line of t.charge) {
    if (line.material !== material || !chargedRoles.has(line.role) || line.amount === null) continue
    const amount = inUnit(library, materialOf(library, material), line.amount, line.unit, unit)
    if (amount === null) return null
    sum += amount
  }
  return sum > 0 ? sum : null
}
