import { type ChildProcess, fork } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import cytoscape from 'cytoscape'
import { DirectedGraph } from 'graphology'
import { dijkstra } from 'graphology-shortest-path'
import createGraph from 'ngraph.graph'
import { nba } from 'ngraph.path'
import { labelsOf } from '../../core/network/best.ts'
import { RouteSearch } from '../../core/network/ranked.ts'
import { openSpace } from '../../core/network/space.ts'
import { chainYieldWeights, generatedNetwork } from '../support/networks/generated.ts'

/**
 * The search beside general-purpose graph libraries, on the one thing they can do: shortest and k shortest paths where every step has one
 * reactant, stock is one node, and of parallel steps the best is kept. Each library has a process of its own, so that nobody pays for
 * another's garbage; rounds go from one to the next in turn. Figures are medians in ms of the lesser of wall clock and processor time.
 * `--json FILE` writes them.
 */
const sizes = [10_000, 100_000]
const rounds = 7
/** Each works so long before the first round, so that its code is compiled. */
const warmUpMs = 2000
const runsATurn = 5
/** Of Yen's algorithm so many paths: each further one takes a search from every node of the last. */
const best = 10

interface Edge {
  readonly from: number
  readonly to: number
  readonly weight: number
}

function graphOf(m: number) {
  const generated = generatedNetwork(m, 42, 1)
  const { network, yields } = generated
  const node = (c: number): number => (network.buyable[c] ? -1 : c)
  const kept = new Map<string, Edge>()
  for (let a = 0; a < m; a++) {
    const edge = { from: node(network.body[network.bodyStart[a]!]!), to: node(network.head[a]!), weight: -Math.log(yields[a]!) }
    const key = `${edge.from}|${edge.to}`
    if (edge.to !== -1 && edge.from !== edge.to && edge.weight < (kept.get(key)?.weight ?? Number.POSITIVE_INFINITY)) kept.set(key, edge)
  }
  const edges = [...kept.values()]
  return { generated, edges, far: edges[edges.length >> 1]!.to }
}
type Graph = ReturnType<typeof graphOf>

/** What each does in one round, and up to which size; a result that depends on all the work keeps it from being optimised away. */
const contenders: Readonly<Record<string, { readonly most: number; readonly ready: (graph: Graph) => () => number }>> = {
  'ours, all targets': {
    most: Number.POSITIVE_INFINITY,
    ready: ({ generated, far }) => {
      const space = ownSpace(generated)
      return () => labelsOf(space).value[far]!
    },
  },
  'graphology, all targets': {
    most: Number.POSITIVE_INFINITY,
    ready: ({ edges }) => {
      const graph = new DirectedGraph()
      for (const { from, to, weight } of edges) {
        for (const node of [from, to]) if (!graph.hasNode(node)) graph.addNode(node)
        graph.addEdge(from, to, { weight })
      }
      return () => Object.keys(dijkstra.singleSource(graph, '-1', 'weight')).length
    },
  },
  'cytoscape, all targets': {
    most: 10_000,
    ready: ({ edges, far }) => {
      const drawing = cytoscape({
        headless: true,
        elements: [
          ...[...new Set(edges.flatMap(e => [e.from, e.to]))].map(id => ({ data: { id: `${id}` } })),
          ...edges.map((e, i) => ({ data: { id: `e${i}`, source: `${e.from}`, target: `${e.to}`, weight: e.weight } })),
        ],
      })
      const [root, last] = [drawing.getElementById('-1'), drawing.getElementById(`${far}`)]
      return () =>
        drawing
          .elements()
          .dijkstra({ root, weight: edge => edge.data('weight'), directed: true })
          .distanceTo(last)
    },
  },
  'ngraph, one target': {
    most: Number.POSITIVE_INFINITY,
    ready: ({ edges, far }) => {
      const links = createGraph<undefined, number>()
      for (const { from, to, weight } of edges) links.addLink(from, to, weight)
      const finder = nba(links, { oriented: true, distance: (_a, _b, link) => link.data })
      return () => finder.find(-1, far).length
    },
  },
  'ours, 10 best to one target, labels too': {
    most: Number.POSITIVE_INFINITY,
    ready: ({ generated, far }) => {
      const space = ownSpace(generated)
      return () => {
        const stream = new RouteSearch(space, labelsOf(space)).routesTo(far)
        let found = 0
        while (found < best && stream.next() !== null) found++
        return found
      }
    },
  },
  'k-shortest-path, 10 best to one target': {
    most: 10_000,
    ready: ({ edges, far }) => {
      // Neither has types.
      const require = createRequire(import.meta.url)
      const { ksp } = require('k-shortest-path') as {
        ksp: (graph: object, from: string, to: string, k: number, weightOf: (edge: object) => number) => unknown[]
      }
      const { Graph } = require('graphlib') as {
        Graph: new (options: object) => { setEdge(from: string, to: string, label: number): void; edge(edge: object): number }
      }
      const graph = new Graph({ directed: true })
      for (const { from, to, weight } of edges) graph.setEdge(`${from}`, `${to}`, weight)
      return () => ksp(graph, '-1', `${far}`, best, edge => graph.edge(edge)).length
    },
  },
}

function ownSpace(generated: Graph['generated']) {
  const { network } = generated
  return openSpace(
    network,
    { ...chainYieldWeights(generated), form: 'sum' },
    { start: -1, masked: new Uint8Array(network.head.length), opened: new Uint8Array(network.compounds.length), makeAll: false },
  )
}

const median = (times: readonly number[]): number => [...times].sort((a, b) => a - b)[times.length >> 1]!

const own = process.argv.indexOf('--contender')
let sink = 0
if (own >= 0) {
  const work = contenders[process.argv[own + 1]!]!.ready(graphOf(Number(process.argv[own + 2])))
  const began = performance.now()
  for (let runs = 0; runs < 2 || performance.now() - began < warmUpMs; runs++) work()
  const timed = (): number => {
    const cpuBefore = process.cpuUsage()
    const before = performance.now()
    sink += work()
    const wall = performance.now() - before
    const { user, system } = process.cpuUsage(cpuBefore)
    return Math.min(wall, (user + system) / 1000)
  }
  // Several runs a turn, the middle one told: the first begins in caches that hold what others left.
  process.on('message', () => process.send!({ ms: median(Array.from({ length: runsATurn }, timed)), sink }))
  process.send!('ready')
} else {
  const rows: Record<string, number>[] = []
  const said = (child: ChildProcess) => new Promise<unknown>(resolve => child.once('message', resolve))
  for (const m of sizes) {
    const names = Object.keys(contenders).filter(name => contenders[name]!.most >= m)
    const children: ChildProcess[] = []
    for (const name of names) {
      const child = fork(fileURLToPath(import.meta.url), ['--contender', name, String(m)], { execArgv: ['--import', 'tsx'] })
      await said(child)
      children.push(child)
    }
    const times = names.map(() => [] as number[])
    for (let round = 0; round < rounds; round++)
      for (const [i, child] of children.entries()) {
        child.send('go')
        const { ms } = (await said(child)) as { ms: number }
        times[i]!.push(ms)
      }
    for (const child of children) child.kill()
    const row: Record<string, number> = { 'arcs, one reactant each': m, edges: graphOf(m).edges.length }
    for (const [i, name] of names.entries()) row[name] = median(times[i]!)
    row['graphology / ours, all targets'] = row['graphology, all targets']! / row['ours, all targets']!
    rows.push(row)
  }
  for (const row of rows) {
    console.log()
    for (const [name, value] of Object.entries(row))
      console.log(`${name.padEnd(44)} ${(value >= 1000 ? Math.round(value).toLocaleString('en') : value.toPrecision(3)).padStart(12)}`)
  }
  const json = process.argv.indexOf('--json')
  if (json >= 0) writeFileSync(process.argv[json + 1]!, `${JSON.stringify({ node: process.version, rows }, null, 2)}\n`)
}
