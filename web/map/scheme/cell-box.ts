import type { Rect, Sheet } from './block.ts'
import { breakName } from './fill.ts'
import { labelOf } from './label.ts'
import { lineHeight, size, weight } from './measures.ts'
import { nameRuns } from './name-runs.ts'
import { bodyOf, drawBody, drawText } from './pens.ts'
import { itemWidth } from './text-width.ts'
import type { Cell } from './types.ts'

/** A compound in a row, about its centre on the axis. */
export interface CellBox {
  readonly cell: Cell
  /** Half the width of what arrows run to. */
  readonly half: number
  /** How far up and down that reaches. */
  readonly halfH: number
  /** How far the whole reaches left and right of the centre. */
  readonly left: number
  readonly right: number
  /** Half the width of a label below; 0 where there is none. */
  readonly labelHalf: number
  /** Lowest edge under the centre. */
  readonly bottom: number
  readonly boxes: readonly Rect[]
  draw(sheet: Sheet, x: number, y: number): void
}

export interface CellWish {
  /** What a name may take before it is parted, px. */
  readonly nameWidth: number
  /** The label stands at the right of the structure, not below. */
  readonly right?: boolean
  /** The label's top, if it is to share a base with its neighbours. */
  readonly labelTop?: number
  readonly touch: number
}

const belowBody = 5
const besideBody = 14

/** Half heights of what stands on the axis, for the common base of labels. */
export function bodyHalfHeight(cell: Cell, nameWidth: number): number {
  const body = bodyOf(cell)
  return body ? body.h / 2 : words(cell, nameWidth).h / 2
}

function words(cell: Cell, nameWidth: number) {
  const grey = cell.grey ?? false
  const at = grey ? size.text : size.name
  const wght = grey ? weight.text : weight.name
  const step = grey ? lineHeight.text : lineHeight.name
  const name = breakName(cell.name, nameWidth, at, wght)
  return { lines: name.lines, w: Math.ceil(name.w), h: name.lines.length * step, at, wght, step, grey }
}

export function cellBox(cell: Cell, wish: CellWish): CellBox {
  const body = bodyOf(cell)
  const name = body ? null : words(cell, wish.nameWidth)
  const half = Math.ceil((body?.w ?? name?.w ?? 0) / 2)
  const halfH = (body?.h ?? name?.h ?? 0) / 2
  const label = labelOf(cell, wish.nameWidth, wish.right ? 'left' : 'middle', wish.touch, body !== null)
  const labelTop = wish.right ? -Math.round(label.h / 2) : Math.round(Math.max(halfH + belowBody, wish.labelTop ?? 0))
  const labelX = wish.right ? half + besideBody : 0
  const boxes: Rect[] = body ? [[-half, -halfH, half, halfH]] : []
  name?.lines.forEach((line, i) => {
    const w = itemWidth(nameRuns(line), name.at, name.wght) / 2
    boxes.push([-w, i * name.step - halfH, w, (i + 1) * name.step - halfH])
  })
  for (const [x1, y1, x2, y2] of label.boxes) boxes.push([x1 + labelX, y1 + labelTop, x2 + labelX, y2 + labelTop])
  return {
    cell,
    half,
    halfH,
    left: wish.right ? half : Math.max(half, Math.ceil(label.w / 2)),
    right: wish.right ? labelX + label.w : Math.max(half, Math.ceil(label.w / 2)),
    labelHalf: wish.right ? 0 : label.w / 2,
    bottom: wish.right || label.h === 0 ? halfH : labelTop + label.h,
    boxes,
    draw(sheet, x, y) {
      const of = { cell: cell.id }
      if (body) drawBody(sheet, cell.id, cell, x, y, of)
      else if (name) {
        name.lines.forEach((line, i) => {
          const runs = nameRuns(line)
          const w = itemWidth(runs, name.at, name.wght)
          const base = y - name.h / 2 + i * name.step + name.step - 4
          const style = { size: name.at, wght: name.wght, tone: name.grey ? ('grey' as const) : ('ink' as const), cls: 'name' }
          drawText(sheet, i === 0 ? cell.id : `${cell.id}/name${i}`, runs, x - w / 2, base, of, style)
        })
      }
      label.draw(sheet, x + labelX, y + labelTop)
    },
  }
}
