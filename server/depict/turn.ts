import { extent, gridAngle, otherEnd, type Sketch } from './sketch.ts'

function rotate(sketch: Sketch, angle: number, mirrored: boolean): void {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  for (let i = 0; i < sketch.x.length; i++) {
    const x = mirrored ? -sketch.x[i]! : sketch.x[i]!
    const y = sketch.y[i]!
    sketch.x[i] = x * cos - y * sin
    sketch.y[i] = x * sin + y * cos
  }
}

function principalAngle(sketch: Sketch): number {
  const n = sketch.x.length
  const mx = sketch.x.reduce((a, b) => a + b, 0) / n
  const my = sketch.y.reduce((a, b) => a + b, 0) / n
  let xx = 0
  let yy = 0
  let xy = 0
  for (let i = 0; i < n; i++) {
    const dx = sketch.x[i]! - mx
    const dy = sketch.y[i]! - my
    xx += dx * dx
    yy += dy * dy
    xy += dx * dy
  }
  return -0.5 * Math.atan2(2 * xy, xx - yy)
}

/** What a reader expects: flat and long, bonds on the 30 degree grid, carbonyls up, OH and NH2 down and right. Less is better. */
function badness(sketch: Sketch): number {
  const { w, h } = extent(sketch, 0)
  let score = h - 0.6 * w
  let off = 0
  const step = Math.PI / 6
  for (const bond of sketch.bonds) {
    const theta = Math.atan2(sketch.y[bond.b]! - sketch.y[bond.a]!, sketch.x[bond.b]! - sketch.x[bond.a]!)
    const steps = theta / step
    off += Math.abs(steps - Math.round(steps)) * step
    if (bond.inRing && Math.abs(Math.abs(theta) - Math.PI / 2) < 0.05) score -= 0.12
  }
  if (sketch.bonds.length > 0) score += (3 * off) / sketch.bonds.length
  const middle = sketch.x.reduce((a, b) => a + b, 0) / sketch.x.length
  for (let i = 0; i < sketch.x.length; i++) {
    const el = sketch.el[i]!
    if (el === 'C' || el === 'H') continue
    score -= 0.04 * (sketch.x[i]! - middle)
    const bonds = sketch.at[i]!
    if (bonds.length !== 1) continue
    const bond = sketch.bonds[bonds[0]!]!
    const neighbour = otherEnd(bond, i)
    const right = sketch.x[i]! - sketch.x[neighbour]!
    const down = sketch.y[i]! - sketch.y[neighbour]!
    if (bond.order === 2 && (el === 'O' || el === 'S')) score += 0.25 * down
    else if (bond.order === 1 && (el === 'O' || el === 'N')) score -= 0.12 * down + 0.05 * right
  }
  return score
}

/** Turns and, where it serves, mirrors the sketch as a reader expects it. Wedges must be set anew afterwards. */
export function turn(sketch: Sketch): void {
  if (sketch.x.length < 2) return
  const asGiven = { x: [...sketch.x], y: [...sketch.y] }
  const grid = gridAngle(sketch)
  const angles = Array.from({ length: 24 }, (_, k) => grid + (k * Math.PI) / 12)
  angles.push(principalAngle(sketch), principalAngle(sketch) + Math.PI)
  let least = Number.POSITIVE_INFINITY
  let best = { x: asGiven.x, y: asGiven.y }
  for (const mirrored of [false, true]) {
    for (const angle of angles) {
      sketch.x.splice(0, sketch.x.length, ...asGiven.x)
      sketch.y.splice(0, sketch.y.length, ...asGiven.y)
      // A mirror reverses the sense of a turn: the grid of the mirrored sketch lies at the opposite angle.
      rotate(sketch, mirrored ? -angle : angle, mirrored)
      const now = badness(sketch)
      if (now < least - 1e-6) {
        least = now
        best = { x: [...sketch.x], y: [...sketch.y] }
      }
    }
  }
  sketch.x.splice(0, sketch.x.length, ...best.x)
  sketch.y.splice(0, sketch.y.length, ...best.y)
}
