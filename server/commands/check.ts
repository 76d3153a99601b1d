import { differences } from '../../core/library/differences.ts'
import { hazardsLost } from '../../core/library/hazards-lost.ts'
import { loadLibrary } from '../../core/library/load.ts'
import { isWanted, type WantedMark } from '../../core/library/mark.ts'
import { trusts } from '../../core/library/trust.ts'
import { inWeakOrder, weakKinds, weakSpots } from '../../core/library/weak-spots.ts'
import { parseJson } from '../../core/problem/json.ts'
import { type Problem, paragraph } from '../../core/problem/problem.ts'
import { schemaProblems } from '../../core/problem/schema.ts'
import { type PacksFile, packsFileSchema } from '../../core/shopping/packs.ts'
import { weakPrices } from '../../core/shopping/weak-prices.ts'
import { bundledTables, keysOf } from '../library/bundled.ts'
import { openLibrary } from '../library/open.ts'
import type { Workshop } from '../library/workshop.ts'
import { sideFiles } from '../planning/files.ts'
import { planFileProblems } from '../planning/plan-file.ts'
import { runsLogged } from '../planning/runs-logged.ts'
import { Refusal } from '../refusal.ts'
import { changeLine } from './change-line.ts'
import { badOption, type Command, type Given, type Terminal } from './command.ts'
import { storeIn } from './data-folder.ts'
import { inOptions } from './option-words.ts'
import { laid, ownRecords, workshopFor } from './workshop-for.ts'

export const check: Command = {
  name: 'check',
  summary: 'validates library, plan or packs files, one line a finding',
  usage: 'FILE ... [--over] [--weak [--trust WORD] [--packs FILE] [--data DIR]]',
  options: {
    over: {
      type: 'boolean',
      help: "takes the files for the lab's own records over the library (--library, --own), and tells what they add and what they stand in place of",
    },
    weak: {
      type: 'boolean',
      help: 'where the libraries are weak: yields on one source, figures remembered or reckoned, hazards unknown, no density; "bundled" names the bundled one',
    },
    trust: {
      type: 'string',
      value: 'WORD',
      help: 'with --weak: only what is seen, "not seen", remembered, invented, unknown or of the "own bench"',
    },
    packs: {
      type: 'string',
      value: 'FILE',
      help: 'with --weak: the prices of this packs file too, those without a source, remembered or invented; "demo" names the invented ones',
    },
    data: { type: 'string', value: 'DIR', help: 'with --weak: folder of the saved plans, whose logs tell what was never run here' },
  },
  positionals: { least: 1, most: Number.POSITIVE_INFINITY, what: 'files' },
  async run(given, terminal) {
    if (given.on('weak')) return await weak(given, terminal)
    const workshop = await workshopFor(given)
    if (given.on('over')) return over(workshop, given, terminal)
    const tables = keysOf(bundledTables())
    const errors: Problem[] = []
    const warnings: Problem[] = []
    const libraries: { name: string; text: string }[] = []
    for (const name of given.words) {
      const text = await terminal.readFile(name)
      const json = parseJson(name, text)
      if (!json.ok) {
        errors.push(...json.problems)
        continue
      }
      const { format, packs } = (json.value ?? {}) as { readonly format?: unknown; readonly packs?: unknown }
      if (format === 'waybench-plan') {
        const found = planFileProblems(workshop, json.value, name)
        errors.push(...found.errors.map(inOptions))
        const parsed = packsFileSchema.safeParse(packs)
        warnings.push(...found.warnings.map(inOptions), ...(parsed.success ? priceWarnings(workshop, parsed.data, name) : []))
      } else if (format === 'waybench-packs') {
        const parsed = packsFileSchema.safeParse(json.value)
        if (parsed.success) warnings.push(...priceWarnings(workshop, parsed.data, name))
        else errors.push(...schemaProblems(parsed.error, packsFileSchema, json.value, [name]))
      } else libraries.push({ name, text })
    }
    if (libraries.length > 0) {
      const loaded = loadLibrary(libraries, { tables, toolkit: workshop.toolkit })
      if (loaded.ok) warnings.push(...loaded.warnings)
      else errors.push(...loaded.problems)
    }
    if (given.on('json')) terminal.out(`${JSON.stringify({ errors, warnings }, null, 2)}\n`)
    else {
      for (const problem of errors) terminal.out(`error: ${paragraph(problem)}\n`)
      for (const problem of warnings) terminal.out(`warning: ${paragraph(problem)}\n`)
      if (errors.length + warnings.length === 0)
        terminal.out(`No findings in ${given.words.length === 1 ? 'one file' : `${given.words.length} files`}.\n`)
    }
    return errors.length > 0 ? 2 : 0
  },
}

/** What the named files would do as own records, one line a record; what keeps them from it is refused. */
function over(workshop: Workshop, given: Given, terminal: Terminal): number {
  const records = ownRecords(given.words, workshop)
  const { warnings } = laid(workshop, records.materials, records.transformations)
  const rows = differences(workshop.library, { materials: [], transformations: [] }, records)
  const news = [...hazardsLost(rows), ...warnings.filter(warning => !workshop.warnings.includes(warning))]
  if (given.on('json')) terminal.out(`${JSON.stringify({ rows, warnings: news }, null, 2)}\n`)
  else {
    for (const row of rows) terminal.out(changeLine(row))
    for (const warning of news) terminal.out(`warning: ${paragraph(warning)}\n`)
  }
  return 0
}

/** One warning a file: how many of its prices say nothing of where they were got. */
function priceWarnings({ library }: Workshop, packs: PacksFile, name: string): readonly Problem[] {
  const without = weakPrices(library, packs).filter(spot => spot.kind === 'price without source').length
  if (without === 0) return []
  return [
    {
      code: 'price-without-source',
      where: [name, 'packs'],
      what: `${without} of ${packs.packs.length} prices do not say where they were got.`,
      why: 'A total is only as sure as the prices it is reckoned from; on the sheet and in print they stand as "source not stated".',
      cure: 'Give the file, a supplier or a pack a "priceFrom" with source, trust and date.',
    },
  ]
}

/** Where the named libraries are weak, one line a finding; nothing of it is wrong. */
async function weak(given: Given, terminal: Terminal): Promise<number> {
  const opened = openLibrary(given.words)
  if (!opened.ok) throw new Refusal('bad-input', opened.problems)
  const trust = given.text('trust')
  if (trust !== undefined && trust !== 'not seen' && !(trusts as readonly string[]).includes(trust))
    throw badOption(
      '--trust',
      `is "${trust}".`,
      `A figure is one of: ${trusts.join(', ')}; or "not seen".`,
      'Write one of them; those of two words in quotes.',
    )
  const { packs } = await sideFiles(given, terminal)
  const folder = given.text('data')
  const store = folder === undefined ? null : storeIn(folder, true)
  const spots = inWeakOrder([
    ...weakSpots(opened.value, store === null ? null : runsLogged(store)),
    ...weakPrices(opened.value, packs),
  ]).filter(spot => trust === undefined || isWanted(trust as WantedMark, spot.trust))
  store?.close()
  if (given.on('json')) terminal.out(`${JSON.stringify({ weak: spots }, null, 2)}\n`)
  else {
    for (const { kind, id, name, what, cure } of spots) terminal.out(`${kind}: ${name} (${id}): ${what}. ${cure}\n`)
    const count = spots.length === 1 ? 'One weak spot' : `${spots.length} weak spots`
    const kinds = weakKinds.flatMap(kind => {
      const of = spots.filter(spot => spot.kind === kind).length
      return of === 0 ? [] : [`${of} ${kind}`]
    })
    const never = store === null ? '; what was never run here is told with --data' : ''
    terminal.out(`${count}${never}${kinds.length === 0 ? '' : `: ${kinds.join(', ')}`}.\n`)
  }
  return 0
}
