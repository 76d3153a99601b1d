import type { El, PathEl, SchemeIn, SchemeOut } from '../../web/map/scheme/types.ts'

export interface Box {
  readonly id: string
  readonly kind: 'text' | 'mol' | 'pick'
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

type Point = readonly [number, number]

/** Ink of a line of text: 0.68 of its size up, 0.2 down, 0.3 where it has subscripts. */
export function boxesOf(out: SchemeOut): Box[] {
  return out.els.flatMap((el): Box[] => {
    if (el.el === 'text') {
      const down = el.runs.some(run => run.sub) ? 0.3 : 0.2
      return [{ id: el.id, kind: 'text', x1: el.x, y1: el.y - 0.68 * el.size, x2: el.x + el.w, y2: el.y + down * el.size }]
    }
    if (el.el === 'mol')
      return [{ id: el.id, kind: 'mol', x1: el.x - el.w / 2, y1: el.y - el.h / 2, x2: el.x + el.w / 2, y2: el.y + el.h / 2 }]
    if (el.el === 'pick') return [{ id: el.id, kind: 'pick', x1: el.x, y1: el.y, x2: el.x + el.w, y2: el.y + el.h }]
    return []
  })
}

/** A path with its corners rounded, as straight bits. */
export function flattened(path: PathEl): Point[] {
  const { pts, r } = path
  const out: Point[] = [pts[0]!]
  for (let i = 1; i < pts.length - 1; i++) {
    const [ax, ay] = pts[i - 1]!
    const [bx, by] = pts[i]!
    const [cx, cy] = pts[i + 1]!
    const before = Math.hypot(bx - ax, by - ay)
    const after = Math.hypot(cx - bx, cy - by)
    const cut = Math.min(r, i === 1 ? before : before / 2, i === pts.length - 2 ? after : after / 2)
    if (before === 0 || after === 0) continue
    const start: Point = [bx + ((ax - bx) / before) * cut, by + ((ay - by) / before) * cut]
    const end: Point = [bx + ((cx - bx) / after) * cut, by + ((cy - by) / after) * cut]
    for (let k = 0; k <= 6; k++) {
      const t = k / 6
      const u = 1 - t
      out.push([u * u * start[0] + 2 * u * t * bx + t * t * end[0], u * u * start[1] + 2 * u * t * by + t * t * end[1]])
    }
  }
  out.push(pts.at(-1)!)
  return out
}

/** Does a straight bit touch a box grown by `near`? (Liang and Barsky's clipping.) */
function touches(a: Point, b: Point, box: Box, near: number): boolean {
  let low = 0
  let high = 1
  const dx = b[0] - a[0]
  const dy = b[1] - a[1]
  const bounds: [number, number][] = [
    [-dx, a[0] - (box.x1 - near)],
    [dx, box.x2 + near - a[0]],
    [-dy, a[1] - (box.y1 - near)],
    [dy, box.y2 + near - a[1]],
  ]
  for (const [p, q] of bounds) {
    if (p === 0) {
      if (q < 0) return false
    } else if (p < 0) low = Math.max(low, q / p)
    else high = Math.min(high, q / p)
  }
  return low <= high
}

function distance(p: Point, a: Point, b: Point): number {
  const dx = b[0] - a[0]
  const dy = b[1] - a[1]
  const length2 = dx * dx + dy * dy
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length2))
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
}

/** Do two bits cross within both, not merely meet at an end or lie along each other? */
function crosses(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, s: Point) => (q[0] - p[0]) * (s[1] - p[1]) - (q[1] - p[1]) * (s[0] - p[0])
  const near = 3
  for (const p of [a, b]) if (distance(p, c, d) < near) return false
  for (const p of [c, d]) if (distance(p, a, b) < near) return false
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0
}

const isPath = (el: El): el is PathEl => el.el === 'path'

/** Everything wrong with a laid-out scheme, in words; empty when all is well. */
export function findings(input: SchemeIn, out: SchemeOut): string[] {
  const found: string[] = []
  const boxes = boxesOf(out)
  const paths = out.els.filter(isPath).map(path => ({ path, pts: flattened(path) }))
  // 1. No two boxes overlap.
  for (let i = 0; i < boxes.length; i++) {
    for (let j = i + 1; j < boxes.length; j++) {
      const a = boxes[i]!
      const b = boxes[j]!
      if (Math.min(a.x2, b.x2) - Math.max(a.x1, b.x1) > 0.5 && Math.min(a.y2, b.y2) - Math.max(a.y1, b.y1) > 0.5)
        found.push(`overlap: ${a.id} and ${b.id}`)
    }
  }
  // 2. No path within 1 px of a text or pick, none through a structure.
  for (const { path, pts } of paths) {
    for (const box of boxes) {
      const near = box.kind === 'mol' ? -0.5 : 1
      if (pts.some((p, i) => i > 0 && touches(pts[i - 1]!, p, box, near))) found.push(`line through: ${path.id} and ${box.id}`)
    }
  }
  // 3. Nothing outside the pane.
  const inside = (x1: number, y1: number, x2: number, y2: number) => x1 >= -0.5 && y1 >= -0.5 && x2 <= out.w + 0.5 && y2 <= out.h + 0.5
  if (out.w > input.pane) found.push(`wider than the pane: ${out.w}`)
  for (const box of boxes) if (!inside(box.x1, box.y1, box.x2, box.y2)) found.push(`outside: ${box.id}`)
  for (const { path, pts } of paths)
    for (const [x, y] of pts)
      if (!inside(x, y, x, y)) {
        found.push(`outside: ${path.id}`)
        break
      }
  // 4. Every path starts and ends at its compound or on another path.
  const bodies = new Map<string, Box>()
  for (const box of boxes) bodies.set(box.id, box)
  // A compound that stands by its name alone is that block of lines, however ragged.
  for (const [id, cell] of Object.entries(input.cells)) {
    const first = bodies.get(id)
    if (cell.kind !== 'words' || !first) continue
    const lines = boxes.filter(box => box.id === id || box.id.startsWith(`${id}/name`))
    bodies.set(id, {
      ...first,
      x1: Math.min(...lines.map(box => box.x1)),
      x2: Math.max(...lines.map(box => box.x2)),
      y2: Math.max(...lines.map(box => box.y2)),
    })
  }
  const near = (p: Point, id: string | undefined): boolean => {
    if (!id) return false
    return [...boxes, ...bodies.values()].some(
      box =>
        (box.id === id || box.id.startsWith(`${id}/`)) &&
        p[0] >= box.x1 - 14 &&
        p[0] <= box.x2 + 14 &&
        p[1] >= box.y1 - 14 &&
        p[1] <= box.y2 + 14,
    )
  }
  for (const { path, pts } of paths) {
    for (const [end, id] of [
      [pts[0]!, path.from],
      [pts.at(-1)!, path.to],
    ] as const) {
      const onAnother = paths.some(
        other => other.path !== path && other.pts.some((p, i) => i > 0 && distance(end, other.pts[i - 1]!, p) <= 2.5),
      )
      if (!near(end, id) && !onAnother) found.push(`loose end: ${path.id} at ${end.map(Math.round).join(',')}`)
    }
  }
  // 5. Every step is drawn.
  const drawn = new Set(paths.map(({ path }) => path.id))
  for (const step of input.steps) {
    if (!drawn.has(`${step.to}/arrow`)) found.push(`step not drawn: ${step.to}`)
    if (!bodies.has(step.to)) found.push(`product not drawn: ${step.to}`)
  }
  // 6. No crossings.
  for (let i = 0; i < paths.length; i++) {
    for (let j = i + 1; j < paths.length; j++) {
      const a = paths[i]!
      const b = paths[j]!
      if (a.pts.some((p, m) => m > 0 && b.pts.some((q, n) => n > 0 && crosses(a.pts[m - 1]!, p, b.pts[n - 1]!, q))))
        found.push(`crossing: ${a.path.id} and ${b.path.id}`)
    }
  }
  // 7. No text below 12 px, subscripts and charges apart.
  for (const el of out.els) if (el.el === 'text' && el.size < 12) found.push(`too small: ${el.id}`)
  return found
}
