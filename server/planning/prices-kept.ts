import { type PacksFile, packsFileSchema } from '../../core/shopping/packs.ts'
import type { Store } from '../store/store.ts'

/** The packs files of all plans kept, each once, though many plans hold it. */
export function pricesKept(store: Store): readonly PacksFile[] {
  const files = new Map<string, PacksFile>()
  for (const { id } of store.list()) {
    const body = store.get(id)?.body
    if (body === undefined) continue
    const parsed = packsFileSchema.safeParse((JSON.parse(body) as { packs?: unknown }).packs)
    if (parsed.success) files.set(JSON.stringify(parsed.data), parsed.data)
  }
  return [...files.values()]
}
