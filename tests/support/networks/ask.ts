import type { SearchOptions } from '../../../core/network/ranked.ts'
import type { RankedRoute } from '../../../core/network/ranked-route.ts'
import { OrderedRoutes, type RoutesAsked } from '../../../core/network/routes.ts'
import type { ListedRoute } from './listing.ts'
import type { SmallNetwork } from './small.ts'

/** Everything the search finds, to its end. */
export function searched(
  { network, weights, start, target }: SmallNetwork,
  asked: Partial<RoutesAsked> & Pick<RoutesAsked, 'mode'>,
  options: SearchOptions = {},
): RankedRoute[] {
  const whole = { start, masked: new Uint8Array(network.head.length), make: [], mustPass: [], ...asked }
  const stream = new OrderedRoutes(network, weights, weights, whole, target, options)
  const found: RankedRoute[] = []
  for (let route = stream.next(); route !== null; route = stream.next()) found.push({ arcs: route.arcs, value: route.value! })
  if (!stream.complete) throw new Error('the search did not come to its end')
  return found
}

const order = (a: readonly number[], b: readonly number[]): number => {
  if (a.length !== b.length) return a.length - b.length
  const at = a.findIndex((arc, i) => arc !== b[i])
  return at < 0 ? 0 : a[at]! - b[at]!
}

/** What differs between the routes listed and those searched, as text; empty where they agree in number, order and value. */
export function differences(found: readonly RankedRoute[], listed: readonly ListedRoute[]): string {
  // Ties within 1e-9 by fewer steps, then by ids.
  const wanted = [...listed].sort((a, b) => (Math.abs(a.value - b.value) > 1e-9 ? a.value - b.value : order(a.arcs, b.arcs)))
  const text = (routes: readonly { arcs: readonly number[]; value: number }[]) =>
    routes.map(r => `${r.arcs.join('+')}=${r.value}`).join(' ')
  const same =
    found.length === wanted.length &&
    found.every((route, i) => Math.abs(route.value - wanted[i]!.value) < 1e-9 && order(route.arcs, wanted[i]!.arcs) === 0)
  return same ? '' : `searched ${text(found)} | listed ${text(wanted)}`
}
