/**
 * The value of a rank, without sorting them all (Hoare's selection).
 *
 * @param values no NaN among them; put into another order
 * @param rank   from 0, below their count
 */
export function nthSmallest(values: Float64Array, rank: number): number {
  let from = 0
  let to = values.length - 1
  while (from < to) {
    // The middle of three keeps it from going wrong on what is in order already.
    const pivot = middleOf(values[from]!, values[(from + to) >> 1]!, values[to]!)
    let i = from
    let j = to
    while (i <= j) {
      while (values[i]! < pivot) i++
      while (values[j]! > pivot) j--
      if (i > j) break
      const held = values[i]!
      values[i++] = values[j]!
      values[j--] = held
    }
    if (rank <= j) to = j
    else if (rank >= i) from = i
    else break
  }
  return values[rank]!
}

const middleOf = (a: number, b: number, c: number): number => Math.max(Math.min(a, b), Math.min(Math.max(a, b), c))
