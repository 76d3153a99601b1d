import type { Rect, Sheet } from './block.ts'
import { size, weight } from './measures.ts'
import { itemWidth } from './text-width.ts'
import type { Cell, El, Item, MolEl, PathEl, Step, Sure, Tone } from './types.ts'

type Of = El['of']

/** Adds an element; its id is made of what it belongs to and its place there, so that the same plan gives the same ids. */
function add(sheet: Sheet, el: El): void {
  sheet.els.push(el)
}

/** What a compound's drawing takes, px about its centre. */
export interface Body {
  readonly w: number
  readonly h: number
  readonly topX: number
  readonly topY: number
}

/** Structure or formula of a cell; null where it stands by its name alone. */
export function bodyOf(cell: Cell): Body | null {
  if (cell.kind === 'structure' && cell.shape) return cell.shape
  if (cell.kind === 'words' || !cell.formula) return null
  const w = Math.ceil(itemWidth(cell.formula, size.formula))
  return { w, h: 18, topX: 0, topY: -9 }
}

/** Draws a cell's structure or formula about (x, y). */
export function drawBody(sheet: Sheet, id: string, cell: Cell, x: number, y: number, of: Of): void {
  const body = bodyOf(cell)
  if (!body) return
  const grey = cell.grey ?? false
  if (cell.kind === 'structure') {
    const mol: MolEl = { el: 'mol', id, cls: 'mol', of, x, y, w: body.w, h: body.h, grey }
    add(sheet, mol)
  } else if (cell.formula) {
    drawText(sheet, id, cell.formula, x - body.w / 2, y + 6, of, { size: size.formula, tone: grey ? 'grey' : 'ink', cls: 'formula' })
  }
}

export interface TextStyle {
  readonly size?: number
  readonly wght?: number
  readonly tone?: Tone
  readonly cls?: string
  readonly link?: boolean
  readonly touch?: number
}

/** One line of text from the start of its baseline. */
export function drawText(sheet: Sheet, id: string, runs: Item, x: number, y: number, of: Of, style: TextStyle = {}): void {
  const at = style.size ?? size.text
  const wght = style.wght ?? weight.text
  add(sheet, {
    el: 'text',
    id,
    cls: style.cls ?? 'condition',
    of,
    x: round(x),
    y: round(y),
    w: itemWidth(runs, at, wght),
    size: at,
    wght,
    tone: style.tone ?? 'ink',
    runs,
    ...(style.link ? { link: true } : {}),
    ...(style.touch ? { touch: style.touch } : {}),
  })
}

/** Room of a line of text: 0.68 of the size up, 0.3 down. */
export const textRect = (x: number, y: number, w: number, at: number): Rect => [x, y - 0.68 * at - 1, x + w, y + 0.3 * at]

export interface PathStyle {
  readonly grey?: boolean
  readonly sure?: Sure
  readonly head?: 'full' | 'small'
  readonly r?: number
  readonly cls?: string
  readonly from?: string
  readonly to?: string
}

export function drawPath(sheet: Sheet, id: string, pts: PathEl['pts'], of: Of, style: PathStyle = {}): void {
  add(sheet, {
    el: 'path',
    id,
    cls: style.cls ?? 'arrow',
    of,
    pts: pts.map(([x, y]) => [round(x), round(y)] as const),
    r: style.r ?? 12,
    tone: style.grey ? 'grey' : 'ink',
    sure: style.sure ?? 'seen',
    ...(style.head ? { head: style.head } : {}),
    ...(style.from ? { from: style.from } : {}),
    ...(style.to ? { to: style.to } : {}),
  })
}

/** The arrow of a step, to its product's cell. */
export function drawArrow(sheet: Sheet, step: Step, pts: PathEl['pts'], to: string = step.to): void {
  const style: PathStyle = { grey: step.grey ?? false, sure: step.sure, head: 'full', from: step.from, to }
  drawPath(sheet, `${step.to}/arrow`, pts, { step: step.to, way: step.id }, style)
}

export function drawDot(sheet: Sheet, id: string, x: number, y: number, of: Of, grey: boolean): void {
  add(sheet, { el: 'dot', id, cls: 'dot', of, x: round(x), y: round(y), tone: grey ? 'grey' : 'ink' })
}

export function drawRule(sheet: Sheet, id: string, x: number, y: number, w: number, of: Of): void {
  add(sheet, { el: 'rule2', id, cls: 'rule2', of, x: round(x), y: round(y), w })
}

/** Two words with a dot each. */
export const pickWidth = (value: NonNullable<Cell['pick']>): number =>
  Math.ceil(
    value === 'make only'
      ? 12 + itemWidth([{ t: 'make only' }], size.text, 640)
      : 12 + itemWidth([{ t: 'buy' }], size.text, 640) + 12 + 12 + itemWidth([{ t: 'make' }], size.text, 640),
  )

export function drawPick(sheet: Sheet, id: string, cell: Cell, x: number, y: number, h: number, of: Of): void {
  if (!cell.pick) return
  add(sheet, {
    el: 'pick',
    id,
    cls: 'pick',
    of,
    x: round(x),
    y: round(y),
    w: pickWidth(cell.pick),
    h,
    value: cell.pick,
    grey: cell.grey ?? false,
  })
}

const round = (value: number): number => Math.round(value * 100) / 100 + 0
