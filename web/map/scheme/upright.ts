import { otherWays } from './arrow-box.ts'
import { type Block, moved, pathBoxes, type Rect, type Sheet } from './block.ts'
import { type CellBox, cellBox } from './cell-box.ts'
import { coLabelOf } from './co-label.ts'
import type { Context } from './context.ts'
import { fill } from './fill.ts'
import { corner, head, lineHeight, rowGap, size, toStructure } from './measures.ts'
import type { Tail, Unit } from './model.ts'
import { nameRuns } from './name-runs.ts'
import { bodyOf, drawBody, drawPath, drawText } from './pens.ts'
import { itemWidth } from './text-width.ts'
import type { Item, Step } from './types.ts'

// The column's centre: room for the bend to a trunk at its left, and for an ordinary structure.
const leastCentre = 57
const beside = 12

interface Piece {
  readonly boxes: Rect[]
  /** Where it ends, from its top. */
  readonly bottom: number
  draw(sheet: Sheet, x: number, y: number): void
}

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

/** An arrow downwards at x = 0 from y = 0, its text at the right; it reaches `before` further up and `after` further down. */
function arrowPiece(ctx: Context, step: Step, room: number, before: number, after: number): Piece {
  const grey = step.grey ?? false
  const boxes: Rect[] = []
  const draws: ((sheet: Sheet, x: number, y: number) => void)[] = []
  const of = { step: step.to, way: step.id }
  const ways = [step, ...step.alts]
  const overOf = (way: (typeof ways)[number]): Item[] => {
    const items = [...ctx.named(step), ...way.over]
    if (step.no === '') return items
    const [first, ...rest] = items
    return [[{ t: step.no, b: true }, ...(first ? [{ t: '\u2003' }, ...first] : [])], ...rest]
  }
  // What is under the conditions follows them at once; the room below is the most that any way needs.
  const textOf = (way: (typeof ways)[number]) => ({
    over: fill(overOf(way), room - beside, size.text, true).lines,
    under: fill(way.under, room - beside, size.text, true).lines,
  })
  const texts = ways.map(textOf)
  const most = Math.max(...texts.map(({ over, under }) => over.length + under.length))
  const widest = Math.max(0, ...texts.flatMap(({ over, under }) => [...over, ...under].map(line => itemWidth(line, size.text))))
  let y = 6
  if (most > 0) boxes.push([beside, y, beside + widest, y + most * lineHeight.text])
  draws.push((sheet, dx, dy) => {
    const { over, under } = texts[0]!
    const put = (line: Item, i: number, key: string, tone: 'ink' | 'soft', cls: string) =>
      drawText(sheet, `${step.to}/${key}`, line, dx + beside, dy + 6 + i * lineHeight.text + 12, of, { tone: grey ? 'grey' : tone, cls })
    over.forEach((line, i) => {
      put(line, i, `over${i}`, 'ink', 'condition')
    })
    under.forEach((line, i) => {
      put(line, over.length + i, `under${i}`, 'soft', 'result')
    })
  })
  y += most * lineHeight.text
  if (step.alts.length > 0) {
    const link: Item = [{ t: otherWays(step.alts.length), pen: true }]
    const top = y
    boxes.push([beside, top, beside + itemWidth(link, size.text), top + Math.max(20, ctx.touch)])
    draws.push((sheet, dx, dy) => {
      const base = dy + top + Math.max(20, ctx.touch) / 2 + 4
      drawText(sheet, `${step.to}/ways`, link, dx + beside, base, of, {
        tone: 'pen',
        link: true,
        cls: 'ways',
        touch: Math.max(20, ctx.touch),
      })
    })
    y += Math.max(20, ctx.touch)
  }
  for (const id of step.co) y = coPiece(ctx, step, id, room, y + 6, boxes, draws)
  step.leaves.forEach((leaver, i) => {
    const cell = leaver.cell ? ctx.cells[leaver.cell] : undefined
    const text: Item = cell
      ? [...nameRuns(cell.name.replaceAll('\u00ad', '')), ...(cell.amount ? [{ t: '\u00a0' }, ...cell.amount] : [])]
      : (leaver.text ?? [])
    const lines = fill([text], room - beside - 30, size.text, true).lines
    const axis = y + corner + 2
    const w = Math.max(0, ...lines.map(line => itemWidth(line, size.text)))
    boxes.push(
      [0, axis - corner, beside + 26, axis + 4],
      [beside + 30, axis - 8, beside + 30 + w, axis + 6 + (lines.length - 1) * lineHeight.text],
    )
    draws.push((sheet, dx, dy) => {
      const key = `${step.to}/leaves${i}`
      const pts = [
        [dx, dy + axis - corner],
        [dx, dy + axis],
        [dx + beside + 24, dy + axis],
      ] as const
      drawPath(sheet, `${key}/out`, pts, { step: step.to }, { grey, head: 'small', cls: 'out', from: step.to, to: key })
      lines.forEach((line, n) => {
        const base = dy + axis + 4 + n * lineHeight.text
        const tied = cell ? { step: step.to, cell: cell.id } : { step: step.to }
        drawText(sheet, `${key}/${n}`, line, dx + beside + 30, base, tied, { tone: grey ? 'grey' : 'soft', cls: 'leaves' })
      })
    })
    y = axis + 8 + (lines.length - 1) * lineHeight.text
  })
  const length = Math.max(48, y + head + 8)
  boxes.push([-4, 0, 4, length])
  return {
    boxes,
    bottom: length,
    draw(sheet, dx, dy) {
      drawPath(
        sheet,
        `${step.to}/arrow`,
        [
          [dx, dy - before],
          [dx, dy + length + after],
        ],
        of,
        { grey, sure: step.sure, head: 'full', from: step.from, to: step.to },
      )
      for (const draw of draws) draw(sheet, dx, dy)
    },
  }
}

type Draws = ((sheet: Sheet, x: number, y: number) => void)[]

/** A bought co-reactant at the right of the arrow: its structure, a quarter-circle into the arrow, its label beside or below. */
function coPiece(ctx: Context, step: Step, id: string, room: number, y: number, boxes: Rect[], draws: Draws): number {
  const cell = ctx.cells[id]
  if (!cell) return y
  const grey = step.grey ?? false
  const body = bodyOf(cell)
  const left = beside + 14
  if (!body || left + body.w > room) {
    const label = coLabelOf(cell, room - beside, ctx.touch, true)
    boxes.push(...moved(label.boxes, beside, y))
    draws.push((sheet, dx, dy) => label.draw(sheet, dx + beside, dy + y, step.to, grey))
    return y + label.h
  }
  const atRight = room - left - body.w - 10
  const right = coLabelOf(cell, atRight, ctx.touch)
  const isRight = right.w <= atRight && atRight > 70
  const label = isRight ? right : coLabelOf(cell, room - left, ctx.touch)
  const h = isRight ? Math.max(body.h, label.h) : body.h
  const cy = y + h / 2
  const labelX = isRight ? left + body.w + 10 : left
  const labelY = isRight ? cy - label.h / 2 : y + body.h + 4
  boxes.push([left, cy - body.h / 2, left + body.w, cy + body.h / 2], [0, cy - 1, left, cy + corner], ...moved(label.boxes, labelX, labelY))
  draws.push((sheet, dx, dy) => {
    const key = `${step.to}/${id}`
    drawBody(sheet, key, cell, dx + left + body.w / 2, dy + cy, { cell: id, step: step.to })
    const pts = [
      [dx + left - 4, dy + cy],
      [dx, dy + cy],
      [dx, dy + cy + corner],
    ] as const
    drawPath(sheet, `${key}/in`, pts, { step: step.to }, { grey, cls: 'in', from: key, to: step.to })
    label.draw(sheet, dx + labelX, dy + labelY, step.to, grey)
  })
  return Math.max(y + h, labelY + label.h) + corner / 2
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
