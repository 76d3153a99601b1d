import { type Block, cheapest, moved, type Sheet } from './block.ts'
import { type Context, type Entry, type RunWish, stays } from './context.ts'
import { dropOf } from './drop.ts'
import { lineOf } from './line.ts'
import { branchIndent, lineCost, loneStartCost, slackCost, stayCost, toStructure, trunkBehind } from './measures.ts'
import type { Tail, Unit } from './model.ts'
import { drawPath } from './pens.ts'
import { returned } from './rails.ts'

/**
 * A run of units over one line or several, and what comes after it: tried at every break, the cheapest wins. Null where nothing fits.
 */
export function rowsOf(ctx: Context, units: readonly Unit[], tail: Tail, width: number, entry: Entry, wish: RunWish = {}): Block | null {
  if (tail.kind === 'join') return ctx.join(units, tail, width, entry, wish)
  const tried: (Block | null)[] = []
  for (let count = units.length; count >= 1; count--) {
    const head = units.slice(0, count)
    const rest = units.slice(count)
    tried.push(...withHead(ctx, head, rest, tail, width, entry, wish))
  }
  return cheapest(tried)
}

function withHead(
  ctx: Context,
  head: readonly Unit[],
  rest: readonly Unit[],
  tail: Tail,
  width: number,
  entry: Entry,
  wish: RunWish,
): (Block | null)[] {
  const goesOn = rest.length > 0 || tail.kind !== 'none' || (wish.exits ?? false)
  const lineWish = {
    entry,
    exits: goesOn,
    floor: wish.floor ?? 0,
    ...(wish.firstCentre === undefined ? {} : { firstCentre: wish.firstCentre }),
  }
  // A rail or lane that leaves needs room at the right.
  const room = goesOn ? width - toStructure : width
  const line = lineOf(ctx, head, room, lineWish) ?? (head.length === 1 ? dropOf(ctx, head[0]!, room, goesOn) : null)
  if (!line) return []
  const marked = withStart(line, head)
  if (rest.length === 0 && tail.kind === 'none') return [marked]
  const off = entry === 'trunk' ? branchIndent : 0
  const lone = head.length === 1 && !head[0]!.step ? loneStartCost : 0
  const slack = slackCost * Math.max(0, width - line.w)
  if (rest.length > 0) {
    const next = rest[0]!.step!
    const block = ctx.run(rest, tail, width - off, 'rail', wish.exits ? { exits: true } : {})
    if (!block) return []
    const cost = lineCost + lone + slack + stayCost * startChange(ctx, head, rest)
    const after = { block, x: off, grey: next.grey ?? false, trunk: false, id: next.to, from: next.from }
    return [returned(marked, after, width, cost)]
  }
  if (tail.kind !== 'fork') return []
  return forked(ctx, marked, tail.cell, width, off, lone + slack, line.end.y !== 0)
}

/** What it costs that a line begins here, or that it does not begin where it did. */
function startChange(ctx: Context, head: readonly Unit[], rest: readonly Unit[]): number {
  let broken = 0
  for (const unit of head.slice(1)) broken += stays(ctx, 'starts', unit.cell, unit.cell, false)
  return broken + stays(ctx, 'starts', rest[0]!.cell, rest[0]!.cell, true)
}

/** Notes which products' steps began a line, for the next drawing. */
function withStart(line: Block, head: readonly Unit[]): Block {
  const first = head[0]!
  if (!first.step) return line
  return {
    ...line,
    draw(sheet: Sheet, x: number, y: number) {
      sheet.starts.push(first.cell)
      line.draw(sheet, x, y)
    },
  }
}

/** A fork behind a line: on the same row, or wrapped below it. */
function forked(ctx: Context, line: Block, cell: string, width: number, off: number, slack: number, dropped: boolean): (Block | null)[] {
  const tried: (Block | null)[] = []
  const trunk = Math.max(Math.ceil(line.end.x) + trunkBehind - toStructure + 2, line.w + 4)
  const keepWrapped = ctx.keep?.known.includes(cell) ? ctx.keep.wrapped.includes(cell) : undefined
  const inline = dropped ? null : ctx.fork(cell, width - trunk, 'inline')
  if (inline) {
    const grey = inline.entries.every(entry => entry.grey)
    const pts = [
      [line.end.x, 0],
      [trunk, 0],
    ] as const
    tried.push({
      w: Math.max(line.w, trunk + inline.w),
      boxes: [...line.boxes, ...moved(inline.boxes, trunk, 0), [line.end.x, -1, trunk, 1]],
      penalty: line.penalty + inline.penalty + (keepWrapped === true ? stayCost : 0),
      end: line.end,
      entries: line.entries,
      draw(sheet, x, y) {
        const at = pts.map(([px, py]) => [px + x, py + y] as const)
        drawPath(sheet, `${cell}/stub`, at, { cell }, { grey, cls: 'rail', from: cell })
        line.draw(sheet, x, y)
        inline.draw(sheet, x + trunk, y)
      },
    })
  }
  const wrapped = ctx.fork(cell, width - off, 'wrapped')
  if (wrapped) {
    const grey = wrapped.entries.every(entry => entry.grey)
    const after = { block: wrapped, x: off, grey, trunk: true, id: `${cell}/fork`, from: cell }
    const block = returned(line, after, width, lineCost + slack + (keepWrapped === false ? stayCost : 0))
    if (block) {
      tried.push({
        ...block,
        draw(sheet, x, y) {
          sheet.wrapped.push(cell)
          block.draw(sheet, x, y)
        },
      })
    }
  }
  return tried
}
