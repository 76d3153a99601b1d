import { writeFileSync } from 'node:fs'
import { labelsOf } from '../../core/network/best.ts'
import { linked, type Network } from '../../core/network/network.ts'
import { RouteSearch } from '../../core/network/ranked.ts'
import { OrderedRoutes } from '../../core/network/routes.ts'
import { openSpace, type Space, type Weights } from '../../core/network/space.ts'
import { labelsThrough } from '../../core/network/through.ts'
import { chainYieldWeights, costWeights, type GeneratedNetwork, generatedNetwork } from '../support/networks/generated.ts'
import { type HardNetwork, hardNetworks, inForm } from '../support/networks/hard.ts'

/**
 * Speed and memory of the search on generated networks. Rounds alternate between what is compared; figures are medians in ms. A timing is the
 * lesser of wall clock and processor time: on a machine that others use the clock also counts their turns, which hits long work and spares
 * short; neither is ever below the work itself. Then networks made to be hard. `--json FILE` writes the figures, `--large` adds 5,000,000 arcs,
 * `--hard` leaves all but the hard ones out.
 */
const jsonFile = process.argv.includes('--json') ? process.argv[process.argv.indexOf('--json') + 1] : undefined
const usual = [10_000, 100_000, 1_000_000, ...(process.argv.includes('--large') ? [5_000_000] : [])]
const sizes = process.argv.includes('--hard') ? [] : usual
const targets = 21
const rows: Record<string, number | string>[] = []
let sink = 0

const median = (times: number[]): number => [...times].sort((a, b) => a - b)[times.length >> 1]!
const timed = (work: () => number): number => {
  const cpuBefore = process.cpuUsage()
  const before = performance.now()
  sink += work()
  const wall = performance.now() - before
  const { user, system } = process.cpuUsage(cpuBefore)
  return Math.min(wall, (user + system) / 1000)
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
    network.takers,
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
    'k = 1000, worst': Math.max(...thousand!),
    'arrays, MB': arrays.reduce((sum, array) => sum + array.byteLength, 0) / 1e6,
    'process, MB': process.memoryUsage().rss / 1e6,
  })
}

for (const m of sizes) labelsAndRoutes(generatedNetwork(m), m)

/** The ten best routes, labels and all that goes before them counted in; a sum over distinct steps may end unproven, by its budget. */
function tenBest({ name, network, weights, start, target }: HardNetwork): void {
  const row: Record<string, number | string> = { hard: name, arcs: network.head.length }
  for (const [what, form] of [
    ['by cost', 'sum'],
    ['by the longest chain', 'max'],
    ['by distinct steps', 'distinct'],
  ] as const) {
    const figures = inForm(weights, form)
    const asked = { start, mode: 'default' as const, masked: closed(network.head.length), make: [], mustPass: [] }
    let proven = 0
    let longest = 0
    const times = Array.from({ length: 9 }, () =>
      timed(() => {
        const routes = new OrderedRoutes(network, figures, figures, asked, target)
        proven = 0
        for (let found = 0; found < 10; found++) {
          const route = routes.next()
          if (route === null) break
          if (route.proven) proven++
          longest = Math.max(longest, route.arcs.length)
        }
        return longest
      }),
    )
    row[`${what}, ms`] = median(times)
    row[`${what}, worst ms`] = Math.max(...times)
    row[`${what}, proven of 10`] = proven
    row[`${what}, steps at most`] = longest
  }
  rows.push(row)
}

for (const network of hardNetworks()) tenBest(network)

const shown = (value: number | string): string =>
  typeof value === 'string' ? value : value >= 1000 ? Math.round(value).toLocaleString('en') : value.toPrecision(3)
for (const row of rows) {
  console.log()
  for (const [name, value] of Object.entries(row)) console.log(`${name.padEnd(44)} ${shown(value).padStart(12)}`)
}
if (sink === 0) console.log('nothing was done')
if (jsonFile !== undefined) writeFileSync(jsonFile, `${JSON.stringify({ node: process.version, rows }, null, 2)}\n`)
