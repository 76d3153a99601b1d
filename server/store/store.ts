import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { Kysely, SqliteDialect } from 'kysely'
import { openDatabase } from './driver.ts'
import { migrations } from './migrations.ts'

interface Tables {
  plans: { id: string; version: number; created_at: string }
  plan_versions: { plan_id: string; version: number; title: string; body: string; saved_at: string }
}

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

/** Saved plans. Each save is a version of its own and the earlier ones stay readable. */
export interface Store {
  list(): Promise<readonly PlanSummary[]>
  get(id: string, version?: number): Promise<StoredPlan | null>
  versions(id: string): Promise<readonly PlanSummary[]>
  create(id: string, title: string, body: string, at: string): Promise<PlanSummary>
  /** Saves on top of `onVersion`; null where the plan is gone, `conflict` where somebody saved in between. */
  save(id: string, onVersion: number, title: string, body: string, at: string): Promise<PlanSummary | null | 'conflict'>
  remove(id: string): Promise<boolean>
  close(): Promise<void>
}

const columns = [
  'plan_versions.plan_id as id',
  'plan_versions.title',
  'plan_versions.version',
  'plan_versions.saved_at as savedAt',
] as const

/**
 * Opens, and where needed makes or upgrades, the embedded database in a folder.
 *
 * @param folder existing or not; `:memory:` keeps everything in memory
 * @throws Error when the folder cannot be written or holds a database of a later version
 */
export function openStore(folder: string): Store {
  if (folder !== ':memory:') mkdirSync(folder, { recursive: true })
  const database = openDatabase(folder === ':memory:' ? folder : join(folder, 'waybench.sqlite'))
  const taken = Number((database.prepare('pragma user_version').all([])[0] as { user_version: number }).user_version)
  if (taken > migrations.length) {
    database.close()
    throw new Error(
      `The plans in ${folder} were written by a later Waybench (form ${taken}, this one knows ${migrations.length}). Use that one, or name another folder with --data.`,
    )
  }
  for (const [at, sql] of migrations.entries()) {
    if (at < taken) continue
    database.exec(`begin immediate; ${sql} pragma user_version = ${at + 1}; commit;`)
  }
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) })
  const latest = () =>
    db
      .selectFrom('plans')
      .innerJoin('plan_versions', join =>
        join.onRef('plan_versions.plan_id', '=', 'plans.id').onRef('plan_versions.version', '=', 'plans.version'),
      )

  return {
    list: () => latest().select(columns).orderBy('plan_versions.saved_at', 'desc').orderBy('plans.id').execute(),
    get: async (id, version) => {
      const row =
        version === undefined
          ? await latest()
              .select([...columns, 'plan_versions.body'])
              .where('plans.id', '=', id)
              .executeTakeFirst()
          : await db
              .selectFrom('plan_versions')
              .select([...columns, 'plan_versions.body'])
              .where('plan_id', '=', id)
              .where('version', '=', version)
              .executeTakeFirst()
      return row ?? null
    },
    versions: id => db.selectFrom('plan_versions').select(columns).where('plan_id', '=', id).orderBy('version').execute(),
    create: (id, title, body, at) =>
      db.transaction().execute(async trx => {
        await trx.insertInto('plans').values({ id, version: 1, created_at: at }).execute()
        await trx.insertInto('plan_versions').values({ plan_id: id, version: 1, title, body, saved_at: at }).execute()
        return { id, title, version: 1, savedAt: at }
      }),
    save: (id, onVersion, title, body, at) =>
      db.transaction().execute(async trx => {
        const version = onVersion + 1
        const { numUpdatedRows } = await trx
          .updateTable('plans')
          .set({ version })
          .where('id', '=', id)
          .where('version', '=', onVersion)
          .executeTakeFirstOrThrow()
        if (numUpdatedRows === 0n) {
          const there = await trx.selectFrom('plans').select('id').where('id', '=', id).executeTakeFirst()
          return there ? ('conflict' as const) : null
        }
        await trx.insertInto('plan_versions').values({ plan_id: id, version, title, body, saved_at: at }).execute()
        return { id, title, version, savedAt: at }
      }),
    remove: async id => (await db.deleteFrom('plans').where('id', '=', id).executeTakeFirstOrThrow()).numDeletedRows > 0n,
    close: () => db.destroy(),
  }
}
