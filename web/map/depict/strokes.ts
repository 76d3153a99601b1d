import type { Drawing, DrawnAtom, DrawnBond } from '../../../core/chemistry/drawing.ts'
import { textWidth } from '../scheme/text-width.ts'

export interface Glyph {
  readonly x: number
  readonly y: number
  readonly t: string
  readonly size: number
}

/** A drawing as pen strokes and letters, px about its centre. */
export interface Strokes {
  /** Path data of every line of one weight. */
  readonly lines: string
  /** Path data of filled wedges. */
  readonly fills: string
  readonly glyphs: readonly Glyph[]
}

interface Rect {
  readonly l: number
  readonly r: number
  readonly t: number
  readonly b: number
}

const labelSize = 12
const subSize = 9.5
const chargeSize = 8.5
const capHeight = 8
const airAround = 1.5
/** Distance of the two lines of a double bond inside a ring, and of a symmetric one. */
const inner = 2.6
const symmetric = 1.4

const n = (value: number): string => String(Math.round(value * 10) / 10 + 0)

/** Letters of one atom's label and the box that bonds stop at. */
function labelOf(atom: DrawnAtom): { glyphs: Glyph[]; box: Rect } | null {
  if (!atom.label) return null
  const glyphs: Glyph[] = []
  const width = textWidth(atom.el, labelSize)
  const base = atom.y + capHeight / 2
  const left = atom.x - width / 2
  const box = { l: left - airAround, r: left + width + airAround, t: base - capHeight - airAround, b: base + airAround }
  glyphs.push({ x: left, y: base, t: atom.el, size: labelSize })
  if (atom.isotope) {
    const wide = textWidth(String(atom.isotope), chargeSize)
    glyphs.push({ x: left - wide, y: base - 4.5, t: String(atom.isotope), size: chargeSize })
    box.l -= wide
  }
  const h = atom.h ?? 0
  const count = h > 1 ? String(h) : ''
  const hWidth = h > 0 ? textWidth('H', labelSize) + textWidth(count, subSize) : 0
  const hydrogens = (x: number, y: number) => {
    glyphs.push({ x, y, t: 'H', size: labelSize })
    if (count) glyphs.push({ x: x + textWidth('H', labelSize), y: y + 2.4, t: count, size: subSize })
  }
  if (h > 0) {
    if (atom.label === 'right') {
      hydrogens(left + width, base)
      box.r += hWidth
    } else if (atom.label === 'left') {
      hydrogens(left - hWidth, base)
      box.l -= hWidth
    } else if (atom.label === 'above') {
      hydrogens(atom.x - textWidth('H', labelSize) / 2, base - 10.5)
      box.t -= 10.5
    } else {
      hydrogens(atom.x - textWidth('H', labelSize) / 2, base + 10.5)
      box.b += 10.5
    }
  }
  if (atom.charge || atom.radical) {
    const amount = Math.abs(atom.charge ?? 0)
    const t = `${atom.radical ? '•' : ''}${amount > 1 ? amount : ''}${amount === 0 ? '' : (atom.charge ?? 0) > 0 ? '+' : '−'}`
    const right = atom.label === 'right' ? left + width + hWidth : left + width
    glyphs.push({ x: right + 0.5, y: base - 4.5, t, size: chargeSize })
  }
  return { glyphs, box }
}

/** How much of the way from p to q lies inside the box at p. */
function inside(box: Rect | undefined, px: number, py: number, qx: number, qy: number): number {
  if (!box) return 0
  const dx = qx - px
  const dy = qy - py
  const alongX = dx > 0 ? (box.r - px) / dx : dx < 0 ? (box.l - px) / dx : Number.POSITIVE_INFINITY
  const alongY = dy > 0 ? (box.b - py) / dy : dy < 0 ? (box.t - py) / dy : Number.POSITIVE_INFINITY
  return Math.min(1, Math.max(0, Math.min(alongX, alongY)))
}

interface Ends {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly freeA: number
  readonly freeB: number
}

/** A line beside the bond, cut back from the ends by the labels there and by `short` of its length. */
function line(ends: Ends, offset: number, shortA: number, shortB: number, boxA: Rect | undefined, boxB: Rect | undefined): string {
  const dx = ends.bx - ends.ax
  const dy = ends.by - ends.ay
  const length = Math.hypot(dx, dy) || 1
  const ox = (-dy / length) * offset
  const oy = (dx / length) * offset
  const ax = ends.ax + ox
  const ay = ends.ay + oy
  const bx = ends.bx + ox
  const by = ends.by + oy
  const from = Math.max(shortA, inside(boxA, ax, ay, bx, by))
  const to = 1 - Math.max(shortB, inside(boxB, bx, by, ax, ay))
  if (to <= from) return ''
  return `M${n(ax + (bx - ax) * from)} ${n(ay + (by - ay) * from)}L${n(ax + (bx - ax) * to)} ${n(ay + (by - ay) * to)}`
}

function wedge(ends: Ends, kind: 'up' | 'down'): { line: string; fill: string } {
  const dx = ends.bx - ends.ax
  const dy = ends.by - ends.ay
  const length = Math.hypot(dx, dy) || 1
  const nx = -dy / length
  const ny = dx / length
  const at = (along: number, beside: number) => `${n(ends.ax + dx * along + nx * beside)} ${n(ends.ay + dy * along + ny * beside)}`
  const half = 2.4
  if (kind === 'up') return { line: '', fill: `M${at(ends.freeA, 0)}L${at(ends.freeB, half)}L${at(ends.freeB, -half)}Z` }
  let hatches = ''
  const count = 5
  for (let i = 1; i <= count; i++) {
    const along = ends.freeA + ((ends.freeB - ends.freeA) * i) / count
    const beside = (half * i) / count + 0.3
    hatches += `M${at(along, beside)}L${at(along, -beside)}`
  }
  return { line: hatches, fill: '' }
}

/**
 * The pen strokes of a structure. Bonds are cut at the label's box, so that no halo is needed and it prints on any ground.
 */
export function strokesOf(drawing: Drawing): Strokes {
  const labels = drawing.atoms.map(labelOf)
  const boxes = labels.map(label => label?.box)
  let lines = ''
  let fills = ''
  for (const bond of drawing.bonds) {
    const a = drawing.atoms[bond.a]!
    const b = drawing.atoms[bond.b]!
    const ends: Ends = {
      ax: a.x,
      ay: a.y,
      bx: b.x,
      by: b.y,
      freeA: inside(boxes[bond.a], a.x, a.y, b.x, b.y),
      freeB: 1 - inside(boxes[bond.b], b.x, b.y, a.x, a.y),
    }
    if (bond.wedge) {
      const made = wedge(ends, bond.wedge)
      lines += made.line
      fills += made.fill
      continue
    }
    lines += bondLines(bond, ends, boxes)
  }
  return { lines, fills, glyphs: [...labels.flatMap(label => label?.glyphs ?? []), ...captionOf(drawing)] }
}

const captionOf = ({ caption, h }: Drawing): readonly Glyph[] =>
  caption === undefined ? [] : [{ x: -textWidth(caption, subSize) / 2, y: h / 2 - 2, t: caption, size: subSize }]

function bondLines(bond: DrawnBond, ends: Ends, boxes: readonly (Rect | undefined)[]): string {
  const boxA = boxes[bond.a]
  const boxB = boxes[bond.b]
  const middle = line(ends, 0, 0, 0, boxA, boxB)
  if (bond.order === 1) return middle
  if (bond.order === 3) return middle + line(ends, inner - 0.2, 0.06, 0.06, boxA, boxB) + line(ends, 0.2 - inner, 0.06, 0.06, boxA, boxB)
  if (bond.side === 0) return line(ends, symmetric, 0, 0, boxA, boxB) + line(ends, -symmetric, 0, 0, boxA, boxB)
  // The inner line is short where the bond meets others; a label cuts it anyway.
  return middle + line(ends, inner * (bond.side ?? 1), 0.12, 0.12, boxA, boxB)
}
