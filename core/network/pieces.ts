/** Work cut into pieces of some ten milliseconds on the largest libraries: between two of them others may have their turn. */
export type InPieces<T> = Generator<unknown, T>

/** The same without a pause. */
export function atOnce<T>(work: InPieces<T>): T {
  for (let piece = work.next(); ; piece = work.next()) if (piece.done) return piece.value
}

/** Entries dealt with between two pauses. */
const entriesAtOnce = 10_000

/** Looks at each entry of a list, with pauses. */
export function* eachInPieces<T>(list: ArrayLike<T>, look: (entry: T, at: number) => void): InPieces<void> {
  for (let at = 0; at < list.length; at++) {
    if (at > 0 && at % entriesAtOnce === 0) yield
    look(list[at]!, at)
  }
}

/** A list put in order, with pauses: parts of it are sorted, then merged two by two. Equal entries keep their order. */
export function* sortedInPieces<T>(list: readonly T[], order: (a: T, b: T) => number): InPieces<readonly T[]> {
  let parts: T[][] = []
  for (let at = 0; at < list.length; at += entriesAtOnce) {
    parts.push(list.slice(at, at + entriesAtOnce).sort(order))
    yield
  }
  while (parts.length > 1) {
    const merged: T[][] = []
    for (let at = 0; at < parts.length; at += 2) {
      merged.push(parts[at + 1] === undefined ? parts[at]! : mergedOf(parts[at]!, parts[at + 1]!, order))
      yield
    }
    parts = merged
  }
  return parts[0] ?? []
}

function mergedOf<T>(one: readonly T[], other: readonly T[], order: (a: T, b: T) => number): T[] {
  const merged: T[] = []
  let a = 0
  let b = 0
  while (a < one.length && b < other.length) merged.push(order(one[a]!, other[b]!) <= 0 ? one[a++]! : other[b++]!)
  while (a < one.length) merged.push(one[a++]!)
  while (b < other.length) merged.push(other[b++]!)
  return merged
}
