import { firstCentreAt } from './arrow-at.ts'
import { type Block, cheapest, clearDown, type Entry as Line, moved, pathBoxes, type Rect } from './block.ts'
import { type Context, type Entry, type RunWish, stays } from './context.ts'
import { branchIndent, corner, lineCost, rowGap, slackCost, stayCost } from './measures.ts'
import type { Feeder, Tail, Unit } from './model.ts'
import { drawPath } from './pens.ts'
import { returned } from './rails.ts'

type Join = Extract<Tail, { kind: 'join' }>

/** The row of a join whose main line comes straight from a rail or trunk. */
const passing = (grey: boolean, product: string): Block => ({
  w: corner + 4,
  boxes: [[0, -1, corner + 4, 1]],
  penalty: 0,
  end: { x: corner, y: 0 },
  entries: [{ y: 0, grey, product, splits: false }],
  draw: () => {},
})

interface Rows {
  readonly boxes: readonly Rect[]
  readonly main: Block
  readonly feeders: readonly { readonly feeder: Feeder; readonly block: Block; readonly x: number; readonly y: number }[]
  /** Right edge of the widest line: lanes stand behind it. */
  readonly right: number
  readonly penalty: number
}

/** The main row and, below it, the rows that feed it; null where one does not fit. */
function rowsFor(ctx: Context, units: readonly Unit[], tail: Join, width: number, entry: Entry, wish: RunWish): Rows | null {
  const grey = tail.step.grey ?? false
  const main = units.length === 0 ? passing(grey, tail.step.to) : ctx.run(units, { kind: 'none' }, width, entry, { ...wish, exits: true })
  if (!main) return null
  // The main line goes on to the lane; feeders stay below it.
  let boxes: Rect[] = [...main.boxes, [main.end.x, main.end.y - 1, width, main.end.y + 1]]
  const feeders: Rows['feeders'][number][] = []
  let right = main.w
  let lastEnd = main.end.y
  for (const feeder of tail.feeders) {
    const x = feeder.fromTrunk || entry === 'start' ? 0 : branchIndent + 4
    const block = ctx.run(feeder.units, { kind: 'none' }, width - x, feeder.fromTrunk ? 'trunk' : 'start', { exits: true })
    if (!block) return null
    // Its line goes on to the lane, past whatever of the row above reaches further right.
    const shifted: Rect[] = [...moved(block.boxes, x, 0), [x + block.end.x, block.end.y - 1, width, block.end.y + 1]]
    const y = Math.ceil(Math.max(clearDown(boxes, shifted, rowGap), lastEnd + 2 * corner + 4 - block.end.y))
    feeders.push({ feeder, block, x, y })
    lastEnd = y + block.end.y
    boxes = [...boxes, ...moved(shifted, 0, y)]
    right = Math.max(right, x + block.w)
  }
  // What was reserved up to the pane's edge reaches only to the lane.
  const own: Rect[] = [...main.boxes, ...feeders.flatMap(({ block, x, y }) => moved(block.boxes, x, y))]
  const penalty = main.penalty + feeders.reduce((sum, { block }) => sum + block.penalty, 0)
  return { boxes: own, main, feeders, right: Math.ceil(right), penalty }
}

const trunkLines = (rows: Rows): Line[] => [
  ...rows.main.entries,
  ...rows.feeders.flatMap(({ feeder, block, y }) => (feeder.fromTrunk ? block.entries.map(line => ({ ...line, y: line.y + y })) : [])),
]

/**
 * Rows taken together by a lane at their right. *In*: the main line goes straight on and the lane rises into it. *Wrapped*: the lane
 * goes down, returns and begins the next line. The cheaper wins; null where neither fits.
 */
export function joinOf(ctx: Context, units: readonly Unit[], tail: Join, width: number, entry: Entry, wish: RunWish = {}): Block | null {
  const product = tail.step.to
  const kept = ctx.keep?.known.includes(product) ? ctx.keep.wrapped.includes(product) : undefined
  const next = ctx.model.afterJoin(tail.step)
  const tried: (Block | null)[] = []
  for (const level of [0, 2]) {
    const after = firstCentreAt(ctx, next.units[0]!, level) + 80
    const rows = width - after > 120 ? rowsFor(ctx, units, tail, width - after, entry, wish) : null
    const block = rows && joinedIn(ctx, rows, tail, next, width, wish)
    if (block) tried.push(kept === true ? { ...block, penalty: block.penalty + stayCost } : block)
  }
  for (const narrower of [corner + 8, corner + 20]) {
    const rows = rowsFor(ctx, units, tail, width - narrower, entry, wish)
    const block = rows && joinedWrapped(ctx, rows, tail, next, width, entry, wish)
    if (!block) continue
    tried.push(kept === false ? { ...block, penalty: block.penalty + stayCost } : block)
    break
  }
  return cheapest(tried)
}

type Trail = ReturnType<Context['model']['afterJoin']>

function laneOf(rows: Rows): number {
  const ends = [rows.main.end.x, ...rows.feeders.map(({ block, x }) => x + block.end.x)]
  return Math.max(rows.right + 8, Math.ceil(Math.max(...ends)) + corner + 2)
}

function joinedIn(ctx: Context, rows: Rows, tail: Join, next: Trail, width: number, wish: RunWish): Block | null {
  const lane = laneOf(rows)
  const axis = rows.main.end.y
  const rest = ctx.run(next.units, next.tail, width - lane, 'trunk', wish.exits ? { exits: true } : {})
  if (!rest) return null
  const grey = tail.step.grey ?? false
  const straight = [
    [rows.main.end.x, axis],
    [lane + corner, axis],
  ] as const
  const rising = rows.feeders.map(({ block, x, y }) => {
    const at = y + block.end.y
    return [
      [x + block.end.x, at],
      [lane, at],
      [lane, axis],
      [lane + corner, axis],
    ] as const
  })
  return {
    w: Math.max(lane + rest.w, rows.right),
    boxes: [...rows.boxes, ...moved(rest.boxes, lane, axis), ...pathBoxes(straight), ...rising.flatMap(pathBoxes)],
    penalty: rows.penalty + rest.penalty,
    end: { x: lane + rest.end.x, y: axis + rest.end.y },
    entries: trunkLines(rows),
    draw(sheet, x, y) {
      drawRows(rows, sheet, x, y)
      const at = (pts: readonly (readonly [number, number])[]) => pts.map(([px, py]) => [px + x, py + y] as const)
      rising.forEach((pts, i) => {
        const from = rows.feeders[i]!.feeder.cell
        drawPath(sheet, `${tail.step.to}/lane${i}`, at(pts), { step: tail.step.to }, { grey, cls: 'rail', from })
      })
      drawPath(sheet, `${tail.step.to}/main`, at(straight), { step: tail.step.to }, { grey, cls: 'rail', from: tail.step.from })
      rest.draw(sheet, x + lane, y + axis)
    },
  }
}

function drawRows(rows: Rows, sheet: Parameters<Block['draw']>[0], x: number, y: number): void {
  rows.main.draw(sheet, x, y)
  for (const { block, x: fx, y: fy } of rows.feeders) block.draw(sheet, x + fx, y + fy)
}

function joinedWrapped(ctx: Context, rows: Rows, tail: Join, next: Trail, width: number, entry: Entry, wish: RunWish): Block | null {
  const lane = laneOf(rows)
  if (lane > width) return null
  const off = entry === 'trunk' ? branchIndent : 0
  const rest = ctx.run(next.units, next.tail, width - off, 'rail', wish.exits ? { exits: true } : {})
  if (!rest) return null
  const grey = tail.step.grey ?? false
  const meeting = rows.feeders.map(({ block, x, y }) => {
    const at = y + block.end.y
    return [
      [x + block.end.x, at],
      [lane, at],
      [lane, at + corner],
    ] as const
  })
  const lowest = Math.max(...meeting.map(pts => pts[2][1]))
  const first: Block = {
    w: rows.right,
    boxes: [...rows.boxes, ...meeting.flatMap(pathBoxes), [lane - 1, rows.main.end.y, lane + 1, lowest]],
    penalty: rows.penalty,
    end: rows.main.end,
    entries: trunkLines(rows),
    draw(sheet, x, y) {
      sheet.wrapped.push(tail.step.to)
      drawRows(rows, sheet, x, y)
      meeting.forEach((pts, i) => {
        const at = pts.map(([px, py]) => [px + x, py + y] as const)
        const from = rows.feeders[i]!.feeder.cell
        drawPath(sheet, `${tail.step.to}/lane${i}`, at, { step: tail.step.to }, { grey, cls: 'rail', from })
      })
    },
  }
  const cost = lineCost + slackCost * (width - rows.right) + stayCost * stays(ctx, 'starts', tail.step.to, tail.step.to, true)
  return returned(first, { block: rest, x: off, grey, trunk: false, id: tail.step.to, from: tail.step.from }, width, cost, lane)
}
