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

/** What the server found downstream, as the network drawing takes it. */
export function wideOfReach(start: { readonly id: string; readonly name: string }, reply: ReachReply): WideNetwork {
  return {
    start: start.id,
    nodes: [
      { id: start.id, name: mapName(start.name), steps: 0, bestYield: 1, flags: [] },
      ...reply.reach
        .filter(row => row.compound !== start.id)
        .map(({ compound, name, steps, bestYieldOnStart, flags }) => ({
          id: compound,
          name: mapName(name),
          steps,
          bestYield: bestYieldOnStart,
          flags: flagWords(flags),
        })),
    ],
    edges: reply.edges,
  }
}
