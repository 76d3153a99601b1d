import type { z } from 'zod'
import { type ChangesTold, materialChangesTold, stepChangesTold } from '../../core/library/changed-figures.ts'
import type { Library } from '../../core/library/library.ts'
import { materialSchema } from '../../core/library/material.ts'
import { transformationSchema } from '../../core/library/transformation.ts'
import type { Problem } from '../../core/problem/problem.ts'

interface Told {
  readonly materials: readonly unknown[]
  readonly transformations: readonly unknown[]
  readonly warnings: readonly Problem[]
}

/**
 * Raw records with every figure that differs from the library beneath, while the sources are still those of the figure there, told as changed
 * without a source; one warning a record. What has not the form is left to the rules as it is.
 */
export function withChangesTold(
  { materials, transformations }: Pick<Told, 'materials' | 'transformations'>,
  library: Pick<Library, 'materials' | 'transformations'>,
): Told {
  const warnings: Problem[] = []
  const each = <R extends { readonly id: string; readonly name: string }>(
    list: 'materials' | 'transformations',
    schema: z.ZodType<R>,
    tell: (record: R, under: R) => ChangesTold<R>,
    under: ReadonlyMap<string, R>,
    records: readonly unknown[],
  ): readonly unknown[] =>
    records.map(raw => {
      const read = schema.safeParse(raw)
      const below = read.success ? under.get(read.data.id) : undefined
      if (!read.success || below === undefined) return raw
      const { record, figures } = tell(read.data, below)
      if (figures.length === 0) return raw
      warnings.push(withoutSource(list, record, figures))
      return record
    })
  return {
    materials: each('materials', materialSchema, materialChangesTold, library.materials, materials),
    transformations: each('transformations', transformationSchema, stepChangesTold, library.transformations, transformations),
    warnings,
  }
}

const withoutSource = (
  list: 'materials' | 'transformations',
  { id, name }: { readonly id: string; readonly name: string },
  figures: readonly string[],
): Problem => ({
  code: 'changed-without-source',
  where: [list, id, 'sources'],
  what: `${name} (${id}) gives another ${figures.join(', ')} than the record it stands over, and names only the sources of that one.`,
  why: 'Nobody reads the new figures there: they count as remembered.',
  cure: 'Add a source of its own, with "checked": true where it was read there, or with a citation that begins with "own bench" where it was measured.',
})
