import { writeFileSync } from 'node:fs'
import cytoscape from 'cytoscape'
import { DirectedGraph } from 'graphology'
import { dijkstra } from 'graphology-shortest-path'
import createGraph from 'ngraph.graph'
import { nba } from 'ngraph.path'
import { labelsOf } from '../../core/network/best.ts'
import { linked, type Network } from '../../core/network/network.ts'
import { RouteSearch } from '../../core/network/ranked.ts'
import { openSpace, type Space, type Weights } from '../../core/network/space.ts'
import { labelsThrough } from '../../core/network/through.ts'
import { chainYieldWeights, costWeights, type GeneratedNetwork, generatedNetwork } from '../support/networks/generated.ts'

/**
 * Speed and memory of the search, on generated networks, beside general-purpose graph libraries on the same graph reduced to one reactant a
 * step. Rounds alternate between what is compared; figures are medians in ms. `--json FILE` writes them, `--large` adds 5,000,000 arcs.
 */
const jsonFile = process.argv.includes('--json') ? process.argv[process.argv.indexOf('--json') + 1] : undefined
const sizes = [10_000, 100_000, 1_000_000, ...(process.argv.includes('--large') ? [5_000_000] : [])]
const targets = 21
const rows: Record<string, number | string>[] = []
let sink = 0

const median = (times: number[]): number => [...times].sort((a, b) => a - b)[times.length >> 1]!
const timed = (work: () => number): number => {
  const before = performance.now()
  sink += work()
  return performance.now() - before
}
const closed = (n: number) => new Uint8Array(n)
const spaceOf = (network: Network, weights: Weights): Space =>
  openSpace(network, weights, {
    start: -1,
    masked: closed(network.head.length),
    opened: closed(network.compounds.length),
    makeAll: false,
  })

/** One look at everything that the labels look at, in order: what no search can be faster than. */
function pass({ network, factor, leaf, own }: Space, labels: Float64Array): number {
  const { bodyStart, body } = network
  let least = Number.POSITIVE_INFINITY
  for (let a = 0; a < own.length; a++) {
    let value = own[a]!
    for (let u = bodyStart[a]!; u < bodyStart[a + 1]!; u++) value += Math.min(factor[u]! * labels[body[u]!]!, leaf[u]!)
    if (value < least) least = value
  }
  return least
}

const usesOf = (network: Network, c: number): number => network.useStart[c + 1]! - network.useStart[c]!

function labelsAndRoutes(generated: GeneratedNetwork, m: number): void {
  const { network } = generated
  const build = median(
    Array.from({ length: 3 }, () =>
      timed(
        () =>
          linked(network.compounds, network.arcs, network.head, network.bodyStart, network.body, network.coefficient, network.buyable).uses
            .length,
      ),
    ),
  )
  const chain = spaceOf(network, chainYieldWeights(generated))
  const cost = spaceOf(network, costWeights(generated))
  const [chainTimes, costTimes, passTimes, forwardTimes]: number[][] = [[], [], [], []]
  const labels = labelsOf(cost)
  // The compound that most steps take: what can the best connected intermediate become?
  let hub = 0
  for (let c = 1; c < network.compounds.length; c++) if (usesOf(network, c) > usesOf(network, hub) && !network.buyable[c]) hub = c
  for (let round = 0; round < (m > 500_000 ? 5 : 11); round++) {
    chainTimes!.push(timed(() => labelsOf(chain).value[0]!))
    passTimes!.push(timed(() => pass(cost, labels.value)))
    costTimes!.push(timed(() => labelsOf(cost).value[0]!))
    forwardTimes!.push(timed(() => labelsThrough(cost, labels.value, { start: false, nodes: [hub] })[0]!))
  }
  const search = new RouteSearch(cost, labels)
  const firstK = (k: number): number[] =>
    Array.from({ length: targets }, (_, i) =>
      timed(() => {
        const stream = search.routesTo((i * 7919 + 13) % network.compounds.length)
        let found = 0
        while (found < k && stream.next() !== null) found++
        return found
      }),
    )
  firstK(100)
  const [one, hundred, thousand] = [firstK(1), firstK(100), firstK(1000)]
  const arrays = [
    network.head,
    network.bodyStart,
    network.body,
    network.useStart,
    network.uses,
    network.users,
    network.userHeads,
    network.useArc,
    network.makerStart,
    network.makers,
    cost.factor,
    cost.leaf,
    cost.made,
    cost.own,
  ]
  rows.push({
    arcs: m,
    uses: network.body.length,
    build,
    'labels, chain yield': median(chainTimes!),
    'labels, cost': median(costTimes!),
    'one pass': median(passTimes!),
    'labels / pass': median(costTimes!) / median(passTimes!),
    forward: median(forwardTimes!),
    'k = 1': median(one!),
    'k = 100': median(hundred!),
    'k = 100, worst': Math.max(...hundred!),
    'k = 1000': median(thousand!),
    'arrays, MB': arrays.reduce((sum, array) => sum + array.byteLength, 0) / 1e6,
    'process, MB': process.memoryUsage().rss / 1e6,
  })
}

/** Stock merged into one node, parallel edges reduced to the best: what a graph library can be given. */
function asGraph(generated: GeneratedNetwork) {
  const { network, yields } = generated
  const node = (c: number): number => (network.buyable[c] ? -1 : c)
  const best = new Map<string, { from: number; to: number; weight: number }>()
  for (let a = 0; a < network.head.length; a++) {
    const edge = { from: node(network.body[network.bodyStart[a]!]!), to: node(network.head[a]!), weight: -Math.log(yields[a]!) }
    const key = `${edge.from}|${edge.to}`
    if (edge.to !== -1 && edge.from !== edge.to && edge.weight < (best.get(key)?.weight ?? Number.POSITIVE_INFINITY)) best.set(key, edge)
  }
  return [...best.values()]
}

function peers(m: number): void {
  const generated = generatedNetwork(m, 42, 1)
  const edges = asGraph(generated)
  const own = spaceOf(generated.network, { ...chainYieldWeights(generated), form: 'sum' })
  const graph = new DirectedGraph()
  const links = createGraph<undefined, number>()
  for (const { from, to, weight } of edges) {
    for (const node of [from, to]) if (!graph.hasNode(node)) graph.addNode(node)
    graph.addEdge(from, to, { weight })
    links.addLink(from, to, weight)
  }
  const finder = nba(links, { oriented: true, distance: (_a, _b, link) => link.data })
  const far = edges[edges.length >> 1]!.to
  const [ours, single, both, ngraph]: number[][] = [[], [], [], []]
  for (let round = 0; round < (m > 10_000 ? 3 : 5); round++) {
    ours!.push(timed(() => labelsOf(own).value[far]!))
    single!.push(timed(() => Object.keys(dijkstra.singleSource(graph, '-1', 'weight')).length))
    both!.push(timed(() => dijkstra.bidirectional(graph, '-1', far, 'weight')?.length ?? 0))
    ngraph!.push(timed(() => finder.find(-1, far).length))
  }
  const row: Record<string, number | string> = {
    'arcs, one reactant each': m,
    edges: edges.length,
    'ours, all targets': median(ours!),
    'graphology, all targets': median(single!),
    'graphology / ours': median(single!) / median(ours!),
    'graphology, one target': median(both!),
    'ngraph, one target': median(ngraph!),
  }
  if (m <= 10_000) {
    const drawing = cytoscape({
      headless: true,
      elements: [
        ...[...new Set(edges.flatMap(e => [e.from, e.to]))].map(id => ({ data: { id: `${id}` } })),
        ...edges.map((e, i) => ({ data: { id: `e${i}`, source: `${e.from}`, target: `${e.to}`, weight: e.weight } })),
      ],
    })
    row['cytoscape, all targets'] = timed(() =>
      drawing
        .elements()
        .dijkstra({ root: drawing.getElementById('-1'), weight: edge => edge.data('weight'), directed: true })
        .distanceTo(drawing.getElementById(`${far}`)),
    )
  }
  rows.push(row)
}

for (const m of sizes) labelsAndRoutes(generatedNetwork(m), m)
for (const m of sizes.filter(size => size <= 100_000)) peers(m)

const shown = (value: number | string): string =>
  typeof value === 'string' ? value : value >= 1000 ? Math.round(value).toLocaleString('en') : value.toPrecision(3)
for (const row of rows) {
  console.log()
  for (const [name, value] of Object.entries(row)) console.log(`${name.padEnd(26)} ${shown(value).padStart(12)}`)
}
if (sink === 0) console.log('nothing was done')
if (jsonFile !== undefined) writeFileSync(jsonFile, `${JSON.stringify({ node: process.version, rows }, null, 2)}\n`)
