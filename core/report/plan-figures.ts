import { asLabelled } from '../hazards/mixture.ts'
import { type Library, transformationOf } from '../library/library.ts'
import type { Mark, Marked } from '../library/mark.ts'
import { physicalFigures } from '../library/physical.ts'
import type { Transformation } from '../library/transformation.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { lineMark } from '../plan/line-mark.ts'
import { byNumber } from '../plan/merged-steps.ts'
import type { Plan } from '../plan/plan.ts'
import { defaultSettings } from '../plan/settings.ts'
import { moneyText } from '../quantity/money.ts'
import { durationText, massText, percentText } from '../quantity/print.ts'
import type { ChargedStep } from '../route/charged.ts'
import { priceFigure } from '../shopping/price-from.ts'
import { packText } from './amounts.ts'
import { benchSheetOf } from './bench-sheet.ts'
import { nameIn } from './names.ts'
import { trustOfStep } from './trust-words.ts'

/** One figure that a plan rests on, as it is shown, with how sure it is. */
export interface PlanFigure extends Marked {
  /** "step 1", "materials", "prices", "this plan". */
  readonly place: string
  /** What it is a figure of. */
  readonly of: string
  /** "charge", "yield", "melting point". */
  readonly figure: string
  readonly value: string
  readonly mark: Exclude<Mark, 'reckoned'>
}

/** Every figure that a plan rests on and that no program reckoned: what was typed, each step's, each material's, each price. */
export function planFigures(library: Library, plan: Plan, evaluation: Evaluation): readonly PlanFigure[] {
  const steps = [...evaluation.steps].sort((a, b) => byNumber(a.number, b.number))
  return [
    ...typed(library, plan),
    ...steps.flatMap(step => stepRows(library, plan, evaluation, step)),
    ...materialRows(library, plan, steps),
    ...priceRows(library, evaluation),
  ]
}

/** Marks that stand at the figures of one step, for its legend. */
export function marksOfStep(library: Library, plan: Plan, evaluation: Evaluation, step: ChargedStep): readonly Mark[] {
  const { figures } = trustOfStep(library, plan, step)
  return [...step.charges.map(line => lineMark(library, evaluation, step, line).mark), ...figures.map(one => one.mark)]
}

/** The reserve as it usually is goes by a rule of thumb; another one was typed. */
export const reserveMark = ({ settings }: Pick<Plan, 'settings'>): Marked & { readonly mark: PlanFigure['mark'] } =>
  settings.reserve === defaultSettings.reserve ? { mark: 'planned', source: 'common practice' } : { mark: 'typed', source: null }

function typed(library: Library, plan: Plan): readonly PlanFigure[] {
  const { start, goals, log, settings } = plan
  const nameOf = nameIn(library)
  const own = (of: string, figure: string, value: string): PlanFigure => ({
    place: 'this plan',
    of,
    figure,
    value,
    mark: 'typed',
    source: null,
  })
  return [
    ...(start.massG === null ? [] : [own(nameOf(start.material), 'in hand', massText(start.massG))]),
    ...goals.flatMap(({ target, amount }) =>
      amount.kind === 'rest'
        ? []
        : [own(nameOf(target), 'wanted', amount.kind === 'mass' ? massText(amount.massG) : percentText(amount.fraction))],
    ),
    { place: 'this plan', of: 'shopping', figure: 'reserve', value: percentText(settings.reserve, 2), ...reserveMark(plan) },
    ...log.map(
      (entry): PlanFigure => ({
        place: 'this plan',
        of: nameOf(library.transformations.get(entry.step)?.mainProduct ?? entry.step),
        figure: `run ${entry.id}`,
        value: massText(entry.weighedG),
        mark: 'own bench',
        source: 'the bench log of this plan',
      }),
    ),
  ]
}

function stepRows(library: Library, plan: Plan, evaluation: Evaluation, step: ChargedStep): readonly PlanFigure[] {
  const place = `step ${step.number}`
  const transformation = transformationOf(library, step.transformation)
  const sheet = benchSheetOf(library, evaluation, step)
  const nameOf = nameIn(library)
  const made = nameOf(step.makes)
  return [
    ...sheet.charge
      .filter(row => row.basis !== 'open')
      .map((row): PlanFigure => ({ place, of: row.name, figure: 'charge', value: row.inAll ?? row.amount, ...marked(row.sure) })),
    ...trustOfStep(library, plan, step).figures.flatMap((one): readonly PlanFigure[] => {
      const value = printedOf(library, transformation, step, sheet.yields, one.figure)
      return value === null ? [] : [{ place, of: made, figure: one.figure, value, mark: one.mark, source: one.source }]
    }),
  ]
}

const marked = ({ mark, source }: Marked) => ({ mark: mark as PlanFigure['mark'], source })

/** As printed; null for what is no figure of the step's own, or stands line by line. */
function printedOf(
  library: Library,
  transformation: Transformation,
  step: ChargedStep,
  yields: { readonly typical: string; readonly range: string },
  figure: string,
): string | null {
  switch (figure) {
    case 'yield':
      return yields.typical
    case 'range of the yield':
      return `${yields.range} %`
    case 'second product':
      return step.coProducts.map(one => `${massText(one.expectedG)} of ${nameIn(library)(one.compound)}`).join(', ') || null
    case 'times':
      return durationText(transformation.elapsedHours)
    case 'temperature':
      return transformation.temperatureC === undefined ? null : `${transformation.temperatureC.join(' to ')} °C`
    case 'largest scale':
      return transformation.largestProvenG === undefined ? null : massText(transformation.largestProvenG)
    case 'smallest scale':
      return transformation.smallestProvenG === undefined ? null : massText(transformation.smallestProvenG)
    default:
      return null
  }
}

function materialRows(library: Library, plan: Plan, steps: readonly ChargedStep[]): readonly PlanFigure[] {
  const all = steps.flatMap(step => trustOfStep(library, plan, step).materials)
  const once = new Map(all.map(one => [one.material, one.figures] as const))
  return [...once].flatMap(([material, figures]) => {
    const record = library.materials.get(material)
    const values = record === undefined ? [] : physicalFigures(record)
    return figures.map((one): PlanFigure => {
      const value = values.find(of => of.figure === one.figure)?.value
      const codes = record === undefined ? [] : (asLabelled(library, record).hazards?.codes ?? [])
      const told =
        value ?? (one.figure === 'hazards' && one.trust !== 'unknown' ? codes.join(' ') || 'no statement in that source' : 'not known')
      return { place: 'materials', of: nameIn(library)(material), figure: one.figure, value: told, mark: one.mark, source: one.source }
    })
  })
}

function priceRows(library: Library, { shopping, basket }: Evaluation): readonly PlanFigure[] {
  if (basket === null) return []
  const { currency } = basket
  const packs = shopping.flatMap(line =>
    line.packs.map((pack): PlanFigure => {
      const { mark, source } = priceFigure(pack.priceFrom)
      const of = `${nameIn(library)(line.material)}, ${packText(pack.amount, pack.unit)}`
      return { place: 'prices', of, figure: 'price', value: moneyText(pack.priceMinor, currency), mark, source }
    }),
  )
  const fees = basket.orders.flatMap((order): readonly PlanFigure[] => {
    const { mark, source } = priceFigure(order.priceFrom)
    const fee = order.carriageMinor + order.hazardousFeeMinor
    return fee === 0
      ? []
      : [{ place: 'prices', of: order.name, figure: 'carriage and fees', value: moneyText(fee, currency), mark, source }]
  })
  return [...packs, ...fees]
}
