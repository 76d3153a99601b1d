import { describe, expect, it } from 'vitest'
import { type DistinctBest, distinctBest } from '../../core/network/distinct-best.ts'
import { landmarkCuts } from '../../core/network/landmark-cuts.ts'
import { atOnce } from '../../core/network/pieces.ts'
import { OrderedRoutes, routeSearch } from '../../core/network/routes.ts'
import { targetNode } from '../../core/network/space.ts'
import { differences } from '../support/networks/ask.ts'
import { type ListedRoute, listRoutes } from '../support/networks/listing.ts'
import { sfc32 } from '../support/networks/sfc32.ts'
import { type SmallNetwork, smallNetwork } from '../support/networks/small.ts'

/**
 * The best by distinct steps, depth first, against the listing of all routes, which shares no code with it; WAYBENCH_FUZZ sets the number of
 * networks. A failing seed is printed.
 */
const networks = Number(process.env.WAYBENCH_FUZZ ?? 10_000) / 5
const timeout = 3_600_000

interface Question extends SmallNetwork {
  readonly mode: 'default' | 'all'
  readonly masked: Uint8Array
  readonly make: readonly number[]
  readonly mustPass: readonly number[]
  readonly maxSteps: number
  readonly listed: readonly ListedRoute[]
}

/** Runs a law over seeded networks, half of them with what must be made, passed, not used, and how many steps at most. */
function overQuestions(law: (question: Question, draw: () => number) => number): number {
  let cases = 0
  for (let seed = 1; seed <= networks; seed++) {
    const small = smallNetwork(7_000_000 + seed, 'distinct')
    const { network, weights, start, target } = small
    if (start === target) continue
    const draw = sfc32(seed)
    const below = (n: number) => Math.floor(draw() * n)
    const mode = seed % 2 === 0 ? 'default' : 'all'
    const isPlain = draw() < 0.5
    const masked = new Uint8Array(network.head.length)
    if (!isPlain) masked[below(masked.length)] = 1
    const make = !isPlain && draw() < 0.5 ? [below(network.compounds.length)].filter(c => c !== start) : []
    const mustPass = !isPlain && draw() < 0.5 ? [below(network.compounds.length)] : []
    const maxSteps = !isPlain && draw() < 0.5 ? 1 + below(5) : Number.POSITIVE_INFINITY
    const listed = listRoutes(network, weights, { start, target, mode, make: new Set(make), masked }).filter(
      route => route.arcs.length <= maxSteps && mustPass.every(c => c === start || route.made.has(c)),
    )
    try {
      cases += law({ ...small, mode, masked, make, mustPass, maxSteps, listed: inOrder(listed) }, draw)
    } catch (error) {
      throw new Error(`seed ${seed}: ${error instanceof Error ? error.message : error}`)
    }
  }
  return cases
}

/** By value, then fewer steps, then ids. */
const inOrder = (listed: readonly ListedRoute[]): ListedRoute[] =>
  [...listed].sort((a, b) => {
    if (Math.abs(a.value - b.value) > 1e-9) return a.value - b.value
    const at = a.arcs.findIndex((arc, i) => arc !== b.arcs[i])
    return a.arcs.length - b.arcs.length || (at < 0 ? 0 : a.arcs[at]! - b.arcs[at]!)
  })

const searchOf = ({ network, weights, ...asked }: Question) => routeSearch(network, weights, asked)

function settled(
  question: Question,
  options: { count: number; known?: readonly ListedRoute[]; budget?: number; patience?: number },
): DistinctBest {
  const search = searchOf(question)
  const target = targetNode(search.space, question.target)
  const { maxSteps } = question
  return atOnce(distinctBest(search.space, search.labels.value, search.layers, target, { known: [], budget: 1e9, maxSteps, ...options }))
}

describe('the best by distinct steps', () => {
  it('are those of the listing, in order, with cuts made anew early, late and never', { timeout }, () => {
    const cases = overQuestions((question, draw) => {
      const { listed } = question
      const count = draw() < 0.5 ? 1000 : 1 + Math.floor(6 * draw())
      const patience = [0, 2, 60][Math.floor(3 * draw())]!
      const best = settled(question, { count, patience })
      expect(differences(best.routes, listed.slice(0, count))).toBe('')
      expect(best.isWhole).toBe(true)
      expect(best.bound).toBe(listed.length < count ? Number.POSITIVE_INFINITY : best.routes[count - 1]!.value)
      return listed.length
    })
    expect(cases).toBeGreaterThan(networks / 3)
  })

  it('are the same where some are known, and hold a bound for all others where the budget ends them', { timeout }, () => {
    let ended = 0
    overQuestions((question, draw) => {
      const { listed } = question
      const count = 1 + Math.floor(4 * draw())
      const known = listed.filter(() => draw() < 0.4)
      expect(differences(settled(question, { count, known, patience: 1 }).routes, listed.slice(0, count))).toBe('')
      const cut = settled(question, { count, known, budget: 12 * draw(), patience: 1 })
      const found = new Set(cut.routes.map(route => route.arcs.join()))
      for (const route of listed) if (!found.has(route.arcs.join())) expect(cut.bound).toBeLessThanOrEqual(route.value + 1e-9)
      if (!cut.isWhole) ended++
      return 1
    })
    expect(ended).toBeGreaterThan(networks / 20)
  })
})

describe('landmark cuts', () => {
  it('are each met by every route, and promise no more than any route costs', { timeout }, () => {
    let met = 0
    overQuestions(question => {
      const { space, layers } = searchOf(question)
      const musts = layers.map(layer => layer.must)
      const cuts = landmarkCuts(space, targetNode(space, question.target), musts)
      const { listed, weights } = question
      if (cuts.total === Number.POSITIVE_INFINITY) expect(listed.length).toBe(0)
      for (const { arcs, value } of listed) {
        for (const members of cuts.members) {
          expect(arcs.some(arc => members.some(a => space.arcOf[a] === arc))).toBe(true)
          met++
        }
        expect(cuts.total).toBeLessThanOrEqual(value + 1e-9)
      }
      // What is charged for an arc and what is left of it make its own figure.
      const charged = cuts.residual.slice()
      for (const [i, members] of cuts.members.entries()) for (const a of members) charged[a]! += cuts.prices[i]!
      for (let a = 0; a < charged.length; a++) if (space.arcOf[a]! >= 0) expect(charged[a]).toBeCloseTo(weights.own[space.arcOf[a]!]!, 9)
      return 1
    })
    expect(met).toBeGreaterThan(networks / 2)
  })
})

describe('a list by distinct steps', () => {
  it('goes on in order of value where best first is ended and the rest is settled depth first', { timeout }, () => {
    let across = 0
    overQuestions((question, draw) => {
      const { network, weights, target, listed, maxSteps, ...asked } = question
      const budget = 1 + Math.floor(20 * draw())
      const options = { budget, settleBudget: 1e9, ...(maxSteps < Number.POSITIVE_INFINITY && { maxSteps }) }
      const routes = new OrderedRoutes(network, weights, weights, asked, target, options)
      const work = draw() < 0.5 ? Number.POSITIVE_INFINITY : 3
      const found: { arcs: readonly number[]; value: number }[] = []
      for (;;) {
        const next = routes.next(work)
        if (next === null && routes.paused) continue
        if (next === null) break
        expect(next.proven).toBe(true)
        found.push({ arcs: next.arcs, value: next.value! })
        if (routes.bound !== null && found.length < listed.length)
          expect(routes.bound).toBeLessThanOrEqual(listed[found.length]!.value + 1e-9)
      }
      // Where the budget ends best first amid routes of one value, these come as they were found.
      const texts = (list: readonly { arcs: readonly number[] }[]) => list.map(route => route.arcs.join('+')).sort()
      expect(texts(found)).toEqual(texts(listed))
      for (const [i, { value }] of found.entries()) expect(value).toBeCloseTo(listed[i]!.value, 9)
      expect(routes.complete).toBe(true)
      if (routes.work >= budget && listed.length > 0) across++
      return 1
    })
    expect(across).toBeGreaterThan(networks / 10)
  })
})
