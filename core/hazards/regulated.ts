import type { RouteMaterial } from '../route/materials.ts'
import type { RegulatedHit } from './hazard-list.ts'
import type { RegulatedMatch } from './screening.ts'
import type { Traits } from './traits.ts'

/** Where the reader is and who buys: what the law asks depends on both. */
export interface Whereabouts {
  readonly region: 'UN' | 'EU' | 'UK' | 'US'
  readonly buyer: 'public' | 'professional'
}

/** Materials of the route or the plan, each with what it is there; a bare id is looked at in every role at once. */
export type Screened = string | RouteMaterial

const actionOrder: readonly RegulatedHit['action'][] = ['stop', 'licence', 'reporting', 'note']

/** Traits of a material. Throws for one that was never screened: it must not pass as clean. */
export function traitsFor(traits: ReadonlyMap<string, Traits>, material: string): Traits {
  const found = traits.get(material)
  if (!found) throw new RangeError(`${material} was not screened`)
  return found
}

/**
 * Stop rows among these materials, in any role: start, reactant, reagent, solvent, target, by-product or gas; free, in a mixture, or as a
 * salt where the row says so. One hit ends planning, in every region and for everybody.
 *
 * @throws RangeError for a material without traits
 */
export function stopsAmong(traits: ReadonlyMap<string, Traits>, materials: readonly Screened[]): readonly RegulatedHit[] {
  return materials.flatMap(one => {
    const { material, as } = screened(one)
    return traitsFor(traits, material)
      .regulated.filter(match => match.action === 'stop')
      .sort(byReach)
      .map(match => hitOf(material, match, 'stop', match.reason, false, as))
  })
}

/**
 * All rows that concern these materials here and for this buyer, strictest first. Rows about buying and keeping do not concern what a step
 * only gives off; those of a treaty that covers it do. At or below the public's limit a row is a note.
 *
 * @throws RangeError for a material without traits
 */
export function regulatedAmong(
  traits: ReadonlyMap<string, Traits>,
  materials: readonly RouteMaterial[],
  whereabouts: Whereabouts,
): readonly RegulatedHit[] {
  const hits = materials.flatMap(({ material, as }) =>
    [...traitsFor(traits, material).regulated].sort(byReach).flatMap(match => {
      if (match.action === 'stop') return [hitOf(material, match, 'stop', match.reason, false, as)]
      if (!match.regions.includes(whereabouts.region)) return []
      if (!match.coversGivenOff && as.every(use => use === 'gas' || use === 'by-product')) return []
      return [judged(material, match, as, whereabouts.buyer)]
    }),
  )
  return hits.sort(
    (a, b) =>
      actionOrder.indexOf(a.action) - actionOrder.indexOf(b.action) ||
      Number(b.barred) - Number(a.barred) ||
      (a.material < b.material ? -1 : a.material > b.material ? 1 : 0),
  )
}

/** The law that holds in most places first. */
const byReach = (a: RegulatedMatch, b: RegulatedMatch): number =>
  b.regions.length - a.regions.length || (a.list < b.list ? -1 : a.list > b.list ? 1 : 0)

const screened = (one: Screened): RouteMaterial => (typeof one === 'string' ? { material: one, as: [] } : one)

/** A row held against the strength of the bottle and the buyer. */
function judged(material: string, match: RegulatedMatch, as: readonly string[], buyer: Whereabouts['buyer']): RegulatedHit {
  const limit = match.public
  if (limit === null) return hitOf(material, match, match.action, match.reason, false, as)
  const { massFraction } = match
  const counted = massFraction === null ? null : massFraction * (limit.fractionInPure ?? 1)
  const [is, most] = [percent(counted), percent(limit.aboveMassFraction)]
  const by = limit.countedAs === undefined ? '' : `, counted as ${limit.countedAs}`
  if (counted !== null && counted <= limit.aboveMassFraction)
    return hitOf(material, match, 'note', `${match.reason}; at ${is} it is not above the public's limit of ${most}${by}`, false, as)
  const above =
    counted === null
      ? `its strength is not known, the public's limit is ${most}${by}`
      : `at ${is} it is above the public's limit of ${most}${by}`
  const upTo = limit.licenceUpToMassFraction
  const noLicence = limit.licence === 'none' || (upTo !== undefined && (counted === null || counted > upTo))
  const licence = noLicence
    ? 'no licence for the public covers it'
    : `the public needs a licence${upTo === undefined ? '' : ` (possible up to ${percent(upTo)})`}`
  const forBuyer = buyer === 'public' ? `; ${licence}` : ''
  return hitOf(material, match, match.action, `${match.reason}; ${above}${forBuyer}`, buyer === 'public' && noLicence, as)
}

const percent = (fraction: number | null): string =>
  fraction === null ? 'unknown strength' : `${Number((100 * fraction).toPrecision(3))} %`

const hitOf = (
  material: string,
  match: RegulatedMatch,
  action: RegulatedHit['action'],
  reason: string,
  barred: boolean,
  as: readonly string[],
): RegulatedHit => ({
  material,
  action,
  list: match.list,
  category: match.category,
  legal: match.legal,
  reason,
  barred,
  matchedBy: match.matchedBy,
  as,
  sources: match.sources,
})
