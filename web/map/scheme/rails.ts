import { type Block, clearDown, floorBetween, moved, pathBoxes, type Rect, type Sheet } from './block.ts'
import { corner, railOver, railUnder, rowGap, toStructure } from './measures.ts'
import { drawPath } from './pens.ts'

/** How the piece after a return rail begins. */
export interface After {
  readonly block: Block
  /** x of its rail. */
  readonly x: number
  readonly grey: boolean
  /** It begins with a trunk, so the rail runs straight down into it, not round a corner into an arrow. */
  readonly trunk: boolean
  /** Id of the rail: product of the step, or compound of the fork, that it leads to. */
  readonly id: string
  readonly from: string
}

/**
 * Two pieces joined by a return rail: out at the right, down, back between them, down at the left. Null where the rail has no room.
 *
 * @param rise what else goes down the right leg (lanes of a join), beside the first piece's own end
 */
export function returned(first: Block, after: After, width: number, penalty: number, lane?: number): Block | null {
  const right = lane ?? Math.max(Math.ceil(first.w) + toStructure, Math.ceil(first.end.x) + corner)
  if (right > width) return null
  const floor = Math.max(floorBetween(first.boxes, after.x - 6, right + 6), first.end.y)
  const railY = Math.ceil(floor) + railOver
  const next = moved(after.block.boxes, after.x, 0)
  let y = railY + 2 * corner
  for (const box of next) if (box[0] < right + 6) y = Math.max(y, railY + railUnder - box[1])
  y = Math.ceil(Math.max(y, clearDown(first.boxes, next, rowGap)))
  const pts: [number, number][] = [
    [first.end.x, first.end.y],
    [right, first.end.y],
    [right, railY],
    [after.x, railY],
    [after.x, y],
  ]
  // Where detours leave the rail too, it runs down to them and the arrow leaves it in a tee.
  const tee = !after.trunk && after.block.entries[0]?.splits === true
  if (!after.trunk && !tee) pts.push([after.x + corner, y])
  const boxes: Rect[] = [...first.boxes, ...moved(next, 0, y), ...pathBoxes(pts)]
  return {
    w: Math.max(right + 1, first.w, after.x + after.block.w),
    boxes,
    penalty: first.penalty + after.block.penalty + penalty,
    end: { x: after.x + after.block.end.x, y: y + after.block.end.y },
    entries: first.entries,
    draw(sheet: Sheet, dx: number, dy: number) {
      drawPath(
        sheet,
        `${after.id}/rail`,
        pts.map(([px, py]) => [px + dx, py + dy] as const),
        after.trunk ? { cell: after.from } : { step: after.id },
        { grey: after.grey, cls: 'rail', from: after.from },
      )
      if (tee) {
        const at = [
          [dx + after.x, dy + y],
          [dx + after.x + corner, dy + y],
        ] as const
        drawPath(sheet, `${after.id}/tee`, at, { step: after.id }, { grey: after.grey, cls: 'rail', from: after.from })
      }
      first.draw(sheet, dx, dy)
      after.block.draw(sheet, dx + after.x, dy + y)
    },
  }
}
