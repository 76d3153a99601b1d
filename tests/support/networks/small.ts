import { type Network, packed } from '../../../core/network/network.ts'
import type { Form, Weights } from '../../../core/network/space.ts'
import { sfc32 } from './sfc32.ts'

/** A network small enough to list all its routes by hand-plain means, with weights of one form. */
export interface SmallNetwork {
  readonly network: Network
  readonly weights: Weights
  readonly start: number
  readonly target: number
}

/**
 * 4 to 9 compounds, 4 to 13 arcs with bodies of one to three, one to three compounds that can be bought, circles allowed.
 *
 * @param halves also coefficients below one
 */
export function smallNetwork(seed: number, form: Form, halves = false): SmallNetwork {
  const draw = sfc32(seed)
  const below = (n: number) => Math.floor(draw() * n)
  // Every fifth is crowded: many ways to everything, and so many routes and circles.
  const crowded = seed % 5 === 0
  const n = crowded ? 5 + below(3) : 4 + below(6)
  const m = crowded ? 13 : 4 + below(10)
  const buyable = new Uint8Array(n)
  for (let i = 1 + below(3); i > 0; i--) buyable[below(n)] = 1
  const arcs = Array.from({ length: m }, (_, a) => {
    const head = below(n)
    const size = 1 + below(3)
    const body: { compound: number; coefficient: number }[] = []
    for (let i = 0; i < size; i++) {
      const compound = below(n)
      if (compound !== head) body.push({ compound, coefficient: draw() < 0.2 ? 2 : 1 })
    }
    if (body.length === 0) body.push({ compound: (head + 1) % n, coefficient: 1 })
    return { id: `t${String(a).padStart(2, '0')}`, head, body }
  })
  const network = packed(
    Array.from({ length: n }, (_, c) => `c${c}`),
    arcs,
    buyable,
  )
  const uses = network.body.length
  // Yields in whole tenths, so that ties are common.
  const yields = Array.from({ length: m }, () => (3 + below(7)) / 10)
  const whole = draw() < 0.5
  const weights: Weights = {
    form,
    own: Float64Array.from({ length: m }, () => (form === 'sum' && draw() < 0.3 ? 0 : whole ? 1 + below(3) : 0.2 + draw())),
    factor: Float64Array.from({ length: uses }, (_, u) => {
      if (form !== 'sum') return 1
      const equivalents = halves && draw() < 0.25 ? 0.5 : draw() < 0.2 ? 1.5 : 1
      return (network.coefficient[u]! * equivalents) / yields[network.useArc[u]!]!
    }),
    bought: Float64Array.from({ length: uses }, () => (form === 'sum' && draw() < 0.6 ? (whole ? below(3) : draw() * 3) : 0)),
    made: Float64Array.from({ length: uses }, () => (form === 'sum' && draw() < 0.2 ? draw() : 0)),
    start: Float64Array.from({ length: uses }, (_, u) => (form === 'sum' ? network.coefficient[u]! : 0)),
  }
  return { network, weights, start: below(n), target: below(n) }
}
