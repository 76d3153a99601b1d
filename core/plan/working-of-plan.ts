import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { percentText } from '../quantity/print.ts'
import type { ChargedStep } from '../route/charged.ts'
import { flowOf } from '../route/flow.ts'
import type { Evaluation } from './evaluation.ts'
import type { Plan } from './plan.ts'
import { productWorking } from './working-of-step.ts'
import { minus, nameOf, over, plain, times, value, type Working, type WorkingRow } from './working-row.ts'

/** Where a product goes: how much of it a later step or a goal takes. */
export function usesWorking(library: Library, plan: Plan, evaluation: Evaluation, step: ChargedStep, index: number): Working | null {
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

/** A goal is told to the milligram of the balance it will be weighed on, so that it can be checked by hand. */
const balanceFigures = 5

/** What comes out of a goal at typical yields. */
export function goalWorking(library: Library, evaluation: Evaluation, target: string): Working | null {
  const goal = evaluation.goals.find(g => g.target === target)
  const step = evaluation.steps.find(s => s.makes === target)
  if (!goal || !step) return null
  const made = productWorking(library, step)
  const total = { label: `${nameOf(library, target)}, at typical yields`, value: value(goal.expectedG, 'g', balanceFigures) }
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

/** Overall yield on start, step by step. */
export function overallWorking(library: Library, evaluation: Evaluation, target: string): Working | null {
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
    said.unshift(
      steps.some(s => s.done != null)
        ? 'Not the plain product: logged runs count with what they gave, what is still to run at its typical yield.'
        : 'Not the plain product: branches share the start, or a reactant is charged in excess or short.',
    )
  return { rows, total: { label: 'overall yield on start', value: percentText(goal.overallYieldOnStart) }, said, sources: [], seen: null }
}

/** How much of the start the goals take. */
export function startWorking(library: Library, evaluation: Evaluation): Working {
  const { start } = evaluation
  const rows = evaluation.goals.map(
    (g, i): WorkingRow => ({ sign: i === 0 ? '' : '+', label: `for ${nameOf(library, g.target)}`, value: value(g.startG, 'g') }),
  )
  const other = start.massG - evaluation.goals.reduce((sum, g) => sum + g.startG, 0)
  if (other > 1e-6 * start.massG) rows.push({ sign: '+', label: 'for intermediates kept back', value: value(other, 'g') })
  const said: string[] = []
  if (start.haveG !== null) {
    const kept = start.keptBackG > 0 ? `; kept back ${value(start.keptBackG, 'g')}` : ''
    const left = start.leftG > 0 ? `; left ${value(start.leftG, 'g')}` : ''
    said.push(`In hand ${value(start.haveG, 'g')}${kept}${left}.`)
  }
  if (start.material !== start.compound) said.push(`As ${nameOf(library, start.material)}, by its strength.`)
  return {
    rows,
    total: { label: `${nameOf(library, start.compound)} that the steps take`, value: value(start.massG, 'g') },
    said,
    sources: [],
    seen: null,
  }
}

/** What is to be bought: uses, reserve, shelf. */
export function buyWorking(library: Library, plan: Plan, evaluation: Evaluation, material: string): Working | null {
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

/** Gas given off in the worst case. */
export function gasWorking(library: Library, evaluation: Evaluation, step: ChargedStep, compound: string): Working | null {
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
