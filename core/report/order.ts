/** Step numbers in the order of a reader: 1, 2a, 2b, 10; texts that begin with one after it. */
export function byNumberThenName(a: string, b: string): number {
  const [first, second] = [numberIn(a), numberIn(b)]
  return first - second || (a < b ? -1 : a > b ? 1 : 0)
}

const numberIn = (text: string): number => Number(/\d+/.exec(text)?.[0] ?? Number.POSITIVE_INFINITY)
