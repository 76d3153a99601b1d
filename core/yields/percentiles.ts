/**
 * Three quantiles (type 7) of many draws, by selection instead of sorting: a plan asks this of every step and goal at each move of a slider.
 *
 * @param draws left as they are
 * @returns quantiles at 0.1, 0.5 and 0.9
 */
export function percentiles(draws: Float64Array): { readonly p10: number; readonly median: number; readonly p90: number } {
  const work = scratch(draws)
  // Each selection leaves smaller values before it and larger ones behind, so the next need only look at one side.
  const median = selected(work, 0.5, 0, work.length - 1)
  const middle = Math.floor((work.length - 1) / 2)
  return { p10: selected(work, 0.1, 0, middle), median, p90: selected(work, 0.9, middle, work.length - 1) }
}

/** Share of draws at or above a wanted value; a rounding error of 1 part in 10^9 counts as reached. */
export function chanceOf(draws: Float64Array, wanted: number): number {
  const least = wanted * (1 - 1e-9)
  let reached = 0
  for (let i = 0; i < draws.length; i++) if (draws[i]! >= least) reached++
  return reached / draws.length
}

let space = new Float64Array(0)
function scratch(draws: Float64Array): Float64Array {
  if (space.length !== draws.length) space = new Float64Array(draws.length)
  space.set(draws)
  return space
}

function selected(work: Float64Array, p: number, from: number, to: number): number {
  const at = (work.length - 1) * p
  const below = Math.floor(at)
  place(work, below, from, to)
  const low = work[below]!
  if (at === below) return low
  // What stands behind the placed element is not smaller: its neighbour in order is the least of them.
  let high = Number.POSITIVE_INFINITY
  for (let i = below + 1; i < work.length; i++) if (work[i]! < high) high = work[i]!
  return low + (at - below) * (high - low)
}

/** Hoare's selection: afterwards the k-th smallest stands at k, nothing larger before it, nothing smaller behind. */
function place(work: Float64Array, k: number, from: number, to: number): void {
  let left = from
  let right = to
  while (right > left) {
    const pivot = work[k]!
    let i = left
    let j = right
    do {
      while (work[i]! < pivot) i++
      while (work[j]! > pivot) j--
      if (i <= j) {
        const held = work[i]!
        work[i] = work[j]!
        work[j] = held
        i++
        j--
      }
    } while (i <= j)
    if (j < k) left = i
    if (k < i) right = j
  }
}
