import { fieldDifferences } from '../../core/library/differences.ts'
import type { Library } from '../../core/library/library.ts'
import { isOwnWord } from '../../core/library/own-word.ts'
import { planFromFile } from '../../core/plan/file.ts'
import { type Checked, good } from '../../core/problem/problem.ts'

/** JSON of a plan file: it brings the records it uses. */
export const isPlanFile = (value: unknown): boolean => (value as { format?: unknown } | null)?.format === 'waybench-plan'

/**
 * The own records of whoever made a plan file: those that the library does not hold, and those of their own bench, or put right by them, that
 * differ from the library's. A record that differs for another reason is of an older or newer library, and stays out: the library's own word stands.
 *
 * @returns raw records, to be held against the rules
 */
export function planRecords(
  name: string,
  value: unknown,
  library: Library,
): Checked<{ readonly materials: readonly unknown[]; readonly transformations: readonly unknown[] }> {
  const opened = planFromFile(name, value)
  if (!opened.ok) return opened
  const own = <R extends Brought>(brought: ReadonlyMap<string, R>, held: ReadonlyMap<string, R>): R[] =>
    [...brought.values()].filter(record => {
      const here = held.get(record.id)
      return here === undefined || (isOwnWord(record) && fieldDifferences(here, record).length > 0)
    })
  const { slice } = opened.value
  return good({
    materials: own(slice.materials, library.materials),
    transformations: own(slice.transformations, library.transformations),
  })
}

type Brought = { readonly id: string; readonly sources: readonly { readonly citation: string; readonly checked: boolean }[] }
