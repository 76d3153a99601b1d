import type { Library } from '../library/library.ts'
import { isBuyable } from '../library/material.ts'
import { compoundIn } from '../library/reference-charge.ts'
import { atOnce, eachInPieces, type InPieces, sortedInPieces } from './pieces.ts'

/**
 * Compounds and transformations as numbers: the network the search walks. Transformations ("arcs") lead from all their reactants (the
 * "body") to their main product (the "head"); equal reactants of a body are one entry, their coefficients added. Compressed rows both ways:
 * the body of arc a is `body[bodyStart[a] .. bodyStart[a + 1] - 1]`, and a position in `body` is called a *use*.
 */
export interface Network {
  /** Ids in order, so that a smaller number is a smaller id. */
  readonly compounds: readonly string[]
  readonly arcs: readonly string[]
  readonly head: Int32Array
  readonly bodyStart: Int32Array
  readonly body: Int32Array
  /** Moles of the reactant that the equation takes per mole of main product. */
  readonly coefficient: Float64Array
  /** Uses of compound c: `uses[useStart[c] .. ]`. */
  readonly useStart: Int32Array
  readonly uses: Int32Array
  /** Two words a use, in the order of `uses`: the head of its arc, then its arc. What a search walks lies in one stretch of memory. */
  readonly takers: Int32Array
  /** The arc that a use belongs to. */
  readonly useArc: Int32Array
  readonly makerStart: Int32Array
  readonly makers: Int32Array
  /** 1 = can be bought, as itself or inside a material that contains it. */
  readonly buyable: Uint8Array
}

/** One arc before it is packed: head and body as indices of compounds. */
export interface Arc {
  readonly id: string
  readonly head: number
  readonly body: readonly { readonly compound: number; readonly coefficient: number }[]
}

const known = new WeakMap<Library, Network>()

/** The network of a checked library. Compounds and arcs in order of id. Reckoned once: a library never changes, another one is another object. */
export const networkOf = (library: Library): Network => atOnce(networkInPieces(library))

/** The same with pauses, for a library that has just been loaded or changed. */
export function* networkInPieces(library: Library): InPieces<Network> {
  const network = known.get(library) ?? (yield* reckoned(library))
  known.set(library, network)
  return network
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

function* reckoned(library: Library): InPieces<Network> {
  const transformations = yield* sortedInPieces([...library.transformations.values()], (a, b) => byText(a.id, b.id))
  const names = new Set<string>()
  yield* eachInPieces(transformations, t => {
    names.add(t.mainProduct)
    for (const r of t.reactants) names.add(r.compound)
  })
  const compounds = yield* sortedInPieces([...names], byText)
  const indexOf = new Map<string, number>()
  yield* eachInPieces(compounds, (id, index) => void indexOf.set(id, index))
  const arcs: Arc[] = []
  yield* eachInPieces(transformations, t => {
    const main = t.products.reduce((sum, p) => (p.compound === t.mainProduct ? sum + p.coefficient : sum), 0)
    arcs.push({
      id: t.id,
      head: indexOf.get(t.mainProduct)!,
      body: t.reactants.map(r => ({ compound: indexOf.get(r.compound)!, coefficient: r.coefficient / main })),
    })
  })
  const buyable = new Uint8Array(compounds.length)
  yield* eachInPieces([...library.materials.values()], material => {
    if (!isBuyable(material)) return
    const inside = indexOf.get(compoundIn(material) ?? '')
    if (inside !== undefined) buyable[inside] = 1
    const itself = indexOf.get(material.id)
    if (itself !== undefined) buyable[itself] = 1
  })
  return packed(compounds, arcs, buyable)
}

/** Packs arcs into typed arrays. Equal reactants of one body are merged. */
export function packed(compounds: readonly string[], arcs: readonly Arc[], buyable: Uint8Array): Network {
  const m = arcs.length
  const head = new Int32Array(m)
  const bodyStart = new Int32Array(m + 1)
  const body: number[] = []
  const coefficient: number[] = []
  for (let a = 0; a < m; a++) {
    const arc = arcs[a]!
    head[a] = arc.head
    const first = body.length
    for (const r of arc.body) {
      const at = body.indexOf(r.compound, first)
      if (at >= 0) coefficient[at]! += r.coefficient
      else {
        body.push(r.compound)
        coefficient.push(r.coefficient)
      }
    }
    bodyStart[a + 1] = body.length
  }
  const names = arcs.map(arc => arc.id)
  return linked(compounds, names, head, bodyStart, Int32Array.from(body), Float64Array.from(coefficient), buyable)
}

/** Adds the rows that lead back: from a compound to its uses and to its makers. */
export function linked(
  compounds: readonly string[],
  arcs: readonly string[],
  head: Int32Array,
  bodyStart: Int32Array,
  body: Int32Array,
  coefficient: Float64Array,
  buyable: Uint8Array,
): Network {
  const n = compounds.length
  const m = head.length
  const useArc = new Int32Array(body.length)
  const useStart = new Int32Array(n + 1)
  const makerStart = new Int32Array(n + 1)
  for (let u = 0; u < body.length; u++) useStart[body[u]! + 1]!++
  for (let a = 0; a < m; a++) makerStart[head[a]! + 1]!++
  for (let c = 0; c < n; c++) {
    useStart[c + 1]! += useStart[c]!
    makerStart[c + 1]! += makerStart[c]!
  }
  const uses = new Int32Array(body.length)
  const takers = new Int32Array(2 * body.length)
  const makers = new Int32Array(m)
  const nextUse = useStart.slice()
  const nextMaker = makerStart.slice()
  for (let a = 0; a < m; a++) {
    makers[nextMaker[head[a]!]!++] = a
    for (let u = bodyStart[a]!; u < bodyStart[a + 1]!; u++) {
      useArc[u] = a
      const at = nextUse[body[u]!]!++
      uses[at] = u
      takers[2 * at] = head[a]!
      takers[2 * at + 1] = a
    }
  }
  return { compounds, arcs, head, bodyStart, body, coefficient, useStart, uses, takers, useArc, makerStart, makers, buyable }
}

/** Index of a compound or arc in its list of ids (in order); -1 where it is none of the network. */
export function indexIn(ids: readonly string[], id: string): number {
  let low = 0
  let high = ids.length - 1
  while (low <= high) {
    const middle = (low + high) >> 1
    const here = ids[middle]!
    if (here === id) return middle
    if (here < id) low = middle + 1
    else high = middle - 1
  }
  return -1
}
