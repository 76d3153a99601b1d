import { arcValue, labelsOf, slack } from './best.ts'
import type { Space } from './space.ts'

/**
 * Fewest steps among the ways to make each node that have its best value, a step counted at each use: by these a search finds its way over a
 * plateau, where very many ways have one value.
 */
export function stepsOfBest(space: Space, labels: Float64Array): Float64Array {
  const { network, factor, leaf, made, arcOf } = space
  const masked = space.masked.map((mask, a) => (mask || arcValue(space, labels, a) * slack > labels[network.head[a]!]! ? 1 : 0))
  const uses = network.body.length
  return labelsOf({
    ...space,
    form: 'sum',
    masked,
    own: Float64Array.from(arcOf, arc => (arc < 0 ? 0 : 1)),
    factor: new Float64Array(uses).fill(1),
    made: new Float64Array(uses),
    // Bought where that is the better way.
    leaf: leaf.map((value, u) => {
      const asMade = factor[u]! * labels[network.body[u]!]! + made[u]!
      return value < Number.POSITIVE_INFINITY && !(asMade < value) ? 0 : Number.POSITIVE_INFINITY
    }),
  }).value
}
