/** A structure on its way to a drawing: coordinates in bond lengths, y downwards, free to be bent and turned. */
export interface SketchBond {
  readonly a: number
  readonly b: number
  readonly order: number
  readonly inRing: boolean
}

export interface Sketch {
  readonly x: number[]
  readonly y: number[]
  readonly el: readonly string[]
  /** Implicit hydrogens. */
  readonly h: readonly number[]
  readonly bonds: readonly SketchBond[]
  /** Indices of bonds at each atom. */
  readonly at: readonly (readonly number[])[]
}

export const otherEnd = (bond: SketchBond, atom: number): number => (bond.a === atom ? bond.b : bond.a)

/** Height and width of the sketch turned by an angle, bond lengths. */
export function extent(sketch: Sketch, angle: number): { w: number; h: number } {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  let left = Number.POSITIVE_INFINITY
  let right = Number.NEGATIVE_INFINITY
  let top = Number.POSITIVE_INFINITY
  let bottom = Number.NEGATIVE_INFINITY
  for (let i = 0; i < sketch.x.length; i++) {
    const x = sketch.x[i]! * cos - sketch.y[i]! * sin
    const y = sketch.x[i]! * sin + sketch.y[i]! * cos
    left = Math.min(left, x)
    right = Math.max(right, x)
    top = Math.min(top, y)
    bottom = Math.max(bottom, y)
  }
  return { w: right - left, h: bottom - top }
}

/** Turn that brings as many bonds as can be onto multiples of 30 degrees; ring bonds weigh twice. Radians. */
export function gridAngle(sketch: Sketch): number {
  let re = 0
  let im = 0
  for (const bond of sketch.bonds) {
    const theta = Math.atan2(sketch.y[bond.b]! - sketch.y[bond.a]!, sketch.x[bond.b]! - sketch.x[bond.a]!)
    const weight = bond.inRing ? 2 : 1
    re += weight * Math.cos(12 * theta)
    im += weight * Math.sin(12 * theta)
  }
  return -Math.atan2(im, re) / 12
}
