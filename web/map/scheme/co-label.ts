import type { Rect, Sheet } from './block.ts'
import { breakName } from './fill.ts'
import { lineHeight, size } from './measures.ts'
import { nameRuns } from './name-runs.ts'
import { drawPick, drawText, pickWidth } from './pens.ts'
import { itemWidth } from './text-width.ts'
import type { Cell, Item } from './types.ts'

interface Row {
  readonly text?: Item
  readonly textW: number
  readonly pick: boolean
  readonly w: number
  readonly h: number
}

/** Name, amount and pick of a co-reactant, set as a label of its own under the arrow. */
export interface CoLabel {
  readonly w: number
  readonly h: number
  readonly boxes: readonly Rect[]
  draw(sheet: Sheet, x: number, y: number, step: string, grey: boolean): void
}

const gap = 10

/**
 * On one line if that fits, else the pick below, else the name parted too.
 *
 * @param width room, px; a single word longer than that sticks out and tells so by its `w`
 * @param plus does it stand without a structure: "+ benzaldehyde 2.0 g"
 */
export function coLabelOf(cell: Cell, width: number, touch: number, plus = false): CoLabel {
  const rows: Row[] = []
  const row = (text: Item | undefined, pick: boolean) => {
    const textW = text ? itemWidth(text, size.text) : 0
    const pickW = pick && cell.pick ? pickWidth(cell.pick) : 0
    rows.push({
      ...(text ? { text } : {}),
      textW,
      pick,
      w: textW + (text && pick ? gap : 0) + pickW,
      h: pick ? Math.max(touch, lineHeight.text) : lineHeight.text,
    })
  }
  const amount: Item = cell.amount ? [{ t: '\u00a0' }, ...cell.amount] : []
  const whole = (name: string): Item => [...(plus ? [{ t: '+ ' }] : []), ...nameRuns(name.replaceAll('\u00ad', '')), ...amount]
  const oneW = itemWidth(whole(cell.name), size.text)
  const pickW = cell.pick ? gap + pickWidth(cell.pick) : 0
  const hasPick = cell.pick !== undefined
  if (oneW + pickW <= width) row(whole(cell.name), hasPick)
  else {
    if (oneW <= width) row(whole(cell.name), false)
    else {
      const lines = breakName(plus ? `+ ${cell.name}` : cell.name, width, size.text, 460).lines
      lines.forEach((line, i) => {
        const runs = nameRuns(line)
        const last = i === lines.length - 1
        if (last && cell.amount && itemWidth([...runs, ...amount], size.text) > width) {
          row(runs, false)
          row(cell.amount, false)
        } else row(last ? [...runs, ...amount] : runs, false)
      })
    }
    if (hasPick) row(undefined, true)
  }
  const boxes: Rect[] = []
  let h = 0
  for (const { w, h: rowH } of rows) {
    boxes.push([0, h, w, h + rowH])
    h += rowH
  }
  return {
    w: Math.ceil(Math.max(...rows.map(({ w }) => w))),
    h,
    boxes,
    draw(sheet, x, y, step, grey) {
      const of = { cell: cell.id, step }
      let top = y
      rows.forEach(({ text, textW, pick, h: rowH }, i) => {
        const middle = top + rowH / 2
        if (text) drawText(sheet, `${step}/${cell.id}/name${i}`, text, x, middle + 4, of, { tone: grey ? 'grey' : 'ink', cls: 'co' })
        if (pick) drawPick(sheet, `${step}/${cell.id}/pick`, cell, x + (text ? textW + gap : 0), top, rowH, of)
        top += rowH
      })
    },
  }
}
