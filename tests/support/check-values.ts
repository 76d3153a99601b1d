import { readFileSync } from 'node:fs'

/** One worked example or standard value, with where it is printed. */
export interface CheckValue {
  readonly id: string
  readonly topic: string
  // biome-ignore lint/suspicious/noExplicitAny: every topic has a shape of its own
  readonly inputs: any
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly expected: any
  readonly tolerance: { readonly abs?: number; readonly rel?: number; readonly exact?: boolean }
  readonly source: { readonly citation: string; readonly url: string; readonly checked: boolean }
}

const all: readonly CheckValue[] = JSON.parse(readFileSync(new URL('./check-values.json', import.meta.url), 'utf8'))

/**
 * The entries of one topic.
 *
 * @param atLeast  how many there must be, so that a test over them can never pass over nothing
 */
export function checkValuesOf(topic: string, atLeast: number): readonly CheckValue[] {
  const found = all.filter(one => one.topic === topic)
  if (found.length < atLeast) throw new Error(`${found.length} check values of topic ${topic}, expected at least ${atLeast}`)
  return found
}

/** How far a value may be off by the entry's own tolerance. */
export function allowance({ tolerance }: CheckValue, expected: number): number {
  if (tolerance.exact) return 1e-9 * Math.max(1, Math.abs(expected))
  return Math.max(tolerance.abs ?? 0, (tolerance.rel ?? 0) * Math.abs(expected))
}
