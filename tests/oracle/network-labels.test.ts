import { describe, expect, it } from 'vitest'
import { labelsOf } from '../../core/network/best.ts'
import { openSpace, type Space } from '../../core/network/space.ts'
import { chainYieldWeights, costWeights, generatedNetwork } from '../support/networks/generated.ts'
import { sfc32 } from '../support/networks/sfc32.ts'

/** Best values by plain repetition until nothing changes (Bellman and Ford, on arcs with several reactants): no queue, no order, no counters. */
function byRepetition({ network, form, masked, own, factor, leaf, made }: Space): Float64Array {
  const value = new Float64Array(network.compounds.length).fill(Number.POSITIVE_INFINITY)
  for (let changed = true; changed; ) {
    changed = false
    for (let a = 0; a < network.head.length; a++) {
      if (masked[a]) continue
      let parts = 0
      for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) {
        const asMade = factor[u]! * value[network.body[u]!]! + made[u]!
        const part = Math.min(asMade, leaf[u]!)
        parts = form === 'sum' ? parts + part : Math.max(parts, part)
      }
      const h = network.head[a]!
      if (!(own[a]! + parts < value[h]! * (1 - 1e-13))) continue
      value[h] = own[a]! + parts
      changed = true
    }
  }
  return value
}

describe.each([
  ['several reactants', undefined],
  ['one reactant each', 1],
] as const)('labels of 10,000 steps with %s', (_, reactants) => {
  const m = 10_000
  const generated = generatedNetwork(m, 42, reactants)
  const { network } = generated
  /** Cleavages: a tenth of the reactants count half, which makes labels fall again after they were settled. */
  const halved = () => {
    const draw = sfc32(4)
    const weights = costWeights(generated)
    return { ...weights, factor: weights.factor.map(value => (draw() < 0.1 ? value * 0.5 : value)) }
  }
  it.each([
    ['cost', costWeights(generated), false],
    ['cost, what can be bought may be made as well', costWeights(generated), true],
    ['chain yield', chainYieldWeights(generated), false],
    ['cost with coefficients below one', halved(), false],
    ['cost with coefficients below one, made or bought', halved(), true],
  ] as const)('are those of plain repetition: %s', (name, weights, makeAll) => {
    const space = openSpace(network, weights, {
      start: -1,
      masked: new Uint8Array(m),
      opened: new Uint8Array(network.compounds.length),
      makeAll,
    })
    const { value, circle } = labelsOf(space)
    expect(circle).toBeNull()
    expect(weights.factor.some(factor => factor < 1)).toBe(name.includes('below one'))
    const plain = byRepetition(space)
    let made = 0
    let worst = 0
    for (const [c, label] of value.entries()) {
      if (plain[c] === Number.POSITIVE_INFINITY) expect(label).toBe(plain[c])
      else {
        worst = Math.max(worst, Math.abs(label - plain[c]!) / (1e-300 + plain[c]!))
        made++
      }
    }
    expect(worst).toBeLessThan(1e-11)
    expect(made).toBeGreaterThan(4000)
  })
})
