/**
 * The candidate that a mistyped word was most likely meant to be, or null where none is near enough to be worth proposing.
 * A slip is a letter left out, added or changed, or two neighbours swapped. One is allowed for every four letters, at least one from three
 * letters on, three at most.
 *
 * @param word        as typed; case does not count
 * @param candidates  the words that would be valid; of equally near ones the first in order of code units wins
 * @example nearest('benzion', ['benzil', 'benzoin']) // 'benzoin'
 */
export function nearest(word: string, candidates: Iterable<string>): string | null {
  const typed = word.toLowerCase()
  if (typed.length < 3) return null
  let limit = Math.min(3, Math.max(1, Math.floor(typed.length / 4)))
  let best: string | null = null
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - typed.length) > limit) continue
    const slips = slipsBetween(typed, candidate.toLowerCase(), limit)
    if (slips < limit || (slips === limit && (best === null || candidate < best))) {
      best = candidate
      limit = slips
    }
  }
  return best
}

/** "Did you mean ...?" as a sentence with a trailing space, or nothing. */
export function didYouMean(word: string, candidates: Iterable<string>): string {
  const found = nearest(word, candidates)
  return found === null ? '' : `Did you mean "${found}"? `
}

/** Optimal string alignment distance, row by row; anything beyond `limit` comes back as `limit + 1`. */
function slipsBetween(left: string, right: string, limit: number): number {
  let before: number[] = []
  let above = Array.from({ length: right.length + 1 }, (_, index) => index)
  for (let row = 1; row <= left.length; row++) {
    const here = [row]
    let least = row
    for (let column = 1; column <= right.length; column++) {
      const same = left[row - 1] === right[column - 1]
      let slips = Math.min(above[column]! + 1, here[column - 1]! + 1, above[column - 1]! + (same ? 0 : 1))
      const swapped = row > 1 && column > 1 && left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1]
      if (swapped) slips = Math.min(slips, before[column - 2]! + 1)
      here.push(slips)
      least = Math.min(least, slips)
    }
    if (least > limit) return limit + 1
    before = above
    above = here
  }
  return above[right.length]!
}
