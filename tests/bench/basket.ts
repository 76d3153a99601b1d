import { writeFileSync } from 'node:fs'
import { shoppingOf } from '../../core/shopping/basket.ts'
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
if (jsonFile !== undefined) writeFileSync(jsonFile, `${JSON.stringify(rows, null, 2)}\n`)
