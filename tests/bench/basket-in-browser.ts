import { readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { LibraryFile } from '../../core/library/library.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { defaultSettings } from '../../core/plan/settings.ts'
import { openWorkshop } from '../../server/library/workshop.ts'
import type { Reckoned } from '../../web/state/reckoning.ts'
import { launchBrowser } from '../support/browser.ts'
import { largePurchase } from '../support/large-basket.ts'
import { served } from '../support/served.ts'
import { material, transformation } from '../support/small-library.ts'
import { root } from '../support/tree.ts'

/**
 * The same basket of 60 materials, 4 packs each from 4 suppliers with carriage and fees, in the page's own worker in a real browser: a plan of
 * one step that takes the sixty is sent to the built worker, as the page sends it, and the time from its amounts to its basket is the basket's.
 * Meanwhile the page draws frames; the longest gap between two says whether it was kept waiting. `--json FILE` writes the figures.
 */
const jsonFile = process.argv.includes('--json') ? process.argv[process.argv.indexOf('--json') + 1] : undefined
const cases = 12
const size = { materials: 60, packsEach: 4, suppliers: 4, minimumMinor: 0 }

/** One step whose charge is the purchase, with the compound it starts from in hand. */
function planOf(seed: number): { readonly file: LibraryFile; readonly traits: unknown; readonly plan: Plan } {
  const { library, steps, packs } = largePurchase(seed, size, () => ({ status: 'failed', columns: new Map() }))
  const own = { formula: 'C6H12O6' }
  const step = transformation({
    id: 'step',
    charge: [
      { material: 'a', role: 'substrate', amount: 10, unit: 'g' },
      ...steps[0]!.charges.map(line => ({ material: line.material, role: 'other' as const, amount: line.massG!, unit: 'g' as const })),
    ],
  })
  const materials = [material({ id: 'a', ...own }), material({ id: 'b', ...own }), ...library.materials.values()]
  const goal = {
    target: 'b',
    amount: { kind: 'rest' } as const,
    route: { start: 'a', target: 'b', steps: [{ transformation: 'step', makes: 'b' }] },
  }
  const traits = Object.fromEntries(materials.map(one => [one.id, { screened: true, regulated: [], groups: [], smarts: [] }]))
  return {
    traits,
    file: { format: 'waybench-library', version: 1, title: 'Sixty', materials, transformations: [step] },
    plan: {
      title: '',
      start: { material: 'a', massG: 10 },
      shelf: [],
      packs,
      settings: { ...defaultSettings, reserve: 0 },
      log: [],
      seed: 1,
      goals: [goal],
    },
  }
}

/** In the page. */
async function timed({
  worker: address,
  orders,
}: {
  worker: string
  orders: { tables: unknown; plans: { file: unknown; traits: unknown; plan: unknown }[] }
}) {
  const worker = new Worker(address, { type: 'module' })
  const heard: ((answer: { kind: string; at: number; reckoned?: Reckoned }) => void)[] = []
  worker.onmessage = ({ data }) => heard[0]?.({ ...data, at: performance.now() })
  const next = (kind: string) =>
    new Promise<{ at: number; reckoned?: Reckoned }>((resolve, reject) => {
      worker.onerror = event => reject(new Error(event.message))
      heard[0] = answer => {
        if (answer.kind === kind) resolve(answer)
      }
    })
  await next('ready')
  worker.postMessage({ kind: 'tables', tables: orders.tables })
  const results: { ms: number; gapMs: number; frames: number; totalMinor: number | null; proven: boolean }[] = []
  for (const [id, { file, traits, plan }] of orders.plans.entries()) {
    worker.postMessage({ kind: 'facts', file, traits })
    worker.postMessage({ kind: 'plan', id, plan, others: [], atOnce: false })
    const amounts = await next('amounts')
    if (amounts.reckoned?.ok !== 'reckoned') throw new Error(JSON.stringify(amounts.reckoned))
    let gapMs = 0
    let frames = 0
    let last = performance.now()
    let on = true
    const frame = (): void => {
      const now = performance.now()
      gapMs = Math.max(gapMs, now - last)
      last = now
      frames++
      if (on) requestAnimationFrame(frame)
    }
    requestAnimationFrame(frame)
    const whole = await next('whole')
    on = false
    gapMs = Math.max(gapMs, performance.now() - last)
    const basket = whole.reckoned?.ok === 'reckoned' ? whole.reckoned.evaluation.basket : null
    results.push({
      ms: whole.at - amounts.at,
      gapMs,
      frames,
      totalMinor: basket?.totalMinor ?? null,
      proven: basket?.proven === true,
    })
    await next('done')
  }
  worker.terminate()
  return results
}

const { tables } = await openWorkshop([])
const file = readdirSync(join(root, 'dist', 'web', 'assets')).find(name => /^worker-.*\.js$/.test(name))
if (file === undefined) throw new Error('The page is not built: npm run build.')
const server = await served(':memory:')
const browser = await launchBrowser()
try {
  const page = await browser.newPage()
  await page.goto(server.url)
  // tsx names functions by a helper of its own, which the page has not.
  await page.evaluate('globalThis.__name = f => f')
  const plans = Array.from({ length: cases + 1 }, (_, seed) => planOf(seed === 0 ? 99 : seed))
  const all = await page.evaluate(timed, { worker: `/assets/${file}`, orders: { tables, plans } })
  // The first fetches and compiles the WebAssembly.
  const [first, ...rest] = all
  const sorted = rest.map(one => one.ms).sort((a, b) => a - b)
  const row = {
    basket: "60 x 4 x 4, fees, in the page's worker",
    proven: `${rest.filter(one => one.proven).length} of ${cases}`,
    'median, ms': Math.round(sorted[cases >> 1]!),
    'slowest, ms': Math.round(sorted.at(-1)!),
    'first, with the solver fetched, ms': Math.round(first!.ms),
    'longest gap between frames, ms': Math.round(Math.max(...rest.map(one => one.gapMs))),
    frames: rest.reduce((sum, one) => sum + one.frames, 0),
  }
  console.table([row])
  if (jsonFile !== undefined) writeFileSync(jsonFile, `${JSON.stringify({ row, all }, null, 2)}\n`)
} finally {
  await browser.close()
  await server.close()
}
