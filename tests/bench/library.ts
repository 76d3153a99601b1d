import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { axes, type RoutesQuery } from '../../core/choose/query.ts'
import { reachRows } from '../../core/choose/reach-rows.ts'
import { routeRows } from '../../core/choose/route-rows.ts'
import { loadLibrary } from '../../core/library/load.ts'
import { networkOf } from '../../core/network/network.ts'
import { defaultSettings, type Settings, settingsSchema } from '../../core/plan/settings.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import { demoParts } from '../../server/library/demo.ts'
import { openWorkshop } from '../../server/library/workshop.ts'
import { generatedNetwork } from '../support/networks/generated.ts'
import { libraryText } from '../support/networks/library-text.ts'

/**
 * A library file of 100,000 transformations and 50,000 materials with full records: read, checked by every rule, indexed, made a network. Each
 * round in a process of its own, for the memory. And all manner of `routes` requests on the bundled library, in the process. `--json FILE` writes
 * the figures.
 */
const transformations = 100_000
const rounds = 3
/** A `routes` request on the bundled library is to take no longer. */
const limitMs = 10
interface Choice {
  readonly query: Omit<RoutesQuery, 'from' | 'to'>
  readonly packs?: PacksFile | null
  readonly settings?: Settings
}
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!

if (process.argv.includes('--one')) {
  const file = process.argv[process.argv.indexOf('--one') + 1]!
  const text = readFileSync(file, 'utf8')
  const began = performance.now()
  const loaded = loadLibrary([{ name: 'generated.json', text }])
  const readMs = performance.now() - began
  if (!loaded.ok) throw new Error(loaded.problems[0]?.what)
  const network = networkOf(loaded.value)
  const { rss } = process.memoryUsage()
  // What the process held at its most, in kB on Linux.
  const { maxRSS } = process.resourceUsage()
  const { user, system } = process.cpuUsage()
  process.stdout.write(
    JSON.stringify({
      readMs,
      readyMs: performance.now() - began,
      cpuMs: (user + system) / 1000,
      rssMb: rss / 1e6,
      mostMb: maxRSS / 1e3,
      arcs: network.arcs.length,
    }),
  )
} else {
  const folder = mkdtempSync(join(tmpdir(), 'waybench-bench-'))
  const file = join(folder, 'generated.json')
  const text = libraryText(generatedNetwork(transformations))
  writeFileSync(file, text)
  const own = fileURLToPath(import.meta.url)
  const runs = Array.from({ length: rounds }, () => {
    const run = spawnSync(process.execPath, ['--import', 'tsx', own, '--one', file], { encoding: 'utf8' })
    if (run.status !== 0) throw new Error(run.stderr)
    return JSON.parse(run.stdout) as Record<'readMs' | 'readyMs' | 'cpuMs' | 'rssMb' | 'mostMb', number>
  })
  rmSync(folder, { recursive: true })
  const at = (key: keyof (typeof runs)[number]): number => median(runs.map(run => run[key]))

  const workshop = await openWorkshop([])
  const { library } = workshop
  const traits = workshop.traits()
  const demo = demoParts()
  // Everything that anything in the library can become, by every axis and by several at once, a hundred routes of them; with prices, and for
  // a buyer who may not have everything.
  const hundred = { make: ['all'], count: 100 }
  const choices: readonly Choice[] = [
    ...axes.flatMap((by): Choice[] => [{ query: { by } }, { query: { by, ...hundred } }]),
    { query: { unbeaten: ['start', 'steps', 'hands-on', 'elapsed'], ...hundred } },
    { query: { unbeaten: ['yield', 'hazard', 'cost', 'elapsed'], ...hundred } },
    { query: { by: 'start', apart: 3, ...hundred } },
    { query: { by: 'cost', ...hundred }, packs: demo.packs },
    { query: { by: 'hazard', seenOnly: true, ...hundred } },
    { query: { by: 'yield', avoidCode: ['H350'], ...hundred }, settings: settingsSchema.parse({ region: 'EU', buyer: 'public' }) },
  ]
  const took = (query: RoutesQuery, { packs = null, settings = defaultSettings }: Choice): number => {
    const cpuBefore = process.cpuUsage()
    const before = performance.now()
    routeRows({ library, traits, query, packs, settings })
    const wall = performance.now() - before
    const { user, system } = process.cpuUsage(cpuBefore)
    return Math.min(wall, (user + system) / 1000)
  }
  const times: number[] = []
  for (const from of library.users.keys()) {
    const reached = reachRows({ library, traits, query: { from } })
    if (!reached.ok || reached.value.kind !== 'reach') continue
    for (const { compound } of reached.value.reach)
      for (const choice of choices) {
        const query = { from, to: compound, ...choice.query }
        const first = took(query, choice)
        // Of a slow one the middle of seven: the first may have met the compiler, or another's turn.
        times.push(first < limitMs / 2 ? first : median([first, ...Array.from({ length: 6 }, () => took(query, choice))]))
      }
  }
  const rows = [
    {
      'file, MB': text.length / 1e6,
      transformations,
      'read and checked, ms': at('readMs'),
      'ready, network too, ms': at('readyMs'),
      'whole process, CPU ms': at('cpuMs'),
      'process after, MB': at('rssMb'),
      'process at its most, MB': at('mostMb'),
      'bundled library, one request, median ms': median(times),
      'bundled library, requests': times.length,
      'bundled library, one request, worst ms': times.reduce((most, ms) => Math.max(most, ms), 0),
      'bundled library, requests over 10 ms': times.filter(ms => ms > limitMs).length,
    },
  ]
  for (const [name, value] of Object.entries(rows[0]!))
    console.log(`${name.padEnd(44)} ${Number(value.toPrecision(4)).toLocaleString('en').padStart(12)}`)
  const json = process.argv.indexOf('--json')
  if (json >= 0) writeFileSync(process.argv[json + 1]!, `${JSON.stringify({ node: process.version, rows }, null, 2)}\n`)
}
