import { buildApp } from '../../server/app.ts'
import { openWorkshop, type Workshop } from '../../server/library/workshop.ts'
import { openStore } from '../../server/store/store.ts'

/** The bundled library with its tables. */
export const bundledWorkshop = (): Promise<Workshop> => openWorkshop([])

/** The server with an empty store, on the bundled library unless told; time and ids are settled, so that replies are the same each run. */
export async function testApp(folder = ':memory:', workshop?: Workshop) {
  const store = openStore(folder)
  let ids = 0
  let ticks = 0
  const app = await buildApp(
    {
      workshop: workshop ?? (await bundledWorkshop()),
      store,
      now: () => `2026-12-03T20:${String(ticks++).padStart(2, '0')}:00.000Z`,
      newId: () => `plan-${++ids}`,
    },
    { rateLimit: null, pageFolder: null },
    false,
  )
  app.addHook('onClose', () => store.close())
  return app
}
