import { mostBatches } from '../route/batches.ts'
import { DrawArrays } from '../route/draw-arrays.ts'
import type { Drawn } from '../route/spread.ts'
import { nthSmallest } from '../yields/nth-smallest.ts'
import { type Amounts, type AmountsInput, amountsOf, type Volumes } from './amounts.ts'
import { drawnOf, goalsDrawn } from './drawn.ts'
import type { Plan } from './plan.ts'

/** Amounts planned for a confidence. */
export interface Confident {
  readonly amounts: Amounts
  readonly drawn: Drawn
  /** What the planned charges of all mass goals were multiplied by. */
  readonly factor: number
  /** Chance that all mass goals are reached together; null where there is none. */
  readonly chanceAll: number | null
  /** The start sets the limit: the confidence asked for is out of reach. */
  readonly limited: boolean
}

/** Wanted grams by goal; null for shares and rest. */
type Wanted = readonly (number | null)[]

/** A rounding error of 1 part in 10^9 counts as reached. */
const rounding = 1e-9

/** Chance that every mass goal is reached in the same draw; null where there is no mass goal. */
function chanceOfAll(goalG: readonly Float64Array[], wanted: Wanted): number | null {
  const asked = wanted.flatMap((massG, goal) => (massG === null || massG <= 0 ? [] : [{ draws: goalG[goal]!, massG }]))
  if (asked.length === 0) return null
  const misses = new Uint8Array(asked[0]!.draws.length)
  for (const { draws, massG } of asked) for (let k = 0; k < misses.length; k++) if (!(draws[k]! * (1 + rounding) >= massG)) misses[k] = 1
  let missed = 0
  for (let k = 0; k < misses.length; k++) missed += misses[k]!
  return (misses.length - missed) / misses.length
}

/** By draw: what the worst-served mass goal falls short by, as the factor it would have needed. */
function neededFactors(goalG: readonly Float64Array[], wanted: Wanted): Float64Array {
  const needed = new Float64Array(goalG[0]?.length ?? 0)
  wanted.forEach((massG, goal) => {
    if (massG === null || massG <= 0) return
    const draws = goalG[goal]!
    for (let k = 0; k < draws.length; k++) needed[k] = Math.max(needed[k]!, massG / draws[k]!)
  })
  return needed
}

/** The search for a factor stops here: finer than a weighing of four figures. */
const fine = 5e-5
/** Nobody charges more than so many times what typical yields ask for; beyond, the goal is out of reach. */
const largestFactor = 1e6

/**
 * The plan with one factor on all mass goals' planned charges, the smallest with which all of them are reached together at this confidence;
 * the division among them stays that of typical yields. Where a given start does not allow it, the factor that uses it up.
 *
 * @param input.factor is not looked at
 * @param confidence 0 to 1; null = at typical yields, factor 1
 */
export function confidentAmounts(input: Omit<AmountsInput, 'factor' | 'volumes'>, confidence: number | null): Confident {
  const { factor, limited } = confidence === null ? { factor: 1, limited: false } : glanced(input, confidence).sure
  const amounts = amountsOf({ ...input, factor })
  const drawn = drawnOf(amounts, input.plan.seed)
  return { amounts, drawn, factor, limited, chanceAll: chanceOfAll(drawn.goalG, wantedBy(input.plan)) }
}

/** A factor that was tried: the amounts without their charges. */
export interface Glance {
  readonly amounts: Amounts
  readonly factor: number
  readonly chanceAll: number | null
  readonly limited: boolean
}

const wantedBy = ({ goals }: Plan): Wanted => goals.map(g => (g.amount.kind === 'mass' ? g.amount.massG : null))

/** Draws of one search after the other: none of them leaves it. */
const arrays = new DrawArrays()

/**
 * The search for the factor of {@link confidentAmounts}. It looks at mass goals alone, and at no charges: each try costs a pass over the draws.
 *
 * @returns beside it the plan at factor 1
 */
export function glanced(
  input: Omit<AmountsInput, 'factor' | 'volumes'>,
  confidence: number,
): { readonly plain: Glance; readonly sure: Glance } {
  const wanted = wantedBy(input.plan)
  const mass = wanted.flatMap((massG, goal) => (massG === null ? [] : [goal]))
  const volumes: Volumes = new Map()
  let goalG: readonly Float64Array[] = []
  const at = (factor: number): Glance => {
    arrays.startOver()
    const amounts = amountsOf({ ...input, factor, volumes })
    goalG = mass.length === 0 ? [] : goalsDrawn(amounts, input.plan.seed, mass, arrays)
    return { amounts, factor, limited: false, chanceAll: chanceOfAll(goalG, wanted) }
  }
  const plain = at(1)
  return {
    plain,
    sure: plain.chanceAll === null || isCut(plain) ? plain : enough(at, plain, confidence, () => neededFactors(goalG, wanted)),
  }
}

/** @param needed of the factor tried last: by draw, the factor it would have needed */
function enough(at: (factor: number) => Glance, plain: Glance, confidence: number, needed: () => Float64Array): Glance {
  if (!simplyScales(plain)) return searched(at, plain, confidence)
  // Everything grows with the factor alike, so each draw tells the factor that it needs.
  let now = plain
  for (let round = 0; round < 4; round++) {
    const factors = needed()
    const factor = now.factor * nthSmallest(factors, Math.max(0, Math.ceil(confidence * factors.length - rounding) - 1))
    if (!(factor < largestFactor)) return searched(at, plain, confidence)
    const next = at(factor)
    if (isCut(next)) return searched(at, plain, confidence)
    if ((next.chanceAll ?? 0) >= confidence) return next
    // More charge meant more batches, and with them other draws: once more from there.
    now = next
  }
  return searched(at, plain, confidence)
}

/** The start does not allow it, or the bench does not: it runs no step so often. */
const isCut = ({ amounts }: Glance): boolean =>
  amounts.division.goals.some(g => g.wantedG !== null && g.cutBy !== null) || amounts.steps.some(s => s.batches > mostBatches)

/** Only mass goals, no fixed loss, nothing kept back, nothing logged: all amounts are multiples of the factor. */
function simplyScales({ amounts }: Glance): boolean {
  const { flowing, planned } = amounts
  return planned === null && flowing.keptG.size === 0 && flowing.kinds.every(k => k === 'mass') && flowing.steps.every(s => s.lossG === 0)
}

/**
 * The smallest factor that is enough, bracketed: by interpolating the chance, and by halving where that does not narrow it fast. A factor that
 * the start does not allow is too large, whatever its chance.
 */
function searched(at: (factor: number) => Glance, plain: Glance, confidence: number): Glance {
  const enough = (c: Glance): boolean => (c.chanceAll ?? 0) >= confidence
  let low = 0
  let below: Glance | null = null
  let above: Glance | null = null
  let high = 1
  for (let next = plain; ; next = at(high)) {
    if (isCut(next)) break
    if (enough(next)) {
      above = next
      break
    }
    below = next
    low = high
    high *= 2
    if (high > largestFactor) return { ...next, limited: true }
  }
  let halve = false
  while (high - low > fine * high) {
    const width = high - low
    const middle = halve || above === null ? low + width / 2 : interpolated(low, below, high, above, confidence)
    const next = at(middle)
    if (isCut(next)) high = middle
    else if (enough(next)) {
      above = next
      high = middle
    } else {
      below = next
      low = middle
    }
    halve = high - low > width / 2
  }
  return above ?? { ...(below ?? plain), limited: true }
}

/** Where a straight line between both ends reaches the confidence; never at an end itself. */
function interpolated(low: number, below: Glance | null, high: number, above: Glance, confidence: number): number {
  const from = below?.chanceAll ?? 0
  const part = (confidence - from) / Math.max(1e-9, (above.chanceAll ?? 0) - from)
  return low + (high - low) * Math.min(0.98, Math.max(0.02, part))
}
