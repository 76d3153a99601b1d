import { extent, gridAngle, otherEnd, type Sketch } from './sketch.ts'

// Up to this many flippable bonds every combination is tried; 2^6 layouts take well under a millisecond each.
const allCombinations = 6
const rounds = 6
// Atoms nearer than this (bond lengths) hide each other.
const tooNear = 0.8

/** The atoms on the smaller side of a bond that is in no ring. */
function smallerSide(sketch: Sketch, index: number): number[] {
  const bond = sketch.bonds[index]!
  const reached = (from: number): number[] => {
    const seen = new Set([from])
    for (const atom of seen) {
      for (const next of sketch.at[atom]!) if (next !== index) seen.add(otherEnd(sketch.bonds[next]!, atom))
    }
    return [...seen]
  }
  const one = reached(bond.a)
  const two = reached(bond.b)
  return one.length < two.length ? one : two
}

function mirror(sketch: Sketch, index: number, side: readonly number[]): void {
  const bond = sketch.bonds[index]!
  const x0 = sketch.x[bond.a]!
  const y0 = sketch.y[bond.a]!
  const dx = sketch.x[bond.b]! - x0
  const dy = sketch.y[bond.b]! - y0
  const length2 = dx * dx + dy * dy
  for (const atom of side) {
    const px = sketch.x[atom]! - x0
    const py = sketch.y[atom]! - y0
    const along = (px * dx + py * dy) / length2
    sketch.x[atom] = x0 + 2 * along * dx - px
    sketch.y[atom] = y0 + 2 * along * dy - py
  }
}

function clashes(sketch: Sketch): number {
  let count = 0
  for (let i = 0; i < sketch.x.length; i++) {
    for (let j = i + 1; j < sketch.x.length; j++) {
      const dx = sketch.x[i]! - sketch.x[j]!
      const dy = sketch.y[i]! - sketch.y[j]!
      if (dx * dx + dy * dy < tooNear * tooNear) count++
    }
  }
  return count
}

function badness(sketch: Sketch): number {
  const grid = gridAngle(sketch)
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < 12; k++) {
    const { w, h } = extent(sketch, grid + (k * Math.PI) / 12)
    least = Math.min(least, h - 0.8 * w)
  }
  return least + 5 * clashes(sketch)
}

/**
 * Straightens what the toolkit drew bent, so that chains lie flat and rings come out at the ends: the smaller side of a single bond in
 * no ring may be mirrored across it. Configurations at double bonds cannot change; wedges must be set anew afterwards.
 */
export function unbend(sketch: Sketch): void {
  const flips = sketch.bonds.flatMap((bond, index) =>
    bond.order === 1 && !bond.inRing && sketch.at[bond.a]!.length > 1 && sketch.at[bond.b]!.length > 1
      ? [{ index, side: smallerSide(sketch, index) }]
      : [],
  )
  const flip = (n: number) => mirror(sketch, flips[n]!.index, flips[n]!.side)
  // Less than this is noise of the arithmetic; without it mirror images would win by chance.
  const better = 1e-6
  let least = badness(sketch)
  if (flips.length <= allCombinations) {
    let best = 0
    for (let code = 1; code < 1 << flips.length; code++) {
      const changed = code ^ (code - 1)
      for (let n = 0; n < flips.length; n++) if (changed & (1 << n)) flip(n)
      const now = badness(sketch)
      if (now < least - better) {
        least = now
        best = code
      }
    }
    const last = (1 << flips.length) - 1
    for (let n = 0; n < flips.length; n++) if ((last ^ best) & (1 << n)) flip(n)
    return
  }
  for (let round = 0; round < rounds; round++) {
    let bettered = false
    for (let n = 0; n < flips.length; n++) {
      // m === n: a single flip, else a double one.
      for (let m = n; m < flips.length; m++) {
        flip(n)
        if (m !== n) flip(m)
        const now = badness(sketch)
        if (now < least - better) {
          least = now
          bettered = true
        } else {
          if (m !== n) flip(m)
          flip(n)
        }
      }
    }
    if (!bettered) return
  }
}
