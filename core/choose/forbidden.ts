import { codesInEffect } from '../hazards/known.ts'
import { labelledMaterialOf } from '../hazards/mixture.ts'
import type { Traits } from '../hazards/traits.ts'
import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { compoundIn } from '../library/reference-charge.ts'
import type { Transformation } from '../library/transformation.ts'
import { trustInYield } from '../library/trust.ts'
import type { Network } from '../network/network.ts'
import { atOnce, eachInPieces, type InPieces } from '../network/pieces.ts'
import type { Settings } from '../plan/settings.ts'
import { type ChoosingOptions, matchesList } from './query.ts'

/** Above this, in C, a step needs a heat source. Common practice, no source: water baths at hand warmth need none. */
const warmC = 35

export interface ForbiddenInput {
  readonly library: Library
  readonly network: Network
  readonly traits: ReadonlyMap<string, Traits>
  readonly settings: Settings
}

/** Materials of one step, once each: charged, reacting, made, given off. */
export function materialsOfStep(t: Transformation): Set<string> {
  const materials = new Set<string>()
  for (const line of t.charge) materials.add(line.material)
  for (const r of t.reactants) materials.add(r.compound)
  for (const p of t.products) materials.add(p.compound)
  for (const g of t.gasEvolved) materials.add(g.compound)
  return materials
}

/** Materials that a stop row ends planning with. */
const stoppedMaterials = (traits: ReadonlyMap<string, Traits>): Set<string> =>
  new Set([...traits].filter(([, trait]) => trait.regulated.some(match => match.action === 'stop')).map(([material]) => material))

/** Does a stop row meet a material of a step, in whatever role? */
export function stepStops(traits: ReadonlyMap<string, Traits>): (step: Transformation) => boolean {
  const stopped = stoppedMaterials(traits)
  return step => stopped.size > 0 && [...materialsOfStep(step)].some(material => stopped.has(material))
}

/** By arc: 1 where a stop row meets one of its materials, in whatever role. */
export const stoppedArcs = (input: ForbiddenInput): Uint8Array => atOnce(stoppedInPieces(input))

/** The same with pauses. */
export function* stoppedInPieces({ library, network, traits }: ForbiddenInput): InPieces<Uint8Array> {
  if (stoppedMaterials(traits).size === 0) return new Uint8Array(network.arcs.length)
  return yield* maskOf(network, library, stepStops(traits))
}

/** By arc: 1 where an option forbids the step. */
export const forbiddenArcs = (input: ForbiddenInput, options: ChoosingOptions): Uint8Array => atOnce(forbiddenInPieces(input, options))

/** The same with pauses. */
export function* forbiddenInPieces(input: ForbiddenInput, options: ChoosingOptions): InPieces<Uint8Array> {
  const { library, network, traits, settings } = input
  const avoided = new Set(options.avoid)
  const steps = new Set(options.avoidStep)
  const codes = options.avoidCode ?? []
  const lists = options.avoidList ?? []
  const listed = new Set<string>()
  if (lists.length > 0) {
    for (const [material, trait] of traits)
      if (trait.regulated.some(m => lists.some(name => matchesList(m.list, name)))) listed.add(material)
  }
  return yield* maskOf(network, library, t => {
    if (steps.has(t.id)) return true
    if (options.ownedOnly && !isOwned(t, settings)) return true
    if (options.seenOnly && trustInYield(t) === 'remembered') return true
    if (avoided.size + codes.length + lists.length === 0) return false
    for (const id of materialsOfStep(t)) {
      if (avoids(library, avoided, id) || listed.has(id)) return true
      if (codes.length > 0 && bears(library, t, id, codes)) return true
    }
    return false
  })
}

/** Is the material avoided, or a mixture of what is? */
export function avoids(library: Library, avoided: ReadonlySet<string>, id: string): boolean {
  if (avoided.has(id)) return true
  const inside = compoundIn(materialOf(library, id))
  return inside !== null && avoided.has(inside)
}

/** Does the material carry one of these codes, with whatever letters behind? */
export function bears(library: Library, t: Transformation, id: string, codes: readonly string[]): boolean {
  const charged = t.charge.some(line => line.material === id) || t.reactants.some(r => r.compound === id)
  const evolved = !charged && t.mainProduct !== id && t.gasEvolved.some(g => g.compound === id)
  return codesInEffect(labelledMaterialOf(library, id), evolved).some(code =>
    code.split('+').some(part => codes.some(wanted => covers(wanted, part))),
  )
}

const covers = (wanted: string, code: string): boolean => code.startsWith(wanted) && /^[A-Za-z]*$/.test(code.slice(wanted.length))

/**
 * Do the settings own what the step needs? Hood, inert gas and heat count as owned only where they are stated; a list of vessels that nobody
 * filled in says nothing about kinds.
 */
export function isOwned(t: Transformation, settings: Settings): boolean {
  if (t.needsHood && settings.hood !== true) return false
  if (t.atmosphere === 'inert' && settings.inertGas !== true) return false
  if (t.temperatureC !== undefined && t.temperatureC[1] > warmC && !(settings.heatSources !== null && settings.heatSources > 0))
    return false
  const kind = t.vesselKind ?? 'flask'
  return settings.vessels.length === 0 || kind === 'other' || settings.vessels.some(vessel => vessel.kind === kind)
}

function* maskOf(network: Network, library: Library, forbids: (t: Transformation) => boolean): InPieces<Uint8Array> {
  const mask = new Uint8Array(network.arcs.length)
  yield* eachInPieces(network.arcs, (id, a) => {
    if (forbids(transformationOf(library, id))) mask[a] = 1
  })
  return mask
}
