import { eachInPieces } from '../network/pieces.ts'
import { type Checked, good } from '../problem/problem.ts'
import type { NamedReachRow } from './reach-row.ts'
import { type ReachAnswer, type ReachInput, reachList } from './reach-rows.ts'
import { type Search, within } from './searching.ts'

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
  readonly reach: readonly NamedReachRow[]
  readonly edges: readonly ReachEdge[]
  /** False = it was stopped: rows that are not proven were not looked at, nor all routes counted. */
  readonly complete: boolean
}

export type ReachNetworkAnswer = ({ readonly kind: 'network' } & ReachNetwork) | Extract<ReachAnswer, { kind: 'stopped' }>

/**
 * The rows that {@link reachList} finds, named, with every step that leads on from something reached; a drawing folds them by distance.
 */
export function* reachNetwork(input: ReachInput): Search<Checked<ReachNetworkAnswer>> {
  const { library, query } = input
  const answer = yield* reachList(input)
  if (!answer.ok || answer.value.kind === 'stopped') return answer as Checked<ReachNetworkAnswer>
  const { reach: rows, complete } = answer.value
  const start = library.materials.get(query.from)?.contains?.compound ?? query.from
  const reached = new Set([...rows.map(row => row.compound), start])
  const reach: NamedReachRow[] = []
  const edges: ReachEdge[] = []
  const addEdges = (row: NamedReachRow): void => {
    for (const step of library.makers.get(row.compound) ?? []) {
      const from = step.reactants.map(r => r.compound).filter(id => reached.has(id) && id !== row.compound)
      const sure = step.confidence === 'checked' ? 'seen' : 'remembered'
      if (from.length > 0) edges.push({ id: step.id, name: step.name, from, to: row.compound, sure })
    }
  }
  yield* within(
    eachInPieces(rows, row => {
      const named = { ...row, name: library.materials.get(row.compound)?.name ?? row.compound }
      reach.push(named)
      addEdges(named)
    }),
  )
  return good({ kind: 'network', reach, edges, complete })
}
