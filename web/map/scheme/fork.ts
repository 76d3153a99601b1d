import { firstCentreAt } from './arrow-at.ts'
import { type Block, clearDown, type Entry, moved, type Rect } from './block.ts'
import type { Context } from './context.ts'
import { corner, levelCost, rowGap } from './measures.ts'
import type { Trail } from './model.ts'
import { drawDot, drawPath } from './pens.ts'
import type { Step } from './types.ts'

// Where less room is left than this, branches start a level tighter.
const roomy = 400
// Between two lines that leave one trunk: room for two corners.
const leastApart = 2 * corner + 4

/**
 * The branches of a fork behind a trunk at x = 0: chosen ones first, grey ones last. `inline`: the middle chosen one goes straight on
 * from the line before, at y = 0. `wrapped`: the first does, for the trunk comes down from a return rail.
 */
export function forkOf(ctx: Context, cell: string, width: number, place: 'inline' | 'wrapped'): Block | null {
  const steps = ctx.model.children(cell)
  const trails = steps.map(step => ctx.model.fromStep(step))
  const branches = branchesOf(ctx, trails, width)
  if (!branches) return null
  const ys: number[] = []
  let stacked: Rect[] = []
  branches.forEach((branch, i) => {
    if (i === 0) ys.push(0)
    else {
      const last = branches[i - 1]!
      const lastLine = ys[i - 1]! + (last.entries.at(-1)?.y ?? 0)
      ys.push(Math.ceil(Math.max(lastLine + leastApart, clearDown(stacked, branch.boxes, rowGap))))
    }
    stacked = [...stacked, ...moved(branch.boxes, 0, ys[i]!)]
  })
  const straight = place === 'wrapped' ? 0 : straightOf(ctx, cell, steps)
  const shift = -ys[straight]!
  const lines: Entry[] = branches.flatMap((branch, i) => branch.entries.map(entry => ({ ...entry, y: entry.y + ys[i]! + shift })))
  const top = Math.min(0, ...lines.map(({ y }) => y))
  const bottom = Math.max(0, ...lines.map(({ y }) => y))
  return {
    w: Math.max(...branches.map(({ w }) => w)),
    boxes: [...moved(stacked, 0, shift), [-1, top, 1, bottom]],
    penalty: branches.reduce((sum, { penalty }) => sum + penalty, 0),
    end: { x: 0, y: 0 },
    entries: lines,
    draw(sheet, x, y) {
      if (place === 'inline') sheet.straight[cell] = steps[straight]!.to
      drawTrunk(sheet, cell, lines, x, y, place)
      branches.forEach((branch, i) => {
        branch.draw(sheet, x, y + ys[i]! + shift)
      })
    },
  }
}

function straightOf(ctx: Context, cell: string, steps: readonly Step[]): number {
  const chosen = steps.filter(step => !step.grey).length || steps.length
  const kept = steps.findIndex(step => step.to === ctx.keep?.straight[cell])
  return kept >= 0 && kept < chosen ? kept : (chosen - 1) >> 1
}

/** Branches with products on one centre line, if all fit so; else each as it likes. */
function branchesOf(ctx: Context, trails: readonly Trail[], width: number): Block[] | null {
  const run = (trail: Trail, floor: number, firstCentre?: number) =>
    ctx.run(trail.units, trail.tail, width, 'trunk', { floor, ...(firstCentre === undefined ? {} : { firstCentre }) })
  for (let level = width < roomy ? 1 : 0; level <= 3; level++) {
    const centres = trails.flatMap(trail => (trail.units.length > 0 ? [firstCentreAt(ctx, trail.units[0]!, level)] : []))
    const centre = Math.ceil(Math.max(0, ...centres))
    const blocks = trails.map(trail => run(trail, level, centre))
    const fit = blocks.filter(block => block !== null)
    if (fit.length < blocks.length) continue
    // Lined up, but at the price of a line more or of a drop: then rather not.
    return fit
  }
  const blocks = trails.map(trail => run(trail, 0))
  const fit = blocks.filter(block => block !== null)
  return fit.length < blocks.length ? null : fit.map(block => ({ ...block, penalty: block.penalty + levelCost[2] }))
}

type Sheet = Parameters<Block['draw']>[0]

/** The trunk: corners at its ends, tees between; grey after the last inked line. */
function drawTrunk(sheet: Sheet, cell: string, lines: readonly Entry[], x: number, y: number, place: 'inline' | 'wrapped'): void {
  const of = { cell }
  const inked = lines.filter(({ grey }) => !grey)
  const greys = lines.filter(({ grey }) => grey)
  const tee = (entry: Entry, grey: boolean) =>
    drawPath(
      sheet,
      `${entry.product}/tee`,
      [
        [x, y + entry.y],
        [x + corner, y + entry.y],
      ],
      of,
      { grey, cls: 'rail', from: cell },
    )
  const stem = (own: readonly Entry[], from: number, grey: boolean) => {
    if (own.length === 0) return
    const ys = own.map(entry => entry.y)
    const top = Math.min(from, ...ys)
    const bottom = Math.max(from, ...ys)
    const splits = (at: number) => own.some(entry => entry.y === at && entry.splits)
    const cornerTop = top < from && !(place === 'wrapped') && !splits(top)
    const cornerBottom = bottom > from && !(grey === false && greys.length > 0) && !splits(bottom)
    const pts: [number, number][] = []
    if (cornerTop) pts.push([x + corner, y + top])
    pts.push([x, y + top], [x, y + bottom])
    if (cornerBottom) pts.push([x + corner, y + bottom])
    if (top !== bottom) drawPath(sheet, `${cell}/trunk${grey ? '-grey' : ''}`, pts, of, { grey, cls: 'rail', from: cell })
    for (const entry of own) {
      if ((cornerTop && entry.y === top) || (cornerBottom && entry.y === bottom)) continue
      tee(entry, grey)
    }
  }
  // Grey first, so that ink lies over it where they meet.
  const lastInk = Math.max(0, ...inked.map(entry => entry.y))
  stem(greys, inked.length > 0 ? lastInk : 0, true)
  stem(inked, 0, false)
  drawDot(sheet, `${cell}/dot`, x, y, of, inked.length === 0)
}
