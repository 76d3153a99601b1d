import { existsSync, mkdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { openDatabase } from './driver.ts'
import { migrations } from './migrations.ts'
import { type OwnRecords, ownRecords } from './own-records.ts'

/** A saved plan as listed. Times are ISO 8601 in UTC. */
export interface PlanSummary {
  readonly id: string
  readonly title: string
  readonly version: number
  readonly savedAt: string
}

/** A saved plan with its text: a plan file, JSON. */
export interface StoredPlan extends PlanSummary {
  readonly body: string
}

/** Saved plans. Each save is a version of its own and the earlier ones stay readable. What returns has been written. */
export interface Store {
  list(): readonly PlanSummary[]
  /** The newest version, or the one named; null where there is none. */
  get(id: string, version?: number): StoredPlan | null
  versions(id: string): readonly PlanSummary[]
  create(id: string, title: string, body: string, at: string): PlanSummary
  /** Saves on top of `onVersion`; null where the plan is gone, `conflict` where somebody saved in between. */
  save(id: string, onVersion: number, title: string, body: string, at: string): PlanSummary | null | 'conflict'
  /** @returns whether it was there */
  remove(id: string): boolean
  /** Materials and transformations of this bench itself. */
  readonly own: OwnRecords
  close(): void
}

const summary = 'v.plan_id as id, v.title, v.version, v.saved_at as savedAt'
const insertVersion = 'insert into plan_versions (plan_id, version, title, body, saved_at) values (?, ?, ?, ?, ?)'

/**
 * Opens, and where needed makes or upgrades, the embedded database in a folder.
 *
 * @param folder existing or not; `:memory:` keeps everything in memory
 * @throws Error when the folder cannot be written or holds a database of a later version
 */
export function openStore(folder: string): Store {
  if (folder !== ':memory:') makeFolder(folder)
  const database = openDatabase(folder === ':memory:' ? folder : join(folder, 'waybench.sqlite'))
  const taken = database.all<{ user_version: number }>('pragma user_version')[0]?.user_version ?? 0
  if (taken > migrations.length) {
    database.close()
    throw new Error(
      `The plans in ${folder} were written by a later Waybench (form ${taken}, this one knows ${migrations.length}). Use that one, or name another folder.`,
    )
  }
  for (const [at, sql] of migrations.entries()) {
    if (at < taken) continue
    database.change(() => database.exec(`${sql} pragma user_version = ${at + 1};`))
  }

  return {
    list: () =>
      database.all(
        `select ${summary} from plans p join plan_versions v on v.plan_id = p.id and v.version = p.version order by v.saved_at desc, p.id`,
      ),
    get: (id, version) => {
      const which = version === undefined ? 'v.version = p.version' : 'v.version = ?'
      const sql = `select ${summary}, v.body from plans p join plan_versions v on v.plan_id = p.id where p.id = ? and ${which}`
      return database.all<StoredPlan>(sql, id, ...(version === undefined ? [] : [version]))[0] ?? null
    },
    versions: id => database.all(`select ${summary} from plan_versions v where v.plan_id = ? order by v.version`, id),
    create: (id, title, body, at) =>
      database.change(() => {
        database.run('insert into plans (id, version, created_at) values (?, 1, ?)', id, at)
        database.run(insertVersion, id, 1, title, body, at)
        return { id, title, version: 1, savedAt: at }
      }),
    save: (id, onVersion, title, body, at) =>
      database.change(() => {
        const version = onVersion + 1
        if (database.run('update plans set version = ? where id = ? and version = ?', version, id, onVersion) === 0) {
          return database.all('select id from plans where id = ?', id).length > 0 ? ('conflict' as const) : null
        }
        database.run(insertVersion, id, version, title, body, at)
        return { id, title, version, savedAt: at }
      }),
    remove: id => database.run('delete from plans where id = ?', id) > 0,
    own: ownRecords(database),
    close: () => database.close(),
  }
}

/** One folder after the other: Node's own way of making them all never returns where the system keeps a folder from being made (/proc). */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return
  const above = dirname(folder)
  if (above !== folder) makeFolder(above)
  mkdirSync(folder)
}
