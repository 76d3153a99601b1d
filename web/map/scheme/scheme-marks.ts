import type { Drawing } from '../../../core/chemistry/drawing.ts'
import { marksOf } from '../depict/svg-of.ts'
import type { Mark } from '../mark.ts'
import { runSize } from './text-width.ts'
import type { El, PathEl, PickEl, TextEl } from './types.ts'

const n = (value: number): string => String(Math.round(value * 10) / 10 + 0)

/** Path data of a polyline with its corners rounded. */
export function pathData(pts: PathEl['pts'], r: number): string {
  let d = `M${n(pts[0]![0])} ${n(pts[0]![1])}`
  for (let i = 1; i < pts.length - 1; i++) {
    const [ax, ay] = pts[i - 1]!
    const [bx, by] = pts[i]!
    const [cx, cy] = pts[i + 1]!
    const before = Math.hypot(bx - ax, by - ay)
    const after = Math.hypot(cx - bx, cy - by)
    if (before === 0 || after === 0) continue
    // Two corners share the stretch between them.
    const cut = Math.min(r, i === 1 ? before : before / 2, i === pts.length - 2 ? after : after / 2)
    d += `L${n(bx + ((ax - bx) / before) * cut)} ${n(by + ((ay - by) / before) * cut)}`
    d += `Q${n(bx)} ${n(by)} ${n(bx + ((cx - bx) / after) * cut)} ${n(by + ((cy - by) / after) * cut)}`
  }
  const [x, y] = pts.at(-1)!
  return `${d}L${n(x)} ${n(y)}`
}

/** A head at the end of a path, pointing the way it goes. */
function headData(pts: PathEl['pts'], small: boolean): string {
  const [ax, ay] = pts.at(-2)!
  const [bx, by] = pts.at(-1)!
  const length = Math.hypot(bx - ax, by - ay) || 1
  const ux = (bx - ax) / length
  const uy = (by - ay) / length
  const long = small ? 6.5 : 9
  const half = small ? 2.8 : 3.8
  const notch = small ? 5 : 7
  const at = (back: number, side: number) => `${n(bx - ux * back - uy * side)} ${n(by - uy * back + ux * side)}`
  return `M${n(bx)} ${n(by)}L${at(long, half)}L${at(notch, 0)}L${at(long, -half)}Z`
}

/** The line stops inside its head, so that its blunt end does not show beyond the point. */
function shortened(path: PathEl): PathEl['pts'] {
  if (!path.head) return path.pts
  const back = path.head === 'small' ? 4 : 6
  const [ax, ay] = path.pts.at(-2)!
  const [bx, by] = path.pts.at(-1)!
  const length = Math.hypot(bx - ax, by - ay)
  const keep = length > back ? (length - back) / length : 0
  return [...path.pts.slice(0, -1), [ax + (bx - ax) * keep, ay + (by - ay) * keep]]
}

/** Crossing strokes of a hatched line, at right angles to where it runs: unknown, also without colour. */
function hatchData(pts: PathEl['pts']): string {
  let d = ''
  for (let i = 1; i < pts.length; i++) {
    const [ax, ay] = pts[i - 1]!
    const [bx, by] = pts[i]!
    const length = Math.hypot(bx - ax, by - ay)
    const ux = (bx - ax) / (length || 1)
    const uy = (by - ay) / (length || 1)
    // Off the corners and off the head.
    for (let along = 10; along <= length - 12; along += 6) {
      const x = ax + ux * along
      const y = ay + uy * along
      d += `M${n(x - ux * 2 - uy * 3)} ${n(y - uy * 2 + ux * 3)}L${n(x + ux * 2 + uy * 3)} ${n(y + uy * 2 - ux * 3)}`
    }
  }
  return d
}

export function pathMarks(path: PathEl): Mark[] {
  const marks: Mark[] = [{ tag: 'path', attrs: { class: `way ${path.tone} ${path.sure}`, d: pathData(shortened(path), path.r) } }]
  if (path.sure === 'unknown') marks.push({ tag: 'path', attrs: { class: `hatch ${path.tone}`, d: hatchData(path.pts) } })
  if (path.head) marks.push({ tag: 'path', attrs: { class: `head ${path.tone}`, d: headData(path.pts, path.head === 'small') } })
  return marks
}

/** Text with subscripts and with letters beside figures: the baseline goes down or up and comes back. */
export function textMark(el: TextEl): Mark {
  const kids: (Mark | string)[] = []
  let at = 0
  for (const run of el.runs) {
    const attrs: Record<string, string | number> = {}
    const to = run.mark !== undefined ? -4 : run.sub ? 3 : 0
    if (to !== at) attrs.dy = to - at
    at = to
    if (run.sub || run.mark !== undefined) attrs['font-size'] = runSize(run, el.size)
    if (run.b) attrs['font-weight'] = 680
    if (run.i) attrs['font-style'] = 'italic'
    if (run.pen) attrs.class = 'pen'
    kids.push(Object.keys(attrs).length > 0 ? { tag: 'tspan', attrs, kids: [run.t] } : run.t)
  }
  const style = { class: `${el.cls} ${el.tone}${el.link ? ' link' : ''}`, 'font-size': el.size, 'font-weight': el.wght }
  return { tag: 'text', attrs: { x: n(el.x), y: n(el.y), ...style, 'xml:space': 'preserve' }, kids }
}

/** The two words of a pick with their dots; print and page share them. */
export function pickMarks(pick: PickEl): { value: 'buy' | 'make'; on: boolean; x: number; w: number; marks: Mark[] }[] {
  const middle = pick.y + pick.h / 2
  const words: { value: 'buy' | 'make'; text: string; on: boolean }[] =
    pick.value === 'make only'
      ? [{ value: 'make', text: 'make only', on: true }]
      : [
          { value: 'buy', text: 'buy', on: pick.value === 'buy' },
          { value: 'make', text: 'make', on: pick.value === 'make' },
        ]
  let x = pick.x
  return words.map(({ value, text, on }, i) => {
    const w = i === 0 && words.length > 1 ? pickSecond : pick.x + pick.w - x
    const at = x
    x += w
    const cls = `${pick.grey ? 'grey' : 'pen'} ${on ? 'on' : 'off'}`
    const marks: Mark[] = [
      { tag: 'circle', attrs: { class: `dot ${cls}`, cx: n(at + 4), cy: n(middle - 0.3), r: on ? 4 : 3.5 } },
      {
        tag: 'text',
        attrs: { class: `word ${cls}`, x: n(at + 12), y: n(middle + 4), 'font-size': 13.33, 'font-weight': on ? 640 : 460 },
        kids: [text],
      },
    ]
    return { value, on, x: at, w, marks }
  })
}

// Where the second word's dot begins: dot and gap 12, "buy" in the heavier weight 22, gap 12.
const pickSecond = 46

/** One element as marks; structures need their drawing. */
export function elMarks(el: El, drawingOf: (cell: string) => Drawing | undefined): Mark[] {
  switch (el.el) {
    case 'path':
      return pathMarks(el)
    case 'text':
      return [textMark(el)]
    case 'dot':
      return [{ tag: 'circle', attrs: { class: `node ${el.tone}`, cx: n(el.x), cy: n(el.y), r: 3.4 } }]
    case 'rule2': {
      const d = `M${n(el.x)} ${n(el.y)}h${n(el.w)}M${n(el.x)} ${n(el.y + 2.5)}h${n(el.w)}`
      return [{ tag: 'path', attrs: { class: 'rule2', d } }]
    }
    case 'pick':
      return pickMarks(el).flatMap(({ marks }) => marks)
    case 'mol': {
      const drawing = el.of.cell ? drawingOf(el.of.cell) : undefined
      const kids = drawing ? marksOf(drawing) : []
      return [{ tag: 'g', attrs: { class: `mol ${el.grey ? 'rail' : 'ink'}`, transform: `translate(${n(el.x)} ${n(el.y)})` }, kids }]
    }
  }
}
