import { ceilingBetween, floorBetween, type Rect, type Sheet } from './block.ts'
import { fill, type Lines } from './fill.ts'
import { corner, lineHeight, overAxis, size, slotPitch, underAxis } from './measures.ts'
import { drawPath, drawText } from './pens.ts'
import { itemWidth } from './text-width.ts'
import type { Item, Step, Way } from './types.ts'

/** One end of the detours: a structure, or a rail at x = 0. */
export interface End {
  readonly x: number
  /** Highest and lowest edge of what stands there near an x: a tip goes up to a narrow label's structure beside the label. */
  topAt(x: number): number
  bottomAt(x: number): number
  /** Width of what stands there, above and below the axis. */
  readonly wideAbove: number
  readonly wideBelow: number
  readonly rail: boolean
}

/** Which of a step's alternatives go above the row: the first and the fourth; below a rail none. */
export const goesAbove = (index: number, rail: boolean): boolean => !rail && (index === 0 || index === 3)

/** How many detours of a step use the room over and under its ends. */
export function detourCounts(step: Step, rail: boolean): { above: number; below: number } {
  const above = step.alts.filter((_, i) => goesAbove(i, rail)).length
  return { above, below: step.alts.length - above }
}

const beside = corner + 5

const overOf = (way: Way): readonly Item[] => way.brief ?? way.over
const underOf = (way: Way): readonly Item[] => way.under.filter(item => item.length > 0)

interface Texts {
  readonly over: Lines
  readonly under: Lines
}

const textsOf = (way: Way, width: number): Texts => ({
  over: fill(overOf(way), width, size.text),
  under: fill(underOf(way), width, size.text),
})

/** Where the k-th of n detours stands at an end: slots about the middle, incoming ones left of outgoing ones. */
export interface Slots {
  readonly before: number
  readonly total: number
}

/** Slots stand closer where many end at a narrow structure. */
export const pitchOf = (total: number, wide: number): number =>
  Math.max(6, Math.min(slotPitch, Math.floor((wide + 16) / Math.max(1, total))))

const slotX = (end: End, side: 'above' | 'below', slots: Slots, k: number): number =>
  Math.round(end.x + (slots.before + k - (slots.total - 1) / 2) * pitchOf(slots.total, side === 'above' ? end.wideAbove : end.wideBelow))

export interface DetourIn {
  readonly step: Step
  readonly from: End
  readonly to: End
  /** Slots at each end, above and below. */
  readonly fromSlots: { readonly above: Slots; readonly below: Slots }
  readonly toSlots: { readonly above: Slots; readonly below: Slots }
}

/**
 * Detours between two compounds of a row, nested about it. Null where the span is too narrow for their text.
 *
 * @param taken room taken by the row so far
 */
export function detoursOf(
  input: DetourIn,
  taken: readonly Rect[],
): { boxes: Rect[]; draw(sheet: Sheet, x: number, y: number): void } | null {
  const { step, from, to } = input
  const boxes: Rect[] = []
  const draws: ((sheet: Sheet, x: number, y: number) => void)[] = []
  const ways: readonly Way[] = [step, ...step.alts]
  const sides = { above: 0, below: 0 }
  for (let i = 0; i < step.alts.length; i++) {
    const side = goesAbove(i, from.rail) ? 'above' : 'below'
    const k = sides[side]++
    const out = input.fromSlots[side]
    const into = input.toSlots[side]
    const own = detourCounts(step, from.rail)[side]
    // Nested: the k-th from inside leaves at the k-th slot from the right and arrives at the k-th from the left.
    const x1 = from.rail ? 0 : slotX(from, side, out, own - 1 - k)
    const x2 = slotX(to, side, into, k)
    const width = x2 - x1 - 2 * beside
    const texts = ways.map(way => textsOf(way, width))
    const widest = Math.max(...texts.map(({ over, under }) => Math.max(over.w, under.w)))
    if (widest > width) return null
    const overLines = Math.max(1, ...texts.map(({ over }) => over.lines.length))
    const underLines = Math.max(1, ...texts.map(({ under }) => under.lines.length))
    const all = [...taken, ...boxes]
    const x0 = x1 - 3
    const x3 = x2 + 3
    const level =
      side === 'above'
        ? Math.floor(ceilingBetween(all, x0, x3) - 8 - underLines * lineHeight.text)
        : Math.ceil(floorBetween(all, x0, x3) + 8 + overAxis + overLines * lineHeight.text - 4)
    // From a rail a plain stem goes down first; dashes and hatches begin where the detour turns off.
    const startY = side === 'above' ? from.topAt(x1) - 4 : from.rail ? level - corner : from.bottomAt(x1) + 4
    const tipY = side === 'above' ? to.topAt(x2) - 5 : to.bottomAt(x2) + 5
    const pts = [
      [x1, startY],
      [x1, level],
      [x2, level],
      [x2, tipY],
    ] as const
    const alt = step.alts[i]!
    const mine = textsOf(alt, width)
    const middle = (x1 + x2) / 2
    boxes.push(
      [x1 - 1, Math.min(startY, level), x1 + 1, Math.max(startY, level)],
      [x2 - 4, Math.min(tipY, level), x2 + 4, Math.max(tipY, level)],
    )
    boxes.push([x1, level - 1, x2, level + 1])
    boxes.push([
      middle - widest / 2,
      level - overAxis - (overLines - 1) * lineHeight.text - 10,
      middle + widest / 2,
      level + underAxis + (underLines - 1) * lineHeight.text + 4,
    ])
    draws.push((sheet, x, y) => {
      const of = { step: step.to, way: alt.id }
      const id = `${step.to}/alt/${alt.id}`
      if (from.rail) {
        drawPath(
          sheet,
          `${id}/stem`,
          [
            [x, y],
            [x, y + level - corner],
          ],
          { step: step.to },
          { grey: true, cls: 'rail', from: step.from },
        )
      }
      drawPath(
        sheet,
        id,
        pts.map(([px, py]) => [px + x, py + y] as const),
        of,
        { grey: true, sure: alt.sure, head: 'full', cls: 'detour', from: step.from, to: step.to },
      )
      mine.over.lines.forEach((line, n) => {
        const at = middle - itemWidth(line, size.text) / 2
        const base = level - overAxis - (mine.over.lines.length - 1 - n) * lineHeight.text
        drawText(sheet, `${id}/over${n}`, line, x + at, y + base, of, { tone: 'grey' })
      })
      mine.under.lines.forEach((line, n) => {
        const at = middle - itemWidth(line, size.text) / 2
        drawText(sheet, `${id}/under${n}`, line, x + at, y + level + underAxis + n * lineHeight.text, of, { tone: 'grey', cls: 'result' })
      })
    })
  }
  return {
    boxes,
    draw: (sheet, x, y) => {
      for (const draw of draws) draw(sheet, x, y)
    },
  }
}
