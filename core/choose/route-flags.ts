import type { HazardCounts } from '../hazards/hazard-list.ts'
import { regulatedAmong, type Whereabouts } from '../hazards/regulated.ts'
import type { Traits } from '../hazards/traits.ts'
import type { Library } from '../library/library.ts'
import type { RouteMaterial } from '../route/materials.ts'

/** What has to be said of a route before it is chosen. */
export interface RouteFlag {
  /** `barred`: the buyer may not have it. `licence`, `reporting`: what the law asks. The rest: what is not known. */
  readonly kind: 'barred' | 'licence' | 'reporting' | 'hazard-unknown' | 'not-screened' | 'value-unknown' | 'value-at-least'
  readonly material: string | null
  readonly text: string
}

/** May a flag name it? What was never screened is asked for as well, so that it does not pass as clean. */
export function isNotable(traits: ReadonlyMap<string, Traits>, material: string): boolean {
  const found = traits.get(material)
  return found === undefined || found.regulated.length > 0 || !found.screened
}

/**
 * Flags of one route, what bars it first.
 *
 * @param materials of the route; those that are not {@link isNotable} may be left out
 */
export function flagsOf(
  library: Library,
  traits: ReadonlyMap<string, Traits>,
  materials: readonly RouteMaterial[],
  whereabouts: Whereabouts,
  hazard: HazardCounts,
  valueUnknown: string | null,
): RouteFlag[] {
  const flags: RouteFlag[] = []
  const nameOf = (id: string): string => library.materials.get(id)?.name ?? id
  const hits = regulatedAmong(traits, materials, whereabouts)
  for (const hit of hits) {
    if (hit.barred)
      flags.push({
        kind: 'barred',
        material: hit.material,
        text: `The public cannot have ${nameOf(hit.material)}: ${hit.reason} (${hit.list}).`,
      })
  }
  for (const action of ['licence', 'reporting'] as const) {
    for (const hit of hits) {
      if (hit.action !== action || hit.barred) continue
      const asks = action === 'licence' ? 'needs a licence or declaration' : 'is under reporting of suspicious transactions'
      flags.push({ kind: action, material: hit.material, text: `${capital(nameOf(hit.material))} ${asks}: ${hit.reason} (${hit.list}).` })
    }
  }
  if (hazard.unknown > 0) {
    const many = hazard.unknown === 1 ? 'one material' : `${hazard.unknown} materials`
    flags.push({ kind: 'hazard-unknown', material: null, text: `No hazard data for ${many}: read the safety data sheets.` })
  }
  const unscreened = materials.filter(m => traits.get(m.material)?.screened === false).map(m => m.material)
  if (unscreened.length > 0)
    flags.push({
      kind: 'not-screened',
      material: null,
      text: `Not screened against the lists, for want of a CAS number and a structure: ${unscreened.map(nameOf).join(', ')}.`,
    })
  if (valueUnknown !== null) flags.push({ kind: 'value-unknown', material: null, text: valueUnknown })
  return flags
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
