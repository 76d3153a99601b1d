import type { ArrowBox } from './arrow-box.ts'
import type { Block } from './block.ts'
import type { Model, Tail, Unit } from './model.ts'
import type { Cell, Item, Keep, Step } from './types.ts'

/** How a line begins: with a structure, at the corner of a return rail, or on a trunk. */
export type Entry = 'start' | 'rail' | 'trunk'

export interface RunWish {
  /** The first product's centre is to stand here, so that the branches of a fork line up. */
  readonly firstCentre?: number
  /** Least tightness of the first line. */
  readonly floor?: number
  /** Something leaves the last structure: its label may not stand at its right. */
  readonly exits?: boolean
}

/** What the parts of one layout share. Runs, forks and joins call each other through it. */
export interface Context {
  readonly model: Model
  readonly cells: Readonly<Record<string, Cell>>
  /** Height of a row that answers a finger. */
  readonly touch: number
  /** Alternatives are drawn as detours (else told as a link). */
  readonly detours: boolean
  /** Choices of the last drawing, if it had this width. */
  readonly keep: Keep | null
  /** Co-reactants a step makes that are named and not joined: "+ benzil from 1". */
  named(step: Step): readonly Item[]
  /** What does not depend on where it stands is reckoned once a layout: arrows by level and kind, the rest by key. */
  readonly arrows: Map<Step, ArrowBox[]>
  cached<T>(key: string, make: () => T): T
  run(units: readonly Unit[], tail: Tail, width: number, entry: Entry, wish?: RunWish): Block | null
  fork(cell: string, width: number, place: 'inline' | 'wrapped'): Block | null
  join(units: readonly Unit[], tail: Extract<Tail, { kind: 'join' }>, width: number, entry: Entry, wish?: RunWish): Block | null
}

/** Cost of a choice, against the one that the last drawing made about the same compound. */
export function stays(ctx: Context, list: 'starts' | 'wrapped', id: string, product: string, now: boolean): number {
  const keep = ctx.keep
  if (!keep?.known.includes(product)) return 0
  return keep[list].includes(id) === now ? 0 : 1
}
