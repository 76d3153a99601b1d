import type { Elements } from './elements.ts'
import type { Placed } from './placed.ts'

/** Size of all that is placed, px, and in how many columns the compounds stand. */
export function extentOf({ dots }: Elements, { at }: Placed) {
  const spans = dots.flatMap(({ id, w, h }) => {
    const centre = at[id]
    return centre === undefined ? [] : [{ x1: centre.x - w / 2, x2: centre.x + w / 2, y1: centre.y - h / 2, y2: centre.y + h / 2 }]
  })
  if (spans.length === 0) return { w: 0, h: 0, columns: 0 }
  return {
    w: Math.max(...spans.map(span => span.x2)) - Math.min(...spans.map(span => span.x1)),
    h: Math.max(...spans.map(span => span.y2)) - Math.min(...spans.map(span => span.y1)),
    columns: new Set(dots.map(({ id }) => at[id]?.x)).size,
  }
}
