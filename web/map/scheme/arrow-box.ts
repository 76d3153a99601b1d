import { type ArrowIn, most, otherWays, overItems, underLines, waysOf } from './arrow-text.ts'
import type { Rect, Sheet } from './block.ts'
import { type CoLabel, coLabelOf } from './co-label.ts'
import { fill } from './fill.ts'
import { type LeaverBox, leaverBoxes } from './leavers.ts'
import { besideRail, besideText, corner, coTop, head, lastLevel, levelWidth, lineHeight, overAxis, size, underAxis } from './measures.ts'
import { type Body, bodyOf, drawBody, drawPath, drawText } from './pens.ts'
import { itemWidth } from './text-width.ts'
import type { Cell, Item } from './types.ts'

export interface ArrowBox {
  /** Least length, tail to tip, that the text over it wants, and what stands under it. */
  readonly overLen: number
  readonly underLen: number
  /**
   * @param length tail to tip
   * @param left what sticks out into the room under the arrow at its tail, px (a wide label)
   * @param right and at its tip
   */
  place(length: number, left: number, right: number): { boxes: Rect[]; draw(sheet: Sheet, x: number, y: number): void }
}

/** A co-reactant drawn under the arrow; `column` is the room that it and its label take side by side with others. */
interface Column {
  readonly cell: Cell
  readonly body: Body
  readonly x: number
  readonly column: number
  readonly label: CoLabel | null
}

function columnsOf(input: ArrowIn, x0: number): { columns: Column[]; plus: Cell[]; right: number } {
  const cells = input.step.co.map(id => input.cells[id]).filter(cell => cell !== undefined)
  const drawn = input.level >= lastLevel ? [] : input.level >= 3 ? cells.slice(0, 1) : cells
  const columns: Column[] = []
  const plus = cells.filter(cell => !drawn.includes(cell))
  let x = x0
  for (const cell of drawn) {
    const body = bodyOf(cell)
    if (!body) {
      plus.unshift(cell)
      continue
    }
    // A single co-reactant's label may run on under the text; several keep to their columns.
    const label = drawn.length > 1 ? coLabelOf(cell, Math.max(body.w, 84), input.touch) : null
    const column = Math.max(body.w, label?.w ?? 0)
    columns.push({ cell, body, x, column, label })
    x += column + 10
  }
  return { columns, plus, right: columns.length > 0 ? x - 10 : x0 - 8 }
}

/** Conditions over an arrow, and under it co-reactants, time and yield, and what leaves. */
export function arrowBox(input: ArrowIn): ArrowBox {
  const { step, level } = input
  const x0 = input.rail ? besideRail : besideText
  const split = level >= lastLevel
  const ways = waysOf(step)
  const over = most(ways.map(way => fill(overItems(input, way), levelWidth[level]!, size.text, split)))
  const overTail = head + 5
  const { columns, plus, right } = columnsOf(input, x0)
  const curveX = Math.max(...columns.map(({ x, body }) => x + body.w / 2 + body.topX), Number.NEGATIVE_INFINITY)
  const textX = columns.length > 0 ? Math.ceil(Math.max(right, curveX + corner + 2)) + 8 : x0
  const under = most(
    ways.map(way => ({ lines: underLines(input, way), w: Math.max(0, ...underLines(input, way).map(l => itemWidth(l, size.text))) })),
  )
  const linkText: Item = [{ t: otherWays(step.alts.length), pen: true }]
  const hasLink = input.link && step.alts.length > 0
  const textW = Math.max(under.w, hasLink ? Math.ceil(itemWidth(linkText, size.text)) : 0)
  const leavers: readonly LeaverBox[] = level >= lastLevel ? [] : leaverBoxes(step, input.cells, level)
  const leaversW = leavers.reduce((sum, { w }) => sum + w + 8, 0)
  const label = (room: number): CoLabel | null => {
    const [only] = columns
    return columns.length === 1 && only ? coLabelOf(only.cell, room, input.touch) : null
  }
  const leastLabel = label(Math.max(columns[0]?.body.w ?? 0, 84))?.w ?? 0
  const plusW = Math.max(0, ...plus.map(cell => coLabelOf(cell, 84, input.touch, true).w))
  let underLen = Math.max(textX + textW + leaversW + 6, x0 + leastLabel + 2, x0 + plusW + 2)
  if (columns.length > 0) underLen = Math.max(underLen, curveX + corner + head + 8 + (leavers.length > 0 ? leaversW : 0))
  if (leavers.length > 0) underLen = Math.max(underLen, 44)
  // At ease, the arrow may grow a little so that name, amount and pick stand on one line.
  const easy = label(Number.POSITIVE_INFINITY)?.w ?? 0
  if (level === 0 && x0 + easy + 2 <= Math.max(underLen, x0 + over.w + overTail) + 28) underLen = Math.max(underLen, x0 + easy + 2)

  const placed = new Map<string, ReturnType<ArrowBox['place']>>()
  return {
    overLen: Math.ceil(x0 + over.w + overTail),
    underLen: Math.ceil(underLen),
    place(length, left, rightRoom) {
      const key = `${length} ${left} ${rightRoom}`
      const known = placed.get(key) ?? at(length, left, rightRoom)
      placed.set(key, known)
      return known
    },
  }

  function at(length: number, left: number, rightRoom: number): ReturnType<ArrowBox['place']> {
    const boxes: Rect[] = []
    const draws: ((sheet: Sheet, x: number, y: number) => void)[] = []
    const grey = step.grey ?? false
    const of = { step: step.to, way: step.id }
    // Filled again to the true width: a longer arrow needs fewer lines.
    const room = Math.max(length - x0 - overTail, over.w)
    const refilled = ways.map(way => fill(overItems(input, way), room, size.text, split))
    const all = most(refilled)
    const overX = (w: number) => (input.rail ? x0 : Math.max(besideText, (length - w) / 2 - (length - w < 2 * overTail ? 3 : 0)))
    if (all.lines > 0) {
      boxes.push([overX(all.w), -overAxis - (all.lines - 1) * lineHeight.text - 10, overX(all.w) + all.w, -4])
    }
    draws.push((sheet, x, y) => {
      const mine = refilled[0]!.lines
      mine.forEach((line, i) => {
        const w = itemWidth(line, size.text)
        const base = y - overAxis - (mine.length - 1 - i) * lineHeight.text
        drawText(sheet, `${step.to}/over${i}`, line, x + overX(w), base, of, { tone: grey ? 'grey' : 'ink' })
      })
    })

    let labelTop = 0
    for (const column of columns) {
      const cx = column.x + left + column.body.w / 2
      const cy = coTop + column.body.h / 2
      const tx = cx + column.body.topX
      boxes.push([column.x + left, coTop - 2, column.x + left + column.body.w, coTop + column.body.h + 2])
      boxes.push([tx - 1, 0, tx + corner, coTop])
      draws.push((sheet, x, y) => {
        const id = `${step.to}/${column.cell.id}`
        drawBody(sheet, id, column.cell, x + cx, y + cy, { cell: column.cell.id, step: step.to })
        const pts = [
          [x + tx, y + coTop - 2],
          [x + tx, y],
          [x + tx + corner, y],
        ] as const
        drawPath(sheet, `${id}/in`, pts, of, { grey, cls: 'in', from: id, to: step.to })
      })
      labelTop = Math.max(labelTop, coTop + column.body.h + 5)
    }

    const textLeft = columns.length > 0 || input.rail ? textX + left : undefined
    const textEnd = length - rightRoom - leaversW - 6
    const under0 = (w: number) => {
      if (textLeft !== undefined) return textLeft
      const from = left + besideText
      return leavers.length > 0 || left > 0 || rightRoom > 0 ? from + Math.max(0, (textEnd - from - w) / 2) : (length - w) / 2
    }
    let textBottom = under.lines > 0 ? underAxis + (under.lines - 1) * lineHeight.text + 4 : 0
    if (under.lines > 0) boxes.push([under0(under.w), underAxis - 10, under0(under.w) + under.w, textBottom])
    draws.push((sheet, x, y) => {
      underLines(input, step).forEach((line, i) => {
        const at = x + under0(itemWidth(line, size.text))
        const tone = grey ? 'grey' : i === 0 && step.under.length > 1 ? 'soft' : 'ink'
        drawText(sheet, `${step.to}/under${i}`, line, at, y + underAxis + i * lineHeight.text, of, { tone, cls: 'result' })
      })
    })
    if (hasLink) {
      const w = itemWidth(linkText, size.text)
      const at = under0(w)
      const h = Math.max(20, input.touch)
      const linkTop = textBottom
      boxes.push([at, linkTop, at + w, linkTop + h])
      draws.push((sheet, x, y) =>
        drawText(sheet, `${step.to}/ways`, linkText, x + at, y + linkTop + h / 2 + 4, of, {
          tone: 'pen',
          link: true,
          cls: 'ways',
          touch: h,
        }),
      )
      textBottom = linkTop + h
    }

    let rightEdge = length - rightRoom
    for (const leaver of [...leavers].reverse()) {
      const cx = Math.min(rightEdge - leaver.w / 2 - (rightEdge === length ? 6 : 0), length - head - 11)
      boxes.push(...leaver.boxesAt(cx))
      draws.push((sheet, x, y) => leaver.draw(sheet, x + cx, y, step, grey))
      rightEdge = cx - leaver.w / 2 - 8
    }

    // Labels of co-reactants: below their structure and below whatever text they would run into.
    const only = label(Math.max(leastLabel, length - x0 - left - 2 - Math.max(0, rightRoom)))
    const stacked: CoLabel[] = plus.map(cell =>
      coLabelOf(cell, Math.max(plusW, length - x0 - left - 2 - Math.max(0, rightRoom)), input.touch, true),
    )
    if (only) stacked.unshift(only)
    for (const column of columns) {
      if (!column.label) continue
      const { label: own } = column
      const top = coTop + column.body.h + 5
      boxes.push(...own.boxes.map(([a, b, c, d]): Rect => [a + column.x + left, b + top, c + column.x + left, d + top]))
      draws.push((sheet, x, y) => own.draw(sheet, x + column.x + left, y + top, step.to, grey))
      labelTop = Math.max(labelTop, top + own.h)
    }
    let top = Math.max(labelTop, columns.length === 0 && stacked.length > 0 ? textBottom + 2 : 0)
    const leaversBottom = Math.max(0, ...leavers.map(({ bottom }) => bottom))
    for (const one of stacked) {
      const at = x0 + left
      // Text beside the structure may reach lower than the structure does.
      if (at + one.w > (textLeft ?? 0) - 4) top = Math.max(top, textBottom + 1)
      if (at + one.w > rightEdge) top = Math.max(top, leaversBottom + 3)
      const from = top
      boxes.push(...one.boxes.map(([a, b, c, d]): Rect => [a + at, b + from, c + at, d + from]))
      draws.push((sheet, x, y) => one.draw(sheet, x + at, y + from, step.to, grey))
      top += one.h
    }
    return {
      boxes,
      draw: (sheet, x, y) => {
        for (const draw of draws) draw(sheet, x, y)
      },
    }
  }
}
