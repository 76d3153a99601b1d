import { lineFigure } from './figure-trust.ts'
import type { Library } from './library.ts'
import type { Mark } from './mark.ts'
import type { Material } from './material.ts'
import { physicalFigures, trustInPhysical } from './physical.ts'
import type { Transformation } from './transformation.ts'
import { sourcesFor, type Trust, trustInHazards, trustInYield } from './trust.ts'

/** Kinds of weak spots, gravest first. */
export const weakKinds = [
  'hazards unknown',
  'no density',
  'price without source',
  'remembered hazards',
  'remembered yield',
  'single-source yield',
  'remembered charges',
  'reckoned charges',
  'remembered properties',
  'remembered price',
  'invented price',
  'estimated times',
  'never run here',
] as const
export type WeakKind = (typeof weakKinds)[number]

/** A figure that plans rest on and that rests on little itself. */
export interface WeakSpot {
  readonly kind: WeakKind
  /** `packs`: a price of a packs file; its id is that of the material. */
  readonly list: 'materials' | 'transformations' | 'packs'
  readonly id: string
  readonly name: string
  readonly trust: Trust
  /** Why it is weak, in words. */
  readonly what: string
  readonly cure: string
}

/**
 * Where a library is weak, gravest kind first, then by id.
 *
 * A yield rests on one source where fewer than two reports are given and a single source speaks for it. A density is missed only of
 * liquids and solutions, which are poured.
 *
 * @param runs  logged runs by transformation; null = no log is at hand, and nothing is said about it
 */
export function weakSpots(library: Library, runs: ReadonlyMap<string, number> | null = null): readonly WeakSpot[] {
  const spots = [...library.materials.values()].flatMap(materialSpots)
  const steps = [...library.transformations.values()].flatMap(step => stepSpots(library, step, runs))
  return inWeakOrder([...spots, ...steps])
}

/** Gravest kind first, then by id. */
export const inWeakOrder = <S extends WeakSpot>(spots: readonly S[]): readonly S[] =>
  [...spots].sort(
    (one, other) => weakKinds.indexOf(one.kind) - weakKinds.indexOf(other.kind) || (one.id < other.id ? -1 : one.id > other.id ? 1 : 0),
  )

function materialSpots(material: Material): readonly WeakSpot[] {
  const head = { list: 'materials' as const, id: material.id, name: material.name }
  const spots: WeakSpot[] = []
  const hazards = trustInHazards(material)
  // What cannot be bottled, and what is made and used on the spot, has a label all the same.
  if (hazards === 'unknown')
    spots.push({
      ...head,
      kind: 'hazards unknown',
      trust: 'unknown',
      what: 'no hazard data, or an empty list that is only remembered',
      cure: 'Read its safety data sheet and enter the codes with their source.',
    })
  if (hazards === 'remembered')
    spots.push({
      ...head,
      kind: 'remembered hazards',
      trust: 'remembered',
      what: 'the hazard codes are remembered, not read',
      cure: 'Read its safety data sheet and enter the codes with their source.',
    })
  if ((material.form === 'liquid' || material.form === 'solution') && trustInPhysical(material, 'density') === 'unknown')
    spots.push({
      ...head,
      kind: 'no density',
      trust: 'unknown',
      what:
        material.contains?.molPerL === undefined
          ? 'volumes cannot be turned into grams'
          : 'grams cannot be told, only moles from the volume',
      cure: 'Weigh 10 mL, or take the density from the data sheet.',
    })
  const remembered = physicalFigures(material).filter(one => one.trust === 'remembered')
  if (remembered.length > 0)
    spots.push({
      ...head,
      kind: 'remembered properties',
      trust: 'remembered',
      what: `remembered: ${remembered.map(one => `${one.figure} ${one.value}`).join(', ')}`,
      cure: 'Look them up in a handbook or the data sheet and enter them with their source.',
    })
  return spots
}

function stepSpots(library: Library, step: Transformation, runs: ReadonlyMap<string, number> | null): readonly WeakSpot[] {
  const trust = trustInYield(step)
  const head = { list: 'transformations' as const, id: step.id, name: step.name, trust }
  const spots: WeakSpot[] = []
  const sources = sourcesFor(step.sources, 'yield')
  if (trust === 'remembered')
    spots.push({
      ...head,
      kind: 'remembered yield',
      what: step.confidence === 'common-practice' ? 'the yield is common practice without a source' : 'the yield is remembered, not read',
      cure: 'Find the printed preparation and enter its figures, or log a run of your own.',
    })
  else if ((step.reports?.length ?? 0) < 2 && sources.length <= 1)
    spots.push({
      ...head,
      kind: 'single-source yield',
      what: sources.length === 0 ? 'no source speaks for the yield' : 'one source, and no second person who reports a yield',
      cure: 'Add what others really got as reports, or log a run of your own.',
    })
  const charged = (mark: Mark): string =>
    step.charge
      .filter(line => lineFigure(step, line).mark === mark)
      .map(line => library.materials.get(line.material)?.name ?? line.material)
      .join(', ')
  const [remembered, reckoned] = [charged('remembered'), charged('derived')]
  if (remembered !== '')
    spots.push({
      ...head,
      trust: 'remembered',
      kind: 'remembered charges',
      what: `remembered, not read: ${remembered}`,
      cure: 'Find a source that prints the amount, or log what was really charged.',
    })
  if (reckoned !== '')
    spots.push({
      ...head,
      trust: 'remembered',
      kind: 'reckoned charges',
      what: `reckoned, not printed by the source: ${reckoned}`,
      cure: 'Find a source that prints the amount, or log what was really charged.',
    })
  if (step.timesBasis !== 'source')
    spots.push({
      ...head,
      kind: 'estimated times',
      what: 'hours are estimated from the operations',
      cure: 'Time a run and enter the hours.',
    })
  // A yield of the own bench was measured here, though no plan kept here may hold its log.
  if (runs !== null && (runs.get(step.id) ?? 0) === 0 && trust !== 'own bench')
    spots.push({
      ...head,
      kind: 'never run here',
      what: 'no run is logged in any plan kept here',
      cure: 'Log what you weigh after the first run; the yield then moves towards your bench.',
    })
  return spots
}
