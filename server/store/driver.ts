import { DatabaseSync } from '@photostructure/sqlite'
import type { SqliteDatabase, SqliteStatement } from 'kysely'

type Bound = string | number | bigint | null | Uint8Array

/** The store is text and numbers; anything else would be stored as something other than it was. */
function bound(value: unknown): Bound {
  if (value === null || typeof value === 'string' || typeof value === 'bigint' || value instanceof Uint8Array) return value
  if (typeof value === 'number' && Number.isFinite(value)) return value
  throw new TypeError(`cannot store a value of type ${typeof value} (${String(value)})`)
}

/** The embedded database in the shape the query builder expects. */
export function openDatabase(file: string): SqliteDatabase & { exec(sql: string): void } {
  const database = new DatabaseSync(file, { timeout: 2000, enableForeignKeyConstraints: true })
  // Every acknowledged save survives a power cut: write-ahead log, synced at each commit.
  database.exec('pragma journal_mode = wal')
  database.exec('pragma synchronous = full')
  return {
    exec: sql => database.exec(sql),
    close: () => database.close(),
    prepare(sql: string): SqliteStatement {
      const statement = database.prepare(sql)
      return {
        reader: statement.columns().length > 0,
        all: values => statement.all(...values.map(bound)),
        run: values => {
          const { changes, lastInsertRowid } = statement.run(...values.map(bound))
          return { changes: BigInt(changes), lastInsertRowid: BigInt(lastInsertRowid) }
        },
        iterate: values => statement.iterate(...values.map(bound)) as IterableIterator<unknown>,
      }
    },
  }
}
