import type { Database } from './driver.ts'

export type OwnList = 'materials' | 'transformations'

/** A record of the bench's own library as stored: JSON of the library format, or null where this version takes it away. */
export interface OwnChange {
  readonly list: OwnList
  readonly id: string
  readonly body: string | null
}

/** One save. Nothing is ever written over: taking a save back is a version of its own that names the one it undoes. */
export interface OwnVersion {
  readonly version: number
  /** In words, as shown in the history. */
  readonly what: string
  readonly undoes: number | null
  readonly savedAt: string
  readonly records: number
}

export interface OwnRecords {
  /** The newest version; 0 where nothing was ever saved. */
  version(): number
  /** Records as they stand, in order of list and id. */
  records(): readonly (OwnChange & { readonly body: string })[]
  /** All saves, newest first. */
  history(): readonly OwnVersion[]
  /** Saves on top of `onVersion`, whole or not at all; `conflict` where somebody saved in between. */
  save(onVersion: number, what: string, changes: readonly OwnChange[], at: string, undoes?: number): OwnVersion | 'conflict'
  /** What taking back the newest save that still stands would change; null where none is left. */
  undoing(): { readonly undoes: number; readonly what: string; readonly changes: readonly OwnChange[] } | null
}

const newest = 'select max(version) from own_records n where n.list = r.list and n.id = r.id'

/** The bench's own records in an open database. */
export function ownRecords(database: Database): OwnRecords {
  const version = (): number =>
    database.all<{ version: number }>('select coalesce(max(version), 0) as version from own_versions')[0]?.version ?? 0
  return {
    version,
    records: () =>
      database.all(`select list, id, body from own_records r where body is not null and version = (${newest}) order by list, id`),
    history: () =>
      database.all(
        `select v.version, v.what, v.undoes, v.saved_at as savedAt, (select count(*) from own_records r where r.version = v.version) as records
         from own_versions v order by v.version desc`,
      ),
    save: (onVersion, what, changes, at, undoes) =>
      database.change(() => {
        if (version() !== onVersion) return 'conflict' as const
        const next = onVersion + 1
        database.run('insert into own_versions (version, what, undoes, saved_at) values (?, ?, ?, ?)', next, what, undoes ?? null, at)
        for (const { list, id, body } of changes)
          database.run('insert into own_records (list, id, version, body) values (?, ?, ?, ?)', list, id, next, body)
        return { version: next, what, undoes: undoes ?? null, savedAt: at, records: changes.length }
      }),
    undoing: () => {
      const last = database.all<{ version: number; what: string }>(
        `select version, what from own_versions v where undoes is null
         and not exists (select 1 from own_versions u where u.undoes = v.version) order by version desc limit 1`,
      )[0]
      if (last === undefined) return null
      // Whatever came after it has been taken back itself, so what stood before it is the newest that is older.
      const changes = database.all<OwnChange>(
        `select r.list, r.id,
           (select b.body from own_records b where b.list = r.list and b.id = r.id and b.version < r.version order by b.version desc limit 1) as body
         from own_records r where r.version = ? order by r.list, r.id`,
        last.version,
      )
      return { undoes: last.version, what: last.what, changes }
    },
  }
}
