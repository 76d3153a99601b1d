import { type Library, materialOf } from '../library/library.ts'
import { compoundIn } from '../library/reference-charge.ts'
import type { ChargedLine, ChargedStep } from '../route/charged.ts'
import type { QuenchLine } from './hazard-list.ts'
import { stillToRun } from './still-to-run.ts'
import type { HazardTables, QuenchRule } from './tables.ts'
import { shareLeft } from './waste.ts'

/**
 * Residues that are destroyed before they go into a container. Where the step has quench lines of its own that do so, these are what destroys
 * them; where it has none (water leaves an oxidant as it is), a reagent is reckoned by the equation from what is left at typical yield.
 */
export function quenchLines(library: Library, tables: HazardTables, steps: readonly ChargedStep[]): readonly QuenchLine[] {
  return steps.map(stillToRun).flatMap(step => {
    const quench = step.charges.filter(line => line.at === 'quench' && !isPlannedQuench(line))
    const seen = new Set<string>()
    return step.charges.flatMap((line): QuenchLine[] => {
      const rule = ruleFor(library, tables.quenchRules, line.material)
      if (rule === undefined || line.at === 'workup' || seen.has(line.material)) return []
      seen.add(line.material)
      const share = shareLeft(library, step, line.material)
      if (share === 0) return []
      const common = { step: step.number, destroys: line.material, test: rule.test }
      const own = quench.filter(one => isAmong(library, rule.destroyedBy, one.material))
      if (own.length > 0) {
        const reagents = own.map(one => ({
          name: materialOf(library, one.material).name,
          material: one.material,
          massG: one.massG,
          volumeMl: one.volumeMl,
        }))
        return [{ ...common, from: 'source', reagents, do: null }]
      }
      const moles = step.charges.reduce((sum, one) => sum + (one.material === line.material ? (one.amountMol ?? 0) : 0), 0)
      const massG = moles === 0 || share === null ? null : moles * share * rule.molPerMol * rule.reagentGPerMol
      const material = rule.material !== undefined && library.materials.has(rule.material) ? rule.material : null
      return [{ ...common, from: 'planned', reagents: [{ name: rule.reagent, material, massG, volumeMl: null }], do: rule.do }]
    })
  })
}

/**
 * Steps with a line more for each reagent that is planned to destroy a residue: so it is weighed, bought, stored, labelled and thrown away as
 * everything else is. It is none of the source's lines, and the figures of the source (mass metrics) are without it.
 */
export const withPlannedQuench = <S extends ChargedStep>(library: Library, tables: HazardTables, steps: readonly S[]): readonly S[] =>
  steps.map(step => {
    const planned = quenchLines(library, tables, [step]).filter(line => line.from === 'planned')
    const has = (id: string): boolean => step.charges.some(line => line.material === id && isPlannedQuench(line))
    const charges = planned.flatMap(line =>
      line.reagents.flatMap(({ material, massG }): ChargedLine[] => {
        if (material === null || has(material)) return []
        const molarMass = library.molarMass.get(material)
        const amountMol = massG === null || molarMass === undefined ? null : massG / molarMass
        const figures = { massG, volumeMl: null, amountMol, equivalents: null }
        return [{ material, role: 'quench', at: 'quench', ...figures, basis: 'planned', supply: 'bought', line: null }]
      }),
    )
    return charges.length === 0 ? step : { ...step, charges: [...step.charges, ...charges] }
  })

/** No source has it: a quench with an index is the source's own, whatever its amount rests on. */
export const isPlannedQuench = (line: ChargedLine): boolean => line.at === 'quench' && line.basis === 'planned' && line.line === null

const ruleFor = (library: Library, rules: readonly QuenchRule[], id: string): QuenchRule | undefined =>
  rules.find(rule => isAmong(library, rule.destroys, id))

/** By the bottle, or by the compound in it. */
function isAmong(library: Library, members: QuenchRule['destroys'], id: string): boolean {
  const material = materialOf(library, id)
  const inside = library.materials.get(compoundIn(material) ?? id)
  return members.some(
    ({ compound, cas }) =>
      compound === id ||
      compound === inside?.id ||
      (cas !== undefined && (cas === inside?.cas || (material.kind !== 'mixture' && cas === material.cas))),
  )
}
