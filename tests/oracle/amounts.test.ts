import { describe, expect, it } from 'vitest'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import { isolatedOf, runYield } from '../../core/plan/logged.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { reckoned } from '../../core/plan/reckoned.ts'
import { defaultSettings } from '../../core/plan/settings.ts'
import { chargesOf } from '../../core/route/charge.ts'
import { demandOf, reachOf } from '../../core/route/demand.ts'
import { flowOf } from '../../core/route/flow.ts'
import { longestLinear, overallYieldOnStart } from '../../core/route/overall-yield.ts'
import type { Route } from '../../core/route/route.ts'
import { workingOrder } from '../../core/route/working-order.ts'
import { bundled } from '../../server/library/bundled.ts'
import { type CheckValue, checkValuesOf } from '../support/check-values.ts'
import { material, transformation } from '../support/small-library.ts'

interface FormulaEntry {
  readonly formula: string
  readonly coefficient?: number
  readonly grams?: number
  readonly milliliters?: number
  readonly densityGPerMl?: number
}

/** Ids are kebab-case; formulas are not. */
const idOf = (formula: string): string =>
  `f-${[...formula].map(c => (/[a-z0-9]/.test(c) ? c : /[A-Z]/.test(c) ? `${c.toLowerCase()}x` : 'y')).join('')}`
const gramsOf = (r: FormulaEntry): number => r.grams ?? (r.milliliters ?? 0) * (r.densityGPerMl ?? 0)

/** One reaction of formulas with weights as a library of its own. */
function reactionOf(reactants: readonly FormulaEntry[], product: FormulaEntry, limiting: string, yieldPercent = 100) {
  const formulas = [...new Set([...reactants.map(r => r.formula), product.formula])]
  return libraryOfParts(
    { title: 'a test' },
    formulas.map(formula => material({ id: idOf(formula), formula })),
    [
      transformation({
        id: 'reaction',
        reactants: reactants.map(r => ({ compound: idOf(r.formula), coefficient: r.coefficient ?? 1 })),
        products: [{ compound: idOf(product.formula), coefficient: product.coefficient ?? 1 }],
        mainProduct: idOf(product.formula),
        limiting: idOf(limiting),
        charge: reactants.map(r => ({ material: idOf(r.formula), role: 'substrate' as const, amount: gramsOf(r), unit: 'g' as const })),
        yieldPercent: { low: yieldPercent, typical: yieldPercent, high: yieldPercent },
      }),
    ],
  )
}

/** The reactant from which least product can come. */
function limitingOf(reactants: readonly FormulaEntry[], product: FormulaEntry): { formula: string; theoreticalG: number } {
  const each = reactants.map(r => {
    const flow = flowOf(reactionOf(reactants, product, r.formula), 'reaction')
    return { formula: r.formula, theoreticalG: gramsOf(r) * flow.theoryPerG }
  })
  return each.reduce((least, one) => (one.theoreticalG < least.theoreticalG ? one : least))
}

const close = (got: number, want: number, { tolerance, id }: CheckValue): void => {
  const allowed = tolerance.abs ?? (tolerance.rel ?? 0) * Math.abs(want)
  expect(Math.abs(got - want), `${id}: ${got} against ${want}`).toBeLessThanOrEqual(allowed)
}
const listOf = (one: number | readonly number[]): readonly number[] => (typeof one === 'number' ? [one] : one)

describe('theoretical mass and percent yield', () => {
  it.each([...checkValuesOf('percent-yield', 13), ...checkValuesOf('orgsyn-yield', 8)])('$id', value => {
    const { reactants, product, isolatedGrams, percentYield, theoreticalGrams } = value.inputs
    if (reactants === undefined) {
      close((100 * isolatedGrams) / theoreticalGrams, value.expected.percentYield, value)
      return
    }
    const { formula, theoreticalG } = limitingOf(reactants, product)
    const library = reactionOf(reactants, product, formula)
    const chargedG = gramsOf(reactants.find((r: FormulaEntry) => r.formula === formula))
    if (percentYield !== undefined) {
      const wanted = new Map([[idOf(product.formula), 1]])
      const steps = workingOrder(library, idOf(formula), ['reaction'])
      const reach = reachOf(library, steps, wanted, new Map([[idOf(formula), chargedG]]), {
        yields: new Map([['reaction', percentYield / 100]]),
      })
      close(reach.scale, value.expected.isolatedGrams, value)
      return
    }
    close(theoreticalG, value.expected.theoreticalGrams, value)
    const { limiting } = value.expected
    const named = reactants.find((r: FormulaEntry & { id?: string }) => r.formula === limiting || r.id === limiting)
    // Stoichiometric within 0.03 %: the source of this one is content with either.
    if (value.id !== 'os-dibenzalacetone') expect(formula).toBe(named.formula)
    const percents = listOf(isolatedGrams).map(g => 100 * runYield(library, 'reaction', g, chargedG))
    listOf(value.expected.percentYield).forEach((percent, i) => {
      close(percents[i]!, percent, value)
    })
  })

  it.each(checkValuesOf('percent-yield-two-products', 1))('$id', value => {
    for (const product of value.inputs.products) {
      const library = reactionOf(value.inputs.reactants, product, value.inputs.reactants[0].formula)
      const percent = 100 * runYield(library, 'reaction', product.isolatedGrams, value.inputs.reactants[0].grams)
      close(percent, value.expected.percentYield[product.formula], value)
    }
  })

  it.each(checkValuesOf('recovery', 2))('$id', value => {
    const crude = material({ id: 'crude', kind: 'feedstock' })
    const pure = material({ id: 'pure', formula: 'C' })
    const library = libraryOfParts(
      { title: 'a test' },
      [crude, pure],
      [
        transformation({
          id: 'recrystallise',
          kind: 'isolation',
          reactants: [{ compound: 'crude', coefficient: 1 }],
          products: [{ compound: 'pure', coefficient: 1 }],
          mainProduct: 'pure',
          limiting: 'crude',
          charge: [{ material: 'crude', role: 'substrate', amount: value.inputs.gramsIn, unit: 'g' }],
        }),
      ],
    )
    const percents = listOf(value.inputs.gramsOut).map(g => 100 * runYield(library, 'recrystallise', g, value.inputs.gramsIn))
    listOf(value.expected.percentRecovery).forEach((percent, i) => {
      close(percents[i]!, percent, value)
    })
  })
})

describe('backwards to the charge', () => {
  it.each(checkValuesOf('back-calculation', 1))('$id', value => {
    const { charge, target, targetGrams, percentYield } = value.inputs
    const [first, second, base] = charge
    const library = libraryOfParts(
      { title: 'a test' },
      [...charge, target].map((c: FormulaEntry) =>
        material({ id: idOf(c.formula), formula: c.formula, ...(c.densityGPerMl ? { densityGPerMl: c.densityGPerMl } : {}) }),
      ),
      [
        transformation({
          id: 'condense',
          reactants: [first, second].map((c: FormulaEntry) => ({ compound: idOf(c.formula), coefficient: 1 })),
          products: [{ compound: idOf(target.formula), coefficient: 1 }],
          mainProduct: idOf(target.formula),
          limiting: idOf(first.formula),
          charge: [first, second, base].map((c: FormulaEntry & { equivalents: number }) => ({
            material: idOf(c.formula),
            role: c === base ? ('catalyst' as const) : ('substrate' as const),
            amount: c.equivalents,
            unit: 'mol' as const,
          })),
          yieldPercent: { low: percentYield, typical: percentYield, high: percentYield },
        }),
      ],
    )
    const steps = workingOrder(library, idOf(first.formula), ['condense'])
    const demand = demandOf(library, steps, new Map([[idOf(target.formula), targetGrams]]))
    const charges = chargesOf(library, {
      transformation: 'condense',
      limitingG: demand.limitingG.get('condense')!,
      productG: targetGrams,
      start: { compound: idOf(first.formula), material: idOf(first.formula) },
      made: new Set([idOf(target.formula)]),
    })
    for (const [formula, grams] of Object.entries<number>(value.expected.grams)) {
      close(charges.find(c => c.material === idOf(formula))?.massG ?? Number.NaN, grams, value)
    }
    close(charges[0]?.amountMol ?? Number.NaN, value.expected.moles, value)
    close(charges[1]?.volumeMl ?? Number.NaN, value.expected.milliliters[second.formula], value)
  })
})

/** A chain or a tree of plain steps, each of one part to one, with these percents of theory. */
function plainSteps(
  steps: readonly { readonly id: string; readonly from: readonly string[]; readonly to: string; readonly percent: number }[],
) {
  const compounds = [...new Set(steps.flatMap(s => [...s.from, s.to]))]
  return libraryOfParts(
    { title: 'a test' },
    compounds.map(id => material({ id, formula: 'C10H10O' })),
    steps.map(s =>
      transformation({
        id: s.id,
        reactants: s.from.map(compound => ({ compound, coefficient: 1 })),
        products: [{ compound: s.to, coefficient: 1 }],
        mainProduct: s.to,
        limiting: s.from[0]!,
        charge: s.from.map(id => ({ material: id, role: 'substrate' as const, amount: 10, unit: 'g' as const })),
        yieldPercent: { low: s.percent, typical: s.percent, high: s.percent },
      }),
    ),
  )
}

describe('overall yield', () => {
  it.each(checkValuesOf('overall-yield', 5).filter(v => v.inputs.branches === undefined))('$id', value => {
    const percents: number[] = value.inputs.stepPercentYields
    const library = plainSteps(percents.map((percent, i) => ({ id: `s-${i}`, from: [`c-${i}`], to: `c-${i + 1}`, percent })))
    const route: Route = {
      start: 'c-0',
      target: `c-${percents.length}`,
      steps: workingOrder(
        library,
        'c-0',
        percents.map((_, i) => `s-${i}`),
      ),
    }
    close(100 * overallYieldOnStart(library, route), value.expected.overallPercentYield, value)
    close(100 * longestLinear(library, route).yieldFraction, value.expected.overallPercentYield, value)
  })

  it.each(checkValuesOf('overall-yield', 5).filter(v => v.inputs.branches !== undefined))('$id', value => {
    const branches: { name: string; stepPercentYields: number[] }[] = value.inputs.branches
    const joining: number[] = value.inputs.joiningStepPercentYields
    const steps: { id: string; from: string[]; to: string; percent: number }[] = []
    branches.forEach((branch, b) => {
      branch.stepPercentYields.forEach((percent, i) => {
        steps.push({ id: `b-${b}-${i}`, from: [`b${b}-${i}`], to: `b${b}-${i + 1}`, percent })
      })
    })
    const ends = branches.map((branch, b) => `b${b}-${branch.stepPercentYields.length}`)
    joining.forEach((percent, i) => {
      steps.push({ id: `join-${i}`, from: i === 0 ? ends : [`j-${i}`], to: `j-${i + 1}`, percent })
    })
    const library = plainSteps(steps)
    const ids = steps.map(s => s.id)
    branches.forEach((branch, b) => {
      const start = `b${b}-0`
      const route: Route = { start, target: `j-${joining.length}`, steps: workingOrder(library, start, ids) }
      close(100 * overallYieldOnStart(library, route), value.expected.overallPercentYieldFromBranch[branch.name], value)
      expect(longestLinear(library, route).chain).toHaveLength(value.expected.longestLinearSteps)
      const feed = value.expected.molesFeedPerMoleTarget?.[branch.name]
      if (feed !== undefined) close(demandOf(library, route.steps, new Map([[route.target, 1]])).compoundG.get(start) ?? 0, feed, value)
    })
    expect(ids).toHaveLength(value.expected.totalSteps)
  })
})

describe('mass along a chain', () => {
  it.each(checkValuesOf('chain-mass', 2))('$id', value => {
    const { feed, steps } = value.inputs
    const formulas: string[] = [
      feed.formula,
      ...steps.map((s: { product?: string; productFormula?: string }) => s.product ?? s.productFormula),
    ]
    const library = libraryOfParts(
      { title: 'a test' },
      formulas.map((formula, i) => material({ id: `c-${i}`, formula })),
      steps.map((s: { feedCoefficient?: number; productCoefficient?: number }, i: number) =>
        transformation({
          id: `s-${i}`,
          reactants: [{ compound: `c-${i}`, coefficient: s.feedCoefficient ?? 1 }],
          products: [{ compound: `c-${i + 1}`, coefficient: s.productCoefficient ?? 1 }],
          mainProduct: `c-${i + 1}`,
          limiting: `c-${i}`,
          charge: [{ material: `c-${i}`, role: 'substrate', amount: 1, unit: 'g' }],
        }),
      ),
    )
    const ids = steps.map((_: unknown, i: number) => `s-${i}`)
    const route: Route = { start: 'c-0', target: `c-${steps.length}`, steps: workingOrder(library, 'c-0', ids) }
    const ends = listOf(steps.at(-1).yieldFraction)
    ends.forEach((_, which) => {
      const yields = new Map<string, number>(
        steps.map((s: { yieldFraction: number | number[] }, i: number) => [
          `s-${i}`,
          listOf(s.yieldFraction)[which] ?? listOf(s.yieldFraction)[0]!,
        ]),
      )
      close(overallYieldOnStart(library, route, yields), listOf(value.expected.overallYieldFraction)[which]!, value)
      const forwards = (target: string): number =>
        reachOf(library, route.steps, new Map([[target, 1]]), new Map([['c-0', feed.grams]]), { yields }).scale
      const back = (target: string, g: number): number =>
        demandOf(library, route.steps, new Map([[target, g]]), { yields }).compoundG.get('c-0')!
      if (value.expected.targetGramsFrom100gFeed) {
        close(forwards(route.target), value.expected.targetGramsFrom100gFeed[which], value)
        // The source lists the smaller charge first, that of the higher yield.
        close(back(route.target, 10), value.expected.feedGramsFor10gTarget[1 - which], value)
      }
      if (value.expected.grams) {
        for (const [formula, grams] of Object.entries<number>(value.expected.grams))
          close(forwards(`c-${formulas.lastIndexOf(formula)}`), grams, value)
        close(back(route.target, 5), value.expected.feedGramsFor5gLast, value)
      }
    })
  })

  it.each(checkValuesOf('replan', 1))('$id', value => {
    const { plannedStepFractions, actual } = value.inputs
    const library = reactionOf(
      [{ formula: actual.feedFormula, coefficient: actual.feedCoefficient, grams: actual.feedGrams }],
      { formula: actual.productFormula },
      actual.feedFormula,
    )
    const entry = {
      id: 'run-1',
      step: 'reaction',
      date: null,
      batch: 1,
      chargedG: actual.feedGrams,
      weighedG: actual.gramsIsolated,
      dampPercent: 0,
      purity: null,
      failed: false,
      note: '',
      replaces: null,
    }
    close(runYield(library, 'reaction', isolatedOf(entry), actual.feedGrams), value.expected.actualStepFraction, value)
    const remaining = plannedStepFractions.slice(1).reduce((product: number, y: number) => product * y, 1)
    close(remaining, value.expected.remainingOverallFraction, value)
  })
})

const { library } = bundled()
const route = (target: string, ids: readonly string[], start = 'benzoin'): Route => ({
  start,
  target,
  steps: workingOrder(library, start, ids),
})
const planOf = (own: Partial<Plan> & Pick<Plan, 'goals'>): Plan => ({
  title: 'a test',
  start: { material: 'benzoin', massG: 24 },
  shelf: [],
  packs: null,
  settings: defaultSettings,
  log: [],
  seed: 1,
  ...own,
})

describe('dividing one intermediate', () => {
  it.each(checkValuesOf('allocation', 1))('$id', value => {
    const { intermediateGrams, formula, uses, keepFraction } = value.inputs
    const parts = libraryOfParts(
      { title: 'a test' },
      [
        material({ id: 'i', formula }),
        ...uses.map((u: { name: string; productFormula: string }) => material({ id: u.name.toLowerCase(), formula: u.productFormula })),
      ],
      uses.map((u: { name: string; yieldFraction: number }) =>
        transformation({
          id: `to-${u.name.toLowerCase()}`,
          reactants: [{ compound: 'i', coefficient: 1 }],
          products: [{ compound: u.name.toLowerCase(), coefficient: 1 }],
          mainProduct: u.name.toLowerCase(),
          limiting: 'i',
          charge: [{ material: 'i', role: 'substrate', amount: 1, unit: 'g' }],
          yieldPercent: { low: 1, typical: u.yieldFraction * 100, high: 100 },
        }),
      ),
    )
    const keptG = intermediateGrams * keepFraction
    const goals = uses.map((u: { name: string; fraction: number }) => ({
      target: u.name.toLowerCase(),
      // What is kept back is taken off before the division, so shares are shares of the remainder.
      amount: { kind: 'share' as const, fraction: u.fraction / (1 - keepFraction) },
      route: { start: 'i', target: u.name.toLowerCase(), steps: workingOrder(parts, 'i', [`to-${u.name.toLowerCase()}`]) },
    }))
    const settings = { ...defaultSettings, keptBack: [{ compound: 'i', massG: keptG }] }
    const result = reckoned(parts, planOf({ start: { material: 'i', massG: intermediateGrams }, goals, settings }))
    for (const [name, grams] of Object.entries<number>(value.expected.grams)) {
      close(result.goals.find(g => g.target === name.toLowerCase())!.expectedG, grams, value)
    }
    close(result.start.haveG! - result.start.massG, value.expected.keptGrams, value)
  })
})

describe('24 g of benzoin, hand values of the worked example', () => {
  const copper = 'benzil-copper-ammonium-nitrate'
  const end = ['tetraphenylcyclopentadienone-koh', 'hexaphenylbenzene']
  const made = ['benzil-dihydrazone', 'diphenylacetylene-dihydrazone']
  // Reckoned by hand from the typical yields 91, 93.6, 84, 86 and 81.35 percent and the charges; copper route with the acetylene bought or
  // made from the same benzil, and nitric acid (95.9 percent) with it bought.
  it.each([
    ['copper, diphenylacetylene bought', [copper, ...end], 43.259, 0.7155],
    ['copper, diphenylacetylene made from the same benzil', [copper, ...end, ...made], 11.147, 0.3687],
    ['nitric acid, diphenylacetylene bought', ['benzil-nitric-acid', ...end], 45.588, 0.754],
  ] as const)('%s', (_name, ids, grams, fraction) => {
    const goals = [{ target: 'hexaphenylbenzene', amount: { kind: 'rest' as const }, route: route('hexaphenylbenzene', ids) }]
    const result = reckoned(library, planOf({ goals }))
    expect(result.goals[0]!.expectedG).toBeCloseTo(grams, 3)
    expect(result.overallYieldOnStart).toBeCloseTo(fraction, 4)
    expect(result.start.massG).toBeCloseTo(24, 9)
    // Backwards from what came out asks for what went in.
    const wanted = [{ ...goals[0]!, amount: { kind: 'mass' as const, massG: result.goals[0]!.expectedG } }]
    expect(reckoned(library, planOf({ goals: wanted, start: { material: 'benzoin', massG: null } })).start.massG).toBeCloseTo(24, 9)
  })
})
