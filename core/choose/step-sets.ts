import type { Network } from '../network/network.ts'

/** What one plan must do: make every target from the start, each compound in one way. */
export interface StepSetsAsked {
  readonly start: number
  readonly targets: readonly number[]
  /** Neither made nor bought: there wherever it is taken. */
  readonly free: readonly number[]
  /** By arc: 1 = not to be used. */
  readonly masked: Uint8Array
  /** At most so many steps a target. */
  readonly maxSteps?: number
  /** Partial sets taken up at the most; beyond it the listing says that it is not complete. */
  readonly budget: number
}

export interface StepSets {
  /** Arcs in order of index, each set once. */
  readonly sets: readonly (readonly number[])[]
  /** There is no other set. */
  readonly complete: boolean
}

const bought = -2
const undecided = -1

/**
 * Every set of steps that one plan can consist of: each target is made, each step is needed, no compound is made in two ways or in a circle,
 * what is not made can be bought, and the steps of each target take the start. Make-or-buy is decided once for the whole plan, which is what
 * sets this apart from one route a target.
 */
export function stepSets(network: Network, asked: StepSetsAsked): StepSets {
  const { start, targets } = asked
  const { head, body, bodyStart, makerStart, makers, buyable, compounds } = network
  const free = new Set(asked.free)
  const targetSet = new Set(targets)
  const usable = usableArcs(network, asked)
  const fromStart = downstream(network, start, usable)
  const decision = new Int32Array(compounds.length).fill(undecided)
  const sets: number[][] = []
  const chosen: number[] = []
  let taken = 0
  let complete = true

  /** Would making `compound` by this arc feed it with itself, by way of what is decided? */
  const closesCircle = (compound: number, arc: number): boolean => {
    const seen = new Set<number>()
    const stack = [arc]
    for (let a = stack.pop(); a !== undefined; a = stack.pop())
      for (let u = bodyStart[a]!; u < bodyStart[a + 1]!; u++) {
        const c = body[u]!
        if (c === compound) return true
        if (seen.has(c)) continue
        seen.add(c)
        if (decision[c]! >= 0) stack.push(decision[c]!)
      }
    return false
  }
  /** Steps of one target as far as they are decided; whether the start is among what they take, or may still come in. */
  const upstream = (target: number): { readonly steps: number; readonly start: boolean } => {
    const seen = new Set([target])
    const stack = [target]
    let steps = 0
    let reaches = false
    for (let c = stack.pop(); c !== undefined; c = stack.pop()) {
      if (c === start || (decision[c] === undecided && fromStart[c])) reaches = true
      const a = decision[c]!
      if (a < 0) continue
      steps++
      for (let u = bodyStart[a]!; u < bodyStart[a + 1]!; u++) {
        if (seen.has(body[u]!)) continue
        seen.add(body[u]!)
        stack.push(body[u]!)
      }
    }
    return { steps, start: reaches }
  }
  const isPossible = (): boolean =>
    targets.every(target => {
      const { steps, start: reaches } = upstream(target)
      return reaches && (asked.maxSteps === undefined || steps <= asked.maxSteps)
    })

  const open = (pending: readonly number[]): void => {
    if (taken >= asked.budget) {
      complete = false
      return
    }
    taken++
    if (!isPossible()) return
    const at = pending.findIndex(c => decision[c] === undecided)
    if (at < 0) {
      sets.push([...chosen].sort((a, b) => a - b))
      return
    }
    const c = pending[at]!
    const rest = pending.slice(at + 1)
    if (buyable[c] && !targetSet.has(c)) {
      decision[c] = bought
      open(rest)
    }
    for (let k = makerStart[c]!; k < makerStart[c + 1]!; k++) {
      const arc = makers[k]!
      if (!usable[arc] || closesCircle(c, arc)) continue
      decision[c] = arc
      chosen.push(arc)
      const more: number[] = []
      for (let u = bodyStart[arc]!; u < bodyStart[arc + 1]!; u++) {
        const r = body[u]!
        if (r !== start && !free.has(r) && decision[r] === undecided && !rest.includes(r)) more.push(r)
      }
      open([...more, ...rest])
      chosen.pop()
    }
    decision[c] = undecided
  }
  if (targets.every(target => target !== start)) open(targets)
  return { sets, complete }

  function usableArcs(net: Network, { masked: mask }: StepSetsAsked): Uint8Array {
    // What can be had at all: bought, in hand, free, or made from such; an arc with a reactant that cannot be had leads nowhere.
    const had = new Uint8Array(net.compounds.length)
    for (let c = 0; c < had.length; c++) had[c] = buyable[c]! || c === start || free.has(c) ? 1 : 0
    const ok = new Uint8Array(net.arcs.length)
    for (let changed = true; changed; ) {
      changed = false
      for (let a = 0; a < ok.length; a++) {
        if (ok[a] || mask[a] || head[a] === start) continue
        let all = true
        for (let u = bodyStart[a]!; all && u < bodyStart[a + 1]!; u++) all = had[body[u]!] === 1
        if (!all) continue
        ok[a] = 1
        changed = true
        had[head[a]!] = 1
      }
    }
    return ok
  }
}

/** By compound: 1 = some chain of usable steps leads to it from the start. */
function downstream(network: Network, start: number, usable: Uint8Array): Uint8Array {
  const reached = new Uint8Array(network.compounds.length)
  reached[start] = 1
  const stack = [start]
  for (let c = stack.pop(); c !== undefined; c = stack.pop())
    for (let k = network.useStart[c]!; k < network.useStart[c + 1]!; k++) {
      const arc = network.takers[2 * k + 1]!
      const made = network.takers[2 * k]!
      if (!usable[arc] || reached[made]) continue
      reached[made] = 1
      stack.push(made)
    }
  return reached
}
