import { boxAt } from './arrow-at.ts'
import type { ArrowBox } from './arrow-box.ts'
import { type Block, moved, type Rect, rightOf } from './block.ts'
import { type CellBox, cellBox } from './cell-box.ts'
import type { Context } from './context.ts'
import { corner, head, lastLevel, levelCost, nameBelow, toStructure } from './measures.ts'
import type { Unit } from './model.ts'
import { drawArrow } from './pens.ts'
import type { Step } from './types.ts'

/** An arrow that turns down into its product, where the pane is too narrow for both side by side; null if even that does not fit. */
export function dropOf(ctx: Context, unit: Unit, width: number, exits: boolean): Block | null {
  const { step } = unit
  if (!step) return null
  for (let level = 1; level <= lastLevel; level++) {
    for (const nameWidth of nameBelow) {
      const cell = cellBox(ctx.cells[unit.cell]!, { nameWidth, touch: ctx.touch })
      const box = boxAt(ctx, step, level, true, step.alts.length > 0)
      const length = Math.max(box.overLen - head, box.underLen)
      const x = Math.max(length + 8, cell.left)
      if (x + Math.max(cell.right, exits ? cell.half + corner : 0) > width) continue
      return dropBlock(unit, step, box, cell, length, x, level)
    }
  }
  return null
}

function dropBlock(unit: Unit, step: Step, box: ArrowBox, cell: CellBox, length: number, x: number, level: number): Block {
  const placed = box.place(length, 0, 0)
  const under = placed.boxes.reduce((floor, rect) => (rect[2] > x - cell.left - 6 ? Math.max(floor, rect[3]) : floor), corner)
  const top = Math.ceil(Math.max(under + 8, corner + head + 8))
  const cy = Math.round(top + cell.halfH + 8)
  const tip = cy - cell.halfH - toStructure
  const boxes: Rect[] = [...placed.boxes, ...moved(cell.boxes, x, cy), [0, -1, x, 1], [x - 4, 0, x + 4, tip]]
  return {
    w: Math.ceil(Math.max(x + cell.right, rightOf(boxes))),
    boxes,
    penalty: levelCost[level]! + 60,
    end: { x: x + cell.half + toStructure, y: cy },
    entries: [{ y: 0, grey: step.grey ?? false, product: step.to, splits: false }],
    draw(sheet, dx, dy) {
      const pts = [
        [dx + corner, dy],
        [dx + x, dy],
        [dx + x, dy + tip],
      ] as const
      drawArrow(sheet, step, pts, unit.cell)
      placed.draw(sheet, dx, dy)
      cell.draw(sheet, dx + x, dy + cy)
    },
  }
}
