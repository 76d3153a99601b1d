import { type ArrowBox, arrowBox } from './arrow-box.ts'
import { cellBox } from './cell-box.ts'
import type { Context } from './context.ts'
import { nameBelow, toStructure } from './measures.ts'
import type { Unit } from './model.ts'
import type { Step } from './types.ts'

/** What is known of an arrow at a level, whatever its length. */
export function boxAt(ctx: Context, step: Step, level: number, rail: boolean, link: boolean): ArrowBox {
  const known = ctx.arrows.get(step) ?? []
  ctx.arrows.set(step, known)
  const place = level * 4 + (rail ? 2 : 0) + (link ? 1 : 0)
  known[place] ??= arrowBox({ step, cells: ctx.cells, touch: ctx.touch, named: ctx.named(step), link, rail, level })
  return known[place]
}

/** Turns an arrow's own room into its length: text under it keeps off labels that stick out into it. */
export const lengthOf = (box: ArrowBox, stickLeft: number, stickRight: number): number =>
  Math.max(box.overLen, box.underLen + stickLeft + stickRight, 40)

/** The centre at which a step's product would stand at a level, if its arrow leaves a trunk. */
export function firstCentreAt(ctx: Context, unit: Unit, level: number): number {
  if (!unit.step) return 0
  const names = level >= 3 ? 2 : level >= 2 ? 1 : 0
  const box = cellBox(ctx.cells[unit.cell]!, { nameWidth: nameBelow[names]!, touch: ctx.touch })
  const arrow = boxAt(ctx, unit.step, level, true, false)
  return lengthOf(arrow, 0, Math.max(0, box.left - box.half - toStructure + 4)) + toStructure + box.half
}
