import type { z } from 'zod'
import type { Problem } from '../problem/problem.ts'
import { schemaProblems } from '../problem/schema.ts'

/** Records of one kind out of all files, in order of id, and the ids of those that the schema refused. */
export interface Gathered<R> {
  readonly records: ReadonlyMap<string, R>
  readonly refused: ReadonlySet<string>
}

/** Merges the records of one kind by id. The same record in two files counts once; different content under one id is told with both files. */
export class Gathering<R extends { readonly id: string }> {
  readonly problems: Problem[] = []
  readonly #list: string
  readonly #schema: z.ZodType<R>
  readonly #records = new Map<string, { readonly record: R; readonly file: string }>()
  readonly #refused = new Set<string>()

  constructor(list: string, schema: z.ZodType<R>) {
    this.#list = list
    this.#schema = schema
  }

  /** Takes over the records of a file, as parsed from its JSON. */
  add(file: string, raw: readonly unknown[]): void {
    for (const [index, value] of raw.entries()) {
      const parsed = this.#schema.safeParse(value)
      if (parsed.success) this.#merge(file, parsed.data)
      else {
        const id = idOf(value)
        if (id !== null) this.#refused.add(id)
        this.problems.push(...schemaProblems(parsed.error, this.#schema, value, [file, id ?? `${this.#list} ${index + 1}`]))
      }
    }
  }

  /** The file a record came from; of a record in several files, the first. */
  fileOf(id: string): string {
    return this.#records.get(id)?.file ?? ''
  }

  gathered(): Gathered<R> {
    const entries = [...this.#records].sort(([one], [other]) => (one < other ? -1 : 1))
    return { records: new Map(entries.map(([id, { record }]) => [id, record])), refused: this.#refused }
  }

  #merge(file: string, record: R): void {
    const known = this.#records.get(record.id)
    if (known === undefined) this.#records.set(record.id, { record, file })
    else if (!isSame(known.record, record))
      this.problems.push({
        code: 'id-repeated',
        where: [file, record.id],
        what: `The id "${record.id}" stands for something else in ${known.file === file ? 'the same file' : known.file}.`,
        why: 'Files are merged by id: of two different records under one id, one would be lost.',
        cure: 'Give one of the two another id, or make them the same.',
      })
  }
}

function idOf(value: unknown): string | null {
  const id = typeof value === 'object' && value !== null && 'id' in value ? value.id : null
  return typeof id === 'string' ? id : null
}

/** Same content; the order of keys does not count, that of lists does. */
function isSame(one: unknown, other: unknown): boolean {
  if (typeof one !== 'object' || one === null || typeof other !== 'object' || other === null) return Object.is(one, other)
  if (Array.isArray(one) !== Array.isArray(other)) return false
  const left = Object.entries(one)
  if (left.length !== Object.keys(other).length) return false
  return left.every(([key, value]) => Object.hasOwn(other, key) && isSame(value, (other as Record<string, unknown>)[key]))
}
