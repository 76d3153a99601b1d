import type { Traits } from '../hazards/traits.ts'
import { type Library, transformationOf } from '../library/library.ts'
import type { Network } from '../network/network.ts'
import { askedAs } from '../problem/asked-as.ts'
import type { Problem } from '../problem/problem.ts'
import type { ReadQuery, RoutesQuery } from './query.ts'
import type { Search } from './searching.ts'
import { stopReasons } from './stop-reasons.ts'

export interface NoRouteInput {
  readonly library: Library
  readonly network: Network
  readonly traits: ReadonlyMap<string, Traits>
  readonly query: RoutesQuery
  readonly asked: ReadQuery
  /** By arc: 1 = a stop row meets it; 1 = an option forbids it. */
  readonly stops: Uint8Array
  readonly forbidden: Uint8Array
  /** Is there a route under other terms? `free` leaves out what must be made or passed. */
  readonly exists: (masked: Uint8Array, mode: 'default' | 'all', maxSteps?: number, free?: boolean) => Search<boolean>
}

/** Why there is no route, found by asking again under looser terms, one after the other. */
export function* noRoute(input: NoRouteInput): Search<Problem[]> {
  const { query, asked, stops, forbidden, network, exists } = input
  const where = [askedAs('from'), query.from, askedAs('to'), query.to]
  const mode = asked.makeAll ? 'all' : 'default'
  const nothing = new Uint8Array(stops.length)
  const because = (code: string, what: string, why: string, cure: string): Problem[] => [{ code, where, what, why, cure }]

  if (forbidden.includes(1) && (yield* exists(stops, mode, query.maxSteps))) {
    return because(
      'none-left',
      'The options leave no route.',
      `Without them there is one; ${used(query)} took it out.`,
      'Leave one of these options out, or choose another target.',
    )
  }
  if (query.maxSteps !== undefined && (yield* exists(stops, mode)))
    return because('none-so-short', `No route has ${query.maxSteps} steps or fewer.`, 'Longer ones exist.', 'Allow more steps.')
  if (asked.mustPass.length + asked.make.length > 0 && (yield* exists(stops, mode, undefined, true))) {
    const names = [...new Set([...asked.mustPass, ...asked.make])].join(', ')
    return because(
      'none-through',
      `No route makes ${names} on its way.`,
      'There are routes that do not.',
      `Leave the compound out, or try ${askedAs('make')} all, which opens every make-or-buy.`,
    )
  }
  if (mode === 'default' && (yield* exists(stops, 'all')))
    return because(
      'none-by-default',
      'No chain leads there with every other reactant bought.',
      'There is a route that makes what could be bought as well.',
      `Add ${askedAs('make')} all to list it.`,
    )
  if (stops.includes(1) && (yield* exists(nothing, mode))) return stopReasons(input, stoppedSteps(input), where)
  if (yield* exists(nothing, 'all'))
    return because(
      'none-left',
      'Filters and lists together leave no route.',
      `Without them there is one; ${used(query)} took it out.`,
      'Leave one of the options out.',
    )
  const last = network.makers.subarray(
    network.makerStart[network.compounds.indexOf(asked.target)],
    network.makerStart[network.compounds.indexOf(asked.target) + 1],
  )
  const from = [...new Set([...last].flatMap(a => transformationOf(input.library, network.arcs[a]!).reactants.map(r => r.compound)))]
  return because(
    'unreachable',
    `${asked.target} cannot be made from ${asked.start} with the transformations of this library.`,
    `It is made from ${from.slice(0, 6).join(', ')}, and none of these comes from the start, or the rest can be neither made nor bought.`,
    `Ask ${askedAs('reach')} for what the start can become, or add the missing transformation.`,
  )
}

const stoppedSteps = ({ network, stops }: NoRouteInput): readonly string[] => network.arcs.filter((_, a) => stops[a] === 1)

function used(query: RoutesQuery): string {
  const named = [
    ...(query.avoid ?? []).map(id => `${askedAs('avoid')} ${id}`),
    ...(query.avoidStep ?? []).map(id => `${askedAs('avoidStep')} ${id}`),
    ...(query.avoidCode ?? []).map(code => `${askedAs('avoidCode')} ${code}`),
    ...(query.avoidList ?? []).map(name => `${askedAs('avoidList')} "${name}"`),
    ...(query.ownedOnly ? [askedAs('ownedOnly')] : []),
    ...(query.seenOnly ? [askedAs('seenOnly')] : []),
    ...(query.maxSteps === undefined ? [] : [`${askedAs('maxSteps')} ${query.maxSteps}`]),
  ]
  return named.length > 0 ? named.join(', ') : 'a list that ends planning'
}
