import type { Evaluation } from '../plan/evaluation.ts'
import { byNumber } from '../plan/merged-steps.ts'
import type { MetricName } from '../plan/working.ts'
import { numberText, percentText } from '../quantity/print.ts'
import type { MassMetrics } from '../route/mass-metrics.ts'

/** One row of mass metrics: a step, or the whole plan where `step` is null. Figures ready to print; null = not defined. */
export interface MetricsRow {
  /** Number, and the transformation that its workings go by. */
  readonly step: string | null
  readonly transformation: string | null
  readonly figures: Readonly<Record<MetricName, string | null>>
}

/** Columns in the order in which they are read. */
export const metricColumns: readonly { readonly which: MetricName; readonly name: string; readonly short: string }[] = [
  { which: 'atom-economy', name: 'atom economy', short: 'atom economy' },
  { which: 'reaction-mass-efficiency', name: 'reaction mass efficiency', short: 'mass eff.' },
  { which: 'e-factor', name: 'E-factor', short: 'E' },
  { which: 'e-factor-without-water', name: 'E-factor without water', short: 'E no water' },
  { which: 'mass-intensity', name: 'process mass intensity', short: 'PMI' },
  { which: 'eco-scale', name: 'EcoScale', short: 'EcoScale' },
]

/** What the figures are and are not, in one line under the table. */
export const metricsNote =
  'At typical yields. E and PMI in g per g of product; +: some amounts stay open, at least this much. ≤: a penalty of the EcoScale is unknown; its table is from memory. The EcoScale has no form for isolations and whole plans.'

/** Mass metrics of every step and of the whole plan, the plan first. */
export function metricsSheetOf({ metrics, steps }: Evaluation): readonly MetricsRow[] {
  const rows = [...metrics.steps].sort((a, b) => byNumber(a.step, b.step))
  return [
    { step: null, transformation: null, figures: { ...massFigures(metrics.route), 'eco-scale': null } },
    ...rows.map(({ step, metrics: own, ecoScale }) => ({
      step,
      transformation: steps.find(one => one.number === step)?.transformation ?? null,
      figures: {
        ...massFigures(own),
        'eco-scale': ecoScale === null ? null : `${ecoScale.atMost ? '≤ ' : ''}${numberText(ecoScale.score, 3, 0)}`,
      },
    })),
  ]
}

function massFigures(metrics: MassMetrics): Omit<MetricsRow['figures'], 'eco-scale'> {
  const share = (value: number | null): string | null => (value === null ? null : percentText(value, 3))
  const ratio = (value: number | null): string | null =>
    value === null ? null : `${numberText(value, 3)}${metrics.lowerBound ? ' +' : ''}`
  return {
    'atom-economy': share(metrics.atomEconomy),
    'reaction-mass-efficiency': share(metrics.reactionMassEfficiency),
    'e-factor': ratio(metrics.eFactor),
    'e-factor-without-water': ratio(metrics.eFactorWithoutWater),
    'mass-intensity': ratio(metrics.processMassIntensity),
  }
}
