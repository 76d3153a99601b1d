import type { Library } from '../../core/library/library.ts'
import { referenceFeedstockG, referenceMoles } from '../../core/library/reference-charge.ts'
import { trustInYield } from '../../core/library/trust.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { moneyText } from '../../core/quantity/money.ts'
import { durationText, massText, noBreakSpace, numberText, percentText } from '../../core/quantity/print.ts'
import { spreadText } from '../../core/report/answers.ts'
import { hasNoPrice } from '../../core/report/basket-gaps.ts'
import { pricesOf } from '../../core/report/price-words.ts'
import type { RouteRow } from '../api/replies.ts'
import { hazardBrief } from './way-answer.ts'

/** One way in the comparison: what the search says of it, and its evaluation once it was reckoned. */
export interface Column {
  readonly key: string
  readonly row: RouteRow
  readonly evaluation: Evaluation | null
}

export interface Cell {
  readonly text: string
  /** Not known, not merely small: it ranks last and is said in a word. */
  readonly unknown?: boolean
  readonly best?: boolean
  /** To be watched: a triangle stands before it. */
  readonly flagged?: boolean
}

export interface CompareRow {
  readonly label: string
  readonly cells: readonly Cell[]
}

interface Axis {
  readonly label: string
  readonly better: 'more' | 'less' | null
  /** The figure to compare by; null = unknown, undefined = still being reckoned. */
  readonly value: (column: Column) => number | null | undefined
  readonly text: (column: Column, value: number) => string
  readonly flagged?: (value: number) => boolean
}

/** Above three times the largest published scale. Source: design 3.8, common practice. */
const scaleFlag = 3

/** Routes as columns, axes as rows; the best of each row is marked where the ways differ. */
export function compareRows(
  library: Library,
  columns: readonly Column[],
  target: string,
  unbeaten: ReadonlySet<string> = new Set(),
): readonly CompareRow[] {
  const marks = columns.some(column => unbeaten.has(column.key))
    ? [{ label: 'Unbeaten', cells: columns.map(column => ({ text: unbeaten.has(column.key) ? 'yes' : 'no' })) }]
    : []
  return [...rowsOf(library, columns, target), ...marks]
}

function rowsOf(library: Library, columns: readonly Column[], target: string): readonly CompareRow[] {
  return axesOf(library, target).map(axis => {
    const values = columns.map(axis.value)
    const known = values.filter((value): value is number => typeof value === 'number')
    const top = axis.better === null || new Set(known).size < 2 ? null : axis.better === 'more' ? Math.max(...known) : Math.min(...known)
    return {
      label: axis.label,
      cells: columns.map((column, at) => {
        const value = values[at]
        if (value === undefined) return { text: '…' }
        if (value === null) return { text: 'unknown', unknown: true }
        return { text: axis.text(column, value), best: value === top, flagged: axis.flagged?.(value) ?? false }
      }),
    }
  })
}

function axesOf(library: Library, target: string): readonly Axis[] {
  const of =
    <V>(read: (evaluation: Evaluation) => V) =>
    (column: Column): V | undefined =>
      column.evaluation === null ? undefined : read(column.evaluation)
  const goal = (evaluation: Evaluation) => evaluation.goals.find(one => one.target === target)
  return [
    { label: 'Yield on start', better: 'more', value: column => column.row.overallYieldOnStart, text: (_, value) => percentText(value) },
    {
      label: 'Yield of the longest chain',
      better: null,
      value: column => column.row.longestLinearYield,
      text: (_, value) => percentText(value),
    },
    {
      label: 'Product, median',
      better: 'more',
      value: of(evaluation => goal(evaluation)?.medianG ?? null),
      text: (_, value) => massText(value),
    },
    {
      label: 'P10–P90, g',
      better: null,
      value: of(evaluation => goal(evaluation)?.p10G ?? null),
      text: column => {
        const spread = column.evaluation === null ? undefined : goal(column.evaluation)
        return spread === undefined ? '' : spreadText(spread.p10G, spread.p90G)
      },
    },
    { label: 'Steps', better: 'less', value: column => column.row.steps.length, text: (_, value) => String(value) },
    {
      label: 'Hazard, worst first',
      better: 'less',
      // Class by class: a thousand of a lesser class never outweigh one of a worse.
      value: ({ row: { hazard } }) => ((hazard.gravest * 1e3 + hazard.unknown) * 1e3 + hazard.danger) * 1e3 + hazard.warning,
      text: column => hazardBrief(column.row.hazard),
    },
    {
      label: 'Gas given off',
      better: 'less',
      value: of(evaluation => evaluation.hazards.gas.reduce((sum, gas) => sum + gas.litres, 0)),
      text: (_, value) => (value === 0 ? 'none' : `${numberText(value, 2, 1)}${noBreakSpace}L`),
    },
    {
      label: 'Regulated',
      better: 'less',
      value: of(evaluation => new Set(evaluation.hazards.regulated.filter(hit => hit.action !== 'note').map(hit => hit.material)).size),
      text: (column, value) =>
        column.row.flags.some(flag => flag.kind === 'barred') ? 'not for the public' : value === 0 ? 'no row' : `§${noBreakSpace}${value}`,
    },
    {
      label: 'Scale-up',
      // A scale far below the proven one is no better than one at it.
      better: null,
      value: of(evaluation => scaleUp(library, evaluation)),
      text: (_, value) => `${numberText(value, 2)}${noBreakSpace}×`,
      flagged: value => value > scaleFlag,
    },
    {
      label: 'To buy, at least',
      better: 'less',
      // Fewer unknown prices go before a smaller total: an unknown price is not free.
      value: of(({ basket }) =>
        basket === null ? undefined : hasNoPrice(basket) ? null : basket.priceUnknown.length * 1e9 + (basket.totalMinor ?? 0),
      ),
      text: column => {
        const basket = column.evaluation?.basket
        return basket?.totalMinor == null ? '' : moneyText(basket.totalMinor, basket.currency)
      },
    },
    {
      label: 'Prices unknown',
      better: 'less',
      value: of(({ basket }) => (basket === null ? undefined : basket.priceUnknown.length)),
      text: (_, value) => (value === 0 ? 'none' : String(value)),
    },
    {
      label: 'Prices not seen',
      better: 'less',
      value: of(evaluation => (evaluation.basket === null ? undefined : pricesOf(evaluation).filter(one => one.mark !== 'seen').length)),
      text: (column, value) =>
        value === 0
          ? 'none'
          : value === (column.evaluation === null ? 0 : pricesOf(column.evaluation).length)
            ? `all ${value}`
            : String(value),
    },
    {
      label: 'Yields not seen',
      better: 'less',
      value: column => column.row.steps.filter(step => yieldMark(library, step) !== 'seen').length,
      text: (_, value) => (value === 0 ? 'none' : String(value)),
    },
    {
      label: 'Hands-on',
      better: 'less',
      value: of(evaluation => evaluation.days.handsOnH),
      text: (_, value) => durationText(value),
    },
    { label: 'Elapsed', better: 'less', value: of(evaluation => evaluation.days.elapsedH), text: (_, value) => durationText(value) },
    {
      label: 'Mass intensity, g/g',
      better: 'less',
      value: of(evaluation => evaluation.metrics.route.processMassIntensity),
      text: (column, value) => `${numberText(value, 3, 1)}${column.evaluation?.metrics.route.lowerBound ? ' +' : ''}`,
    },
  ]
}

/** How sure the yield of a step is; unknown where the page does not hold it. */
const yieldMark = (library: Library, step: string) => {
  const transformation = library.transformations.get(step)
  return transformation === undefined ? 'unknown' : trustInYield(transformation)
}

/** The largest ratio of a batch to the largest scale published for its step; the reference charge where none is stated. */
export function scaleUp(library: Library, evaluation: Evaluation): number | null {
  const ratios = evaluation.steps.flatMap(step => {
    const transformation = library.transformations.get(step.transformation)
    if (transformation === undefined) return []
    const published = transformation.largestProvenG ?? referenceG(library, transformation.id)
    return published === null ? [] : [step.limiting.massG / Math.max(1, step.batches) / published]
  })
  return ratios.length === 0 ? null : Math.max(...ratios)
}

function referenceG(library: Library, id: string): number | null {
  const transformation = library.transformations.get(id)
  if (transformation === undefined) return null
  if (transformation.kind === 'isolation') return referenceFeedstockG(library, transformation)
  const moles = referenceMoles(library, transformation, transformation.limiting)
  const molarMass = library.molarMass.get(transformation.limiting)
  return moles === null || molarMass === undefined ? null : moles * molarMass
}
