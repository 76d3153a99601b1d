import type { El } from './types.ts'

/** x1, y1, x2, y2 of room that is taken. */
export type Rect = readonly [number, number, number, number]

/** Where a drawing is put down: its elements, and the choices that it made. */
export interface Sheet {
  readonly els: El[]
  readonly straight: Record<string, string>
  readonly starts: string[]
  readonly wrapped: string[]
}

/**
 * A laid-out piece about its axis (y = 0), entered at x = 0. `boxes` is the room that it takes, the same for every way of its steps,
 * so that choosing another way moves nothing; drawing is put off until it is known which layout won.
 */
export interface Block {
  readonly w: number
  readonly boxes: readonly Rect[]
  /** What it costs beside its height. */
  readonly penalty: number
  /** Where the line leaves the last structure. */
  readonly end: { readonly x: number; readonly y: number }
  /** Lines that come in from the left at x = 0, from the top: the first at 0. */
  readonly entries: readonly Entry[]
  draw(sheet: Sheet, x: number, y: number): void
}

export interface Entry {
  readonly y: number
  readonly grey: boolean
  /** Product of the step that enters here. */
  readonly product: string
  /** Detours leave the rail here too, so it meets the line in a tee, not round a corner. */
  readonly splits: boolean
}

export const moved = (boxes: readonly Rect[], dx: number, dy: number): Rect[] =>
  boxes.map(([x1, y1, x2, y2]) => [x1 + dx, y1 + dy, x2 + dx, y2 + dy])

export const topOf = (boxes: readonly Rect[]): number => boxes.reduce((top, box) => Math.min(top, box[1]), 0)
export const bottomOf = (boxes: readonly Rect[]): number => boxes.reduce((bottom, box) => Math.max(bottom, box[3]), 0)
export const rightOf = (boxes: readonly Rect[]): number => boxes.reduce((right, box) => Math.max(right, box[2]), 0)

/** Lowest edge of what stands between two x. */
export function floorBetween(boxes: readonly Rect[], x1: number, x2: number): number {
  let floor = 0
  for (const box of boxes) if (box[0] < x2 && box[2] > x1) floor = Math.max(floor, box[3])
  return floor
}

/** Highest edge of what stands between two x. */
export function ceilingBetween(boxes: readonly Rect[], x1: number, x2: number): number {
  let ceiling = 0
  for (const box of boxes) if (box[0] < x2 && box[2] > x1) ceiling = Math.min(ceiling, box[1])
  return ceiling
}

// Things side by side keep this far apart although nothing stands between them.
const sideways = 8

/** How far down the lower piece goes so that everything in it stays `gap` below what is over it: contours, not boxes, are stacked. */
export function clearDown(upper: readonly Rect[], lower: readonly Rect[], gap: number): number {
  let dy = Number.NEGATIVE_INFINITY
  for (const over of upper) {
    for (const under of lower) {
      if (over[0] < under[2] + sideways && over[2] > under[0] - sideways) dy = Math.max(dy, over[3] + gap - under[1])
    }
  }
  return dy
}

/** Room taken by a polyline, a box for each stretch. */
export function pathBoxes(pts: readonly (readonly [number, number])[]): Rect[] {
  const boxes: Rect[] = []
  for (let i = 1; i < pts.length; i++) {
    const [ax, ay] = pts[i - 1]!
    const [bx, by] = pts[i]!
    boxes.push([Math.min(ax, bx) - 1, Math.min(ay, by) - 1, Math.max(ax, bx) + 1, Math.max(ay, by) + 1])
  }
  return boxes
}

/** Height and penalties: what layouts are compared by. */
export const costOf = (block: Block): number => block.penalty + bottomOf(block.boxes) - topOf(block.boxes)

/** The cheapest; the first among equals, so that the result never depends on chance. */
export function cheapest(blocks: readonly (Block | null)[]): Block | null {
  let best: Block | null = null
  let least = Number.POSITIVE_INFINITY
  for (const block of blocks) {
    if (!block) continue
    const cost = costOf(block)
    if (cost < least - 1e-9) {
      best = block
      least = cost
    }
  }
  return best
}
