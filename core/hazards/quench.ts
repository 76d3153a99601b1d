import { type Library, materialOf } from '../library/library.ts'
import { compoundIn } from '../library/reference-charge.ts'
import type { ChargedStep } from '../route/charged.ts'
import type { QuenchLine } from './hazard-list.ts'
import type { HazardTables, QuenchRule } from './tables.ts'
import { shareLeft } from './waste.ts'

/**
 * Residues that are destroyed before they go into a container. Where the step has quench lines of its own, these are what destroys them, and
 * they are in the shopping list as every line is; where it has none, a reagent is proposed and reckoned by the equation from what is left at
 * typical yield.
 */
export function quenchLines(library: Library, tables: HazardTables, steps: readonly ChargedStep[]): readonly QuenchLine[] {
  return steps.flatMap(step => {
    const own = step.charges.filter(line => line.at === 'quench')
    const seen = new Set<string>()
    return step.charges.flatMap((line): QuenchLine[] => {
      const rule = ruleFor(library, tables.quenchRules, line.material)
      if (rule === undefined || line.at === 'workup' || seen.has(line.material)) return []
      seen.add(line.material)
      const share = shareLeft(library, step, line.material)
      if (share === 0) return []
      const common = { step: step.number, destroys: line.material, test: rule.test }
      if (own.length > 0) {
        const reagents = own.map(one => ({ name: materialOf(library, one.material).name, massG: one.massG, volumeMl: one.volumeMl }))
        return [{ ...common, from: 'source', reagents, do: null }]
      }
      const moles = step.charges.reduce((sum, one) => sum + (one.material === line.material ? (one.amountMol ?? 0) : 0), 0)
      const massG = moles === 0 || share === null ? null : moles * share * rule.molPerMol * rule.reagentGPerMol
      return [{ ...common, from: 'planned', reagents: [{ name: rule.reagent, massG, volumeMl: null }], do: rule.do }]
    })
  })
}

/** By the bottle, or by the compound in it. */
function ruleFor(library: Library, rules: readonly QuenchRule[], id: string): QuenchRule | undefined {
  const material = materialOf(library, id)
  const inside = library.materials.get(compoundIn(material) ?? id)
  return rules.find(rule =>
    rule.destroys.some(
      ({ compound, cas }) =>
        compound === id ||
        compound === inside?.id ||
        (cas !== undefined && (cas === inside?.cas || (material.kind !== 'mixture' && cas === material.cas))),
    ),
  )
}
