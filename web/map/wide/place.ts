import { coordGreedy, decrossTwoLayer, type GraphNode, graphConnect, layeringSimplex, sugiyama } from 'd3-dag'
import type { Elements } from './elements.ts'
import { extentOf } from './extent.ts'
import type { Placed } from './placed.ts'

type Datum = [string, string, string]

/** Room between the columns, px: as much as looks well, and as little as still shows an arrow. */
const between = 64
const leastBetween = 30
const apart = 16

/**
 * A layered layout from left to right. A few hundred dots take some tenths of a second: run it in a worker.
 *
 * @param room  width there is, px: columns move together where that makes the whole fit
 */
export function place(elements: Elements, room = Number.POSITIVE_INFINITY): Placed {
  const wide = placedAt(elements, between)
  const { w, columns } = extentOf(elements, wide)
  if (w <= room || columns < 2) return wide
  const gap = between - (w - room) / (columns - 1)
  return placedAt(elements, Math.max(leastBetween, gap))
}

function placedAt({ dots, links }: Elements, gap: number): Placed {
  if (dots.length === 0) return { at: {}, bends: {} }
  const sizes = new Map(dots.map(dot => [dot.id, dot]))
  // The layout learns of nodes only through links; [id, id] stands for one without any.
  const linked = new Set(links.flatMap(link => [link.source, link.target]))
  const data: Datum[] = [
    ...links.map(({ source, target, id }): Datum => [source, target, id]),
    ...dots.filter(dot => !linked.has(dot.id)).map(({ id }): Datum => [id, id, id]),
  ]
  const graph = graphConnect().single(true)(data)
  const layout = sugiyama()
    .layering(layeringSimplex())
    .decross(decrossTwoLayer())
    .coord(coordGreedy())
    // It lays out downwards: width and height change places, and so do x and y below.
    .nodeSize((node: GraphNode<string, Datum>): [number, number] => [sizes.get(node.data)?.h ?? 1, sizes.get(node.data)?.w ?? 1])
    .gap([apart, gap])
  layout(graph)
  const at: Record<string, { x: number; y: number }> = {}
  for (const node of graph.nodes()) at[node.data] = { x: Math.round(node.y), y: Math.round(node.x) }
  const bends: Record<string, { x: number; y: number }[]> = {}
  for (const link of graph.links()) {
    // A link of a circle is laid out against its direction.
    const points = link.points.map(([x, y]) => ({ x: Math.round(y), y: Math.round(x) }))
    const source = at[link.data[0]]!
    const first = points[0]!
    const last = points.at(-1)!
    const reversed = Math.hypot(last.x - source.x, last.y - source.y) < Math.hypot(first.x - source.x, first.y - source.y)
    const inner = points.slice(1, -1)
    bends[link.data[2]] = reversed ? inner.reverse() : inner
  }
  return { at, bends }
}
