import { beforeAll, expect, it } from 'vitest'
import { cheapestWay } from '../../core/choose/joint.ts'
import { evaluate } from '../../core/plan/evaluate.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Route } from '../../core/route/route.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { demoParts } from '../../server/library/demo.ts'
import type { Workshop } from '../../server/library/workshop.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { bundledWorkshop } from '../support/app.ts'
import { defaultRoutes } from '../support/default-routes.ts'

/**
 * The cheapest way beside every single route that there is, on the bundled library: pairs of a start and a target, their routes listed plainly
 * and reckoned one by one, compared by what their own baskets say.
 */
let solver: Solver
let workshop: Workshop
beforeAll(async () => {
  solver = await loadSolver()
  workshop = await bundledWorkshop()
})

const pairsLooked = 24
const routesEach = 6

/** Incomplete, unknown prices, total; less is better. */
const costOf = ({ basket }: Evaluation): readonly number[] => [
  basket?.complete ? 0 : 1,
  basket?.priceUnknown.length ?? Number.POSITIVE_INFINITY,
  basket?.totalMinor ?? 0,
]
const isBetter = (a: readonly number[], b: readonly number[]): boolean => {
  const at = a.findIndex((value, i) => value !== b[i])
  return at >= 0 && a[at]! < b[at]!
}

it('is never dearer than any single route', () => {
  const { library, tables } = workshop
  const traits = workshop.traits()
  const { packs, shelf, settings } = demoParts()
  const pairs = new Map<string, Route[]>()
  for (const route of defaultRoutes(library, 3)) {
    const name = `${route.start} ${route.target}`
    pairs.set(name, [...(pairs.get(name) ?? []), route])
  }
  const several = [...pairs.values()].filter(routes => routes.length > 1)
  const every = Math.floor(several.length / pairsLooked)
  let looked = 0
  let cheaperThanSome = 0
  for (const routes of several.filter((_, i) => i % every === 0).slice(0, pairsLooked)) {
    const { start, target } = routes[0]!
    const plan: Omit<Plan, 'goals'> = { title: '', start: { material: start, massG: null }, shelf, packs, settings, log: [], seed: 1 }
    const goal = { target, amount: { kind: 'mass', massG: 4 } as const }
    const found = cheapestWay({ library, tables, traits, plan, goals: [goal], options: {}, limits: {}, solver })
    // What a list stops has no way, and none of its routes a plan.
    if (!found.ok || found.value.kind !== 'way') continue
    for (const route of routes.slice(0, routesEach)) {
      const single = evaluate({ library, tables, traits, plan: { ...plan, goals: [{ ...goal, route }] }, solver })
      if ('stopped' in single) continue
      looked++
      expect(
        isBetter(costOf(single), costOf(found.value.evaluation)),
        `${start} to ${target} by ${route.steps.map(s => s.transformation)}`,
      ).toBe(false)
      if (isBetter(costOf(found.value.evaluation), costOf(single))) cheaperThanSome++
    }
  }
  expect(looked).toBeGreaterThan(40)
  expect(cheaperThanSome).toBeGreaterThan(10)
})
