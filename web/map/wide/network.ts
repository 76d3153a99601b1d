import type { Sure } from '../scheme/types.ts'

/** A compound that can be reached downstream. */
export interface WideNode {
  readonly id: string
  readonly name: string
  /** Least steps from the start; the start itself 0; null where none is proven. */
  readonly steps: number | null
  /** Best overall yield on start, 0 to 1; null = unknown. */
  readonly bestYield: number | null
  /** What a reader must know before choosing it, in a word or two: "licence", "gravest hazards". */
  readonly flags: readonly string[]
}

/** One transformation: every reactant it takes, its main product. */
export interface WideEdge {
  readonly id: string
  readonly from: readonly string[]
  readonly to: string
  readonly name: string
  readonly sure: Sure
}

export interface WideNetwork {
  readonly start: string
  /** The start among them or not; it is drawn anyhow. */
  readonly nodes: readonly WideNode[]
  readonly edges: readonly WideEdge[]
}

// So many compounds can be read on one screen.
const readable = 40

const distance = (node: WideNode): number => node.steps ?? Number.POSITIVE_INFINITY

/** Distances that can be folded at, least first. */
export function depthsOf(network: WideNetwork): number[] {
  const found = new Set(network.nodes.map(distance).filter(steps => steps > 0 && Number.isFinite(steps)))
  return [...found].sort((a, b) => a - b)
}

/** The deepest fold that still reads on one screen; at least the first step. */
export function firstDepth(network: WideNetwork): number {
  const depths = depthsOf(network)
  const fits = depths.filter(depth => network.nodes.filter(node => distance(node) <= depth).length <= readable)
  return fits.at(-1) ?? depths[0] ?? 1
}

export interface Folded {
  readonly nodes: readonly (WideNode & { readonly beyond: number })[]
  readonly edges: readonly WideEdge[]
}

/**
 * The part of the network within a distance of the start. `beyond` of a node counts the products behind the fold that it leads to
 * directly. Wanted compounds are shown however far they are, with the shortest way to them.
 */
export function foldedAt(network: WideNetwork, depth: number, wanted: readonly string[] = []): Folded {
  const byId = new Map(network.nodes.map(node => [node.id, node]))
  const start = byId.get(network.start)
  if (!start) byId.set(network.start, { id: network.start, name: network.start, steps: 0, bestYield: 1, flags: [] })
  const steps = (id: string): number => (id === network.start ? 0 : distance(byId.get(id)!))
  const shown = new Set([...byId.keys()].filter(id => steps(id) <= depth))
  for (const id of wanted) {
    // Back along products of fewer steps to what is shown already.
    for (let at = id; byId.has(at) && !shown.has(at); ) {
      shown.add(at)
      const maker = network.edges.find(edge => edge.to === at && edge.from.some(from => byId.has(from) && steps(from) < steps(at)))
      const before = maker?.from.find(from => byId.has(from) && steps(from) < steps(at))
      if (!before) break
      at = before
    }
  }
  const known = network.edges.filter(edge => byId.has(edge.to) && edge.from.some(from => byId.has(from)))
  const nodes = [...shown].map(id => {
    const hidden = new Set(known.filter(edge => edge.from.includes(id) && !shown.has(edge.to)).map(edge => edge.to))
    return { ...byId.get(id)!, steps: id === network.start ? 0 : byId.get(id)!.steps, beyond: hidden.size }
  })
  return { nodes, edges: known.filter(edge => shown.has(edge.to) && edge.from.some(from => shown.has(from))) }
}
