import { breakName } from '../scheme/fill.ts'
import type { Sure } from '../scheme/types.ts'
import type { Folded, WideEdge } from './network.ts'

/** A drawn thing: a compound, or the point where several reactants of one transformation meet. */
export interface Dot {
  readonly id: string
  readonly kind: 'compound' | 'meeting'
  readonly label: string
  readonly w: number
  readonly h: number
  /** start, goal, flagged: what the style hangs on. */
  readonly classes: string
}

/** A drawn line. Several transformations between the same compounds share one: `ways` names them. */
export interface Link {
  readonly id: string
  readonly source: string
  readonly target: string
  readonly ways: readonly string[]
  readonly sure: Sure
  /** Ends with a head; the lines into a meeting point do not. */
  readonly head: boolean
}

export interface Elements {
  readonly dots: readonly Dot[]
  readonly links: readonly Link[]
}

const nameSize = 13.33
const nameWidth = 150
const lineH = 16

/** "91 %"; unknown is said, never left out. */
export const yieldWords = (bestYield: number | null): string => (bestYield === null ? 'yield unknown' : `${Math.round(bestYield * 100)} %`)

const surest = (a: Sure, b: Sure): Sure =>
  a === 'seen' || b === 'seen' ? 'seen' : a === 'remembered' || b === 'remembered' ? 'remembered' : 'unknown'

/**
 * What is drawn of a folded network, without places: those come from the layout. Pure, and in a fixed order.
 *
 * @param start id of the compound in hand
 * @param goals ids that the plan wants
 */
export function elementsOf(folded: Folded, start: string, goals: readonly string[] = []): Elements {
  const shown = new Set(folded.nodes.map(node => node.id))
  const dots: Dot[] = folded.nodes.map(node => {
    const { lines, w } = breakName(node.name, nameWidth, nameSize, 560)
    const more = node.beyond > 0 ? `, +${node.beyond}` : ''
    const second = node.id === start ? `in hand${more}` : `${yieldWords(node.bestYield)}${more}`
    const label = [...lines, second, ...flagLines(node.flags)]
    const classes = [
      'compound',
      node.id === start ? 'start' : '',
      goals.includes(node.id) ? 'goal' : '',
      node.flags.length > 0 ? 'flagged' : '',
    ]
    return {
      id: node.id,
      kind: 'compound',
      label: label.join('\n'),
      w: Math.ceil(Math.max(w, ...label.slice(lines.length).map(text => text.length * 6.4))) + 16,
      h: label.length * lineH + 10,
      classes: classes.filter(Boolean).join(' '),
    }
  })
  const links = new Map<string, Link>()
  const link = (key: string, made: Omit<Link, 'id' | 'ways'>, way: string) => {
    const last = links.get(key)
    links.set(key, last ? { ...last, ways: [...last.ways, way], sure: surest(last.sure, made.sure) } : { ...made, id: key, ways: [way] })
  }
  for (const edge of folded.edges) {
    const from = reactantsIn(edge, shown)
    if (from.length === 1) {
      if (from[0] !== edge.to) link(`${from[0]}>${edge.to}`, { source: from[0]!, target: edge.to, sure: edge.sure, head: true }, edge.id)
      continue
    }
    // Several compounds of the network go in together: they meet first, or it would look as if each sufficed.
    const meeting = `${from.join('+')}>${edge.to}`
    if (!links.has(meeting)) dots.push({ id: meeting, kind: 'meeting', label: '', w: 7, h: 7, classes: 'meeting' })
    for (const one of from) link(`${one}>${meeting}`, { source: one, target: meeting, sure: edge.sure, head: false }, edge.id)
    link(`${meeting}!`, { source: meeting, target: edge.to, sure: edge.sure, head: true }, edge.id)
  }
  return { dots, links: [...links.values()] }
}

/** Flags in lines about as wide as a name. */
function flagLines(flags: readonly string[]): string[] {
  const lines: string[] = []
  for (const flag of flags) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + flag.length <= 20) lines[lines.length - 1] = `${last}, ${flag}`
    else lines.push(flag)
  }
  return lines.map((line, at) => (at < lines.length - 1 ? `${line},` : line))
}

const reactantsIn = (edge: WideEdge, shown: ReadonlySet<string>): string[] => [...new Set(edge.from)].filter(id => shown.has(id)).sort()
