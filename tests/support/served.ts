import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { buildApp } from '../../server/app.ts'
import { openWorkshop } from '../../server/library/workshop.ts'
import { openStore } from '../../server/store/store.ts'
import { root } from './tree.ts'

export interface Served {
  readonly url: string
  close(): Promise<void>
}

/**
 * The built page and the API on a free port of this machine, plans in a folder.
 *
 * @param libraries  as the command line names them; none = the bundled one
 */
export async function served(folder: string, libraries: readonly string[] = []): Promise<Served> {
  const pageFolder = join(root, 'dist', 'web')
  if (!existsSync(join(pageFolder, 'index.html'))) throw new Error('The page is not built: run npm test, or npm run build first.')
  const store = openStore(folder)
  let ids = 0
  const app = await buildApp(
    {
      workshop: await openWorkshop(libraries),
      store,
      now: () => new Date().toISOString(),
      newId: () => `plan-${Date.now().toString(36)}-${++ids}`,
    },
    { rateLimit: null, pageFolder },
    false,
  )
  app.addHook('onClose', () => store.close())
  const url = await app.listen({ port: 0, host: '127.0.0.1' })
  return { url, close: () => app.close() }
}
