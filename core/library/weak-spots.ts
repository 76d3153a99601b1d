import type { Library } from './library.ts'
import type { Transformation } from './transformation.ts'
import { sourcesFor, type Trust, trustInDensity, trustInHazards, trustInYield } from './trust.ts'

export type WeakKind = 'single-source yield' | 'remembered yield' | 'hazards unknown' | 'no density' | 'estimated times' | 'never run here'

/** A figure that plans rest on and that rests on little itself. */
export interface WeakSpot {
  readonly kind: WeakKind
  readonly list: 'materials' | 'transformations'
  readonly id: string
  readonly name: string
  readonly trust: Trust
  /** Why it is weak, in words. */
  readonly what: string
  readonly cure: string
}

const kinds: readonly WeakKind[] = [
  'hazards unknown',
  'no density',
  'remembered yield',
  'single-source yield',
  'estimated times',
  'never run here',
]

/**
 * Where a library is weak, gravest kind first, then by id.
 *
 * A yield rests on one source where fewer than two reports are given and a single source speaks for it. A density is missed only of
 * liquids and solutions, which are poured.
 *
 * @param runs  logged runs by transformation; null = no log is at hand, and nothing is said about it
 */
export function weakSpots(library: Library, runs: ReadonlyMap<string, number> | null = null): readonly WeakSpot[] {
  const spots = [...library.materials.values()].flatMap((material): WeakSpot[] => {
    const head = { list: 'materials' as const, id: material.id, name: material.name }
    const found: WeakSpot[] = []
    // What cannot be bottled, and what is made and used on the spot, has a label all the same.
    if (trustInHazards(material) === 'unknown')
      found.push({
        ...head,
        kind: 'hazards unknown',
        trust: 'unknown',
        what: 'no hazard data, or an empty list that is only remembered',
        cure: 'Read its safety data sheet and enter the codes with their source.',
      })
    if ((material.form === 'liquid' || material.form === 'solution') && trustInDensity(material) === 'unknown')
      found.push({
        ...head,
        kind: 'no density',
        trust: 'unknown',
        what:
          material.contains?.molPerL === undefined
            ? 'volumes cannot be turned into grams'
            : 'grams cannot be told, only moles from the volume',
        cure: 'Weigh 10 mL, or take the density from the data sheet.',
      })
    return found
  })
  const steps = [...library.transformations.values()].flatMap(step => stepSpots(step, runs))
  return [...spots, ...steps].sort((one, other) => kinds.indexOf(one.kind) - kinds.indexOf(other.kind) || (one.id < other.id ? -1 : 1))
}

function stepSpots(step: Transformation, runs: ReadonlyMap<string, number> | null): readonly WeakSpot[] {
  const trust = trustInYield(step)
  const head = { list: 'transformations' as const, id: step.id, name: step.name, trust }
  const spots: WeakSpot[] = []
  const sources = sourcesFor(step.sources, 'yield')
  if (trust === 'remembered')
    spots.push({
      ...head,
      kind: 'remembered yield',
      what: step.confidence === 'memory' ? 'the yield is remembered, not read' : 'the yield is common practice without a source',
      cure: 'Find the printed preparation and enter its figures, or log a run of your own.',
    })
  else if ((step.reports?.length ?? 0) < 2 && sources.length <= 1)
    spots.push({
      ...head,
      kind: 'single-source yield',
      what: sources.length === 0 ? 'no source speaks for the yield' : 'one source, and no second person who reports a yield',
      cure: 'Add what others really got as reports, or log a run of your own.',
    })
  if (step.timesBasis !== 'source')
    spots.push({
      ...head,
      kind: 'estimated times',
      what: 'hours are estimated from the operations',
      cure: 'Time a run and enter the hours.',
    })
  if (runs !== null && (runs.get(step.id) ?? 0) === 0)
    spots.push({
      ...head,
      kind: 'never run here',
      what: 'no run is logged in any plan kept here',
      cure: 'Log what you weigh after the first run; the yield then moves towards your bench.',
    })
  return spots
}
