import type { Finding } from './check.ts'

/** Words that the command line takes for something else where an id may stand. */
const reserved: ReadonlySet<string> = new Set(['bundled', 'all'])

/** No record is called by a reserved word. For materials and transformations alike. */
export function reservedId(record: { readonly id: string }): readonly Finding[] {
  if (!reserved.has(record.id)) return []
  return [
    {
      severity: 'error',
      code: 'id-reserved',
      field: ['id'],
      what: `The id "${record.id}" is a reserved word.`,
      why: '"bundled" names the library that comes with the program and "all" stands for every compound.',
      cure: 'Choose another id.',
    },
  ]
}
