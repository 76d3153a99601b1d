import { type Library, transformationOf } from '../library/library.ts'
import { coefficientOf, demandPerLimiting, productCoefficientOf } from '../library/reference-charge.ts'
import type { Transformation } from '../library/transformation.ts'
import { chargesOf } from '../route/charge.ts'
import type { ChargedLine } from '../route/charged.ts'
import { flowOf } from '../route/flow.ts'
import { typicalYield, type Yields } from '../route/overall-yield.ts'
import { reactantLines } from '../route/reactant-lines.ts'
import type { Network } from './network.ts'
import type { Form, Weights } from './space.ts'

/** Axes that the search proves. */
export const provenAxes = ['start', 'steps', 'cost', 'hands-on', 'elapsed', 'mass-intensity'] as const
export type ProvenAxis = (typeof provenAxes)[number]

/** Transformations weighed between two pauses, by their charges or without: some ten milliseconds. */
const weighedAtOnce = { charged: 500, plain: 5000 }

export interface ObjectiveInput {
  readonly library: Library
  readonly network: Network
  /** By arc: 1 = of no account, and left at nought. */
  readonly masked?: Uint8Array
  /** Planning yields; what is missing is taken at its typical one. */
  readonly yields?: Yields
  /** What one line costs, in minor units; null = unknown. Asked for the axis `cost` alone. */
  readonly priceOf?: (line: ChargedLine) => number | null
}

/**
 * An axis as weights per transformation.
 *
 * `start`: moles of start per mole of target. `steps`, `hands-on` (h): sums over distinct steps. `elapsed` (h): the longest chain. `cost`
 * (minor units) and `mass-intensity` (g): per mole of target; the latter is divided by the target's molar mass once, at the end.
 */
export function weightsFor(axis: ProvenAxis, input: ObjectiveInput): Weights {
  const weighing = weighed(axis, input)
  for (let step = weighing.next(); ; step = weighing.next()) if (step.done) return step.value
}

/** The same with pauses, for a library so large that its charges take a second; each tells how many transformations are done. */
export function* weighed(axis: ProvenAxis, input: ObjectiveInput): Generator<number, Weights> {
  const { network, library } = input
  switch (axis) {
    case 'start': {
      const weights = zeroWeights(network, 'sum')
      yield* demands(input, weights.factor)
      weights.start.set(weights.factor)
      return weights
    }
    case 'steps':
      return perStep(input, 'distinct', () => 1)
    case 'hands-on':
      return perStep(input, 'distinct', id => handsOnHours(transformationOf(library, id)) ?? Number.NaN)
    case 'elapsed':
      return perStep(input, 'max', id => transformationOf(library, id).elapsedHours)
    case 'cost':
      return yield* perLine(input, line => input.priceOf?.(line) ?? null, 'in hand')
    case 'mass-intensity':
      return yield* perLine(input, line => line.massG, 'counted')
  }
}

/** Hours that need a person; null where the library does not say. */
export function handsOnHours(t: Transformation): number | null {
  if (t.handsOnHours !== undefined) return t.handsOnHours
  return t.tasks ? t.tasks.reduce((sum, task) => (task.kind === 'hands' ? sum + task.hours : sum), 0) : null
}

function zeroWeights(network: Network, form: Form): Weights {
  const uses = network.body.length
  const zeros = () => new Float64Array(uses)
  return { form, own: new Float64Array(network.head.length), factor: zeros(), bought: zeros(), made: zeros(), start: zeros() }
}

function perStep({ network, masked }: ObjectiveInput, form: Form, of: (transformation: string) => number): Weights {
  const weights = zeroWeights(network, form)
  weights.factor.fill(1)
  for (let a = 0; a < network.arcs.length; a++) if (!masked?.[a]) weights.own[a] = of(network.arcs[a]!)
  return weights
}

/** Moles of each reactant, as charged, per mole of product. A recovery from a feedstock is never multiplied in: its factor is 1. */
function* demands({ library, network, yields, masked }: ObjectiveInput, factor: Float64Array): Generator<number, void> {
  let done = 0
  for (let a = 0; a < network.arcs.length; a++) {
    if (masked?.[a]) continue
    if (++done % weighedAtOnce.plain === 0) yield done
    const t = transformationOf(library, network.arcs[a]!)
    const fraction = yields?.get(t.id) ?? typicalYield(library, t.id)
    const limitingPerMain = coefficientOf(t, t.limiting) / productCoefficientOf(t, t.mainProduct) / fraction
    for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) {
      const compound = network.compounds[network.body[u]!]!
      factor[u] = t.kind === 'isolation' ? 1 : limitingPerMain * demandPerLimiting(library, t, compound)
    }
  }
}

/**
 * Weights out of the charge of one mole of product, line by line: what supplies a reactant goes with its use, all else with the step. Where a
 * made compound stands in for a solution, what that is made up with is still bought.
 *
 * A line without an amount adds nothing, as on every other page of the plan; one whose price or mass is unknown makes the step unknown.
 */
function* perLine(
  input: ObjectiveInput,
  lineValue: (line: ChargedLine) => number | null,
  start: 'in hand' | 'counted',
): Generator<number, Weights> {
  const { library, network, yields } = input
  const weights = zeroWeights(network, 'sum')
  yield* demands(input, weights.factor)
  const figure = (line: ChargedLine): number => {
    if (line.supply === 'free' || (line.massG === null && line.volumeMl === null && line.amountMol === null)) return 0
    return lineValue(line) ?? Number.NaN
  }
  let done = 0
  for (let a = 0; a < network.arcs.length; a++) {
    if (input.masked?.[a]) continue
    if (++done % weighedAtOnce.charged === 0) yield done
    const id = network.arcs[a]!
    const t = transformationOf(library, id)
    const flow = flowOf(library, id)
    const productG = library.molarMass.get(t.mainProduct) ?? Number.NaN
    const limitingG = productG / ((yields?.get(id) ?? typicalYield(library, id)) * flow.theoryPerG)
    const charges = (made: ReadonlySet<string>) =>
      chargesOf(library, { transformation: id, limitingG, productG, start: { compound: '', material: '' }, made })
    const reactants = reactantLines(library, t)
    const useOf = new Map<string, number>()
    for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) useOf.set(network.compounds[network.body[u]!]!, u)
    /** The use that a line supplies; -1 for a line that is no reactant's. */
    const useOfLine = (line: ChargedLine): number => {
      const reactant = line.line === null ? line.material : reactants.find(r => r.lines.includes(line.line!))?.compound
      return useOf.get(reactant ?? '') ?? -1
    }
    for (const line of charges(new Set())) {
      const u = useOfLine(line)
      if (u < 0) weights.own[a]! += figure(line)
      else weights.bought[u]! += figure(line)
    }
    for (const line of charges(new Set(useOf.keys()))) {
      const u = useOfLine(line)
      if (u < 0) continue
      if (line.supply !== 'made') weights.made[u]! += figure(line)
      else if (start === 'counted') weights.start[u]! += figure(line)
    }
    for (const u of useOf.values()) weights.start[u]! += weights.made[u]!
  }
  return weights
}
