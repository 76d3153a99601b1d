import { boxAt, lengthOf } from './arrow-at.ts'
import type { ArrowBox } from './arrow-box.ts'
import { type Block, ceilingBetween, floorBetween, moved, type Rect, rightOf, type Sheet } from './block.ts'
import { bodyHalfHeight, type CellBox, cellBox } from './cell-box.ts'
import type { Context, Entry } from './context.ts'
import { detourCounts, detoursOf, pitchOf } from './detours.ts'
import { corner, lastLevel, levelCost, nameBelow, nameRight, toStructure } from './measures.ts'
import type { Unit } from './model.ts'
import { drawArrow } from './pens.ts'
import type { Step } from './types.ts'

export interface LineWish {
  readonly entry: Entry
  /** Something leaves the last structure, so its label stands below. */
  readonly exits: boolean
  readonly floor: number
  readonly firstCentre?: number
}

/** Labels whose tops differ by no more than this share a base. */
const sharedBase = 16

interface Laid {
  readonly cells: readonly CellBox[]
  readonly centres: readonly number[]
  readonly arrows: readonly { step: Step; box: ArrowBox; x: number; length: number; left: number; right: number; rail: boolean }[]
  readonly width: number
}

interface Setting {
  readonly boxes: readonly CellBox[]
  readonly levels: readonly number[]
  readonly links: readonly boolean[]
}

function lay(ctx: Context, units: readonly Unit[], wish: LineWish, setting: Setting): Laid {
  const centres: number[] = []
  const arrows: Laid['arrows'][number][] = []
  let x = 0
  units.forEach((unit, i) => {
    const to = setting.boxes[i]!
    if (!unit.step) {
      centres.push(to.left)
      x = to.left
      return
    }
    const from = i > 0 ? setting.boxes[i - 1]! : null
    const rail = !from
    const box = boxAt(ctx, unit.step, setting.levels[i]!, rail, setting.links[i]!)
    const tail = from ? x + from.half + toStructure : 0
    const stickLeft = from ? Math.max(0, from.right - from.half - toStructure + 4) : 0
    const stickRight = Math.max(0, to.left - to.half - toStructure + 4)
    let length = lengthOf(box, stickLeft, stickRight)
    // A wide label, or room for detours, may need more than the arrow's text does.
    if (from) length = Math.max(length, from.right - from.half + to.left - to.half - 2 * toStructure + 12)
    else length = Math.max(length, to.left - to.half - toStructure + 6)
    if (i === 0 && wish.firstCentre !== undefined) length = Math.max(length, wish.firstCentre - to.half - toStructure)
    arrows.push({ step: unit.step, box, x: tail, length, left: stickLeft, right: stickRight, rail })
    x = tail + length + toStructure + to.half
    centres.push(x)
  })
  const last = setting.boxes.at(-1)!
  return { cells: setting.boxes, centres, arrows, width: Math.ceil(x + Math.max(last.right, wish.exits ? last.half + corner : 0)) }
}

/** Widens a cell where more detours end at it than its structure is wide for. */
function forSlots(box: CellBox, count: number): CellBox {
  const need = Math.ceil(((count - 1) * pitchOf(count, 2 * box.half)) / 2 + 6)
  if (count === 0 || (box.left >= need && box.right >= need)) return box
  return { ...box, left: Math.max(box.left, need), right: Math.max(box.right, need) }
}

function cellsOf(ctx: Context, units: readonly Unit[], names: number, right: boolean, links: readonly boolean[]): CellBox[] {
  const nameWidth = nameBelow[names]!
  const halves = units.map(unit => bodyHalfHeight(ctx.cells[unit.cell]!, nameWidth))
  const lowest = Math.max(...halves)
  return units.map((unit, i) => {
    const atRight = right && i === units.length - 1
    const shares = lowest - halves[i]! <= sharedBase
    const labelTop = shares ? lowest + 5 : 0
    const box = ctx.cached(`cell ${unit.cell} ${names} ${atRight} ${labelTop}`, () =>
      cellBox(ctx.cells[unit.cell]!, { nameWidth: atRight ? nameRight[names]! : nameWidth, right: atRight, touch: ctx.touch, labelTop }),
    )
    const into = unit.step && ctx.detours && !links[i] ? detourCounts(unit.step, i === 0) : { above: 0, below: 0 }
    const next = units[i + 1]?.step
    const out = next && ctx.detours && !links[i + 1] ? detourCounts(next, false) : { above: 0, below: 0 }
    return forSlots(box, Math.max(into.above + out.above, into.below + out.below))
  })
}

const atRail = { x: 0, topAt: () => 0, bottomAt: () => 0, wideAbove: 0, wideBelow: 0, rail: true }

/** One row of cells and arrows on a common axis; null where it does not fit. */
export function lineOf(ctx: Context, units: readonly Unit[], width: number, wish: LineWish): Block | null {
  // Told as a link from the outset where detours are not drawn; else only where a span proves too narrow.
  const links = units.map(unit => (unit.step?.alts.length ?? 0) > 0 && !ctx.detours)
  for (let tries = 0; tries <= units.length; tries++) {
    const found = fitted(ctx, units, width, wish, links)
    if (!found) return null
    const { laid, levels } = found
    const detours = detoursFor(ctx, units, laid, links)
    const narrow = detours.indexOf(null)
    if (narrow < 0) return blockOf(units, laid, levels, detours as Drawn[])
    links[narrow] = true
  }
  return null
}

/** Widest first: the label widths and levels at which the line fits. */
function fitted(ctx: Context, units: readonly Unit[], width: number, wish: LineWish, links: readonly boolean[]) {
  const rightIsFree = !wish.exits && units.at(-1)?.step !== undefined
  const attempts: { names: number; top: number; right: boolean }[] = []
  if (rightIsFree) for (const names of [0, 1]) attempts.push({ names, top: Math.max(2, wish.floor), right: true })
  attempts.push({ names: 0, top: Math.max(2, wish.floor), right: false }, { names: 1, top: Math.max(3, wish.floor), right: false })
  if (rightIsFree) attempts.push({ names: 2, top: 3, right: true })
  attempts.push({ names: 2, top: lastLevel, right: false })
  for (const attempt of attempts) {
    const boxes = cellsOf(ctx, units, attempt.names, attempt.right, links)
    const levels = units.map(unit => (unit.step ? wish.floor : 0))
    for (;;) {
      const laid = lay(ctx, units, wish, { boxes, levels, links })
      if (laid.width <= width) return { laid, levels }
      let widest = -1
      laid.arrows.forEach((arrow, n) => {
        const unit = units.length - laid.arrows.length + n
        if (levels[unit]! < attempt.top && (widest < 0 || arrow.length > laid.arrows[widest]!.length)) widest = n
      })
      if (widest < 0) break
      levels[units.length - laid.arrows.length + widest]!++
    }
  }
  return null
}

type Drawn = { boxes: Rect[]; draw(sheet: Sheet, x: number, y: number): void }

function detoursFor(ctx: Context, units: readonly Unit[], laid: Laid, links: readonly boolean[]): (Drawn | null)[] {
  const none = { above: 0, below: 0 }
  const counts = units.map((unit, i) => (unit.step && ctx.detours && !links[i] ? detourCounts(unit.step, i === 0) : none))
  const taken = bareBoxes(laid)
  const found: (Drawn | null)[] = []
  units.forEach((unit, i) => {
    const step = unit.step
    if (!step || step.alts.length === 0 || !ctx.detours || links[i]) {
      found.push({ boxes: [], draw: () => {} })
      return
    }
    const end = (n: number) => {
      const cell = laid.cells[n]!
      const own = moved(cell.boxes, laid.centres[n]!, 0)
      return {
        x: laid.centres[n]!,
        topAt: (x: number) => ceilingBetween(own, x - 9, x + 9),
        bottomAt: (x: number) => floorBetween(own, x - 9, x + 9),
        wideAbove: 2 * cell.half,
        wideBelow: 2 * Math.max(cell.half, cell.labelHalf),
        rail: false,
      }
    }
    const slots = (side: 'above' | 'below', n: number, before: number) => ({
      before,
      total: counts[n]![side] + (counts[n + 1]?.[side] ?? 0),
    })
    const detour = detoursOf(
      {
        step,
        from: i > 0 ? end(i - 1) : atRail,
        to: end(i),
        fromSlots: {
          above: i > 0 ? slots('above', i - 1, counts[i - 1]!.above) : { before: 0, total: 0 },
          below: i > 0 ? slots('below', i - 1, counts[i - 1]!.below) : { before: 0, total: 0 },
        },
        toSlots: { above: slots('above', i, 0), below: slots('below', i, 0) },
      },
      [...taken, ...found.flatMap(one => one?.boxes ?? [])],
    )
    found.push(detour)
  })
  return found
}

function bareBoxes(laid: Laid): Rect[] {
  const boxes: Rect[] = []
  laid.cells.forEach((cell, i) => {
    boxes.push(...moved(cell.boxes, laid.centres[i]!, 0))
  })
  for (const arrow of laid.arrows) {
    boxes.push([arrow.x, -4, arrow.x + arrow.length, 4])
    boxes.push(...moved(arrow.box.place(arrow.length, arrow.left, arrow.right).boxes, arrow.x, 0))
  }
  return boxes
}

function blockOf(units: readonly Unit[], laid: Laid, levels: readonly number[], detours: readonly Drawn[]): Block {
  const boxes = [...bareBoxes(laid), ...detours.flatMap(detour => detour.boxes)]
  const last = laid.cells.at(-1)!
  const first = units[0]!.step
  return {
    w: Math.max(laid.width, Math.ceil(rightOf(boxes))),
    boxes,
    penalty: levels.reduce((sum, level, i) => sum + (units[i]!.step ? levelCost[level]! : 0), 0),
    end: { x: laid.centres.at(-1)! + last.half + toStructure, y: 0 },
    entries: first ? [{ y: 0, grey: first.grey ?? false, product: first.to, splits: detours[0]!.boxes.length > 0 }] : [],
    draw(sheet, x, y) {
      for (const detour of detours) detour.draw(sheet, x, y)
      for (const arrow of laid.arrows) {
        const { step } = arrow
        const tail = arrow.rail ? x + corner : x + arrow.x
        const pts = [
          [tail, y],
          [x + arrow.x + arrow.length, y],
        ] as const
        drawArrow(sheet, step, pts)
        arrow.box.place(arrow.length, arrow.left, arrow.right).draw(sheet, x + arrow.x, y)
      }
      laid.cells.forEach((cell, i) => {
        cell.draw(sheet, x + laid.centres[i]!, y)
      })
    },
  }
}
