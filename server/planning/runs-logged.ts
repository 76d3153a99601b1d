import type { Store } from '../store/store.ts'

/** Logged runs by transformation over all plans kept, entries that another one replaces left out. */
export function runsLogged(store: Store): ReadonlyMap<string, number> {
  const runs = new Map<string, number>()
  for (const { id } of store.list()) {
    const body = store.get(id)?.body
    if (body === undefined) continue
    const { log = [] } = JSON.parse(body) as { log?: readonly { id?: string; replaces?: string | null; step?: string }[] }
    const replaced = new Set(log.map(entry => entry.replaces))
    for (const { id: entry, step } of log) {
      if (step === undefined || replaced.has(entry)) continue
      runs.set(step, (runs.get(step) ?? 0) + 1)
    }
  }
  return runs
}
