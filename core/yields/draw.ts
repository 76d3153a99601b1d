import { normalScore } from './normal.ts'

/** Joint draws of a plan. Enough for P10 and P90 to three figures; few enough for a slider. */
export const drawCount = 10_000

/**
 * The generator sfc32: 32-bit numbers from a state of four.
 *
 * Source: Doty-Humphrey, PractRand (sfc family); from memory.
 */
export function sfc32(a: number, b: number, c: number, d: number): () => number {
  // In an array of integers: captured variables would each be a number on the heap at every turn.
  const state = Int32Array.of(a, b, c, d)
  return () => {
    const t = (state[0]! + state[1]! + state[3]!) | 0
    state[3] = state[3]! + 1
    state[0] = state[1]! ^ (state[1]! >>> 9)
    const mixed = state[2]!
    state[1] = mixed + (mixed << 3)
    state[2] = ((mixed << 21) | (mixed >>> 11)) + t
    return t >>> 0
  }
}

/**
 * Hash FNV-1a, 32 bits, of a text's UTF-8 bytes.
 *
 * Source: RFC 9923, The FNV Non-Cryptographic Hash Algorithm; check values of it in the tests.
 */
export function fnv1a(text: string): number {
  let hash = 0x811c9dc5
  for (const byte of utf8(text)) hash = Math.imul(hash ^ byte, 0x01000193)
  return hash >>> 0
}

function* utf8(text: string): Iterable<number> {
  for (const sign of text) {
    const code = sign.codePointAt(0)!
    if (code < 0x80) yield code
    else if (code < 0x800) yield* [0xc0 | (code >> 6), 0x80 | (code & 63)]
    else if (code < 0x10000) yield* [0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63)]
    else yield* [0xf0 | (code >> 18), 0x80 | ((code >> 12) & 63), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63)]
  }
}

let grid: Float64Array | null = null
/** Normal scores of the midpoints of so many equal strata, ascending; not to be written to. */
export function stratumScores(): Float64Array {
  if (grid === null) {
    grid = new Float64Array(drawCount)
    for (let k = 0; k < drawCount; k++) grid[k] = normalScore((k + 0.5) / drawCount)
  }
  return grid
}

/** Each stratum in its place. */
const inOrder = Uint16Array.from({ length: drawCount }, (_, k) => k)

const kept = new Map<string, Uint16Array>()
/** Streams kept, as orders of the strata: a slider draws the same ones again and again; 20 kB each. */
const mostKept = 256

/**
 * One stream, stratified: the order in which the 10,000 equal strata are drawn, a permutation (Fisher-Yates by sfc32). Streams share neither
 * step nor order, so that one step more in a plan reshuffles no other.
 *
 * @param transformation id
 * @param part `b`, or `r1`, `r2` ... for the runs
 * @param seed the plan's
 * @returns numbers of strata, from 0; the same array for the same arguments, not to be written to
 */
export function strata(transformation: string, part: string, seed: number): Uint16Array {
  const key = `${transformation}/${part}`
  const name = `${key} ${seed}`
  const before = kept.get(name)
  if (before) return before
  const stream = inOrder.slice()
  shuffle(stream, sfc32(fnv1a(key), seed | 0, 0x9e3779b9 | 0, 1))
  if (kept.size >= mostKept) kept.delete(kept.keys().next().value!)
  kept.set(name, stream)
  return stream
}

/** The standard normal scores of a stream of {@link strata}. */
export function scores(transformation: string, part: string, seed: number): Float64Array {
  const order = strata(transformation, part, seed)
  const score = stratumScores()
  const drawn = new Float64Array(drawCount)
  for (let k = 0; k < drawCount; k++) drawn[k] = score[order[k]!]!
  return drawn
}

/** Fisher-Yates, after 16 numbers that are dropped. */
function shuffle(stream: Uint16Array, next: () => number): void {
  for (let i = 0; i < 16; i++) next()
  for (let k = stream.length - 1; k > 0; k--) {
    const j = Math.floor((next() / 4294967296) * (k + 1))
    const held = stream[k]!
    stream[k] = stream[j]!
    stream[j] = held
  }
}
