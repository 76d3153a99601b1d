import { signal } from '@preact/signals'

const written = signal<ReadonlyMap<string, unknown>>(new Map())

/**
 * What was written into a question but is no part of the plan yet: one question stands open at a time, and folding it must not lose this.
 * To be read while a component is drawn, which is then drawn anew when it changes.
 *
 * @param key  one for each place it is written in
 */
export function halfDone<T>(key: string, first: T): readonly [value: T, set: (value: T) => void] {
  const value = written.value.has(key) ? (written.value.get(key) as T) : first
  return [
    value,
    next => {
      written.value = new Map(written.peek()).set(key, next)
    },
  ]
}

/** Another plan is opened. */
export const forgetHalfDone = (): void => {
  written.value = new Map()
}
