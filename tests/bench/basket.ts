import { writeFileSync } from 'node:fs'
import { cheapestWay } from '../../core/choose/joint.ts'
import { shoppingOf } from '../../core/shopping/basket.ts'
import { demoParts } from '../../server/library/demo.ts'
import { openWorkshop } from '../../server/library/workshop.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { largePurchase } from '../support/large-basket.ts'

/**
 * How long a proven basket takes: 60 materials, 4 packs each from 4 suppliers with carriage and fees, without and with minimum orders. Each
 * case is solved once: what counts is the slowest. `--json FILE` writes the figures.
 */
const jsonFile = process.argv.includes('--json') ? process.argv[process.argv.indexOf('--json') + 1] : undefined
const cases = 12

const solver = await loadSolver()
let calls = 0
const counting: typeof solver = model => {
  calls++
  return solver(model)
}
// The first call compiles the WebAssembly.
shoppingOf(largePurchase(99, { materials: 8, packsEach: 2, suppliers: 2, minimumMinor: 0 }, solver))
const rows = [
  { name: '60 x 4 x 4, fees', size: { materials: 60, packsEach: 4, suppliers: 4, minimumMinor: 0 } },
  { name: '60 x 4 x 4, fees and minimum orders of 50', size: { materials: 60, packsEach: 4, suppliers: 4, minimumMinor: 5000 } },
  {
    name: '60 x 4 x 4, fees and minimum orders of 500 that bind',
    size: { materials: 60, packsEach: 4, suppliers: 4, minimumMinor: 50_000 },
  },
  { name: '20 x 3 x 3, fees and minimum orders that bind', size: { materials: 20, packsEach: 3, suppliers: 3, minimumMinor: 20_000 } },
  { name: '10 x 3 x 2, fees and minimum orders that bind', size: { materials: 10, packsEach: 3, suppliers: 2, minimumMinor: 10_000 } },
].map(({ name, size }) => {
  const times: number[] = []
  let proven = 0
  calls = 0
  for (let seed = 1; seed <= cases; seed++) {
    const input = largePurchase(seed, size, counting)
    const before = performance.now()
    const { basket } = shoppingOf(input)
    times.push(performance.now() - before)
    if (basket?.proven) proven++
  }
  times.sort((a, b) => a - b)
  return {
    basket: name,
    proven: `${proven} of ${cases}`,
    'median, ms': Math.round(times[cases >> 1]!),
    'slowest, ms': Math.round(times.at(-1)!),
    'solver calls': calls,
  }
})
console.table(rows)

/** The cheapest way to three goals on the bundled library with the demo's packs; the first run of each warms up and is not counted. */
const workshop = await openWorkshop([])
const { library, tables } = workshop
const { settings, packs, shelf } = demoParts()
const traits = workshop.traits()
const jointRows = [
  ['lophine', '2-3-diphenylquinoxaline', 'tetraphenylcyclopentadienone'],
  ['lophine', '2-3-diphenylquinoxaline', 'hexaphenylbenzene'],
].map(targets => {
  const plan = { title: '', start: { material: 'benzoin', massG: 24 }, shelf, packs, settings, log: [], seed: 1 }
  const goals = targets.map((target, i) => ({
    target,
    amount: i === 2 ? ({ kind: 'rest' } as const) : ({ kind: 'mass', massG: 3 } as const),
  }))
  const times: number[] = []
  let found = ''
  for (let round = 0; round < 6; round++) {
    const before = performance.now()
    const answer = cheapestWay({ library, tables, traits, plan, goals, options: {}, limits: {}, solver })
    if (round > 0) times.push(performance.now() - before)
    found =
      answer.ok && answer.value.kind === 'way' ? `${answer.value.ways} ways, ${answer.value.proven ? 'proven' : 'not proven'}` : 'none'
  }
  times.sort((a, b) => a - b)
  return { goals: targets.join(', '), found, 'median, ms': Math.round(times[2]!), 'slowest, ms': Math.round(times.at(-1)!) }
})
console.table(jointRows)
if (jsonFile !== undefined) writeFileSync(jsonFile, `${JSON.stringify({ baskets: rows, joint: jointRows }, null, 2)}\n`)
