import type { Source } from '../source.ts'
import type { Finding } from './check.ts'

/** Every record says where its figures come from, even where that is memory. For materials and transformations alike. */
export function sourcesPresent(record: { readonly sources: readonly Source[] }): readonly Finding[] {
  if (record.sources.length > 0) return []
  return [
    {
      severity: 'error',
      code: 'sources-missing',
      field: ['sources'],
      what: 'No source is given.',
      why: 'A figure is only as good as where it comes from, and the reader is shown which.',
      cure: 'Add at least one source; where there is none, cite "from memory" or "common practice, no source" with "checked": false.',
    },
  ]
}
