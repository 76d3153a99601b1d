import { fieldDifferences } from './differences.ts'
import { lineFigure, stepFigures } from './figure-trust.ts'
import type { Material } from './material.ts'
import { type Physical, physicalFigures } from './physical.ts'
import type { Source } from './source.ts'
import type { ChargeLine, Transformation } from './transformation.ts'
import { isOwnBench, sourcesFor, trustInHazards, trustInYield, unsourced } from './trust.ts'

/** A record with the figures that it changes and that nobody read told as such. */
export interface ChangesTold<R> {
  readonly record: R
  /** What changed without a source, in words; empty = the record is as it was given. */
  readonly figures: readonly string[]
}

/**
 * A record that stands over another and gives other figures, while its sources are those of the old ones: the old sources do not hold what it
 * says, so that it counts as remembered until it names one that does.
 */
export function materialChangesTold(record: Material, under: Material): ChangesTold<Material> {
  const fresh = freshSources(record, under)
  const changed = changedKeys(record, under)
  const physical = physicalFigures(record)
    .filter(one => one.trust === 'seen' && changed.has(keyOf[one.figure]))
    .filter(one => !one.sources.some(source => source.checked && fresh.includes(source)))
    .map(one => one.figure)
  const isAssigned = record.hazards?.from !== under.hazards?.from || speaks(fresh, 'hazards')
  const hazards = changed.has('hazards') && trustInHazards(record) === 'seen' && !isAssigned
  return {
    record: {
      ...record,
      ...(hazards ? { hazards: { ...record.hazards!, from: unsourced } } : {}),
      sources: withChange(record.sources, physical),
    },
    figures: [...physical, ...(hazards ? ['hazards'] : [])],
  }
}

const keyOf: Readonly<Record<Physical, keyof Material>> = {
  density: 'densityGPerMl',
  'melting point': 'meltingC',
  'boiling point': 'boilingC',
  'flash point': 'flashC',
  strength: 'contains',
  'exposure limit': 'exposureLimit',
}

/** The same of a transformation. */
export function stepChangesTold(record: Transformation, under: Transformation): ChangesTold<Transformation> {
  const fresh = freshSources(record, under)
  const changed = changedKeys(record, under)
  const isYield = changed.has('yieldPercent') && !sameYield(record, under) && trustInYield(record) === 'seen' && !speaks(fresh, 'yield')
  const charge = speaks(fresh, 'charge')
    ? record.charge
    : record.charge.map(line =>
        under.charge.some(one => sameAmount(one, line)) || lineFigure(record, line).mark !== 'seen' ? line : { ...line, from: unsourced },
      )
  const others = stepFigures(record)
    .filter(({ figure, mark }) => mark === 'seen' && keysOf[figure]?.some(key => changed.has(key)) === true)
    .map(({ figure }) => figure)
    .filter(figure => !speaks(fresh, figure))
  const isCharge = charge.some((line, at) => line !== record.charge[at])
  const named = [...(isYield ? ['yield'] : []), ...(isCharge ? ['charge'] : []), ...others]
  return {
    record: {
      ...record,
      charge,
      ...(isYield ? { yieldPercent: { ...record.yieldPercent, from: unsourced } } : {}),
      sources: withChange(record.sources, named),
    },
    figures: named,
  }
}

const keysOf: Readonly<Partial<Record<string, readonly (keyof Transformation)[]>>> = {
  times: ['elapsedHours', 'handsOnHours', 'tasks'],
  temperature: ['temperatureC'],
  'largest scale': ['largestProvenG'],
  'smallest scale': ['smallestProvenG'],
  'hold point': ['holdPoint'],
}

const changedKeys = (record: object, under: object): ReadonlySet<string> => new Set(fieldDifferences(under, record).map(one => one.key))

const freshSources = (record: { readonly sources: readonly Source[] }, under: { readonly sources: readonly Source[] }): readonly Source[] =>
  record.sources.filter(source => under.sources.every(one => fieldDifferences(one, source).length > 0))

/** Of the sources that the record brings, one that was read speaks for the figure. */
const speaks = (fresh: readonly Source[], figure: string): boolean =>
  sourcesFor(fresh, figure).some(source => source.checked || isOwnBench(source))

const sameYield = ({ yieldPercent: one }: Transformation, { yieldPercent: other }: Transformation): boolean =>
  one.low === other.low && one.typical === other.typical && one.high === other.high

const sameAmount = (one: ChargeLine, other: ChargeLine): boolean =>
  (['material', 'amount', 'unit', 'perGramProduct'] as const).every(key => one[key] === other[key])

const withChange = (sources: readonly Source[], figures: readonly string[]): Source[] =>
  figures.length === 0 ? [...sources] : [...sources, { citation: unsourced, for: figures.join(', '), checked: false }]
