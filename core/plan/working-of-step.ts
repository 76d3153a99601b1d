import { type Library, transformationOf } from '../library/library.ts'
import { coefficientOf, productCoefficientOf } from '../library/reference-charge.ts'
import { percentText } from '../quantity/print.ts'
import type { ChargedLine, ChargedStep } from '../route/charged.ts'
import { flowOf } from '../route/flow.ts'
import { reactantLines } from '../route/reactant-lines.ts'
import type { Evaluation } from './evaluation.ts'
import { lineMark } from './line-mark.ts'
import type { Plan } from './plan.ts'
import { minus, nameOf, over, plain, seenAs, times, value, type Working, type WorkingRow } from './working-row.ts'

/** A charge line: limiting compound in the plan over that in the source, times the line. */
export function chargeWorking(library: Library, evaluation: Evaluation, step: ChargedStep, index: number): Working | null {
  const line = step.charges[index]
  if (!line) return null
  const t = transformationOf(library, step.transformation)
  const flow = flowOf(library, step.transformation)
  const name = nameOf(library, line.material)
  const source = line.line === null ? undefined : t.charge[line.line]
  const byVolume = source !== undefined && (source.unit === 'mL' || source.unit === 'L') && line.supply === 'bought'
  const total = { label: name, value: amountText(line, byVolume) }
  const common = { total, sources: t.sources, seen: lineMark(library, evaluation, step, line).mark }
  const chargedG = step.ofCharge.chargeG
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
  if (source?.from !== undefined) said.push(`Where the amount comes from: ${source.from}.`)
  if (line.basis === 'derived') said.push('This amount was reckoned; the source does not print it.')
  if (line.basis === 'about') said.push(`About: what the solution is made up with, taken at the solution's own volume.`)
  if (source && source.material !== line.material && line.basis !== 'about')
    said.push(`${nameOf(library, source.material)} in the source, ${name} here, mol for mol.`)
  return { ...common, rows, said: [...said, ...step.notes] }
}

/** Grams of limiting compound that the charge lines are for: all of it, or what logged batches leave. */

function limitingLabel(library: Library, evaluation: Evaluation, step: ChargedStep): string {
  const { compound } = step.limiting
  const name = nameOf(library, compound)
  if (compound === evaluation.start.compound) return evaluation.start.haveG === null ? `${name} to start with` : `${name} in hand`
  return evaluation.steps.some(s => s.makes === compound)
    ? `${name} from step ${evaluation.steps.find(s => s.makes === compound)!.number}`
    : name
}

/** Does how much comes to a step depend on what earlier steps give? */
const takesMade = (step: ChargedStep): boolean => step.charges.some(line => line.supply === 'made')

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

/** What a step makes at its typical yield, or what was weighed. */
export function productWorking(library: Library, step: ChargedStep): Working {
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
  const rows: WorkingRow[] = [{ sign: '', label: `${nameOf(library, flow.limiting)} charged`, value: value(step.ofCharge.chargeG, 'g') }]
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
  const left = step.done?.leftToRun ?? step.batches
  if (flow.lossG > 0) rows.push({ sign: minus, label: 'fixed loss', value: value(flow.lossG * left, 'g') })
  if (step.done) rows.push({ sign: '+', label: 'isolated, dry and pure, as logged', value: value(step.done.isolatedG, 'g'), own: true })
  const { p10G, medianG, p90G, theoryG } = step.ofCharge
  const three = (of: Pick<ChargedStep, 'p10G' | 'medianG' | 'p90G'>): string =>
    `P10 ${value(of.p10G, 'g', 3)}, median ${value(of.medianG, 'g', 3)}, P90 ${value(of.p90G, 'g', 3)}`
  const said = [`Of this charge, in 10${'\u202f'}000 draws: ${three({ p10G, medianG, p90G })}.`]
  if (!step.done && takesMade(step)) said.push(`Where more or less of what is made before comes to it, and all is charged: ${three(step)}.`)
  if (theoryG !== null) said.unshift(`Theory ${value(theoryG, 'g')}.`)
  return { rows, total, said, sources, seen: seenAs(t) }
}

/** The yield of a step: low, typical, high, what it rests on, who reports what. */
export function yieldWorking(library: Library, plan: Plan, step: ChargedStep): Working {
  const t = transformationOf(library, step.transformation)
  const per = t.kind === 'isolation' ? (f: number) => `${plain(f * 100)} g per 100 g` : (f: number) => percentText(f)
  const stated = t.yieldPercent
  const rows: WorkingRow[] = [
    { sign: '', label: 'low, one run in ten is below', value: per(step.yieldFraction.low) },
    { sign: '', label: 'typical', value: per(step.yieldFraction.typical), ...(plan.settings.yields[t.id] ? { own: true } : {}) },
    { sign: '', label: 'high, one run in ten is above', value: per(step.yieldFraction.high) },
  ]
  const own = step.done?.ownRuns ?? 0
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
  const seen = plan.settings.yields[t.id] ? 'typed' : own > 0 ? 'own bench' : seenAs(t)
  const sources = [...t.sources.filter(s => s.for === undefined || s.for.includes('yield')), ...(t.reports ?? []).map(r => r.source)]
  return { rows, total: { label: 'typical yield', value: per(step.yieldFraction.typical) }, said, sources, seen }
}
