/** Where everything on the wide map stands. */
export interface Placed {
  /** Centre of each dot, px, the start at the left. */
  readonly at: Readonly<Record<string, { readonly x: number; readonly y: number }>>
  /** Points of each link between its ends, so that a long one passes beside what it would run under. */
  readonly bends: Readonly<Record<string, readonly { readonly x: number; readonly y: number }[]>>
}
