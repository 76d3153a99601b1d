import { otherWays } from './arrow-text.ts'
import { moved, type Rect, type Sheet } from './block.ts'
import { coLabelOf } from './co-label.ts'
import type { Context } from './context.ts'
import { fill } from './fill.ts'
import { corner, head, lineHeight, size } from './measures.ts'
import { nameRuns } from './name-runs.ts'
import { bodyOf, drawArrow, drawBody, drawPath, drawText } from './pens.ts'
import { itemWidth } from './text-width.ts'
import type { Item, Step } from './types.ts'

// From the arrow to the text at its right.
const beside = 12

/** A piece of the column, hung at its top. */
export interface Piece {
  readonly boxes: Rect[]
  /** Where it ends, from its top. */
  readonly bottom: number
  draw(sheet: Sheet, x: number, y: number): void
}

/** An arrow downwards at x = 0 from y = 0, its text at the right; it reaches `before` further up and `after` further down. */
export function arrowPiece(ctx: Context, step: Step, room: number, before: number, after: number): Piece {
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
      drawArrow(sheet, step, [
        [dx, dy - before],
        [dx, dy + length + after],
      ])
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
