import type { Rect, Sheet } from './block.ts'
import { breakName } from './fill.ts'
import { corner, lineHeight, size } from './measures.ts'
import { nameRuns } from './name-runs.ts'
import { type Body, bodyOf, drawBody, drawPath, drawText } from './pens.ts'
import { itemWidth } from './text-width.ts'
import type { Cell, Item, Step } from './types.ts'

/** A by-product or second product that leaves an arrow downwards at its right end. */
export interface LeaverBox {
  readonly w: number
  readonly bottom: number
  /** Room when its small head stands at x. */
  boxesAt(x: number): Rect[]
  draw(sheet: Sheet, x: number, y: number, step: Step, grey: boolean): void
}

const tip = 20
const textBase = 34

function textLeaver(key: string, lines: readonly Item[], of: (step: Step) => { step: string; cell?: string }): LeaverBox {
  const w = Math.ceil(Math.max(24, ...lines.map(line => itemWidth(line, size.text))))
  const bottom = textBase + (lines.length - 1) * lineHeight.text + 4
  return {
    w,
    bottom,
    boxesAt: x => [
      [x - corner, 0, x + 5, tip + 2],
      [x - w / 2, textBase - 10, x + w / 2, bottom],
    ],
    draw(sheet, x, y, step, grey) {
      curve(sheet, `${step.to}/${key}/out`, x, y, step, grey)
      lines.forEach((line, i) => {
        const at = x - itemWidth(line, size.text) / 2
        drawText(sheet, `${step.to}/${key}/${i}`, line, at, y + textBase + i * lineHeight.text, of(step), {
          tone: grey ? 'grey' : 'soft',
          cls: 'leaves',
        })
      })
    },
  }
}

function curve(sheet: Sheet, id: string, x: number, y: number, step: Step, grey: boolean): void {
  const pts = [
    [x - corner, y],
    [x, y],
    [x, y + tip],
  ] as const
  drawPath(sheet, id, pts, { step: step.to }, { grey, head: 'small', cls: 'out', from: step.to, to: id.slice(0, -4) })
}

function cellLeaver(key: string, cell: Cell, body: Body): LeaverBox {
  const name = breakName(cell.name, Math.max(body.w, 90), size.text, 460)
  const rows: Item[] = name.lines.map(nameRuns)
  if (cell.amount) rows.push(cell.amount)
  const w = Math.ceil(Math.max(24, body.w, ...rows.map(row => itemWidth(row, size.text))))
  const top = tip + 5
  const labelTop = top + body.h + 5
  const bottom = labelTop + rows.length * lineHeight.text
  return {
    w,
    bottom,
    boxesAt: x => [
      [x - corner, 0, x + 5, tip + 2],
      [x - body.w / 2, top, x + body.w / 2, top + body.h],
      [x - w / 2, labelTop, x + w / 2, bottom],
    ],
    draw(sheet, x, y, step, grey) {
      curve(sheet, `${step.to}/${key}/out`, x, y, step, grey)
      const of = { cell: cell.id, step: step.to }
      drawBody(sheet, `${step.to}/${key}`, cell, x, y + top + body.h / 2, of)
      rows.forEach((row, i) => {
        const at = x - itemWidth(row, size.text) / 2
        const base = y + labelTop + i * lineHeight.text + 12
        drawText(sheet, `${step.to}/${key}/name${i}`, row, at, base, of, { tone: grey || cell.grey ? 'grey' : 'ink', cls: 'co' })
      })
    },
  }
}

/** What leaves the arrow, left to right. From level 3 on second products are named, not drawn. */
export function leaverBoxes(step: Step, cells: Readonly<Record<string, Cell>>, level: number): LeaverBox[] {
  return step.leaves.flatMap((leaver, i) => {
    const key = `leaves${i}`
    const cell = leaver.cell ? cells[leaver.cell] : undefined
    const body = cell ? bodyOf(cell) : null
    if (cell && body && level < 3) return [cellLeaver(key, cell, body)]
    if (cell) {
      const lines = breakName(cell.name, 90, size.text, 460).lines.map(nameRuns)
      return [textLeaver(key, lines, s => ({ step: s.to, cell: cell.id }))]
    }
    return leaver.text ? [textLeaver(key, [leaver.text], s => ({ step: s.to }))] : []
  })
}
