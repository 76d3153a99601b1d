/**
 * A key for each line by what it says; the same words a second time have a key of their own, so that what is said of one line is not said of
 * the other.
 */
export function lineKeys(lines: readonly string[]): readonly string[] {
  const seen = new Map<string, number>()
  return lines.map(line => {
    const times = (seen.get(line) ?? 0) + 1
    seen.set(line, times)
    return times === 1 ? line : `${line}\n${times}`
  })
}
