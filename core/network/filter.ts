import type { Network } from './network.ts'

/**
 * Arcs that no route to a target can hold, whatever the start: those that make nothing the target needs, at however many removes.
 *
 * @returns by arc: 1 = of no account
 */
export function beside(network: Network, target: number): Uint8Array {
  const mask = new Uint8Array(network.head.length).fill(1)
  const needed = new Uint8Array(network.compounds.length)
  const stack = [target]
  needed[target] = 1
  for (let c = stack.pop(); c !== undefined; c = stack.pop()) {
    for (let k = network.makerStart[c]!; k < network.makerStart[c + 1]!; k++) {
      const a = network.makers[k]!
      mask[a] = 0
      for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) {
        const reactant = network.body[u]!
        if (needed[reactant]) continue
        needed[reactant] = 1
        stack.push(reactant)
      }
    }
  }
  return mask
}

/** Masks laid over each other: 1 where any of them has 1. */
export function masksTogether(...masks: readonly Uint8Array[]): Uint8Array {
  const together = masks[0]!.slice()
  for (const mask of masks.slice(1)) for (let a = 0; a < together.length; a++) together[a]! |= mask[a]!
  return together
}
