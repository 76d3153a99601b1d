import { describe, expect, it } from 'vitest'
import { labelsInPieces } from '../../../../core/network/best.ts'
import { chainSpaceInPieces } from '../../../../core/network/chain-space.ts'
import { atOnce, sortedInPieces } from '../../../../core/network/pieces.ts'
import { generatedNetwork } from '../../../support/networks/generated.ts'

describe('work in pieces', () => {
  it('puts a long list in the order of the built-in sort, equal entries as they came', () => {
    const list = Array.from({ length: 35_001 }, (_, at) => ({ key: (at * 7919) % 1000, at }))
    const work = sortedInPieces(list, (a, b) => a.key - b.key)
    let pauses = 0
    for (let piece = work.next(); ; piece = work.next()) {
      if (!piece.done) pauses++
      else {
        expect(piece.value).toEqual([...list].sort((a, b) => a.key - b.key))
        break
      }
    }
    expect(pauses).toBeGreaterThan(4)
    expect(atOnce(sortedInPieces([], () => 0))).toEqual([])
  })

  it('pauses often enough in a network of 30,000 steps that no piece is the whole', () => {
    const { network, yields } = generatedNetwork(30_000)
    const zero = new Float64Array(network.body.length)
    const factor = Float64Array.from(network.body, (_, u) => network.coefficient[u]! / yields[network.useArc[u]!]!)
    const weights = { form: 'sum' as const, own: new Float64Array(network.head.length), factor, bought: zero, made: zero, start: factor }
    const options = {
      start: 1,
      masked: new Uint8Array(network.head.length),
      opened: new Uint8Array(network.compounds.length),
      makeAll: false,
    }
    const pausesOf = <T>(work: Generator<unknown, T>): { readonly pauses: number; readonly value: T } => {
      for (let pauses = 0; ; pauses++) {
        const piece = work.next()
        if (piece.done) return { pauses, value: piece.value }
      }
    }
    const space = pausesOf(chainSpaceInPieces(network, weights, options))
    expect(space.pauses).toBeGreaterThan(8)
    const busiest = network.useStart.reduce(
      (most, first, c) =>
        c < network.compounds.length && network.useStart[c + 1]! - first > network.useStart[most + 1]! - network.useStart[most]! ? c : most,
      0,
    )
    const wide = pausesOf(chainSpaceInPieces(network, weights, { ...options, start: busiest }))
    expect(pausesOf(labelsInPieces(wide.value)).pauses).toBeGreaterThan(1)
  })
})
