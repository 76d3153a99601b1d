import { comparedRuns } from '../../core/logbook/compare.ts'
import { withRun } from '../../core/logbook/run.ts'
import { planFileOf } from '../../core/plan/file.ts'
import { paragraph } from '../../core/problem/problem.ts'
import { shareFraction } from '../../core/quantity/convert.ts'
import { parseQuantity } from '../../core/quantity/parse.ts'
import { massText, percentText } from '../../core/quantity/print.ts'
import { openWorkshop } from '../library/workshop.ts'
import { gramsOf } from '../planning/amounts.ts'
import { planIn } from '../planning/plan-file.ts'
import { Refusal } from '../refusal.ts'
import { badOption, type Command, type Given } from './command.ts'

export const log: Command = {
  name: 'log',
  summary: "adds what was really weighed to a plan's bench log",
  usage: 'PLAN --step ID --weighed "12.0 g" [--damp PERCENT] [--failed] [--date D] [--note TEXT]',
  options: {
    step: { type: 'string', value: 'ID', help: 'the transformation that was run' },
    weighed: { type: 'string', value: '"12.0 g"', help: 'what the product weighed' },
    charged: { type: 'string', value: '"24 g"', help: 'how much of the limiting reactant went in (default: as planned)' },
    damp: { type: 'string', value: 'PERCENT', help: 'loss on drying still to come' },
    purity: { type: 'string', value: 'PERCENT', help: 'assay of the product (default: taken as pure)' },
    batch: { type: 'string', value: 'N', help: 'which batch (default: the next)' },
    failed: { type: 'boolean', help: 'spilt, lost or wrongly charged: logged, and teaches nothing about the yield' },
    date: { type: 'string', value: 'D', help: 'day, as 2026-12-03 (default: today)' },
    note: { type: 'string', value: 'TEXT', help: 'a remark' },
    replaces: { type: 'string', value: 'ID', help: 'the entry this one corrects; that one is kept' },
  },
  positionals: { least: 1, most: 1, what: 'plan files' },
  async run(given, terminal) {
    const file = given.words[0]!
    const workshop = await openWorkshop(given.texts('library'))
    const { plan } = await planIn(workshop, file, terminal)
    const { library } = workshop
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
      failed: given.on('failed'),
      date: dateOf(given) ?? terminal.today,
      note: given.text('note') ?? '',
      replaces: given.text('replaces') ?? null,
      ...(given.text('batch') === undefined ? {} : { batch: given.whole('batch', 1, 10_000, 1) }),
    }
    const added = withRun(library, plan, entry)
    if (!added.ok) throw new Refusal('bad-input', added.problems)
    await terminal.writeFile(file, `${JSON.stringify(planFileOf(library, added.value), null, 2)}\n`)
    const run = comparedRuns(library, added.value).at(-1)!
    if (given.on('json')) terminal.out(`${JSON.stringify({ entry: run.entry, compared: run, warnings: added.warnings }, null, 2)}\n`)
    else {
      const theory = run.theoryG === null ? '' : ` of ${massText(run.theoryG)} in theory`
      terminal.out(
        `Logged ${run.entry.id}: ${massText(run.isolatedG)}${theory}, planned ${massText(run.plannedG)}; ${percentText(run.yieldFraction)}.\n`,
      )
      for (const warning of added.warnings) terminal.out(`${paragraph(warning)}\n`)
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

function dateOf(given: Given): string | null {
  const text = given.text('date')
  if (text === undefined) return null
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? []
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)))
  if (year !== undefined && date.getUTCMonth() === Number(month) - 1 && date.getUTCDate() === Number(day)) return text
  throw badOption('--date', `is "${text}".`, 'The log is in order of days.', 'Write the day as 2026-12-03.', 'date')
}
