/** Each record that has the key of one before it, behind the first that has it. */
export function eachAgain<R>(records: readonly R[], keyOf: (record: R) => string | null): readonly (readonly [first: R, again: R])[] {
  const first = new Map<string, R>()
  return records.flatMap((record): readonly (readonly [R, R])[] => {
    const key = keyOf(record)
    if (key === null) return []
    const before = first.get(key)
    if (before !== undefined) return [[before, record]]
    first.set(key, record)
    return []
  })
}
