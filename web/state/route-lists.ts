import { signal } from '@preact/signals'
import type { RoutesReply } from '../api/replies.ts'
import { type Asked, Asking } from './asked.ts'

/** So many routes are listed at first. */
const routesListed = 24
/** So many more are listed on demand. */
export const routesMore = 10
/** No list grows beyond. */
export const routesMost = 1000

/** The two questions about the ways to one goal. */
interface Lists {
  readonly routes: Asking<RoutesReply>
  /** Those that no other beats on all the axes that are compared at once; asked once the list itself stands. */
  readonly unbeaten: Asking<RoutesReply>
}

const lists = new Map<string, Lists>()
/** Grows when a goal is asked about for the first time. */
const version = signal(0)
const unasked: Asked<RoutesReply> = { answer: null, waiting: false, problems: [] }

export function listOf(target: string): Lists {
  const known = lists.get(target)
  if (known !== undefined) return known
  const fresh = { routes: new Asking<RoutesReply>(), unbeaten: new Asking<RoutesReply>() }
  lists.set(target, fresh)
  version.value = version.peek() + 1
  return fresh
}

/** The library has changed. */
export function forgetLists(): void {
  for (const { routes, unbeaten } of lists.values()) {
    routes.forget()
    unbeaten.forget()
  }
}

/** Routes to a goal, or to a compound that may become one. */
export function routesTo(target: string): Asked<RoutesReply> {
  version.value
  return lists.get(target)?.routes.state.value ?? unasked
}

export const askRoutesAgain = (target: string): void => lists.get(target)?.routes.again()

/** Has the search for routes to a goal make do with what it found. */
export const stopRoutes = (target: string): void => lists.get(target)?.routes.stop()

/** Goals to which more routes are to be listed than at first, and how many. */
const routesCount = signal<ReadonlyMap<string, number>>(new Map())
export const countFor = (target: string): number => routesCount.value.get(target) ?? routesListed

/** Lists some more routes to a goal. */
export function moreRoutes(target: string): void {
  const count = Math.min(routesMost, countFor(target) + routesMore)
  routesCount.value = new Map(routesCount.peek()).set(target, count)
}

/** Routes to a goal that no other beats on all the axes that are compared at once; asked once the list itself stands. */
export function unbeatenTo(target: string): Asked<RoutesReply> {
  version.value
  return lists.get(target)?.unbeaten.state.value ?? unasked
}

export const stopUnbeaten = (target: string): void => lists.get(target)?.unbeaten.stop()
