import type { LibraryFile } from '../../core/library/library.ts'
import type { Axis, Choosing } from '../../core/plan/choosing.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Settings } from '../../core/plan/settings.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { LeftOver } from '../../core/shopping/next-uses.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import type { Quantity } from '../../core/shopping/shopping.ts'
import type {
  DemoReply,
  MaterialHit,
  OpenedReply,
  PacksTableReply,
  PlanRow,
  RoutesReply,
  SavedPlan,
  ShelfTableReply,
  SliceReply,
} from './replies.ts'

/** What the server refused, or that it did not answer: always in words that name a cure. */
export class Refused extends Error {
  constructor(
    readonly problems: readonly Problem[],
    readonly status: number,
  ) {
    super(problems[0]?.what ?? 'refused')
  }
}

export const silent: Problem = {
  code: 'server-silent',
  where: ['this browser keeps the plan'],
  what: 'The server does not answer; your plan is safe.',
  why: 'New searches and saving need it; amounts, shopping and hazards go on without.',
  cure: 'Try again once it runs.',
}

export async function ask<T>(path: string, init: RequestInit = {}): Promise<T> {
  let reply: Response
  try {
    reply = await fetch(`./api/v1/${path}`, init)
  } catch (fault) {
    if (fault instanceof DOMException && fault.name === 'AbortError') throw fault
    throw new Refused([silent], 0)
  }
  if (reply.status === 204) return undefined as T
  if (!reply.ok) throw await refusalOf(reply)
  const body: unknown = await reply.json().catch(() => null)
  if (body === null) throw new Refused([silent], reply.status)
  return body as T
}

/** A reply that is none, in words. */
export async function refusalOf(reply: Response): Promise<Refused> {
  return new Refused(problemsIn(await reply.json().catch(() => null)) ?? [silent], reply.status)
}

function problemsIn(body: unknown): readonly Problem[] | null {
  const problems = (body as { problems?: unknown } | null)?.problems
  return Array.isArray(problems) && problems.length > 0 ? (problems as readonly Problem[]) : null
}

export const post = (body: unknown, method = 'POST'): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
})

export interface RoutesQuery extends Omit<Choosing, 'maxSteps' | 'unbeaten'> {
  readonly from: string
  readonly to: string
  readonly maxSteps?: number
  readonly count: number
  /** Only routes that no other beats on these axes at once. */
  readonly unbeaten?: readonly Axis[]
  readonly settings: Settings
  /** For the axis of cost. */
  readonly packs: PacksFile | null
  /** As of {@link ReachQuery}. */
  readonly carried?: LibraryFile
}

export interface ReachQuery {
  readonly from: string
  readonly maxSteps?: number
  /** Records that the plan brings along and the library does not hold: the search knows them too. */
  readonly carried?: LibraryFile
}

/** Start, goals, shelf, packs and settings of a plan, what may be used, and what it may cost. */
export interface CheapestBody {
  readonly plan: Plan
  readonly choosing: Choosing
  /** As of {@link ReachQuery}. */
  readonly carried: LibraryFile | null
  readonly limits: { readonly budgetMinor: number | null; readonly maxHandsOnH: number | null; readonly finishBy: string | null }
}

/** What is left, and what the plan starts from, makes and does. */
export interface LeftOversBody {
  readonly left: readonly { readonly material: string; readonly left: Quantity }[]
  readonly compounds: readonly string[]
  readonly transformations: readonly string[]
}

/** The server, as functions; every one rejects with {@link Refused}. */
export const server = {
  materials: (text: string, signal: AbortSignal, most = 20) =>
    ask<{ materials: readonly MaterialHit[] }>(`materials?q=${encodeURIComponent(text)}&most=${most}`, { signal }),
  routes: (query: RoutesQuery) => ask<RoutesReply>('routes', post(query)),
  slice: (routes: readonly (readonly string[])[], materials: readonly string[], carried: LibraryFile | null) =>
    ask<SliceReply>('slice', post({ routes, materials, carried })),
  tables: () => ask<unknown>('tables'),
  demo: () => ask<DemoReply>('demo'),
  shelfTable: (name: string, text: string) => ask<ShelfTableReply>('stock/shelf', post({ name, text })),
  packsTable: (name: string, text: string, before: PacksFile) => ask<PacksTableReply>('stock/packs', post({ name, text, before })),
  leftOvers: (body: LeftOversBody) => ask<{ leftOvers: readonly LeftOver[] }>('stock/left-overs', post(body)),
  plans: () => ask<{ plans: readonly PlanRow[] }>('plans'),
  plan: (id: string) => ask<OpenedReply>(`plans/${encodeURIComponent(id)}`),
  savePlan: (plan: unknown) => ask<SavedPlan>('plans', post({ plan })),
  saveAgain: (id: string, version: number, plan: unknown) =>
    ask<SavedPlan>(`plans/${encodeURIComponent(id)}`, post({ onVersion: version, plan }, 'PUT')),
  dropPlan: (id: string) => ask<void>(`plans/${encodeURIComponent(id)}`, { method: 'DELETE' }),
}
