import { bottomOf, type Rect, type Sheet } from './block.ts'
import { fill } from './fill.ts'
import { lineHeight, margin, size } from './measures.ts'
import { drawText } from './pens.ts'
import { itemWidth } from './text-width.ts'
import type { Item } from './types.ts'

/** The legend: a few soft lines at the lower left. */
export function legendOf(legend: readonly Item[], width: number) {
  const lines = legend.flatMap(item => fill([item], width, size.text, true).lines)
  const w = Math.ceil(Math.max(0, ...lines.map(line => itemWidth(line, size.text))))
  const h = lines.length * (lineHeight.text + 1)
  return {
    w,
    h,
    /** Its top: in free room at the foot where there is some, else below everything. */
    place(taken: readonly Rect[]): number {
      const foot = bottomOf(taken)
      const inFoot = foot - h
      const free = taken.every(([x1, y1, , y2]) => x1 > margin + w + 16 || y2 < inFoot - 14 || y1 > foot)
      return Math.ceil(free ? inFoot : foot + 18)
    },
    draw(sheet: Sheet, x: number, y: number) {
      lines.forEach((line, i) => {
        const pen = line.some(run => run.pen)
        drawText(sheet, `legend${i}`, line, x, y + i * (lineHeight.text + 1) + 12, {}, { tone: pen ? 'pen' : 'soft', cls: 'legend' })
      })
    },
  }
}
