import { arcValue } from './best.ts'
import type { MakerOrder, Overlay } from './partial.ts'
import { lesser, type Space } from './space.ts'

/** Makers of a node by their value under the labels, ties by number; arcs that only hand on are no decision. */
export function makersInOrder(space: Space, labels: Float64Array, overlay: Overlay | null, node: number): MakerOrder {
  const { makerStart, makers, bodyStart, body } = space.network
  const rows: { arc: number; key: number }[] = []
  for (let k = makerStart[node]!; k < makerStart[node + 1]!; k++) {
    const arc = makers[k]!
    if (space.masked[arc] || space.arcOf[arc] === -1) continue
    let key: number
    if (overlay === null) key = arcValue(space, labels, arc)
    else {
      const values = overlay.value
      key = 0
      for (let u = bodyStart[arc]!; u < bodyStart[arc + 1]!; u++) {
        const part = lesser(space.factor[u]! * (values.get(body[u]!) ?? labels[body[u]!]!) + space.made[u]!, space.leaf[u]!)
        if (space.form === 'sum') key += part
        else if (part > key) key = part
      }
      key += space.own[arc]!
    }
    if (key < Number.POSITIVE_INFINITY) rows.push({ arc, key })
  }
  rows.sort((a, b) => a.key - b.key || a.arc - b.arc)
  return { arcs: Int32Array.from(rows, r => r.arc), keys: Float64Array.from(rows, r => r.key) }
}

/** The least that any maker of a node adds by itself. */
export function leastOwn(space: Space): Float64Array {
  const { head } = space.network
  const least = new Float64Array(space.network.makerStart.length - 1).fill(Number.POSITIVE_INFINITY)
  for (let a = 0; a < head.length; a++) {
    if (space.masked[a] || space.arcOf[a] === -1) continue
    if (space.own[a]! < least[head[a]!]!) least[head[a]!] = space.own[a]!
  }
  return least
}
