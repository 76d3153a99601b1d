/** One transformation of a route and the compound it is there for: its main product. */
export interface Step {
  readonly transformation: string
  readonly makes: string
}

/**
 * A directed acyclic set of steps that uses the start. Steps in working order: whatever a step consumes is the start, is bought, or was
 * made by an earlier step; of those ready, the smallest transformation id first. Every made compound has exactly one maker, every step is
 * needed, and a compound the route makes is never bought as well.
 */
export interface Route {
  readonly start: string
  readonly target: string
  readonly steps: readonly Step[]
}
