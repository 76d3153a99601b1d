import { inTurns, type Told, type Turns } from '../../core/choose/in-turns.ts'
import { type ReachNetwork, reachNetwork } from '../../core/choose/reach-network.ts'
import { type RouteRows, type RoutesAnswer, routeList } from '../../core/choose/route-list.ts'
import type { RoutesInput, Search } from '../../core/choose/searching.ts'
import type { RegulatedList } from '../../core/hazards/tables.ts'
import type { Traits } from '../../core/hazards/traits.ts'
import type { Library, LibraryFile } from '../../core/library/library.ts'
import type { Checked, Problem } from '../../core/problem/problem.ts'
import { bad, good } from '../../core/problem/problem.ts'
import { stopProblems } from '../../core/report/stops.ts'
import type { ReachQuery, RoutesQuery } from '../api/client.ts'
import { libraryOf } from './facts.ts'

/** The whole library as the server hands it out; `library` null = too large to be searched here. */
export interface LibraryReply {
  readonly edition: string | null
  readonly transformations: number
  readonly library: LibraryFile | null
  readonly traits: Readonly<Record<string, Traits>> | null
  /** The regulated lists that are loaded. */
  readonly lists?: readonly RegulatedList[]
}

/** A library to search in, of one edition. */
export interface LibraryHere {
  readonly edition: string
  readonly library: Library
  readonly traits: ReadonlyMap<string, Traits>
  readonly lists: readonly RegulatedList[]
}

export function libraryHere({ edition, library, traits, lists = [] }: LibraryReply): LibraryHere | null {
  if (edition === null || library === null || traits === null) return null
  return { edition, library: libraryOf(library), traits: new Map(Object.entries(traits)), lists }
}

/** What is looked for in it. */
export type SearchAsked = { readonly what: 'routes'; readonly query: RoutesQuery } | { readonly what: 'reach'; readonly query: ReachQuery }
export type Found = RouteRows | ReachNetwork

/**
 * Looks in the library here by the same code as the server, and answers with what it would answer.
 *
 * @param shouldStop ends the search with what it has
 * @returns problems where the server would refuse
 */
export async function* searchHere(
  here: LibraryHere,
  asked: SearchAsked,
  shouldStop: () => boolean,
  turns: Turns,
): AsyncGenerator<Told, Checked<Found>> {
  return asked.what === 'routes'
    ? rowsOf(here.library, yield* inTurns(routesSearch(here, asked.query, shouldStop), turns))
    : yield* inTurns(reachSearch(here, asked.query, shouldStop), turns)
}

function routesSearch(
  { library, traits, lists }: LibraryHere,
  query: RoutesQuery,
  shouldStop: () => boolean,
): Search<Checked<RoutesAnswer>> {
  const { settings, packs, ...options } = query
  const input: RoutesInput = { library, traits, lists, query: options, packs, settings, shouldStop }
  return routeList(input)
}

function rowsOf(library: Library, answer: Checked<RoutesAnswer>): Checked<RouteRows> {
  if (!answer.ok) return answer
  if (answer.value.kind === 'stopped') return bad(stopProblems(library, answer.value.stopped))
  if (answer.value.kind === 'none') return bad(answer.value.problems as Problem[])
  const { kind: _kind, ...rows } = answer.value
  return good(rows)
}

function* reachSearch(
  { library, traits }: LibraryHere,
  query: Extract<SearchAsked, { what: 'reach' }>['query'],
  shouldStop: () => boolean,
): Search<Checked<Found>> {
  const answer = yield* reachNetwork({ library, traits, query, shouldStop })
  if (!answer.ok) return answer
  if (answer.value.kind === 'stopped') return bad(stopProblems(library, answer.value.stopped))
  const { kind: _kind, ...found } = answer.value
  return good(found)
}
