import { otherEnd, type Sketch } from './sketch.ts'
import { turn } from './turn.ts'
import { unbend } from './unbend.ts'

// Room between two pieces, bond lengths from atom to atom: a charged label on either side fits between.
const between = 2.2

function piecesOf(sketch: Sketch): number[][] {
  const seen = new Set<number>()
  const pieces: number[][] = []
  sketch.x.forEach((_, first) => {
    if (seen.has(first)) return
    const piece = new Set([first])
    for (const atom of piece) for (const bond of sketch.at[atom]!) piece.add(otherEnd(sketch.bonds[bond]!, atom))
    for (const atom of piece) seen.add(atom)
    pieces.push([...piece].sort((p, q) => p - q))
  })
  return pieces
}

function cutOut(sketch: Sketch, atoms: readonly number[]): Sketch {
  const place = new Map(atoms.map((atom, i) => [atom, i]))
  const bonds = sketch.bonds.flatMap(bond => {
    const a = place.get(bond.a)
    const b = place.get(bond.b)
    return a === undefined || b === undefined ? [] : [{ ...bond, a, b }]
  })
  const at: number[][] = atoms.map(() => [])
  bonds.forEach((bond, i) => {
    at[bond.a]!.push(i)
    at[bond.b]!.push(i)
  })
  return {
    x: atoms.map(i => sketch.x[i]!),
    y: atoms.map(i => sketch.y[i]!),
    el: atoms.map(i => sketch.el[i]!),
    h: atoms.map(i => sketch.h[i]!),
    bonds,
    at,
  }
}

/** Unbends and turns each piece of a structure for itself and sets loose ions and water beside the largest, on one middle line. */
export function arrangePieces(sketch: Sketch): void {
  const pieces = piecesOf(sketch).sort((p, q) => q.length - p.length || p[0]! - q[0]!)
  let right = 0
  for (const atoms of pieces) {
    const piece = cutOut(sketch, atoms)
    unbend(piece)
    turn(piece)
    // Loose water and HCl carry their hydrogens on the left.
    if (right > 0 && atoms.length === 1 && sketch.h[atoms[0]!]! > 0) right += 1
    const left = Math.min(...piece.x)
    const middle = (Math.min(...piece.y) + Math.max(...piece.y)) / 2
    atoms.forEach((atom, i) => {
      sketch.x[atom] = piece.x[i]! - left + right
      sketch.y[atom] = piece.y[i]! - middle
    })
    right += Math.max(...piece.x) - left + between
  }
}
