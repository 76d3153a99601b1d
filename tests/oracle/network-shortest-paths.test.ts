import { createRequire } from 'node:module'
import { DirectedGraph } from 'graphology'
import { dijkstra } from 'graphology-shortest-path'
import createGraph from 'ngraph.graph'
import { nba } from 'ngraph.path'
import { describe, expect, it } from 'vitest'
import { packed } from '../../core/network/network.ts'
import { routeSearch } from '../../core/network/routes.ts'
import { targetNode, type Weights } from '../../core/network/space.ts'
import { sfc32 } from '../support/networks/sfc32.ts'

/** Where every step takes one reactant, routes are paths, and general-purpose graph libraries know the shortest. */
interface PathNetwork {
  readonly edges: readonly { readonly from: number; readonly to: number; readonly weight: number }[]
  readonly n: number
}

function pathNetwork(seed: number, n: number, m: number): PathNetwork {
  const draw = sfc32(seed)
  const best = new Map<number, number>()
  for (let i = 0; i < m; i++) {
    const [from, to] = [Math.floor(draw() * n), Math.floor(draw() * n)]
    const weight = 0.1 + draw()
    const key = from * n + to
    // Parallel edges are reduced to the best: graph libraries differ in what they do with several.
    if (from !== to && weight < (best.get(key) ?? Number.POSITIVE_INFINITY)) best.set(key, weight)
  }
  return { n, edges: [...best].map(([key, weight]) => ({ from: Math.floor(key / n), to: key % n, weight })) }
}

function searchOf({ n, edges }: PathNetwork, start: number) {
  const name = (prefix: string, i: number) => `${prefix}${String(i).padStart(6, '0')}`
  const network = packed(
    Array.from({ length: n }, (_, c) => name('c', c)),
    edges.map((e, i) => ({ id: name('t', i), head: e.to, body: [{ compound: e.from, coefficient: 1 }] })),
    new Uint8Array(n),
  )
  const zeros = () => new Float64Array(edges.length)
  const weights: Weights = {
    form: 'sum',
    own: Float64Array.from(edges, e => e.weight),
    factor: zeros().fill(1),
    bought: zeros(),
    made: zeros(),
    start: zeros(),
  }
  return routeSearch(network, weights, { start, mode: 'default', masked: new Uint8Array(edges.length), make: [], mustPass: [] })
}

describe.each([1, 2, 3])('network %i of 400 compounds and 1,200 steps of one reactant', seed => {
  const net = pathNetwork(seed, 400, 1200)
  const start = 0
  const search = searchOf(net, start)
  const lengthOf = (path: readonly number[]) =>
    path.slice(1).reduce((sum, to, i) => sum + net.edges.find(e => e.from === path[i] && e.to === to)!.weight, 0)

  it('has the shortest path that graphology finds, to every compound', () => {
    const graph = new DirectedGraph()
    for (let c = 0; c < net.n; c++) graph.addNode(c)
    for (const e of net.edges) graph.addEdge(e.from, e.to, { weight: e.weight })
    const paths = dijkstra.singleSource(graph, start, 'weight')
    let reached = 0
    for (let c = 1; c < net.n; c++) {
      const first = search.routesTo(targetNode(search.space, c)).next()
      const path = paths[c]?.map(Number)
      expect(first === null).toBe(path === undefined)
      if (first === null || path === undefined) continue
      expect(first.value).toBeCloseTo(lengthOf(path), 9)
      reached++
    }
    expect(reached).toBeGreaterThan(200)
  })

  it('has the shortest path that ngraph finds', () => {
    const graph = createGraph<undefined, number>()
    for (const e of net.edges) graph.addLink(e.from, e.to, e.weight)
    const finder = nba(graph, { oriented: true, distance: (_from, _to, link) => link.data })
    let reached = 0
    for (let c = 1; c < net.n; c += 7) {
      const first = search.routesTo(targetNode(search.space, c)).next()
      if (!graph.getNode(c)) continue
      const path = finder
        .find(start, c)
        .map(node => Number(node.id))
        .reverse()
      expect(first === null).toBe(path.length === 0)
      if (first === null) continue
      expect(first.value).toBeCloseTo(lengthOf(path), 9)
      reached++
    }
    expect(reached).toBeGreaterThan(25)
  })
})

interface Found {
  readonly totalCost: number
  readonly edges: readonly { readonly fromNode: string; readonly toNode: string }[]
}
// Neither has types.
const require = createRequire(import.meta.url)
const { ksp } = require('k-shortest-path') as {
  ksp: (graph: object, from: string, to: string, k: number, weightOf: (edge: object) => number) => Found[]
}
const { Graph } = require('graphlib') as {
  Graph: new (options: object) => { setEdge(from: string, to: string, label: number): void; edge(edge: object): number }
}

describe('k shortest paths', () => {
  it.each([22, 23, 24, 25, 26])('are those that k-shortest-path finds by the method of Yen (network %i)', seed => {
    const net = pathNetwork(seed, 60, 240)
    const graph = new Graph({ directed: true })
    for (const { from, to, weight } of net.edges) graph.setEdge(`${from}`, `${to}`, weight)
    const search = searchOf(net, 0)
    let compared = 0
    for (const target of [7, 20, 33, 46, 59]) {
      const theirs = ksp(graph, '0', `${target}`, 20, edge => graph.edge(edge))
      const stream = search.routesTo(targetNode(search.space, target))
      for (const path of theirs) {
        const route = stream.next()!
        expect(route.value).toBeCloseTo(path.totalCost, 9)
        const ids = route.arcs.map(a => `${net.edges[a]!.from}-${net.edges[a]!.to}`)
        expect(ids.sort()).toEqual(path.edges.map(e => `${e.fromNode}-${e.toNode}`).sort())
        compared++
      }
    }
    expect(compared).toBeGreaterThan(60)
  })
})

describe('k shortest simple paths on small networks', () => {
  it('are those that walking every path finds', () => {
    let paths = 0
    for (let seed = 10; seed < 60; seed++) {
      const net = pathNetwork(seed, 9, 45)
      const target = 8
      const search = searchOf(net, 0)
      const lengths: number[] = []
      const walk = (at: number, passed: readonly number[], length: number) => {
        if (at === target) lengths.push(length)
        else for (const e of net.edges) if (e.from === at && !passed.includes(e.to)) walk(e.to, [...passed, e.to], length + e.weight)
      }
      walk(0, [0], 0)
      lengths.sort((a, b) => a - b)
      const stream = search.routesTo(targetNode(search.space, target))
      const found: number[] = []
      for (let route = stream.next(); route !== null; route = stream.next()) found.push(route.value)
      expect(found.length).toBe(lengths.length)
      for (const [i, value] of found.entries()) expect(value).toBeCloseTo(lengths[i]!, 9)
      paths += found.length
    }
    expect(paths).toBeGreaterThan(1000)
  })
})
