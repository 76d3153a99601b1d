import { otherEnd, type Sketch } from './sketch.ts'

export type LabelSide = 'left' | 'right' | 'above' | 'below'

/**
 * On which side an atom's hydrogens are written: away from its bonds; in a chain (bonds left and right) above or below.
 */
export function labelSide(sketch: Sketch, atom: number): LabelSide {
  // Alone, an atom is written as its formula is: H2O, HCl, but NH3 and CH4.
  if (sketch.at[atom]!.length === 0) return /^(O|S|F|Cl|Br|I)$/.test(sketch.el[atom]!) ? 'left' : 'right'
  let right = 0
  let down = 0
  let leftward = false
  let rightward = false
  for (const index of sketch.at[atom]!) {
    const end = otherEnd(sketch.bonds[index]!, atom)
    const dx = sketch.x[end]! - sketch.x[atom]!
    right += dx
    down += sketch.y[end]! - sketch.y[atom]!
    if (dx < -0.3) leftward = true
    if (dx > 0.3) rightward = true
  }
  if (leftward && rightward) return down > 0 ? 'above' : 'below'
  if (rightward || right > 0.1) return 'left'
  return 'right'
}

/**
 * Size of a label about its atom in px, roughly: the toolkit side has no font, and the page reckons the true box when it cuts bonds.
 * A capital of the page's face at 12 px is about 8 px wide, its cap height 8.
 */
export function labelBox(el: string, hydrogens: number, charge: number, side: LabelSide): { l: number; r: number; t: number; b: number } {
  const symbol = el.length * 4 + 0.5
  const tail = hydrogens === 0 ? 0 : 8.5 + (hydrogens > 1 ? 4.5 : 0)
  const box = { l: symbol, r: symbol, t: 5, b: 5 }
  if (tail > 0 && side === 'left') box.l += tail
  if (tail > 0 && side === 'right') box.r += tail
  if (tail > 0 && side === 'above') box.t += 10
  if (tail > 0 && side === 'below') box.b += 10
  if (hydrogens > 1 && side !== 'above') box.b += 2
  if (charge !== 0) {
    if (side === 'left') box.l += 6
    else box.r += 6
    box.t += 2
  }
  return box
}
