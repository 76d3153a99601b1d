import type { ReachReply } from '../api/replies.ts'
import { mapName } from './map-name.ts'
import type { WideNetwork } from './wide/network.ts'

const words: Readonly<Record<string, string>> = {
  barred: 'not for the public',
  licence: 'licence needed',
  reporting: 'reported',
  'hazard-unknown': 'hazard unknown',
}

/** Flags of a reached compound, each in a word or two, once. */
export const flagWords = (flags: ReachReply['reach'][number]['flags']): readonly string[] => [
  ...new Set(flags.flatMap(({ kind }) => words[kind] ?? [])),
]

/** More compounds than this are no drawing any more: the nearest are drawn, of these the best yields. */
export const mostDrawn = 300

/** What the server found downstream, as the network drawing takes it. */
export function wideOfReach(start: { readonly id: string; readonly name: string }, reply: ReachReply): WideNetwork {
  const nearest = [...reply.reach].filter(row => row.proven || reply.reach.length <= mostDrawn)
  nearest.sort((a, b) => (a.steps ?? 99) - (b.steps ?? 99) || (b.bestYieldOnStart ?? 0) - (a.bestYieldOnStart ?? 0))
  const drawn = new Set(nearest.slice(0, mostDrawn).map(row => row.compound))
  return {
    start: start.id,
    nodes: [
      { id: start.id, name: mapName(start.name), steps: 0, bestYield: 1, flags: [] },
      ...reply.reach
        .filter(row => row.compound !== start.id && drawn.has(row.compound))
        .map(({ compound, name, steps, bestYieldOnStart, flags }) => ({
          id: compound,
          name: mapName(name),
          steps,
          bestYield: bestYieldOnStart,
          flags: flagWords(flags),
        })),
    ],
    edges: reply.reach.length <= mostDrawn ? reply.edges : reply.edges.filter(edge => drawn.has(edge.to)),
  }
}
