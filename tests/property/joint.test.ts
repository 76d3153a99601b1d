import { beforeAll, describe, expect, it } from 'vitest'
import { cheapestWay, type JointAnswer } from '../../core/choose/joint.ts'
import { stepSets } from '../../core/choose/step-sets.ts'
import { compareKeys, keyOf, wayOf } from '../../core/choose/way.ts'
import type { HazardTables } from '../../core/hazards/tables.ts'
import { type Traits, traitsOf } from '../../core/hazards/traits.ts'
import type { Library } from '../../core/library/library.ts'
import { evaluate } from '../../core/plan/evaluate.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { checkedPlan } from '../../core/plan/goals.ts'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { defaultSettings } from '../../core/plan/settings.ts'
import { isRoute } from '../../core/route/is-route.ts'
import { workingOrder } from '../../core/route/working-order.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { bundledTables, toolkit } from '../support/hazards.ts'
import { sfc32 } from '../support/networks/sfc32.ts'
import { smallNetwork } from '../support/networks/small.ts'
import { material, transformation } from '../support/small-library.ts'

/**
 * The joint optimum against listing everything: on small seeded libraries every subset of the transformations is tried as a plan, and every
 * plan is reckoned in full with its basket. The listing shares neither the search for sets nor the bounds with what it checks.
 */
let solver: Solver
let tables: HazardTables
beforeAll(async () => {
  solver = await loadSolver()
  tables = bundledTables()
})

interface Case {
  readonly traits: ReadonlyMap<string, Traits>
  readonly library: Library
  readonly plan: Omit<Plan, 'goals'>
  readonly goals: readonly { readonly target: string; readonly amount: Plan['goals'][number]['amount'] }[]
}

/** Six to eight compounds of like mass, up to nine transformations, two suppliers with carriage, fees and now and then a minimum order. */
function smallCase(seed: number): Case {
  const draw = sfc32(seed)
  const below = (n: number) => Math.floor(draw() * n)
  const count = 6 + below(3)
  const ids = Array.from({ length: count }, (_, i) => `c${i}`)
  const made = new Set<string>()
  const transformations = Array.from({ length: 6 + below(4) }, (_, t) => {
    const head = 1 + below(count - 1)
    const first = draw() < 0.5 ? 0 : below(count)
    const others = [...new Set([first, ...(draw() < 0.5 ? [below(count)] : [])])].filter(c => c !== head)
    const reactants = others.length > 0 ? others : [0]
    made.add(ids[head]!)
    return transformation({
      id: `t${t}`,
      reactants: reactants.map(c => ({ compound: ids[c]!, coefficient: 1 })),
      products: [{ compound: ids[head]!, coefficient: 1 }],
      mainProduct: ids[head]!,
      limiting: ids[reactants[0]!]!,
      charge: [
        ...reactants.map(c => ({ material: ids[c]!, role: 'substrate' as const, amount: 10 + below(5), unit: 'g' as const })),
        { material: 'solvent', role: 'solvent' as const, amount: 20 + below(60), unit: 'g' as const },
      ],
      yieldPercent: { low: 40, typical: 50 + below(40), high: 95 },
      handsOnHours: 1 + below(4),
    })
  })
  const library = libraryOfParts(
    { title: 'a test' } as Library,
    [...ids, 'solvent'].map((id, i) =>
      material({
        id,
        formula: 'C6H12O6',
        ...(i > 0 && i < count && made.has(id) && draw() < 0.4 ? { buyable: false } : {}),
        ...(draw() < 0.3 ? { hazards: { codes: ['H225'], signalWord: 'Danger', from: 'a test' } } : {}),
      }),
    ),
    transformations,
  )
  const suppliers = [0, 1].map(s => ({
    id: `s${s}`,
    name: `S${s}`,
    carriageMinor: below(800),
    hazardousFeeMinor: below(500),
    ...(draw() < 0.3 ? { minimumOrderMinor: 500 + below(1500) } : {}),
  }))
  const packs: PacksFile = {
    format: 'waybench-packs',
    version: 1,
    currency: 'EUR',
    suppliers,
    packs: [...ids, 'solvent'].flatMap(id =>
      draw() < 0.12
        ? []
        : [0, 1].map(() => ({
            supplier: `s${below(2)}`,
            material: id,
            amount: 5 + below(40),
            unit: 'g' as const,
            priceMinor: 50 + below(900),
          })),
    ),
  }
  const targets = [...made].filter(id => id !== 'c0').sort()
  const wanted = targets.filter((_, i) => i % 2 === seed % 2).slice(0, 2)
  const goals = wanted.map((target, i) => ({
    target,
    amount: i === 1 && draw() < 0.4 ? ({ kind: 'rest' } as const) : ({ kind: 'mass', massG: 2 + below(6) } as const),
  }))
  return {
    library,
    traits: traitsOf(library, bundledTables(), toolkit),
    plan: { title: '', start: { material: 'c0', massG: 60 }, shelf: [], packs, settings: defaultSettings, log: [], seed: 1 },
    goals,
  }
}

/** Every subset of the transformations that is a plan, reckoned. */
function allPlans({ library, traits, plan, goals }: Case): readonly { readonly plan: Plan; readonly evaluation: Evaluation }[] {
  const ids = [...library.transformations.keys()].sort()
  const found = new Map<string, { plan: Plan; evaluation: Evaluation }>()
  for (let subset = 1; subset < 1 << ids.length; subset++) {
    const own = ids.filter((_, i) => (subset >> i) & 1)
    const makes = own.map(id => library.transformations.get(id)!.mainProduct)
    if (new Set(makes).size < makes.length || makes.includes('c0')) continue
    let steps: ReturnType<typeof workingOrder>
    try {
      steps = workingOrder(library, 'c0', own)
    } catch {
      continue
    }
    const routes = goals.map(({ target }) => {
      const needed = new Set([target])
      const part = [...steps].reverse().filter(step => {
        if (!needed.has(step.makes)) return false
        for (const { compound } of library.transformations.get(step.transformation)!.reactants) needed.add(compound)
        return true
      })
      return { start: 'c0', target, steps: part.reverse() }
    })
    // Every step is needed by some goal, and each goal's part is a route with everything else for sale.
    if (steps.some(step => !routes.some(route => route.steps.includes(step)))) continue
    if (routes.some(route => isRoute(library, route).length > 0)) continue
    const whole: Plan = { ...plan, goals: goals.map((goal, i) => ({ ...goal, route: routes[i]! })) }
    if (!checkedPlan(library, whole).ok) continue
    const evaluation = evaluate({ library, tables, traits, plan: whole, solver })
    if (!('stopped' in evaluation)) found.set(own.join(' '), { plan: whole, evaluation })
  }
  return [...found.values()]
}

/** What a plan costs in the order of comparison, worked out here once more from its evaluation. */
function figuresOf({ plan, evaluation }: { plan: Plan; evaluation: Evaluation }): readonly [number, number, number, number] {
  const { basket, goals, notes } = evaluation
  const short = plan.goals.filter(
    goal =>
      goal.amount.kind === 'mass' &&
      (goals.find(g => g.target === goal.target)!.expectedG < goal.amount.massG * (1 - 1e-6) ||
        notes.some(n => n.code === 'nothing-left' && n.where.includes(goal.target))),
  ).length
  const restG = goals.find(g => g.amount.kind === 'rest')?.expectedG
  const total = basket === null ? Number.POSITIVE_INFINITY : (basket.totalMinor ?? 0)
  return [
    short,
    basket?.complete ? 0 : 1,
    basket?.priceUnknown.length ?? Number.POSITIVE_INFINITY,
    restG === undefined ? total : restG > 0 ? total / restG : Number.POSITIVE_INFINITY,
  ]
}
const order = (a: readonly number[], b: readonly number[]): number => {
  for (let i = 0; i < 3; i++) if (a[i] !== b[i]) return a[i]! - b[i]!
  return a[3]! === b[3]! || Math.abs(a[3]! - b[3]!) <= 1e-6 * Math.max(1, Math.abs(a[3]!)) ? 0 : a[3]! - b[3]!
}

const joint = (one: Case, limits = {}): JointAnswer => {
  const answer = cheapestWay({ ...one, tables, options: {}, limits, solver })
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems))
  return answer.value
}

const cases = Array.from({ length: 60 }, (_, i) => smallCase(1000 + i)).filter(one => one.goals.length > 0)

describe('the cheapest way to all goals', () => {
  it('is the best of all plans there are, on small libraries', () => {
    let several = 0
    let none = 0
    for (const one of cases) {
      const all = allPlans(one)
      const found = joint(one)
      if (all.length === 0) {
        expect(found.kind).toBe('none')
        none++
        continue
      }
      if (found.kind !== 'way') throw new Error(`no way found where ${all.length} plans exist`)
      if (all.length > 1) several++
      expect(found.ways).toBe(all.length)
      expect(found.proven).toBe(true)
      const best = [...all].sort((a, b) => order(figuresOf(a), figuresOf(b)))[0]!
      expect(order(figuresOf(found), figuresOf(best))).toBe(0)
      // Witness: it is a plan, and its basket covers what is to be bought.
      expect(checkedPlan(one.library, found.plan).ok).toBe(true)
      for (const line of found.evaluation.shopping) {
        if (line.packs.length === 0) continue
        expect(line.packs.reduce((sum, p) => sum + p.amount * p.count, 0)).toBeGreaterThanOrEqual(line.buy.amount! - 1e-6)
      }
    }
    // The cases must not all be easy ones.
    expect(several).toBeGreaterThan(15)
    expect(none).toBeLessThan(cases.length)
  })

  it('has bounds that no plan in full falls below', () => {
    let looked = 0
    for (const one of cases.slice(0, 30))
      for (const { plan, evaluation } of allPlans(one)) {
        const way = wayOf(one.library, tables, plan)!
        expect(compareKeys(way.bound, keyOf(one.library, tables, way, evaluation, solver))).toBeLessThanOrEqual(0)
        expect(way.leastMinor).toBeLessThanOrEqual(evaluation.basket?.totalMinor ?? Number.POSITIVE_INFINITY)
        if (evaluation.days.handsOnH !== null) expect(way.handsOnH).toBeCloseTo(evaluation.days.handsOnH, 9)
        looked++
      }
    expect(looked).toBeGreaterThan(60)
  })

  it('stopped early is the best that was reckoned, not called proven, with a bound that the best of all does not break', () => {
    let cutShort = 0
    for (const one of cases) {
      const whole = joint(one)
      if (whole.kind !== 'way' || whole.reckoned < 2) continue
      let polls = 0
      const answer = cheapestWay({ ...one, tables, options: {}, limits: {}, solver, shouldStop: () => ++polls > 1 })
      if (!answer.ok || answer.value.kind !== 'way') throw new Error('the first way was not kept')
      const { proven, boundMinor, figures, reckoned } = answer.value
      expect([proven, reckoned]).toEqual([false, 1])
      cutShort++
      if (boundMinor === null || whole.figures.totalMinor === null || figures.totalMinor === null) continue
      expect(boundMinor).toBeLessThanOrEqual(whole.figures.totalMinor)
      expect(boundMinor).toBeLessThanOrEqual(figures.totalMinor)
    }
    expect(cutShort).toBeGreaterThan(5)
  })

  it('keeps to a limit on hands that the cheapest breaks, at the price of the best within it', () => {
    let cut = 0
    for (const one of cases.slice(0, 30)) {
      const free = joint(one)
      if (free.kind !== 'way' || free.figures.handsOnH === null) continue
      const limits = { maxHandsOnH: free.figures.handsOnH - 0.5 }
      const within = allPlans(one).filter(p => (p.evaluation.days.handsOnH ?? Number.POSITIVE_INFINITY) <= limits.maxHandsOnH)
      const found = joint(one, limits)
      expect(found.kind).toBe(within.length === 0 ? 'none' : 'way')
      if (found.kind !== 'way') continue
      cut++
      const best = within.sort((a, b) => order(figuresOf(a), figuresOf(b)))[0]!
      expect(order(figuresOf(found), figuresOf(best))).toBe(0)
    }
    expect(cut).toBeGreaterThan(3)
  })
})

describe('sets of steps', () => {
  it('are those that trying every subset of the arcs finds', () => {
    let sets = 0
    for (let seed = 1; seed <= 250; seed++) {
      const { network, start, target } = smallNetwork(seed, 'sum')
      const second = (target + 1) % network.compounds.length
      const targets = seed % 3 === 0 && second !== start ? [target, second] : [target]
      if (targets.includes(start)) continue
      const found = stepSets(network, { start, targets, free: [], masked: new Uint8Array(network.arcs.length), budget: 1_000_000 })
      expect(found.complete).toBe(true)
      const own = found.sets.map(set => set.join(' ')).sort()
      expect(new Set(own).size).toBe(own.length)
      expect(own).toEqual(subsets(network, start, targets))
      sets += own.length
    }
    expect(sets).toBeGreaterThan(300)
  })
})

/** By plain means: one maker a compound, all needed, no circle, the rest bought, each target made from the start. */
function subsets(network: ReturnType<typeof smallNetwork>['network'], start: number, targets: readonly number[]): readonly string[] {
  const { head, body, bodyStart, buyable, arcs } = network
  const bodyOf = (a: number) => [...body.subarray(bodyStart[a], bodyStart[a + 1])]
  const found: string[] = []
  for (let subset = 1; subset < 1 << arcs.length; subset++) {
    const own = [...arcs.keys()].filter(a => (subset >> a) & 1)
    const makers = new Map(own.map(a => [head[a]!, a]))
    if (makers.size < own.length || makers.has(start)) continue
    const needs = (target: number): ReadonlySet<number> => {
      const seen = new Set([target])
      const stack = [target]
      for (let c = stack.pop(); c !== undefined; c = stack.pop()) {
        const a = makers.get(c)
        if (a === undefined) continue
        for (const r of bodyOf(a)) if (!seen.has(r)) stack.push(r)
        for (const r of bodyOf(a)) seen.add(r)
      }
      return seen
    }
    const parts = targets.map(needs)
    if (targets.some((t, i) => !makers.has(t) || !parts[i]!.has(start))) continue
    const all = new Set(parts.flatMap(part => [...part]))
    if (own.some(a => !all.has(head[a]!))) continue
    if ([...all].some(c => !makers.has(c) && c !== start && buyable[c] === 0)) continue
    const done = new Set([...all].filter(c => !makers.has(c)))
    for (let left = [...own]; left.length > 0; ) {
      const ready = left.filter(a => bodyOf(a).every(c => done.has(c)))
      if (ready.length === 0) break
      for (const a of ready) done.add(head[a]!)
      left = left.filter(a => !ready.includes(a))
    }
    if (own.every(a => done.has(head[a]!))) found.push(own.join(' '))
  }
  return found.sort()
}
