import type { VNode } from 'preact'
import { yieldWords } from './elements.ts'
import { foldedAt, type WideNetwork, type WideNode } from './network.ts'

interface Group {
  readonly title: string
  readonly nodes: readonly WideNode[]
}

/** The rows of the list: by distance, best yield first, unknown last, then by name. */
export function groupsOf(network: WideNetwork, depth: number, goals: readonly string[]): Group[] {
  const nodes = foldedAt(network, depth, goals).nodes.filter(node => node.id !== network.start)
  const distances = [...new Set(nodes.map(node => node.steps))].sort(
    (a, b) => (a ?? Number.POSITIVE_INFINITY) - (b ?? Number.POSITIVE_INFINITY),
  )
  return distances.map(steps => ({
    title: steps === null ? 'steps not proven' : steps === 1 ? '1 step' : `${steps} steps`,
    nodes: nodes
      .filter(node => node.steps === steps)
      .sort((a, b) => (b.bestYield ?? -1) - (a.bestYield ?? -1) || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0)),
  }))
}

export interface WideListProps {
  readonly network: WideNetwork
  readonly depth: number
  readonly goals: readonly string[]
  readonly onChoose: (id: string) => void
  /** Under the pointer or in focus. */
  readonly onLook: (id: string | null) => void
}

/** What the network says, as a list: what the keyboard and the screen reader use. */
export function WideList({ network, depth, goals, onChoose, onLook }: WideListProps): VNode {
  return (
    <div class="wide-list">
      {groupsOf(network, depth, goals).map(group => (
        <section key={group.title} aria-label={group.title}>
          <h3>{group.title}</h3>
          <ul>
            {group.nodes.map(node => (
              <li key={node.id}>
                <button
                  type="button"
                  aria-pressed={goals.includes(node.id)}
                  onClick={() => onChoose(node.id)}
                  onFocus={() => onLook(node.id)}
                  onBlur={() => onLook(null)}
                  onMouseEnter={() => onLook(node.id)}
                  onMouseLeave={() => onLook(null)}
                >
                  <span class="wide-name">{node.name}</span>
                  <span class={node.bestYield === null ? 'wide-yield unknown' : 'wide-yield'}>{yieldWords(node.bestYield)}</span>
                  {node.flags.length > 0 && <span class="wide-flags">{node.flags.join(', ')}</span>}
                </button>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  )
}
