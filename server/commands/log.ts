import { type ComparedRun, comparedRuns } from '../../core/logbook/compare.ts'
import { logCsv } from '../../core/logbook/log-csv.ts'
import { withRun } from '../../core/logbook/run.ts'
import { planFileOf } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { type Problem, paragraph } from '../../core/problem/problem.ts'
import { shareFraction } from '../../core/quantity/convert.ts'
import { parseQuantity } from '../../core/quantity/parse.ts'
import { massText, percentText } from '../../core/quantity/print.ts'
import { lowMelt } from '../../core/report/low-melts.ts'
import { gramsOf } from '../planning/amounts.ts'
import { nextEdition } from '../planning/edition.ts'
import { planIn, workshopOf } from '../planning/plan-file.ts'
import { Refusal } from '../refusal.ts'
import { badOption, type Command, type Given } from './command.ts'
import { workshopFor } from './workshop-for.ts'

export const log: Command = {
  name: 'log',
  summary: "adds what was really weighed to a plan's bench log",
  usage:
    'PLAN --step ID --weighed "12.0 g" [--damp PERCENT] [--melting "94-95"] [--failed] [--date D] [--note TEXT]\n       waybench log PLAN --csv FILE',
  options: {
    step: { type: 'string', value: 'ID', help: 'the transformation that was run' },
    weighed: { type: 'string', value: '"12.0 g"', help: 'what the product weighed' },
    charged: { type: 'string', value: '"24 g"', help: 'how much of the limiting reactant went in (default: as planned)' },
    damp: { type: 'string', value: 'PERCENT', help: 'loss on drying still to come' },
    purity: { type: 'string', value: 'PERCENT', help: 'assay of the product (default: taken as pure)' },
    melting: { type: 'string', value: '"94-95"', help: 'melting range in degrees Celsius' },
    batch: { type: 'string', value: 'N', help: 'which batch (default: the next)' },
    failed: { type: 'boolean', help: 'spilt, lost or wrongly charged: logged, and teaches nothing about the yield' },
    date: { type: 'string', value: 'D', help: 'day, as 2026-12-03 (default: today)' },
    note: { type: 'string', value: 'TEXT', help: 'a remark' },
    replaces: { type: 'string', value: 'ID', help: 'the entry this one corrects; that one is kept' },
    csv: { type: 'string', value: 'FILE', help: 'writes the whole log as CSV; without --step nothing is added' },
  },
  positionals: { least: 1, most: 1, what: 'plan files' },
  async run(given, terminal) {
    const file = given.words[0]!
    const workshop = await workshopFor(given)
    const opened = await planIn(workshop, file, terminal)
    const { plan, changes } = opened
    const { library } = workshopOf(workshop, opened)
    const csv = given.text('csv')
    const exported = async (of: Plan): Promise<void> => {
      if (csv === undefined) return
      await terminal.writeFile(csv, logCsv(library, of))
      terminal.err(`Wrote ${csv}.\n`)
    }
    if (csv !== undefined && given.text('step') === undefined && given.text('weighed') === undefined) {
      await exported(plan)
      if (given.on('json')) terminal.out(`${JSON.stringify({ runs: comparedRuns(library, plan) }, null, 2)}\n`)
      return 0
    }
    const step = given.need('step', 'The log has to know what was run.')
    const transformation = library.transformations.get(step)
    const grams = (name: string, material: string | undefined, zero: boolean): number => {
      const text = given.text(name)!
      if (zero && /^\s*0([.,]0*)?\s*(g|mg|kg)\s*$/.test(text)) return 0
      return material === undefined ? 1 : gramsOf(library, material, text, ['command line', `--${name}`])
    }
    given.need('weighed', 'The log is about what was weighed; a run that gave nothing weighed 0 g.')
    const entry = {
      step,
      weighedG: grams('weighed', transformation?.mainProduct, true),
      chargedG: given.text('charged') === undefined ? null : grams('charged', transformation?.limiting, false),
      dampPercent: percentOf(given, 'damp') ?? 0,
      purity: purityOf(given),
      meltingC: meltingOf(given),
      failed: given.on('failed'),
      date: dateOf(given) ?? terminal.today,
      note: given.text('note') ?? '',
      replaces: given.text('replaces') ?? null,
      ...(given.text('batch') === undefined ? {} : { batch: given.whole('batch', 1, 10_000, 1) }),
    }
    const added = withRun(library, plan, entry)
    if (!added.ok) throw new Refusal('bad-input', added.problems)
    const next = nextEdition(library, plan, added.value)
    await terminal.writeFile(file, `${JSON.stringify(planFileOf(library, next), null, 2)}\n`)
    await exported(next)
    const run = comparedRuns(library, added.value).at(-1)!
    const above = aboveTheoryWarning(run)
    const warnings = [...added.warnings, ...(above === null ? [] : [above]), ...[lowMelt(library, run.entry)].filter(one => one !== null)]
    if (given.on('json')) terminal.out(`${JSON.stringify({ entry: run.entry, compared: run, warnings, changes }, null, 2)}\n`)
    else {
      const theory = run.theoryG === null ? '' : ` of ${massText(run.theoryG)} in theory`
      terminal.out(
        `Logged ${run.entry.id}: ${massText(run.isolatedG)}${theory}, planned ${massText(run.plannedG ?? 0)}; ${percentText(run.yieldFraction ?? 0)}.\n`,
      )
      for (const warning of [...warnings, ...changes]) terminal.out(`${paragraph(warning)}\n`)
    }
    return 0
  },
}

function percentOf(given: Given, name: string): number | null {
  const text = given.text(name)
  if (text === undefined) return null
  const share = parseQuantity(/%\s*$/.test(text) ? text : `${text} %`, ['command line', `--${name}`], { dimensions: ['share'] })
  if (!share.ok) throw new Refusal('bad-input', share.problems)
  const percent = shareFraction(share.value) * 100
  if (percent > 100)
    throw badOption(`--${name}`, `is ${percent} %.`, 'It is a part of what was weighed.', 'Give up to 100.', 'percent-above')
  return percent
}

function purityOf(given: Given): number | null {
  const percent = percentOf(given, 'purity')
  if (percent === 0)
    throw badOption(
      '--purity',
      'is 0.',
      'A product that holds none of the compound was not made.',
      'Log the run with --failed.',
      'purity-zero',
    )
  return percent === null ? null : percent / 100
}

const temperature = '([\u2212-]?\\d+(?:[.,]\\d+)?)'
/** "94-95", "94 to 95 C", or one figure. */
const meltingRange = new RegExp(`^\\s*${temperature}(?:\\s*(?:-|\u2013|to)\\s*${temperature})?\\s*(?:\u00b0?\\s*C)?\\s*$`)

function meltingOf(given: Given): readonly [number, number] | null {
  const text = given.text('melting')
  if (text === undefined) return null
  const [, from, to] = meltingRange.exec(text) ?? []
  const read = (part: string): number => Number(part.replace(',', '.').replace('\u2212', '-'))
  if (from !== undefined) return [read(from), read(to ?? from)]
  throw badOption(
    '--melting',
    `is "${text}".`,
    'A melting range is two temperatures.',
    'Write --melting "94-95", in degrees Celsius.',
    'melting',
  )
}

function dateOf(given: Given): string | null {
  const text = given.text('date')
  if (text === undefined) return null
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? []
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)))
  if (year !== undefined && date.getUTCMonth() === Number(month) - 1 && date.getUTCDate() === Number(day)) return text
  throw badOption('--date', `is "${text}".`, 'The log is in order of days.', 'Write the day as 2026-12-03.', 'date')
}

/** The warning that goes with a run above theory; null for any other. */
function aboveTheoryWarning({ entry, verdict, yieldFraction }: ComparedRun): Problem | null {
  if (verdict !== 'above-theory' || yieldFraction === null) return null
  return {
    code: 'above-theory',
    where: ['log', entry.id],
    what: `Run ${entry.id} weighed ${percentText(yieldFraction)} of theory.`,
    why: 'It is wet, impure or mis-weighed; it counts as weighed and teaches no yield.',
    cure: `Dry it and weigh again, then log the second weighing in place of ${entry.id}.`,
  }
}
