import { type Arc, type Network, packed } from '../../../core/network/network.ts'
import type { Form, Weights } from '../../../core/network/space.ts'
import { sfc32 } from './sfc32.ts'

/** A network that is hard to search, with what to ask of it. */
export interface HardNetwork {
  readonly name: string
  readonly network: Network
  readonly weights: Weights
  readonly start: number
  readonly target: number
}

class Builder {
  readonly arcs: (Arc & { readonly own: number })[] = []
  private readonly compounds: string[] = []
  private readonly buyable: number[] = []
  compound(buyable = false): number {
    if (buyable) this.buyable.push(this.compounds.length)
    this.compounds.push(`c${String(this.compounds.length).padStart(6, '0')}`)
    return this.compounds.length - 1
  }
  arc(head: number, body: readonly number[], own: number): void {
    const id = `t${String(this.arcs.length).padStart(6, '0')}`
    this.arcs.push({ id, head, body: body.map(compound => ({ compound, coefficient: 1 })), own })
  }
  build(name: string, start: number, target: number): HardNetwork {
    const buyable = new Uint8Array(this.compounds.length)
    for (const c of this.buyable) buyable[c] = 1
    const network = packed(this.compounds, this.arcs, buyable)
    const uses = network.body.length
    const weights: Weights = {
      form: 'sum',
      own: Float64Array.from(this.arcs, arc => arc.own),
      factor: new Float64Array(uses).fill(1),
      bought: new Float64Array(uses).fill(1),
      made: new Float64Array(uses),
      start: new Float64Array(uses).fill(1),
    }
    return { name, network, weights, start, target }
  }
}

/**
 * Layers below a target that is also made at once from the start: what lies deepest comes cheaply from the target itself and dearly from the
 * start. After the first route every label below leads back to the target, and each of the 20^10 ways down ends in a circle.
 */
export function trap(layers = 10, width = 20): HardNetwork {
  const build = new Builder()
  const draw = sfc32(3)
  const start = build.compound()
  const target = build.compound()
  build.arc(target, [start], 1)
  let below = Array.from({ length: width }, () => build.compound())
  for (const c of below) {
    build.arc(c, [target], 0.1 + draw())
    build.arc(c, [start], 1000 + draw())
  }
  for (let layer = 1; layer < layers; layer++) {
    const here = Array.from({ length: width }, () => build.compound())
    for (const c of here) for (const from of below) build.arc(c, [from], 0.1 + draw())
    below = here
  }
  for (const from of below) build.arc(target, [from], 1 + draw())
  return build.build('a trap of layers whose cheap ways all lead back', start, target)
}

/** A chain of 200 steps, three ways for each, ways back from every compound to earlier ones, and jumps that save nothing. */
export function longChain(steps = 200): HardNetwork {
  const build = new Builder()
  const draw = sfc32(5)
  const start = build.compound()
  const chain = [start]
  const aid = Array.from({ length: 40 }, () => build.compound(true))
  for (let i = 1; i <= steps; i++) {
    chain.push(build.compound())
    for (let way = 0; way < 3; way++) build.arc(chain[i]!, [chain[i - 1]!, aid[Math.floor(draw() * 40)]!], 0.5 + draw())
    for (let back = 0; back < 4; back++) {
      const to = 1 + Math.floor(draw() * i)
      if (to < i) build.arc(chain[to]!, [chain[i]!], 0.01 + draw() * 0.1)
    }
  }
  return build.build('a chain of 200 steps with 800 ways back', start, chain[steps]!)
}

/** Bodies of up to 25 reactants, most of them intermediates that many steps share, in a network full of circles. */
export function wideBodies(compounds = 600, arcs = 2400): HardNetwork {
  const build = new Builder()
  const draw = sfc32(11)
  const below = (n: number) => Math.floor(draw() * n)
  const start = build.compound()
  const all = [start, ...Array.from({ length: compounds - 1 }, (_, i) => build.compound(i < 25))]
  for (let a = 0; a < arcs; a++) {
    const head = a < compounds - 26 ? 26 + a : 26 + below(compounds - 26)
    const size = 1 + below(draw() < 0.2 ? 25 : 4)
    const body = new Set<number>()
    // Four in five reactants are older than the product; the fifth closes circles.
    for (let i = 0; i < size; i++) body.add(all[draw() < 0.8 ? below(head) : below(compounds)]!)
    body.delete(head)
    if (body.size === 0) body.add(start)
    build.arc(head, [...body], 0.2 + draw())
  }
  return build.build('bodies of up to 25 reactants', start, compounds - 1)
}

/** Every compound from every other: 60 compounds, all circles. */
export function clique(compounds = 60): HardNetwork {
  const build = new Builder()
  const draw = sfc32(13)
  const all = Array.from({ length: compounds }, () => build.compound())
  for (const head of all.slice(1)) for (const from of all) if (from !== head) build.arc(head, [from], 1 + draw())
  return build.build('every compound from every other', all[0]!, all[compounds - 1]!)
}

/** Pairs that each need the other's product one layer down: joins everywhere, shared intermediates, ways back. */
export function lattice(layers = 12, width = 12, seed = 17): HardNetwork {
  const build = new Builder()
  const draw = sfc32(seed)
  const start = build.compound()
  let below = Array.from({ length: width }, () => build.compound())
  for (const c of below) build.arc(c, [start], 1 + draw())
  const every = [...below]
  for (let layer = 1; layer < layers; layer++) {
    const here = Array.from({ length: width }, () => build.compound())
    for (const c of here) {
      for (let way = 0; way < 4; way++) {
        const [one, two] = [below[Math.floor(draw() * width)]!, below[Math.floor(draw() * width)]!]
        build.arc(c, one === two ? [one] : [one, two], 0.5 + draw())
      }
    }
    for (const c of below) build.arc(c, [here[Math.floor(draw() * width)]!], 0.05)
    every.push(...here)
    below = here
  }
  return build.build('a lattice of joins with ways back', start, below[0]!)
}

/**
 * A target that takes fourteen parts, each made from one of three of ten intermediates that are three steps off: which few intermediates serve
 * all parts is a covering problem, small for an integer solver and far too wide for a search by partial routes.
 */
export function covering(parts = 14, intermediates = 10, seed = 23): HardNetwork {
  const build = new Builder()
  const draw = sfc32(seed)
  const start = build.compound()
  const served = Array.from({ length: intermediates }, () => {
    const [one, two, last] = [build.compound(), build.compound(), build.compound()]
    build.arc(one, [start], 1)
    build.arc(two, [one], 1)
    build.arc(last, [two], 1)
    return last
  })
  const body = Array.from({ length: parts }, () => {
    const part = build.compound()
    const from = new Set<number>()
    while (from.size < 3) from.add(served[Math.floor(draw() * intermediates)]!)
    for (const one of from) build.arc(part, [one], 1)
    return part
  })
  const target = build.compound()
  build.arc(target, body, 1)
  return build.build('parts that few intermediates serve', start, target)
}

/**
 * All of it at once, as in real reaction networks: 200 layers to go through, bodies of up to 25 reactants, carriers that many steps take and
 * give back used, and four in ten steps can be gone backwards.
 */
export function tangle(layers = 200, width = 12, carriers = 20): HardNetwork {
  const build = new Builder()
  const draw = sfc32(19)
  const below = (n: number) => Math.floor(draw() * n)
  const start = build.compound()
  const aids = Array.from({ length: 40 }, () => build.compound(true))
  const fresh = Array.from({ length: carriers }, () => build.compound())
  const used = Array.from({ length: carriers }, () => build.compound())
  const all = [Array.from({ length: width }, () => build.compound())]
  for (const c of all[0]!) build.arc(c, [start], 0.5 + draw())
  for (let i = 0; i < carriers; i++) {
    // Made afresh from what lies low and can be bought, or brought back from where a step has used it.
    build.arc(fresh[i]!, [all[0]![below(width)]!, aids[below(40)]!], 2 + draw())
    build.arc(fresh[i]!, [used[i]!, aids[below(40)]!], 0.05 + 0.1 * draw())
  }
  for (let layer = 1; layer < layers; layer++) {
    const under = all[layer - 1]!
    const here = Array.from({ length: width }, () => build.compound())
    for (const c of here)
      for (let way = 0; way < 3; way++) {
        const body = new Set([under[below(width)]!])
        if (draw() < 0.1) body.add(under[below(width)]!)
        if (draw() < 0.3) body.add(fresh[below(carriers)]!)
        const wide = draw() < 0.04 ? 5 + below(21) : 1 + below(3)
        while (body.size < wide) body.add(draw() < 0.8 ? aids[below(40)]! : fresh[below(carriers)]!)
        build.arc(c, [...body], 0.3 + draw())
        if (draw() < 0.4) build.arc([...body][0]!, [c, ...[...body].slice(1)], 0.01 + 0.2 * draw())
        if (draw() < 0.1) build.arc(used[below(carriers)]!, [c], 0.1 * draw())
      }
    all.push(here)
  }
  return build.build('200 layers, bodies of up to 25, carriers, ways back', start, all[layers - 1]![0]!)
}

/** The same figures of the steps, put together in another form: what reactants add belongs to sums alone. */
export function inForm(weights: Weights, form: Form): Weights {
  const zeros = new Float64Array(weights.factor.length)
  return form === 'sum' ? weights : { form, own: weights.own, factor: weights.factor, bought: zeros, made: zeros, start: zeros }
}

export const hardNetworks = (): HardNetwork[] => [trap(), longChain(), wideBodies(), clique(), lattice(), tangle()]
