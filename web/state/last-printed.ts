import { planSchema } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'

/** The version of a saved plan that was last put on paper from this browser. */
export interface Printed {
  readonly version: number
  readonly plan: Plan
}

const key = (id: string): string => `waybench-printed ${id}`

/** Null where none was printed here, or what is kept cannot be read. */
export function lastPrinted(id: string): Printed | null {
  try {
    const kept = JSON.parse(localStorage.getItem(key(id)) ?? 'null') as { version?: unknown; plan?: unknown } | null
    const plan = planSchema.safeParse(kept?.plan)
    return typeof kept?.version === 'number' && plan.success ? { version: kept.version, plan: plan.data as Plan } : null
  } catch {
    return null
  }
}

/** Remembers what was printed; a browser that keeps nothing forgets it. */
export function keepPrinted(id: string, printed: Printed): void {
  try {
    localStorage.setItem(key(id), JSON.stringify(printed))
  } catch {
    // Private window or no room: the next print then tells no changes.
  }
}
