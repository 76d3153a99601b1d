import { type Block, moved, pathBoxes, type Rect, type Sheet } from './block.ts'
import { type CellBox, cellBox } from './cell-box.ts'
import type { Context } from './context.ts'
import { corner, rowGap, toStructure } from './measures.ts'
import type { Tail, Unit } from './model.ts'
import { bodyOf, drawPath } from './pens.ts'
import { arrowPiece, type Piece } from './upright-arrow.ts'

// The column's centre: room for the bend to a trunk at its left, and for an ordinary structure.
const leastCentre = 57

interface CellPiece extends Piece {
  readonly box: CellBox
  /** Rest above and below what arrows run to, where the label at the right is taller than the structure. */
  readonly over: number
  readonly under: number
}

/** A compound on the column: label at its right where it fits, else below. Top at y = 0, centre at x = 0. */
function cellPiece(ctx: Context, id: string, centre: number, width: number): CellPiece {
  const cell = ctx.cells[id]!
  const fits = (box: CellBox) => centre + box.right <= width && box.left <= centre
  const tried = [168, 150, 96].map(nameWidth => cellBox(cell, { nameWidth, right: true, touch: ctx.touch }))
  const below = [134, 112, 84].map(nameWidth => cellBox(cell, { nameWidth, touch: ctx.touch }))
  const box = tried.find(fits) ?? below.find(fits) ?? below.at(-1)!
  const top = Math.max(box.halfH, ...box.boxes.map(rect => -rect[1]))
  const bottom = Math.max(...box.boxes.map(rect => rect[3]))
  return {
    box,
    over: top - box.halfH,
    under: Math.max(0, Math.ceil(top + bottom) - top - box.bottom),
    boxes: moved(box.boxes, 0, top),
    bottom: Math.ceil(top + bottom),
    draw: (sheet, x, y) => box.draw(sheet, x, y + top),
  }
}

/**
 * The chain runs down: structure left on one column, label right, text right of the arrow. At a fork or a join the line bends to a
 * trunk at the left and the wide layout takes over with the pane's width.
 */
export function uprightOf(ctx: Context, units: readonly Unit[], tail: Tail, width: number): Block | null {
  const halves = units.map(unit => (bodyOf(ctx.cells[unit.cell]!)?.w ?? 0) / 2)
  const centre = Math.ceil(Math.max(leastCentre, ...halves.map(half => half + 2)))
  if (centre * 2 > width) return ctx.run(units, tail, width, 'start')
  const pieces: { piece: Piece; y: number }[] = []
  const boxes: Rect[] = []
  let y = 0
  const put = (piece: Piece) => {
    pieces.push({ piece, y })
    boxes.push(...moved(piece.boxes, centre, y))
    y += piece.bottom
  }
  let last: CellPiece | null = null
  for (const unit of units) {
    const before: CellPiece | null = last
    last = cellPiece(ctx, unit.cell, centre, width)
    if (unit.step) {
      y += toStructure - 2
      put(arrowPiece(ctx, unit.step, width - centre, before?.under ?? 0, last.over))
      y += toStructure - 2
    }
    if (last.box.left > centre || centre + last.box.right > width) return ctx.run(units, tail, width, 'start')
    put(last)
  }
  const draw = (sheet: Sheet, dx: number, dy: number) => {
    for (const { piece, y: at } of pieces) piece.draw(sheet, dx + centre, dy + at)
  }
  const base = { penalty: 0, entries: [], end: { x: centre, y } }
  if (tail.kind === 'none' || !last) return { ...base, w: width, boxes, draw }
  const block = tail.kind === 'fork' ? ctx.fork(tail.cell, width, 'wrapped') : ctx.join([], tail, width, 'rail')
  if (!block) return null
  // Out below the label or structure, a bend to the left, and down into what follows.
  const from = units.at(-1)!.cell
  const leave = y - last.under + 4
  const bend = y + 4 + corner + 2
  let axis = bend + 2 * corner
  for (const box of block.boxes) axis = Math.max(axis, (box[0] < centre + 6 ? bend : y) + rowGap - box[1])
  axis = Math.ceil(axis)
  const pts: [number, number][] = [
    [centre, leave],
    [centre, bend],
    [0, bend],
    [0, axis],
  ]
  if (tail.kind === 'join') pts.push([corner, axis])
  const grey = block.entries.length > 0 && block.entries.every(entry => entry.grey)
  return {
    ...base,
    w: width,
    penalty: block.penalty,
    boxes: [...boxes, ...moved(block.boxes, 0, axis), ...pathBoxes(pts)],
    draw(sheet, dx, dy) {
      draw(sheet, dx, dy)
      drawPath(
        sheet,
        `${from}/bend`,
        pts.map(([px, py]) => [px + dx, py + dy] as const),
        { cell: from },
        { grey, cls: 'rail', from },
      )
      block.draw(sheet, dx, dy + axis)
    },
  }
}
