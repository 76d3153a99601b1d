import { type Library, transformationOf } from '../library/library.ts'
import {
  coefficientOf,
  demandPerLimiting,
  freeCompounds,
  productCoefficientOf,
  referenceFeedstockG,
  referenceMoles,
} from '../library/reference-charge.ts'
import type { Transformation } from '../library/transformation.ts'

/**
 * The mass arithmetic of one step, per gram of its limiting compound; everything a plan does with amounts is a multiple of this. Isolations
 * count grams of feedstock and have factor 1 here: their recovery is their yield.
 */
export interface Flow {
  readonly transformation: string
  readonly makes: string
  readonly isolation: boolean
  readonly limiting: string
  /** Grams of the limiting compound at the reference charge, i.e. at scale 1. */
  readonly referenceG: number
  /** Grams of product per gram of the limiting compound at full yield. */
  readonly theoryPerG: number
  /** Fixed loss per isolation, g. */
  readonly lossG: number
  /** Every reactant but a free one, the limiting one first: grams of compound as charged, and as the equation consumes, per gram limiting. */
  readonly needs: readonly { readonly compound: string; readonly perG: number; readonly exactPerG: number }[]
}

const known = new WeakMap<Library, Map<string, Flow>>()

/**
 * Mass arithmetic of a transformation of a library.
 *
 * @throws RangeError for an unknown id, or a limiting reactant without an amount or a reaction without molar masses: the loader refuses those
 */
export function flowOf(library: Library, id: string): Flow {
  let flows = known.get(library)
  if (!flows) {
    flows = new Map()
    known.set(library, flows)
  }
  let flow = flows.get(id)
  if (!flow) {
    flow = reckoned(library, transformationOf(library, id))
    flows.set(id, flow)
  }
  return flow
}

function reckoned(library: Library, t: Transformation): Flow {
  const common = { transformation: t.id, makes: t.mainProduct, limiting: t.limiting, lossG: t.lossG ?? 0 }
  if (t.kind === 'isolation') {
    const referenceG = referenceFeedstockG(library, t)
    if (referenceG === null) throw new RangeError(`${t.id}: the feedstock has no amount`)
    return { ...common, isolation: true, referenceG, theoryPerG: 1, needs: [{ compound: t.limiting, perG: 1, exactPerG: 1 }] }
  }
  const molarMass = (compound: string): number => {
    const found = library.molarMass.get(compound)
    if (found === undefined) throw new RangeError(`${t.id}: ${compound} has no molar mass`)
    return found
  }
  const limitingMass = molarMass(t.limiting)
  const limitingCoefficient = coefficientOf(t, t.limiting)
  const moles = referenceMoles(library, t, t.limiting)
  if (moles === null) throw new RangeError(`${t.id}: the limiting reactant has no amount`)
  const compounds = [...new Set([t.limiting, ...t.reactants.map(r => r.compound)])]
  const needs = compounds.flatMap(compound => {
    const perMol = demandPerLimiting(library, t, compound)
    if (perMol === 0 && freeCompounds.has(compound)) return []
    const massRatio = molarMass(compound) / limitingMass
    return [{ compound, perG: perMol * massRatio, exactPerG: (coefficientOf(t, compound) / limitingCoefficient) * massRatio }]
  })
  const theoryPerG = ((productCoefficientOf(t, t.mainProduct) / limitingCoefficient) * molarMass(t.mainProduct)) / limitingMass
  return { ...common, isolation: false, referenceG: moles * limitingMass, theoryPerG, needs }
}
