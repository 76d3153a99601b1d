import { type Settings, settingsSchema } from '../../core/plan/settings.ts'
import { inBase } from '../../core/quantity/convert.ts'
import { minorDigitsOf } from '../../core/quantity/money.ts'
import { parseQuantity } from '../../core/quantity/parse.ts'
import { badOption, type Given, type Option } from '../commands/command.ts'
import type { Workshop } from '../library/workshop.ts'
import { Refusal } from '../refusal.ts'

/** Settings that have an option of their own; all others come with `--settings`. */
export const settingOptions: Readonly<Record<string, Option>> = {
  confidence: {
    type: 'string',
    value: '0.9',
    help: 'chance with which all wanted masses are to be reached (default: at typical yields)',
  },
  batches: { type: 'string', multiple: true, value: 'ID=2', help: 'batches of a step, to be combined; repeatable' },
  yield: {
    type: 'string',
    multiple: true,
    value: 'ID=60,75,85',
    help: 'own low, typical and high yield of a step, percent, in place of those of the library; repeatable',
  },
  reserve: { type: 'string', value: 'PERCENT', help: 'added to every need (default 10)' },
  'repeat-riskiest': { type: 'boolean', help: 'buys for one repeat of the riskiest step as well' },
  'keep-back': { type: 'string', multiple: true, value: 'ID=2g', help: 'of the start or an intermediate, for no goal to use; repeatable' },
  recovery: {
    type: 'string',
    multiple: true,
    value: 'KEY=NUMBER',
    help: 'when a solvent is worth distilling for reuse: share (percent), mlPerHour, handsH, apartC, leastMl, worthPerHour (in the currency of the packs); repeatable',
  },
  'retained-sample': { type: 'string', value: '"0.1 g"', help: 'kept back of each product as a sample' },
}

/** Settings of a file with what the command line says on top. */
export function ownSettings(workshop: Workshop, given: Given, settings: Settings, currency = 'EUR'): Settings {
  const confidence = confidenceOf(given)
  const reserve = reserveOf(given)
  const sample = given.text('retained-sample')
  return {
    ...settings,
    ...(confidence === null ? {} : { confidence }),
    ...(reserve === null ? {} : { reserve }),
    ...(given.on('repeat-riskiest') ? { repeatRiskiest: true } : {}),
    ...(sample === undefined ? {} : { retainedSampleG: massOf(sample, '--retained-sample') }),
    keptBack: [
      ...settings.keptBack.filter(kept => !given.texts('keep-back').some(text => text.startsWith(`${kept.compound}=`))),
      ...given.texts('keep-back').map(text => keptBackOf(workshop, text)),
    ],
    batches: { ...settings.batches, ...Object.fromEntries(given.texts('batches').map(text => batchesOf(workshop, text))) },
    recovery: { ...settings.recovery, ...Object.fromEntries(given.texts('recovery').map(text => recoveryOf(text, currency))) },
    yields: { ...settings.yields, ...Object.fromEntries(given.texts('yield').map(text => yieldsOf(workshop, text))) },
  }
}

function confidenceOf(given: Given): number | null {
  const text = given.text('confidence')
  if (text === undefined) return null
  const value = text.trim().endsWith('%') ? Number(text.trim().slice(0, -1)) / 100 : Number(text)
  if (value > 0 && value < 1) return value
  throw badOption('--confidence', `is "${text}".`, 'It is a chance: above 0 and below 1.', 'Write 0.9 for nine times in ten.', 'confidence')
}

function reserveOf(given: Given): number | null {
  const text = given.text('reserve')
  if (text === undefined) return null
  const percent = Number(text.replace('%', ''))
  if (percent >= 0 && percent <= 500) return percent / 100
  throw badOption('--reserve', `is "${text}".`, 'It is added to every need, in percent, 0 to 500.', 'Write --reserve 10.', 'reserve')
}

/** `ID=...`, with the step known. */
function pairOf(workshop: Workshop, option: string, text: string): readonly [string, string] {
  const at = text.indexOf('=')
  const id = text.slice(0, Math.max(0, at)).trim()
  if (workshop.library.transformations.has(id)) return [id, text.slice(at + 1)]
  throw badOption(
    option,
    `is "${text}".`,
    'It begins with the id of a step.',
    `Write ${option} ID=..., as waybench routes names it.`,
    'step-unknown',
  )
}

function keptBackOf({ library }: Workshop, text: string): Settings['keptBack'][number] {
  const at = text.indexOf('=')
  const compound = text.slice(0, Math.max(0, at)).trim()
  if (library.materials.has(compound)) return { compound, massG: massOf(text.slice(at + 1), '--keep-back') }
  throw badOption('--keep-back', `is "${text}".`, 'It begins with the id of a compound.', 'Write --keep-back ID=2g.', 'keep-back')
}

function batchesOf(workshop: Workshop, text: string): readonly [string, number] {
  const [id, count] = pairOf(workshop, '--batches', text)
  if (/^\s*[1-9]\d{0,3}\s*$/.test(count)) return [id, Number(count)]
  throw badOption('--batches', `is "${text}".`, 'Batches are counted.', 'Write --batches ID=2.', 'batches')
}

function yieldsOf(workshop: Workshop, text: string): readonly [string, Settings['yields'][string]] {
  const [id, range] = pairOf(workshop, '--yield', text)
  const [low = Number.NaN, typical = Number.NaN, high = Number.NaN, ...more] = range.split(',').map(part => Number(part.replace('%', '')))
  if (more.length === 0 && 0 < low && low <= typical && typical <= high && high <= 100) return [id, { low, typical, high }]
  throw badOption(
    '--yield',
    `is "${text}".`,
    'It is three percentages in order: one run in ten is below the first, half below the second, one in ten above the third.',
    'Write --yield ID=60,75,85.',
    'yield',
  )
}

/** One figure of the rule for solvents, as the settings hold it. */
function recoveryOf(text: string, currency: string): readonly [string, number] {
  const [written = '', figure = ''] = text.split('=')
  const value = Number(figure.replace('%', '').trim() || Number.NaN)
  const key = written.trim() === 'worthPerHour' ? 'worthPerHourMinor' : written.trim()
  const stored = key === 'share' ? value / 100 : key === 'worthPerHourMinor' ? Math.round(value * 10 ** minorDigitsOf(currency)) : value
  const parsed = settingsSchema.shape.recovery.safeParse({ [key]: stored })
  if (parsed.success) return [key, stored]
  throw badOption(
    '--recovery',
    `is "${text}".`,
    'It is one figure of the rule: share (percent), mlPerHour, handsH, apartC, leastMl or worthPerHour, with a plain number.',
    'Write --recovery share=75 or --recovery worthPerHour=10.',
    'recovery',
  )
}

function massOf(text: string, option: string): number {
  const quantity = parseQuantity(text, ['command line', option], { dimensions: ['mass'], zero: true })
  if (!quantity.ok) throw new Refusal('bad-input', quantity.problems)
  return inBase(quantity.value)
}
