import type { Rect, Sheet } from './block.ts'
import { breakName } from './fill.ts'
import { lineHeight, size, weight } from './measures.ts'
import { nameRuns } from './name-runs.ts'
import { drawPick, drawRule, drawText, pickWidth } from './pens.ts'
import { itemWidth } from './text-width.ts'
import type { Cell, Tone } from './types.ts'

/** Name, amount, note and pick of a compound: a stack of lines, centred under its structure or standing at its right. */
export interface Label {
  readonly w: number
  readonly h: number
  /** Room taken when the label's top stands at y = 0 and its middle (or left edge) at x = 0. */
  readonly boxes: readonly Rect[]
  draw(sheet: Sheet, x: number, y: number): void
}

/**
 * @param width what the name may take before it is parted
 * @param align whether x is the label's middle or its left edge
 * @param pickH height of the make-or-buy row
 * @param named false where the name itself stands in the row (`words`)
 */
export function labelOf(cell: Cell, width: number, align: 'middle' | 'left', pickH: number, named = true): Label {
  const grey = cell.grey ?? false
  const nameSize = grey ? size.text : size.name
  const nameWght = grey ? weight.text : weight.name
  const nameStep = grey ? lineHeight.text : lineHeight.name
  const name = named ? breakName(cell.name, width, nameSize, nameWght) : { lines: [], w: 0 }
  const amountSize = grey ? size.text : size.name
  const amountW = cell.amount ? itemWidth(cell.amount, amountSize) : 0
  const noteW = cell.note ? itemWidth(cell.note, size.text) : 0
  const pickW = cell.pick ? pickWidth(cell.pick) : 0
  const ruled = cell.role === 'goal' && !grey && cell.amount !== undefined
  let h = name.lines.length * nameStep
  const amountAt = h
  if (cell.amount) h += grey ? lineHeight.text : lineHeight.amount
  if (ruled) h += 4
  const noteAt = h
  if (cell.note) h += lineHeight.text
  const pickAt = h
  if (cell.pick) h += pickH
  const w = Math.ceil(Math.max(name.w, amountW, noteW, pickW))
  const left = (lineW: number) => (align === 'middle' ? -lineW / 2 : 0)
  // A box a line: what ends beside a short line may come up to the one over it.
  const boxes: Rect[] = []
  const row = (lineW: number, top: number, height: number) => boxes.push([left(lineW), top, left(lineW) + lineW, top + height])
  name.lines.forEach((line, i) => {
    row(itemWidth(nameRuns(line), nameSize, nameWght), i * nameStep, nameStep)
  })
  if (cell.amount) row(amountW, amountAt, noteAt - amountAt)
  if (cell.note) row(noteW, noteAt, lineHeight.text)
  if (cell.pick) row(pickW, pickAt, pickH)
  const tone: Tone = grey ? 'grey' : 'ink'
  return {
    w,
    h,
    boxes,
    draw(sheet, x, y) {
      const of = { cell: cell.id }
      name.lines.forEach((line, i) => {
        const runs = nameRuns(line)
        const at = x + left(itemWidth(runs, nameSize, nameWght))
        drawText(sheet, `${cell.id}/name${i}`, runs, at, y + i * nameStep + nameStep - 4, of, {
          size: nameSize,
          wght: nameWght,
          tone,
          cls: 'name',
        })
      })
      if (cell.amount) {
        const base = y + amountAt + (grey ? 12 : 15)
        const at = x + left(amountW)
        drawText(sheet, `${cell.id}/amount`, cell.amount, at, base, of, { size: amountSize, tone, cls: 'amount' })
        if (ruled) drawRule(sheet, `${cell.id}/rule`, at, base + 5, amountW, of)
      }
      if (cell.note) {
        drawText(sheet, `${cell.id}/note`, cell.note, x + left(noteW), y + noteAt + 12, of, { tone: grey ? 'grey' : 'soft', cls: 'note' })
      }
      if (cell.pick) drawPick(sheet, `${cell.id}/pick`, cell, x + left(pickW), y + pickAt, pickH, of)
    },
  }
}
