import { type Library, transformationOf } from '../library/library.ts'
import { coefficientOf, productCoefficientOf } from '../library/reference-charge.ts'
import type { Source } from '../library/source.ts'
import { numberText, percentText } from '../quantity/print.ts'
import type { ChargedStep } from '../route/charged.ts'
import type { EcoScale } from '../route/eco-penalties.ts'
import type { MassMetrics } from '../route/mass-metrics.ts'
import { type Masses, routeMasses, stepMasses } from '../route/metrics.ts'
import type { Evaluation } from './evaluation.ts'
import type { Plan } from './plan.ts'
import { reckoned } from './reckoned.ts'
import { minus, nameOf, over, plain, value, type Working, type WorkingRow } from './working-row.ts'

/** The metrics that have a working; `eco-scale` only for one step. */
export type MetricName =
  | 'atom-economy'
  | 'reaction-mass-efficiency'
  | 'e-factor'
  | 'e-factor-without-water'
  | 'mass-intensity'
  | 'eco-scale'

/** Where each is defined. Titles from memory. */
const published: Readonly<Record<MetricName, Omit<Source, 'checked'>>> = {
  'atom-economy': { citation: 'B. M. Trost, Science 1991, 254, 1471 (definition from memory)' },
  'reaction-mass-efficiency': {
    citation: 'D. J. C. Constable, A. D. Curzons, V. L. Cunningham, Green Chem. 2002, 4, 521 (definition from memory)',
  },
  'e-factor': { citation: 'R. A. Sheldon, Green Chem. 2007, 9, 1273 (definition from memory)' },
  'e-factor-without-water': { citation: 'R. A. Sheldon, Green Chem. 2007, 9, 1273 (definition from memory)' },
  'mass-intensity': {
    citation: 'C. Jimenez-Gonzalez and others, Org. Process Res. Dev. 2011, 15, 912 (definition from memory)',
  },
  'eco-scale': {
    citation:
      'K. Van Aken, L. Strekowski, L. Patiny, Beilstein J. Org. Chem. 2006, 2:3 (definitions seen; the table of penalty points from memory)',
    url: 'http://www.beilstein-journals.org/bjoc/content/xml/1860-5397-2-3.xml',
  },
}

const labels: Readonly<Record<MetricName, string>> = {
  'atom-economy': 'atom economy',
  'reaction-mass-efficiency': 'reaction mass efficiency',
  'e-factor': 'E-factor',
  'e-factor-without-water': 'E-factor without water',
  'mass-intensity': 'process mass intensity',
  'eco-scale': 'EcoScale',
}

/**
 * The arithmetic behind a mass metric of one step, or of the whole plan; metrics are those of the plan as it was before anything was logged.
 *
 * @param step null = the whole plan
 * @returns null where the metric is not defined: the EcoScale of a route or an isolation, atom economy of an isolation
 */
export function metricWorking(
  library: Library,
  plan: Plan,
  evaluation: Evaluation,
  which: MetricName,
  step: ChargedStep | null,
): Working | null {
  const found = step === null ? null : evaluation.metrics.steps.find(m => m.step === step.number)
  if (which === 'eco-scale') return found?.ecoScale ? ecoWorking(found.ecoScale) : null
  const metrics = step === null ? evaluation.metrics.route : found?.metrics
  const figure = metrics && figureOf(metrics, which)
  if (metrics === undefined || figure == null) return null
  const share = which === 'atom-economy' || which === 'reaction-mass-efficiency'
  const total = { label: labels[which], value: share ? percentText(figure) : `${plain(figure)} g/g` }
  const said = metrics.lowerBound && !share ? ['Some amounts stay open: at least this much.'] : []
  const sources = [{ ...published[which], checked: false }]
  const rest = { total, sources, seen: null }
  if (which === 'atom-economy') {
    return step === null
      ? { ...rest, rows: [], said: ['By the equations of all steps: what is wanted over all that is taken from outside; every yield 1.'] }
      : { ...rest, rows: economyRows(library, step), said: ['By the equation, every reactant at its coefficient.'] }
  }
  const masses = massesOf(library, plan, step)
  return masses === null ? null : { ...rest, rows: massRows(masses, which), said }
}

function figureOf(metrics: MassMetrics, which: MetricName): number | null {
  if (which === 'atom-economy') return metrics.atomEconomy
  if (which === 'reaction-mass-efficiency') return metrics.reactionMassEfficiency
  if (which === 'e-factor') return metrics.eFactor
  return which === 'e-factor-without-water' ? metrics.eFactorWithoutWater : metrics.processMassIntensity
}

function massesOf(library: Library, plan: Plan, step: ChargedStep | null): Masses | null {
  const { topUps: _topUps, repeats: _repeats, ...bare } = plan
  const whole = reckoned(library, plan.log.length === 0 ? plan : { ...bare, log: [] })
  if (step === null) {
    return routeMasses(library, whole.steps, new Map(whole.goals.map(g => [g.target, g.expectedG])))
  }
  const same = whole.steps.find(s => s.transformation === step.transformation)
  return same ? stepMasses(library, same) : null
}

function economyRows(library: Library, step: ChargedStep): readonly WorkingRow[] {
  const t = transformationOf(library, step.transformation)
  const mass = (compound: string, coefficient: number): string =>
    value(coefficient * (library.molarMass.get(compound) ?? Number.NaN), 'g/mol', 5)
  const times = (coefficient: number): string => (coefficient === 1 ? '' : `${plain(coefficient)} `)
  const product = productCoefficientOf(t, t.mainProduct)
  const reactants = [...new Set(t.reactants.map(r => r.compound))]
  return [
    { sign: '', label: `${times(product)}${nameOf(library, t.mainProduct)}`, value: mass(t.mainProduct, product) },
    ...reactants.map((compound, i): WorkingRow => {
      const coefficient = coefficientOf(t, compound)
      return { sign: i === 0 ? over : '+', label: `${times(coefficient)}${nameOf(library, compound)}`, value: mass(compound, coefficient) }
    }),
  ]
}

function massRows(masses: Masses, which: MetricName): readonly WorkingRow[] {
  const product: WorkingRow = { sign: over, label: 'product at typical yields', value: value(masses.productG, 'g') }
  if (which === 'reaction-mass-efficiency') {
    return [
      { sign: '', label: 'product at typical yields', value: value(masses.productG, 'g') },
      { sign: over, label: 'reactants of the equation as charged', value: value(masses.reactantsG, 'g') },
    ]
  }
  const rows: WorkingRow[] = [{ sign: '', label: 'all that goes in', value: value(masses.inputsG, 'g') }]
  if (which === 'mass-intensity') return [...rows, product]
  if (which === 'e-factor-without-water')
    rows.push({ sign: minus, label: 'water, also inside solutions', value: value(masses.waterG, 'g') })
  rows.push({ sign: minus, label: 'product', value: value(masses.productG, 'g') })
  if (masses.keptG > 0) rows.push({ sign: minus, label: 'second products kept', value: value(masses.keptG, 'g') })
  return [...rows, product]
}

const kinds: Readonly<Record<EcoScale['rows'][number]['kind'], string>> = {
  yield: 'yield',
  price: 'price',
  safety: 'safety',
  setup: 'set-up',
  temperature: 'temperature and time',
  workUp: 'work-up',
}

/** 100 less every penalty, each with what it was read from. */
function ecoWorking(eco: EcoScale): Working {
  const points = (n: number | null): string => (n === null ? 'unknown' : numberText(n, 3, 1))
  const said = ['Set-up and work-up are read from the words of the procedure: judge whether they fit.']
  if (eco.atMost) said.unshift('Some penalty is unknown: at most this much.')
  return {
    rows: [
      { sign: '', label: 'the ideal preparation', value: '100' },
      ...eco.rows.map(
        (row): WorkingRow => ({ sign: minus, label: `${kinds[row.kind]}: ${row.what} (${row.because})`, value: points(row.points) }),
      ),
    ],
    total: { label: `EcoScale, ${eco.band}`, value: `${eco.atMost ? 'at most ' : ''}${numberText(eco.score, 3, 1)}` },
    said,
    sources: [{ ...published['eco-scale'], checked: false }],
    seen: null,
  }
}
