import type { Drawn } from '../route/spread.ts'
import { type Amounts, type AmountsInput, amountsOf } from './amounts.ts'
import { drawnOf } from './drawn.ts'

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
export function chanceOfAll(drawn: Drawn, wanted: Wanted): number | null {
  const needed = neededFactors(drawn, wanted)
  if (needed === null) return null
  let reached = 0
  for (let k = 0; k < needed.length; k++) if (needed[k]! <= 1 + rounding) reached++
  return reached / needed.length
}

/** By draw: what the worst-served mass goal falls short by, as the factor it would have needed; null without mass goals. */
function neededFactors(drawn: Drawn, wanted: Wanted): Float64Array | null {
  let needed: Float64Array | null = null
  wanted.forEach((massG, goal) => {
    if (massG === null || massG <= 0) return
    const draws = drawn.goalG[goal]!
    needed ??= new Float64Array(draws.length)
    for (let k = 0; k < draws.length; k++) needed[k] = Math.max(needed[k]!, massG / draws[k]!)
  })
  return needed
}

/** Bisection stops here: finer than any balance. */
const fine = 1e-5
/** Nobody charges more than so many times what typical yields ask for; beyond, the goal is out of reach. */
const largestFactor = 1e6

/**
 * The plan with one factor on all mass goals' planned charges, the smallest with which all of them are reached together at this confidence;
 * the division among them stays that of typical yields. Where a given start does not allow it, the factor that uses it up.
 *
 * @param input.factor is not looked at
 * @param confidence 0 to 1; null = at typical yields, factor 1
 */
export function confidentAmounts(input: Omit<AmountsInput, 'factor'>, confidence: number | null): Confident {
  const wanted: Wanted = input.plan.goals.map(g => (g.amount.kind === 'mass' ? g.amount.massG : null))
  const seed = input.plan.seed
  const at = (factor: number, limited = false): Confident => {
    const amounts = amountsOf({ ...input, factor })
    const drawn = drawnOf(amounts, seed)
    return { amounts, drawn, factor, limited, chanceAll: chanceOfAll(drawn, wanted) }
  }
  const plain = at(1)
  if (confidence === null || plain.chanceAll === null || isCut(plain)) return plain
  if (!simplyScales(plain)) return bisected(at, plain, confidence)

  // Everything grows with the factor alike, so each draw tells the factor that it needs.
  let now = plain
  for (let round = 0; round < 4; round++) {
    const needed = Float64Array.from(neededFactors(now.drawn, wanted)!).sort()
    const factor = now.factor * needed[Math.max(0, Math.ceil(confidence * needed.length - rounding) - 1)]!
    if (!(factor < largestFactor)) return bisected(at, plain, confidence)
    const next = at(factor)
    if (isCut(next)) return bisected(at, plain, confidence)
    if ((next.chanceAll ?? 0) >= confidence) return next
    // More charge meant more batches, and with them other draws: once more from there.
    now = next
  }
  return bisected(at, plain, confidence)
}

const isCut = ({ amounts }: Confident): boolean => amounts.division.goals.some(g => g.wantedG !== null && g.cutBy !== null)

/** Only mass goals, no fixed loss, nothing kept back, nothing logged: all amounts are multiples of the factor. */
function simplyScales({ amounts }: Confident): boolean {
  const { flowing, planned } = amounts
  return planned === null && flowing.keptG.size === 0 && flowing.kinds.every(k => k === 'mass') && flowing.steps.every(s => s.lossG === 0)
}

function bisected(at: (factor: number, limited?: boolean) => Confident, plain: Confident, confidence: number): Confident {
  const enough = (c: Confident): boolean => (c.chanceAll ?? 0) >= confidence
  let low = 0
  let high = 1
  let best = plain
  while (!enough(best)) {
    low = high
    high *= 2
    const next = high > largestFactor ? null : at(high)
    if (next === null) return { ...best, limited: true }
    if (isCut(next)) {
      const most = uncut(at, low, high)
      if (!enough(most)) return { ...most, limited: true }
      best = most
      high = most.factor
      break
    }
    best = next
  }
  while (high - low > fine * high) {
    const middle = (low + high) / 2
    const next = at(middle)
    if (enough(next)) {
      best = next
      high = middle
    } else low = middle
  }
  return best
}

/** The largest factor at which the start still serves every mass goal in full. */
function uncut(at: (factor: number) => Confident, from: number, to: number): Confident {
  let low = from
  let high = to
  let best = at(from)
  while (high - low > fine * high) {
    const middle = (low + high) / 2
    const next = at(middle)
    if (isCut(next)) high = middle
    else {
      best = next
      low = middle
    }
  }
  return best
}
