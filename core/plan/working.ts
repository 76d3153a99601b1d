import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { coefficientOf, productCoefficientOf } from '../library/reference-charge.ts'
import type { Source } from '../library/source.ts'
import type { Transformation } from '../library/transformation.ts'
import { noBreakSpace, numberText, percentText } from '../quantity/print.ts'
import type { ChargedLine, ChargedStep } from '../route/charged.ts'
import { flowOf } from '../route/flow.ts'
import { reactantLines } from '../route/reactant-lines.ts'
import type { Evaluation } from './evaluation.ts'
import type { Plan } from './plan.ts'

/** A number of the sheet that answers a click. Steps are named by transformation. */
export type WorkingKey =
  | { readonly of: 'charge'; readonly step: string; readonly index: number }
  | { readonly of: 'product'; readonly step: string }
  | { readonly of: 'yield'; readonly step: string }
  | { readonly of: 'uses'; readonly step: string; readonly index: number }
  | { readonly of: 'goal'; readonly target: string }
  | { readonly of: 'overall'; readonly target: string }
  | { readonly of: 'start' }
  | { readonly of: 'buy'; readonly material: string }
  | { readonly of: 'gas'; readonly step: string; readonly compound: string }

export interface WorkingRow {
  readonly sign: '' | '+' | '\u2212' | '\u00d7' | '\u00f7'
  readonly label: string
  /** Number and unit, ready to print. */
  readonly value: string
  /** The reader's own figure. */
  readonly own?: boolean
}

/** The arithmetic behind a number: rows from top to bottom, the total under a rule, then what to know about it. */
export interface Working {
  readonly rows: readonly WorkingRow[]
  readonly total: { readonly label: string; readonly value: string }
  /** Scale, basis, flags: whole sentences. */
  readonly said: readonly string[]
  readonly sources: readonly Source[]
  /** How its figure was seen; null where it is reckoned and nothing else. */
  readonly seen: 'seen' | 'remembered' | 'planned' | null
}

const times = '\u00d7'
const over = '\u00f7'
const minus = '\u2212'
const value = (amount: number, unit: string, figures = 4): string => `${numberText(amount, figures)}${noBreakSpace}${unit}`
const plain = (amount: number): string => numberText(amount, 4)

/**
 * The working of a number; null for a key that the plan does not hold.
 *
 * @param evaluation of the same plan
 */
export function workingOf(library: Library, plan: Plan, evaluation: Evaluation, key: WorkingKey): Working | null {
  const step = 'step' in key ? evaluation.steps.find(s => s.transformation === key.step || s.number === key.step) : undefined
  if ('step' in key && step === undefined) return null
  switch (key.of) {
    case 'charge':
      return chargeWorking(library, evaluation, step!, key.index)
    case 'product':
      return productWorking(library, step!)
    case 'yield':
      return yieldWorking(library, plan, step!)
    case 'uses':
      return usesWorking(library, plan, evaluation, step!, key.index)
    case 'goal':
      return goalWorking(library, evaluation, key.target)
    case 'overall':
      return overallWorking(library, evaluation, key.target)
    case 'start':
      return startWorking(library, evaluation)
    case 'buy':
      return buyWorking(library, plan, evaluation, key.material)
    case 'gas':
      return gasWorking(library, evaluation, step!, key.compound)
  }
}

const nameOf = (library: Library, id: string): string => library.materials.get(id)?.name ?? id

const seenAs = (transformation: Transformation): Working['seen'] =>
  transformation.confidence === 'checked' || transformation.sources.some(s => s.checked) ? 'seen' : 'remembered'

function chargeWorking(library: Library, evaluation: Evaluation, step: ChargedStep, index: number): Working | null {
  const line = step.charges[index]
  if (!line) return null
  const t = transformationOf(library, step.transformation)
  const flow = flowOf(library, step.transformation)
  const name = nameOf(library, line.material)
  const source = line.line === null ? undefined : t.charge[line.line]
  const byVolume = source !== undefined && (source.unit === 'mL' || source.unit === 'L') && line.supply === 'bought'
  const total = { label: name, value: amountText(line, byVolume) }
  const common = { total, sources: t.sources, seen: seenAs(t) }
  const chargedG = runningG(evaluation, step)
  const limiting: WorkingRow = { sign: '', label: limitingLabel(library, evaluation, step), value: value(chargedG, 'g') }
  if (line.basis === 'open') {
    return {
      ...common,
      rows: [],
      total: { label: name, value: 'as needed' },
      said: ['The source gives no amount, and no rule reaches.'],
      seen: null,
    }
  }
  if (line.basis === 'planned') {
    return {
      ...common,
      rows: [],
      said: ['The source gives no amount. Planned by rule of thumb (common practice), not from the source.'],
      seen: 'planned',
    }
  }
  if (source?.perGramProduct !== undefined) {
    const rows: WorkingRow[] = [
      { sign: '', label: `${nameOf(library, step.makes)} expected`, value: value(step.expectedG, 'g') },
      { sign: times, label: 'for each gram of it, from the source', value: value(source.perGramProduct, source.unit) },
    ]
    return { ...common, rows, said: [] }
  }
  if (line.basis === 'at-least') {
    const compound = reactantLines(library, t).find(
      r => r.atLeast && (r.lines.length === 0 ? r.compound === line.material : line.line !== null && r.lines.includes(line.line)),
    )
    const ratio = compound ? coefficientOf(t, compound.compound) / coefficientOf(t, t.limiting) : 1
    const rows: WorkingRow[] = [
      limiting,
      { sign: over, label: 'molar mass', value: value(library.molarMass.get(flow.limiting) ?? Number.NaN, 'g/mol', 5) },
      { sign: times, label: 'mol for each mol of it, by the equation', value: plain(ratio) },
      { sign: times, label: `${name} that holds one mol`, value: value((line.massG ?? 0) / (line.amountMol ?? 1), 'g') },
    ]
    return { ...common, rows, said: [`Source gives none; at least what the equation takes at full conversion.`] }
  }
  const rows: WorkingRow[] = [
    limiting,
    { sign: over, label: `${nameOf(library, flow.limiting)} in the source`, value: value(flow.referenceG, 'g') },
  ]
  if (source?.amount != null) {
    rows.push({ sign: times, label: `${nameOf(library, source.material)} in the source`, value: value(source.amount, source.unit) })
  }
  const said = [`Scale ${plain(chargedG / flow.referenceG)}.`]
  if (line.basis === 'derived') said.push('This amount was reckoned; the source does not print it.')
  if (line.basis === 'about') said.push(`About: what the solution is made up with, taken at the solution's own volume.`)
  if (source && source.material !== line.material && line.basis !== 'about')
    said.push(`${nameOf(library, source.material)} in the source, ${name} here, mol for mol.`)
  return { ...common, rows, said: [...said, ...step.notes] }
}

/** Grams of limiting compound that the charge lines are for: all of it, or what logged batches leave. */
function runningG(evaluation: Evaluation, step: ChargedStep): number {
  if (!step.done) return step.limiting.massG
  return evaluation.steps.length === 0 || step.batches === 0 ? 0 : (step.limiting.massG * step.done.leftToRun) / step.batches
}

function limitingLabel(library: Library, evaluation: Evaluation, step: ChargedStep): string {
  const { compound } = step.limiting
  const name = nameOf(library, compound)
  if (compound === evaluation.start.compound) return evaluation.start.haveG === null ? `${name} to start with` : `${name} in hand`
  return evaluation.steps.some(s => s.makes === compound)
    ? `${name} from step ${evaluation.steps.find(s => s.makes === compound)!.number}`
    : name
}

const amountText = (line: ChargedLine, byVolume: boolean): string =>
  byVolume && line.volumeMl !== null
    ? value(line.volumeMl, 'mL')
    : line.massG !== null
      ? value(line.massG, 'g')
      : line.volumeMl !== null
        ? value(line.volumeMl, 'mL')
        : line.amountMol !== null
          ? value(line.amountMol * 1000, 'mmol')
          : 'as needed'

function productWorking(library: Library, step: ChargedStep): Working {
  const t = transformationOf(library, step.transformation)
  const flow = flowOf(library, step.transformation)
  const total = { label: `${nameOf(library, step.makes)}, at typical yield`, value: value(step.expectedG, 'g') }
  const sources = t.sources.filter(s => s.for === undefined || s.for.includes('yield'))
  if (step.done && step.done.leftToRun === 0) {
    return {
      rows: [{ sign: '', label: 'isolated, dry and pure, as logged', value: value(step.done.isolatedG, 'g'), own: true }],
      total,
      said: [],
      sources: [],
      seen: null,
    }
  }
  const { typical } = step.yieldFraction
  const rows: WorkingRow[] = [{ sign: '', label: `${nameOf(library, flow.limiting)} charged`, value: value(step.limiting.massG, 'g') }]
  if (flow.isolation) rows.push({ sign: times, label: 'recovered, g per 100 g', value: plain(typical * 100) })
  else {
    const ratio = productCoefficientOf(t, t.mainProduct) / coefficientOf(t, t.limiting)
    rows.push({ sign: over, label: 'its molar mass', value: value(library.molarMass.get(flow.limiting) ?? Number.NaN, 'g/mol', 5) })
    if (ratio !== 1) rows.push({ sign: times, label: 'mol of product for each mol', value: plain(ratio) })
    rows.push({
      sign: times,
      label: `molar mass of ${nameOf(library, step.makes)}`,
      value: value(library.molarMass.get(step.makes) ?? Number.NaN, 'g/mol', 5),
    })
    rows.push({ sign: times, label: 'yield', value: percentText(typical) })
  }
  if (flow.lossG > 0) rows.push({ sign: minus, label: 'fixed loss', value: value(flow.lossG * step.batches, 'g') })
  const said = [
    `P10 ${value(step.p10G, 'g', 3)}, median ${value(step.medianG, 'g', 3)}, P90 ${value(step.p90G, 'g', 3)} of 10${'\u202f'}000 joint draws.`,
  ]
  if (step.theoreticalG !== null) said.unshift(`Theory ${value(step.theoreticalG, 'g')}.`)
  return { rows, total, said, sources, seen: seenAs(t) }
}

function yieldWorking(library: Library, plan: Plan, step: ChargedStep): Working {
  const t = transformationOf(library, step.transformation)
  const per = t.kind === 'isolation' ? (f: number) => `${plain(f * 100)} g per 100 g` : (f: number) => percentText(f)
  const stated = t.yieldPercent
  const rows: WorkingRow[] = [
    { sign: '', label: 'low, one run in ten is below', value: per(step.yieldFraction.low) },
    { sign: '', label: 'typical', value: per(step.yieldFraction.typical), ...(plan.settings.yields[t.id] ? { own: true } : {}) },
    { sign: '', label: 'high, one run in ten is above', value: per(step.yieldFraction.high) },
  ]
  const own = plan.log.filter(e => e.step === t.id && !e.failed).length
  const said = [
    `The library states ${per(stated.low / 100)}, ${per(stated.typical / 100)}, ${per(stated.high / 100)}${stated.from ? ` (${stated.from})` : ''}.`,
  ]
  if (plan.settings.yields[t.id]) said.push('Own figures stand in their place.')
  else if (plan.settings.hand === 'first-time')
    said.push(
      (t.reports ?? []).length >= 3
        ? 'First attempts: what people report.'
        : 'First attempts: the literature shifted by what people report of other steps.',
    )
  if (own > 0) said.push(`Moved by ${own} own ${own === 1 ? 'run' : 'runs'}.`)
  for (const report of t.reports ?? [])
    said.push(`Reported: ${per(report.percent / 100)}${report.note ? `, ${report.note}` : ''} (${report.source.citation}).`)
  const sources = [...t.sources.filter(s => s.for === undefined || s.for.includes('yield')), ...(t.reports ?? []).map(r => r.source)]
  return { rows, total: { label: 'typical yield', value: per(step.yieldFraction.typical) }, said, sources, seen: seenAs(t) }
}

function usesWorking(library: Library, plan: Plan, evaluation: Evaluation, step: ChargedStep, index: number): Working | null {
  const use = step.goesTo[index]
  if (!use) return null
  const total = { label: nameOf(library, step.makes), value: value(use.massG, 'g') }
  const base = { total, said: [], sources: [], seen: null }
  const consumer = use.step === null ? undefined : evaluation.steps.find(s => s.transformation === use.step)
  const goal = use.goal === null ? undefined : plan.goals[use.goal]
  if (!consumer) {
    return { ...base, rows: [{ sign: '', label: goal ? 'goal' : 'kept back', value: value(use.massG, 'g'), own: true }] }
  }
  const flow = flowOf(library, consumer.transformation)
  const need = flow.needs.find(n => n.compound === step.makes)!
  const productG = (use.massG / need.perG) * flow.theoryPerG * consumer.yieldFraction.typical - flow.lossG
  const rows: WorkingRow[] = [
    { sign: '', label: `${nameOf(library, consumer.makes)} planned`, value: value(productG, 'g') },
    { sign: over, label: `yield of step ${consumer.number}`, value: percentText(consumer.yieldFraction.typical) },
    {
      sign: over,
      label: `g of ${nameOf(library, consumer.makes)} from a gram of ${nameOf(library, step.makes)} as charged, in theory`,
      value: plain(flow.theoryPerG / need.perG),
    },
  ]
  return { ...base, rows, said: goal?.amount.kind === 'rest' ? ['It gets what the others leave.'] : [] }
}

function goalWorking(library: Library, evaluation: Evaluation, target: string): Working | null {
  const goal = evaluation.goals.find(g => g.target === target)
  const step = evaluation.steps.find(s => s.makes === target)
  if (!goal || !step) return null
  const made = productWorking(library, step)
  const total = { label: `${nameOf(library, target)}, at typical yields`, value: value(goal.expectedG, 'g') }
  const elsewhere = step.expectedG - goal.expectedG
  const rows =
    elsewhere > 1e-9 * step.expectedG
      ? [...made.rows, { sign: minus, label: 'used in later steps or kept back', value: value(elsewhere, 'g') } as const]
      : made.rows
  const said = [
    `The median of the draws is ${value(goal.medianG, 'g', 3)}; nine in ten give ${value(goal.p10G, 'g', 3)} or more, one in ten ${value(goal.p90G, 'g', 3)} or more.`,
  ]
  if (goal.chance !== null) said.push(`The chance of the wanted mass is ${percentText(goal.chance, 2)}.`)
  return { ...made, rows, total, said }
}

function overallWorking(library: Library, evaluation: Evaluation, target: string): Working | null {
  const goal = evaluation.goals.find(g => g.target === target)
  if (!goal) return null
  const steps = goal.steps.flatMap(n => evaluation.steps.filter(s => s.number === n))
  const rows = steps.map((s, i): WorkingRow => {
    const isolation = transformationOf(library, s.transformation).kind === 'isolation'
    return {
      sign: i === 0 ? '' : times,
      label: `yield of step ${s.number}, ${nameOf(library, s.makes)}`,
      value: isolation ? '1 (recovery beside it)' : percentText(s.yieldFraction.typical),
    }
  })
  const product = steps.reduce(
    (p, s) => (transformationOf(library, s.transformation).kind === 'isolation' ? p : p * s.yieldFraction.typical),
    1,
  )
  const said = [`Yield of the longest linear sequence: ${percentText(goal.longestLinearYield)}.`]
  if (Math.abs(product - goal.overallYieldOnStart) > 1e-6)
    said.unshift('Not the plain product: branches share the start, or a reactant is charged in excess or short.')
  return { rows, total: { label: 'overall yield on start', value: percentText(goal.overallYieldOnStart) }, said, sources: [], seen: null }
}

function startWorking(library: Library, evaluation: Evaluation): Working {
  const { start } = evaluation
  const rows = evaluation.goals.map(
    (g, i): WorkingRow => ({ sign: i === 0 ? '' : '+', label: `for ${nameOf(library, g.target)}`, value: value(g.startG, 'g') }),
  )
  const other = start.massG - evaluation.goals.reduce((sum, g) => sum + g.startG, 0)
  if (other > 1e-6 * start.massG) rows.push({ sign: '+', label: 'for intermediates kept back', value: value(other, 'g') })
  const said: string[] = []
  if (start.haveG !== null)
    said.push(`In hand ${value(start.haveG, 'g')}; kept back ${value(start.keptBackG, 'g')}; left ${value(start.leftG, 'g')}.`)
  if (start.material !== start.compound) said.push(`As ${nameOf(library, start.material)}, by its strength.`)
  return {
    rows,
    total: { label: `${nameOf(library, start.compound)} that the steps take`, value: value(start.massG, 'g') },
    said,
    sources: [],
    seen: null,
  }
}

function buyWorking(library: Library, plan: Plan, evaluation: Evaluation, material: string): Working | null {
  const line = evaluation.shopping.find(l => l.material === material)
  if (!line) return null
  const amount = (q: { readonly amount: number | null; readonly unit: string }): string =>
    q.amount === null ? 'as needed' : value(q.amount, q.unit)
  const number = (step: string): string => evaluation.steps.find(s => s.transformation === step || s.number === step)?.number ?? step
  const rows: WorkingRow[] = line.uses.map((u, i) => ({
    sign: i === 0 ? '' : '+',
    label: `step ${number(u.step)}, ${u.role}`,
    value: amount(u.amount),
  }))
  rows.push({ sign: times, label: 'with the reserve', value: plain(1 + plan.settings.reserve), own: true })
  rows.push({ sign: minus, label: 'on the shelf', value: amount(line.shelf), own: true })
  const said: string[] = [...line.notes]
  if (line.open) said.unshift('Some of its lines have no amount: at least this much.')
  if (line.planned) said.push('Some of it is planned by rule of thumb, not from the source.')
  if (line.madeUp) said.push(line.madeUp.how)
  return {
    rows,
    total: { label: `${nameOf(library, material)} to buy`, value: amount(line.buy) },
    said,
    sources: materialOf(library, material).sources,
    seen: null,
  }
}

/** Ideal gas at 25 C and 1 atm, L/mol. Source: R of CODATA 2018 times 298.15 K over 101.325 kPa. */
const litresPerMol = 24.47

function gasWorking(library: Library, evaluation: Evaluation, step: ChargedStep, compound: string): Working | null {
  const line = evaluation.hazards.gas.find(g => (g.step === step.number || g.step === step.transformation) && g.compound === compound)
  if (!line || step.limiting.amountMol === null) return null
  const rows: WorkingRow[] = [
    { sign: '', label: `${nameOf(library, step.limiting.compound)} charged`, value: value(step.limiting.amountMol * 1000, 'mmol') },
    { sign: times, label: `${nameOf(library, compound)} for each mol`, value: plain(line.litres / litresPerMol / step.limiting.amountMol) },
    { sign: times, label: 'a mol of gas at 25 °C and 1 atm', value: value(litresPerMol, 'L/mol') },
  ]
  const said = ['Worst case: full conversion.', line.from === 'source' ? 'The source names the gas.' : 'By the equation.']
  return { rows, total: { label: nameOf(library, compound), value: value(line.litres, 'L') }, said, sources: [], seen: null }
}
