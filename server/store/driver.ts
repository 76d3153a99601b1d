import { DatabaseSync } from '@photostructure/sqlite'

export type Row = Readonly<Record<string, string | number | bigint | null>>

/** The embedded database: statements run at once, and a change is whole or not at all. */
export interface Database {
  exec(sql: string): void
  all<R extends object>(sql: string, ...values: readonly unknown[]): R[]
  /** @returns rows changed */
  run(sql: string, ...values: readonly unknown[]): number
  /** Runs `change` as one transaction; what it throws undoes it. It is synchronous, so that nothing else comes in between. */
  change<T>(change: () => T): T
  close(): void
}

/** The store is text and numbers; anything else would be stored as something other than it was. */
function bound(value: unknown): string | number | null {
  if (value === null || typeof value === 'string') return value
  if (typeof value === 'number' && Number.isFinite(value)) return value
  throw new TypeError(`cannot store a value of type ${typeof value} (${String(value)})`)
}

/** Opens a file, or `:memory:`. Waits up to two seconds for another program that is writing. */
export function openDatabase(file: string): Database {
  const database = new DatabaseSync(file, { timeout: 2000, enableForeignKeyConstraints: true })
  // Every acknowledged save survives a power cut: write-ahead log, synced at each commit.
  database.exec('pragma journal_mode = wal')
  database.exec('pragma synchronous = full')
  return {
    exec: sql => database.exec(sql),
    close: () => database.close(),
    // Rows come without a prototype; copied, they are plain objects.
    all: <R extends object>(sql: string, ...values: readonly unknown[]) =>
      database
        .prepare(sql)
        .all(...values.map(bound))
        .map(row => ({ ...row }) as R),
    run: (sql, ...values) => Number(database.prepare(sql).run(...values.map(bound)).changes),
    change: change => {
      database.exec('begin immediate')
      try {
        const result = change()
        database.exec('commit')
        return result
      } catch (error) {
        database.exec('rollback')
        throw error
      }
    },
  }
}
