import type { Library } from '../library/library.ts'
import type { ReachRow } from './reach-rows.ts'

/** One transformation of the network downstream. */
export interface ReachEdge {
  readonly id: string
  readonly name: string
  readonly from: readonly string[]
  readonly to: string
  readonly sure: 'seen' | 'remembered'
}

/** What a start can become, with names, and the steps between: a list and a drawing of the same. */
export interface ReachNetwork {
  readonly reach: readonly (ReachRow & { readonly name: string })[]
  readonly edges: readonly ReachEdge[]
}

/**
 * Names the rows and draws every step that leads on from something reached; a drawing folds them by distance.
 *
 * @param from the material that the rows were asked for
 */
export function reachNetwork(library: Library, from: string, rows: readonly ReachRow[]): ReachNetwork {
  const start = library.materials.get(from)?.contains?.compound ?? from
  const reached = new Set([...rows.map(row => row.compound), start])
  const edges = rows.flatMap(row =>
    (library.makers.get(row.compound) ?? []).flatMap((step): ReachEdge[] => {
      const reactants = step.reactants.map(r => r.compound).filter(id => reached.has(id) && id !== row.compound)
      const sure = step.confidence === 'checked' ? 'seen' : 'remembered'
      return reactants.length === 0 ? [] : [{ id: step.id, name: step.name, from: reactants, to: row.compound, sure }]
    }),
  )
  return { reach: rows.map(row => ({ ...row, name: library.materials.get(row.compound)?.name ?? row.compound })), edges }
}
