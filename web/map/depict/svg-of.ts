import type { Drawing } from '../../../core/chemistry/drawing.ts'
import type { Mark } from '../mark.ts'
import { markText } from '../mark.ts'
import { type Strokes, strokesOf } from './strokes.ts'

const memo = new WeakMap<Drawing, Strokes>()

/** A structure as marks about (0, 0), inking in currentColor; put it into a group with a transform. */
export function marksOf(drawing: Drawing): Mark[] {
  const strokes = memo.get(drawing) ?? strokesOf(drawing)
  memo.set(drawing, strokes)
  const marks: Mark[] = [
    { tag: 'path', attrs: { d: strokes.lines, fill: 'none', stroke: 'currentColor', 'stroke-width': 1.25, 'stroke-linecap': 'round' } },
  ]
  if (strokes.fills) marks.push({ tag: 'path', attrs: { d: strokes.fills, fill: 'currentColor' } })
  for (const glyph of strokes.glyphs) {
    marks.push({
      tag: 'text',
      attrs: { x: Math.round(glyph.x * 10) / 10, y: Math.round(glyph.y * 10) / 10, 'font-size': glyph.size, fill: 'currentColor' },
      kids: [glyph.t],
    })
  }
  return marks
}

/** The whole picture as SVG text, for a list, a label or a node of the wide network. */
export function svgOf(drawing: Drawing, color = 'currentColor'): string {
  const { w, h } = drawing
  const marks = marksOf(drawing).map(markText).join('')
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="${-w / 2} ${-h / 2} ${w} ${h}" color="${color}" font-family="'Ysabeau Office Variable', 'Gill Sans', Optima, 'Segoe UI', sans-serif" font-weight="460">${marks}</svg>`
}
