import { signal } from '@preact/signals'
import type { Way } from '../../core/logbook/replan.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Route } from '../../core/route/route.ts'
import type { Facts } from './facts.ts'
import type { Answer, Order, OtherWay, Reckoned } from './reckoning.ts'

/** The last figures that stood, and how fresh they are. Old ones stay, in grey, until new ones are there. */
export interface Standing {
  readonly evaluation: Evaluation | null
  /** What came back instead of an evaluation. */
  readonly refused: Exclude<Reckoned, { ok: 'reckoned' }> | null
  /** The plan these figures are of. */
  readonly plan: Plan | null
  readonly fresh: boolean
  /** Shopping has been solved for these amounts. */
  readonly basketFresh: boolean
}

export const standing = signal<Standing>({ evaluation: null, refused: null, plan: null, fresh: false, basketFresh: false })
/** The other ways that were reckoned for comparison, by the key of the route. */
export const otherWays = signal<ReadonlyMap<string, Evaluation>>(new Map())
/** The worker still has something to do. */
export const reckoning = signal(false)

let worker: Worker | null = null
let ready = false
/** Orders that wait for the worker to listen. */
let queue: Order[] = []
let sent = 0
let plans = new Map<number, Plan>()
let factsSent: Facts | null = null
let tablesSent: unknown = null

function theWorker(): Worker {
  if (worker !== null) return worker
  worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => take(data))
  worker.addEventListener('error', event => {
    reckoning.value = false
    standing.value = {
      ...standing.peek(),
      fresh: true,
      refused: {
        ok: 'wrong',
        problems: [
          {
            code: 'worker-failed',
            where: ['this browser'],
            what: 'The part of the page that reckons did not start.',
            why: event.message || 'The browser gives no reason.',
            cure: 'Load the page again; a browser from 2022 or later is needed.',
          },
        ],
      },
    }
  })
  return worker
}

function send(order: Order): void {
  const to = theWorker()
  if (ready) to.postMessage(order)
  else queue.push(order)
}

/** Has a plan reckoned; the answers arrive in the signals above. */
export function reckon(facts: Facts, tables: unknown, plan: Plan, others: readonly OtherWay[]): void {
  sendFacts(facts, tables)
  sent++
  plans = new Map([[sent, plan]])
  reckoning.value = true
  standing.value = { ...standing.peek(), fresh: false, basketFresh: false }
  send({ kind: 'plan', id: sent, plan, others })
}

const waysWaiting = new Map<number, (ways: readonly Way[]) => void>()

/** The four ways on from the last run of a plan. */
export function replan(facts: Facts, tables: unknown, plan: Plan, routes: readonly Route[]): Promise<readonly Way[]> {
  sendFacts(facts, tables)
  const id = waysWaiting.size + 1
  return new Promise(resolve => {
    waysWaiting.set(id, resolve)
    send({ kind: 'ways', id, plan, routes })
  })
}

/** Starts the worker and hands it the tables before there is a plan, so that the first amounts wait for neither. */
export function warmUp(tables: unknown): void {
  if (tables === tablesSent) return
  send({ kind: 'tables', tables })
  tablesSent = tables
}

function sendFacts(facts: Facts, tables: unknown): void {
  warmUp(tables)
  if (facts === factsSent) return
  send({ kind: 'facts', file: facts.file, traits: facts.traits })
  factsSent = facts
}

/** Nothing is planned any more. */
export function forget(): void {
  sent++
  plans = new Map()
  reckoning.value = false
  standing.value = { evaluation: null, refused: null, plan: null, fresh: true, basketFresh: true }
  otherWays.value = new Map()
}

function take(answer: Answer): void {
  if (answer.kind === 'ready') {
    ready = true
    for (const order of queue) worker?.postMessage(order)
    queue = []
    return
  }
  if (answer.kind === 'ways') {
    waysWaiting.get(answer.id)?.(answer.ways)
    return
  }
  const plan = plans.get(answer.id)
  if (answer.id !== sent || plan === undefined) return
  if (answer.kind === 'done') {
    reckoning.value = false
  } else if (answer.kind === 'other') {
    if (answer.reckoned.ok === 'reckoned') otherWays.value = new Map(otherWays.peek()).set(answer.key, answer.reckoned.evaluation)
  } else if (answer.reckoned.ok !== 'reckoned') {
    standing.value = { evaluation: null, refused: answer.reckoned, plan, fresh: true, basketFresh: true }
  } else if (answer.kind === 'whole') {
    standing.value = { evaluation: answer.reckoned.evaluation, refused: null, plan, fresh: true, basketFresh: true }
  } else {
    // The old basket stays in grey beside new amounts: it is better than an empty place.
    const before = standing.peek().evaluation
    const { evaluation } = answer.reckoned
    const shown =
      evaluation.basket === null && before !== null ? { ...evaluation, basket: before.basket, shopping: before.shopping } : evaluation
    standing.value = { evaluation: shown, refused: null, plan, fresh: true, basketFresh: false }
  }
}
