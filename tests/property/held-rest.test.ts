import { beforeAll, expect, it } from 'vitest'
import { keyOf, wayOf } from '../../core/choose/way.ts'
import { isPlannedQuench } from '../../core/hazards/quench.ts'
import { evaluate } from '../../core/plan/evaluate.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { demoParts } from '../../server/library/demo.ts'
import type { Workshop } from '../../server/library/workshop.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { bundledWorkshop } from '../support/app.ts'
import { defaultRoutes } from '../support/default-routes.ts'

/**
 * What a way costs with its rest held at the least stated, as ways are compared, beside the basket of the plan that asks for that mass: one is
 * reckoned for comparison alone, the other by the whole pipeline, which also buys what is planned to destroy residues.
 */
let solver: Solver
let workshop: Workshop
beforeAll(async () => {
  solver = await loadSolver()
  workshop = await bundledWorkshop()
})

it('a way with its rest held costs what the plan of that mass costs, quench planned for its residues included', () => {
  const { library, tables } = workshop
  const traits = workshop.traits()
  const { packs: sold, settings } = demoParts()
  const leastG = 3
  let quenched = 0
  for (const route of defaultRoutes(library, 1)) {
    const plan: Plan = {
      title: '',
      start: { material: route.start, massG: 40 },
      shelf: [],
      packs: sold,
      settings,
      log: [],
      seed: 1,
      goals: [{ target: route.target, amount: { kind: 'rest', leastG }, route }],
    }
    const held: Plan = { ...plan, goals: [{ ...plan.goals[0]!, amount: { kind: 'mass', massG: leastG } }] }
    const first = evaluate({ library, tables, traits, plan: held, solver: null })
    if ('stopped' in first) continue
    const planned = first.steps.flatMap(step => step.charges.filter(isPlannedQuench).map(line => line.material))
    if (planned.length === 0) continue
    // Everything it takes is sold, what destroys residues as well.
    const packs: PacksFile = {
      ...sold!,
      packs: first.shopping.map(({ material, need }, at) => ({
        supplier: sold!.suppliers[0]!.id,
        material,
        amount: 5,
        unit: need.unit,
        priceMinor: 100 + at,
      })),
    }
    const way = wayOf(library, tables, { ...plan, packs })!
    const evaluation = evaluate({ library, tables, traits, plan: way.plan, solver })
    const whole = evaluate({ library, tables, traits, plan: { ...held, packs }, solver })
    if ('stopped' in evaluation || 'stopped' in whole) throw new Error('a list ends what it did not end before')
    const key = keyOf(library, tables, way, evaluation, solver)
    expect(key.cost, `${route.steps.map(s => s.transformation)}`).toBe(whole.basket!.totalMinor)
    expect(key.priceUnknown).toBe(whole.basket!.priceUnknown.length)
    if (whole.shopping.some(line => planned.includes(line.material) && (line.costMinor ?? 0) > 0)) quenched++
    if (quenched >= 5) break
  }
  expect(quenched).toBeGreaterThan(2)
})
