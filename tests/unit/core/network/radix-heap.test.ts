import { describe, expect, it } from 'vitest'
import { RadixHeap } from '../../../../core/network/radix-heap.ts'
import { sfc32 } from '../../../support/networks/sfc32.ts'

/** Against a plain list that is searched from end to end. */
describe.each([
  ['of one doubling', (draw: () => number) => 1 + draw()],
  ['of all sizes', (draw: () => number) => Math.exp(300 * (draw() - 0.5))],
  ['few and equal, nought of both signs among them', (draw: () => number) => [0, -0, 1, 2, 3][Math.floor(5 * draw())]!],
  ['that differ in their last digits', (draw: () => number) => 1 + Number.EPSILON * Math.floor(64 * draw())],
])('keys %s', (_, keyOf) => {
  it.each([1, 2, 3, 4])('come out in order, whatever is put in between (%i)', seed => {
    const draw = sfc32(seed)
    const heap = new RadixHeap(2)
    const kept: { key: number; item: number }[] = []
    let last = 0
    let taken = 0
    for (let item = 0; item < 4000; item++) {
      // Mostly as a search does, from the last key upwards; now and then below it.
      const key = draw() < 0.9 ? last + keyOf(draw) : keyOf(draw)
      heap.push(key, item)
      kept.push({ key, item })
      while (kept.length > 0 && draw() < (item < 2000 ? 0.4 : 0.6)) {
        const least = Math.min(...kept.map(entry => entry.key))
        expect(heap.size).toBe(kept.length)
        expect(heap.minKey === least).toBe(true)
        const out = heap.pop()
        const at = kept.findIndex(entry => entry.item === out)
        expect(kept[at]!.key === least).toBe(true)
        kept.splice(at, 1)
        last = least
        taken++
      }
    }
    expect(taken).toBeGreaterThan(2000)
  })
})
