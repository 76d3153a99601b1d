import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { materialsOfStep } from '../../../../core/choose/forbidden.ts'
import type { RoutesQuery } from '../../../../core/choose/query.ts'
import type { RouteRows } from '../../../../core/choose/route-list.ts'
import { routeRows } from '../../../../core/choose/route-rows.ts'
import type { RoutesInput } from '../../../../core/choose/searching.ts'
import { compareCounts } from '../../../../core/hazards/counts.ts'
import { transformationOf } from '../../../../core/library/library.ts'
import { settingsSchema } from '../../../../core/plan/settings.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { bundledTraits } from '../../../support/bundled-traits.ts'
import { root } from '../../../support/tree.ts'

const { library } = bundled()
const { traits } = bundledTraits()
const packs = JSON.parse(readFileSync(`${root}routes-data/demo/packs.json`, 'utf8'))
const ask = (query: RoutesQuery, more: Partial<RoutesInput> = {}) => routeRows({ library, traits, query, ...more })

function rows(query: RoutesQuery, more: Partial<RoutesInput> = {}): RouteRows {
  const answer = ask(query, more)
  if (!answer.ok || answer.value.kind !== 'routes') throw new Error(JSON.stringify(answer).slice(0, 400))
  return answer.value
}
const codes = (query: RoutesQuery, more: Partial<RoutesInput> = {}): string[] => {
  const answer = ask(query, more)
  if (!answer.ok) return answer.problems.map(p => p.code)
  return answer.value.kind === 'none' ? answer.value.problems.map(p => p.code) : [answer.value.kind]
}
const goal = { from: 'benzoin', to: 'hexaphenylbenzene' }
const step = (id: string) => transformationOf(library, id)

describe('the axes', () => {
  it.each(['start', 'steps', 'hands-on', 'elapsed', 'mass-intensity'] as const)('%s: rows stand in the order of their value', by => {
    for (const make of [[], ['all']]) {
      const { routes } = rows({ ...goal, by, make, count: 100 })
      expect(routes.length).toBeGreaterThan(8)
      for (const [i, row] of routes.entries()) if (i > 0) expect(row.value!).toBeGreaterThanOrEqual(routes[i - 1]!.value! * (1 - 1e-9))
    }
  })

  it('steps and hands-on are sums over distinct steps', () => {
    for (const row of rows({ ...goal, by: 'hands-on', make: ['all'], count: 100 }).routes)
      expect(row.value).toBeCloseTo(
        row.steps.reduce((sum, id) => sum + step(id).handsOnHours!, 0),
        9,
      )
    for (const row of rows({ ...goal, by: 'steps', make: ['all'], count: 100 }).routes) expect(row.value).toBe(row.steps.length)
  })

  it('elapsed is the longest chain of hours', () => {
    for (const row of rows({ ...goal, by: 'elapsed', make: ['all'], count: 100 }).routes) {
      const until = new Map<string, number>()
      for (const id of row.steps) {
        const t = step(id)
        until.set(t.mainProduct, t.elapsedHours + Math.max(0, ...t.reactants.map(r => until.get(r.compound) ?? 0)))
      }
      expect(row.value).toBeCloseTo(until.get(goal.to)!, 9)
    }
  })

  it('all axes list the same routes', () => {
    const sets = (['start', 'yield', 'steps', 'hands-on', 'elapsed', 'mass-intensity', 'hazard', 'cost'] as const).map(by =>
      rows({ ...goal, by, make: ['all'], count: 100 }, { packs })
        .routes.map(row => row.steps.join())
        .sort(),
    )
    expect(sets[0]!.length).toBe(82)
    for (const set of sets) expect(set).toEqual(sets[0])
  })

  it('yield and hazard re-order; hazard has no figure', () => {
    const byYield = rows({ ...goal, by: 'yield', count: 100 }).routes
    expect(byYield.map(row => row.value)).toEqual([...byYield].map(row => row.overallYieldOnStart).sort((a, b) => b - a))
    const byHazard = rows({ ...goal, by: 'hazard', count: 100 }).routes
    for (const [i, row] of byHazard.entries()) {
      expect(row.value).toBeNull()
      if (i > 0) expect(compareCounts(byHazard[i - 1]!.hazard, row.hazard)).toBeLessThanOrEqual(0)
    }
  })

  it('a route whose price is unknown stands last, without a figure, and says so', () => {
    const query = { from: 'benzoin', to: 'benzil', by: 'cost' as const }
    for (const row of rows(query).routes) {
      expect(row.value).toBeNull()
      expect(row.flags.map(f => f.kind)).toContain('value-unknown')
    }
    const priced = rows(query, { packs }).routes
    const known = priced.filter(row => row.value !== null)
    expect(known.length).toBeGreaterThan(0)
    expect(priced.slice(0, known.length)).toEqual(known)
  })

  it('cost and mass in add up by hand for one step', () => {
    // Nitric acid on benzoin: 20 g of benzoin (212.25 g/mol), 100 mL of acid, 350 mL of water, 2.5 mL of ethanol a gram; 95.9 % of 210.23 g/mol.
    const benzoinG = 212.248 / 0.959
    const acidMl = (benzoinG / 20) * 100
    const ethanolMl = 2.5 * 210.232
    const priced = { supplier: 's', amount: 100, unit: 'mL' as const }
    const file = {
      format: 'waybench-packs' as const,
      version: 1 as const,
      currency: 'EUR',
      rates: { USD: 0.5 },
      suppliers: [{ id: 's', name: 'S (invented)', carriageMinor: 500, hazardousFeeMinor: 500 }],
      packs: [
        { ...priced, material: 'nitric-acid-conc', priceMinor: 1200 },
        { ...priced, material: 'nitric-acid-conc', amount: 1, unit: 'L' as const, priceMinor: 10_000 },
        { ...priced, material: 'ethanol', priceMinor: 400, currency: 'USD' },
      ],
    }
    const query = { from: 'benzoin', to: 'benzil', maxSteps: 1, count: 4 }
    const cost = rows({ ...query, by: 'cost' }, { packs: file }).routes[0]!
    expect(cost.steps).toEqual(['benzil-nitric-acid'])
    expect(cost.value! / (acidMl * 10 + ethanolMl * 2)).toBeCloseTo(1, 4)
    const massIn = rows({ ...query, by: 'mass-intensity' }).routes.find(row => row.steps[0] === 'benzil-nitric-acid')!
    const density = (id: string) => library.materials.get(id)!.densityGPerMl!
    const massInG =
      benzoinG + acidMl * density('nitric-acid-conc') + ethanolMl * density('ethanol') + (benzoinG / 20) * 350 * density('water')
    expect(massIn.value! / (massInG / 210.232)).toBeCloseTo(1, 4)
  })
})

describe('the list', () => {
  it('cut short says so and proves a bound', () => {
    const whole = rows({ ...goal, make: ['all'], count: 82 })
    expect([whole.complete, whole.bound]).toEqual([true, undefined])
    const cut = rows({ ...goal, make: ['all'], count: 5 })
    expect(cut.routes).toEqual(whole.routes.slice(0, 5))
    expect(cut.complete).toBe(false)
    expect(cut.bound).toBeCloseTo(whole.routes[5]!.value!, 9)
  })

  it('names the gentlest within ten points of the first, with what it costs', () => {
    const { gentlest, routes } = rows({ ...goal, count: 100 })
    const near = routes.filter(row => row.overallYieldOnStart >= routes[0]!.overallYieldOnStart - 0.1)
    for (const row of near) expect(compareCounts(gentlest!.hazard, row.hazard)).toBeLessThanOrEqual(0)
    expect(gentlest!.yieldPointsLost).toBeCloseTo(100 * (routes[0]!.overallYieldOnStart - gentlest!.overallYieldOnStart), 9)
    expect(routes[gentlest!.place - 1]!.steps).toEqual(gentlest!.steps)
    expect(rows({ ...goal, by: 'hazard' }).gentlest).toBeUndefined()
  })
})

describe('the options', () => {
  const all = rows({ ...goal, make: ['all'], count: 100 }).routes
  const listed = (query: Partial<RoutesQuery>) => rows({ ...goal, make: ['all'], count: 100, ...query }).routes.map(row => row.steps.join())
  const kept = (fits: (row: (typeof all)[number]) => boolean) => all.filter(fits).map(row => row.steps.join())

  it('--avoid takes a material out of every role, solutions of it too', () => {
    for (const id of ['nitric-acid', 'mercury-ii-oxide', 'zinc', 'diphenyl-ether'].filter(id => library.materials.has(id))) {
      const bears = (row: (typeof all)[number]) =>
        row.steps.some(s => [...materialsOfStep(step(s))].some(m => m === id || library.materials.get(m)!.contains?.compound === id))
      const left = kept(row => !bears(row))
      if (left.length === 0) expect(codes({ ...goal, make: ['all'], avoid: [id] })).toEqual(['none-left'])
      else expect(listed({ avoid: [id] })).toEqual(left)
    }
  })

  it('--avoid-step, --max-steps, --must-pass and --make select', () => {
    expect(listed({ avoidStep: ['benzil-nitric-acid'] })).toEqual(kept(row => !row.steps.includes('benzil-nitric-acid')))
    expect(listed({ maxSteps: 4 })).toEqual(kept(row => row.steps.length <= 4))
    expect(listed({ mustPass: ['diphenylacetylene'] })).toEqual(kept(row => row.made.includes('diphenylacetylene')))
    expect(listed({ mustPass: ['benzoin'] })).toEqual(kept(() => true))
    expect(listed({ make: ['all', 'diphenylacetylene'] })).toEqual(kept(row => row.made.includes('diphenylacetylene')))
  })

  it('--make opens one compound and lists only routes that make it', () => {
    const opened = rows({ ...goal, make: ['diphenylacetylene'], count: 100 }).routes
    expect(opened.length).toBe(13)
    for (const row of opened) expect(row.made).toContain('diphenylacetylene')
    // The convergent way: benzil feeds both branches.
    expect(opened.some(row => row.made.includes('tetraphenylcyclopentadienone') && row.made.includes('benzil-dihydrazone'))).toBe(true)
  })

  it('--avoid-code covers the letters behind, and none of a longer number', () => {
    const left = rows({ from: 'benzoin', to: 'benzil', avoidCode: ['H272'], count: 50 }).routes
    for (const row of left) {
      for (const s of row.steps)
        for (const line of step(s).charge) expect(library.materials.get(line.material)!.hazards?.codes ?? []).not.toContain('H272')
    }
    expect(codes({ ...goal, avoidCode: ['H350'] })).toEqual(['none-left'])
    expect(codes({ ...goal, avoidCode: ['350'] })).toEqual(['code-unreadable'])
  })

  it('--owned-only asks the settings', () => {
    const owning = settingsSchema.parse({ hood: true, inertGas: true, heatSources: 1 })
    const query = { from: 'benzoin', to: 'benzil', count: 50, ownedOnly: true }
    expect(rows(query, { settings: owning }).routes.length).toBe(4)
    expect(codes(query)).toEqual(['none-left'])
    const beakers = settingsSchema.parse({
      hood: true,
      inertGas: true,
      heatSources: 1,
      vessels: [{ kind: 'mortar', volumeMl: 100, count: 1 }],
    })
    expect(codes(query, { settings: beakers })).toEqual(['none-left'])
  })
})

describe('what cannot be asked or answered', () => {
  it('tells every unknown id at once, with the nearest', () => {
    const answer = ask({
      from: 'benzion',
      to: 'hexaphenylbenzen',
      avoid: ['nitric-acidd'],
      avoidStep: ['benzil-nitric'],
      make: ['diphenylacetylen'],
      maxSteps: 0,
    })
    if (answer.ok) throw new Error('answered')
    expect(answer.problems.map(p => p.where[0]).sort()).toEqual(['`avoidStep`', '`avoid`', '`from`', '`make`', '`maxSteps`', '`to`'])
    expect(answer.problems.find(p => p.where[0] === '`from`')!.cure).toContain('benzoin')
  })

  it('no start: water, the air, what nothing takes', () => {
    expect(codes({ from: 'water', to: 'benzil' })).toEqual(['start-is-free'])
    expect(codes({ from: 'oxygen', to: 'benzil' })).toEqual(['start-is-free'])
    expect(codes({ from: 'hexaphenylbenzene', to: 'benzil' })).toEqual(['start-unused'])
    expect(codes({ from: 'benzoin', to: 'benzoin' })).toContain('start-is-target')
  })

  it('no target: nothing makes it', () => {
    expect(codes({ from: 'benzoin', to: 'water' })).toEqual(['target-never-made'])
    expect(codes({ from: 'benzoin', to: 'nylon-6-6' })).toEqual(['unreachable'])
  })

  it('none so short, none through, none by default: each with its reason', () => {
    expect(codes({ ...goal, maxSteps: 2 })).toEqual(['none-so-short'])
    expect(codes({ ...goal, mustPass: ['nylon-6-6'] })).toEqual(['none-through'])
  })

  it('says that it was cut short where the budget ends it before the first route', () => {
    expect(codes(goal, { budget: 1 })).toEqual(['search-cut-short'])
  })
})

describe('lists that end planning', () => {
  const stop = {
    action: 'stop' as const,
    list: 'A list of the keeper',
    category: 'one',
    legal: 'By house rule.',
    reason: 'it is listed',
    matchedBy: 'cas' as const,
    regions: [],
    coversGivenOff: true,
    massFraction: 1,
    public: null,
    sources: [],
  }
  const stopping = (id: string) =>
    new Map([...traits].map(([material, t]) => [material, material === id ? { ...t, regulated: [stop] } : t]))

  it('answer a start or target with the full name of the list and the reason', () => {
    for (const id of ['benzoin', 'hexaphenylbenzene']) {
      const answer = ask(goal, { traits: stopping(id) })
      if (!answer.ok || answer.value.kind !== 'stopped') throw new Error('not stopped')
      expect(answer.value.stopped[0]).toMatchObject({ material: id, action: 'stop', list: 'A list of the keeper', reason: 'it is listed' })
    }
  })

  it('take out every step that has the substance in any role', () => {
    const charged = step('benzil-copper-acetate').charge.map(line => line.material)
    for (const id of charged.filter(m => m !== 'benzoin')) {
      const answer = ask({ from: 'benzoin', to: 'benzil', count: 50 }, { traits: stopping(id) })
      if (!answer.ok) throw new Error('refused')
      if (answer.value.kind === 'routes') expect(answer.value.routes.flatMap(row => row.steps)).not.toContain('benzil-copper-acetate')
      else expect(answer.value.kind).toBe('none')
    }
  })

  it('say so where no route is left', () => {
    const answer = ask(goal, { traits: stopping('benzil') })
    // The one way past benzil goes by the stilbene.
    if (!answer.ok || answer.value.kind !== 'routes') throw new Error('no route')
    expect(answer.value.routes.every(row => !row.made.includes('benzil'))).toBe(true)
    expect(codes({ from: 'benzoin', to: 'lophine' }, { traits: stopping('benzil') })).toContain('stopped-by-list')
  })
})

describe('what the public cannot have', () => {
  it('is said first, and the next route that they can have is named', () => {
    const limit = { aboveMassFraction: 0.03, licence: 'none' as const }
    const bar = {
      action: 'reporting' as const,
      list: 'A list',
      category: 'one',
      legal: '',
      reason: 'it is listed',
      matchedBy: 'cas' as const,
      regions: ['EU' as const],
      coversGivenOff: false,
      massFraction: 0.65,
      public: limit,
      sources: [],
    }
    const barred = new Map(
      [...traits].map(([m, t]) => [m, m === 'nitric-acid-conc' ? { ...t, regulated: [bar] } : { ...t, regulated: [] }]),
    )
    const settings = settingsSchema.parse({ region: 'EU', buyer: 'public' })
    const { routes } = rows({ ...goal, count: 3 }, { traits: barred, settings })
    expect(routes[0]!.steps).toContain('benzil-nitric-acid')
    expect(routes[0]!.flags[0]!.kind).toBe('barred')
    expect(routes[0]!.flags[0]!.text).toContain(`number 2: ${routes[1]!.steps.join(', ')}`)
    expect(routes[1]!.flags.map(f => f.kind)).not.toContain('barred')
    const school = rows({ ...goal, count: 3 }, { traits: barred, settings: settingsSchema.parse({ region: 'EU', buyer: 'professional' }) })
    expect(school.routes[0]!.flags.map(f => f.kind)).not.toContain('barred')
  })
})

describe('speed', () => {
  it('answers a request on the bundled library in well under 10 ms of work', () => {
    const times = Array.from({ length: 30 }, () => {
      const before = process.cpuUsage()
      rows({ ...goal, make: ['all'] })
      const used = process.cpuUsage(before)
      return (used.user + used.system) / 1000
    }).sort((a, b) => a - b)
    expect(times[15]!).toBeLessThan(10)
  })
})
