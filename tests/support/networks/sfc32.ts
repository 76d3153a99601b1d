/**
 * Seeded generator of numbers in [0, 1): sfc32 by Chris Doty-Humphrey (PractRand, public domain), started as the specification of the
 * random networks has it, with 16 draws dropped.
 */
export function sfc32(seed: number, first = 0x9e3779b9, second = 0x243f6a88): () => number {
  let a = first | 0
  let b = second | 0
  let c = seed | 0
  let d = 1
  const draw = () => {
    const t = (((a + b) | 0) + d) | 0
    d = (d + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = ((c << 21) | (c >>> 11)) + t
    c |= 0
    return (t >>> 0) / 4294967296
  }
  for (let i = 0; i < 16; i++) draw()
  return draw
}
