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
/** The basket that stands was taken at once, since whoever waits for the cheapest had enough. */
export const takenAtOnce = signal(false)

let worker: Worker | null = null
let ready = false
/** Orders that wait for the worker to listen. */
let queue: Order[] = []
let sent = 0
let plans = new Map<number, Plan>()
let factsSent: Facts | null = null
let tablesSent: unknown = null
/** When the worker last spoke or was spoken to. */
let heard = 0
/** A worker that is at one piece of work for so long would keep a newer plan waiting: it is ended, and another takes over. */
const stuckMs = 1500
/** The plan that is being reckoned, as it was ordered. */
let last: { readonly facts: Facts; readonly tables: unknown; readonly plan: Plan; readonly others: readonly OtherWay[] } | null = null

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
  heard = performance.now()
  if (ready) to.postMessage(order)
  else queue.push(order)
}

/** Has a plan reckoned; the answers arrive in the signals above. */
export function reckon(facts: Facts, tables: unknown, plan: Plan, others: readonly OtherWay[]): void {
  if (ready && reckoning.peek() && performance.now() - heard > stuckMs) endWorker()
  last = { facts, tables, plan, others }
  standing.value = { ...standing.peek(), fresh: false, basketFresh: false }
  order(false)
}

function order(atOnce: boolean): void {
  if (last === null) return
  sendFacts(last.facts, last.tables)
  sent++
  plans = new Map([[sent, last.plan]])
  takenAtOnce.value = atOnce
  reckoning.value = true
  send({ kind: 'plan', id: sent, plan: last.plan, others: last.others, atOnce })
}

/**
 * Ends the solving of the basket and takes one that is found at once, with how far from the cheapest it may be. A solver at work hears
 * nothing, so its worker is ended, and another takes over.
 */
export function stopSolving(): void {
  endWorker()
  order(true)
}

function endWorker(): void {
  worker?.terminate()
  worker = null
  ready = false
  queue = []
  factsSent = null
  tablesSent = null
  if (last === null) return
  sendFacts(last.facts, last.tables)
  for (const { order: waiting } of waysWaiting.values()) send(waiting)
}

/** Solves the basket to the end after all. */
export function solveOn(): void {
  standing.value = { ...standing.peek(), basketFresh: false }
  order(false)
}

const waysWaiting = new Map<number, { readonly order: Order; readonly take: (ways: readonly Way[]) => void }>()
let waysSent = 0

/** The four ways on from the last run of a plan. */
export function replan(facts: Facts, tables: unknown, plan: Plan, routes: readonly Route[]): Promise<readonly Way[]> {
  sendFacts(facts, tables)
  const order: Order = { kind: 'ways', id: ++waysSent, plan, routes }
  return new Promise(take => {
    waysWaiting.set(order.id, { order, take })
    send(order)
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
  last = null
  takenAtOnce.value = false
  plans = new Map()
  reckoning.value = false
  standing.value = { evaluation: null, refused: null, plan: null, fresh: true, basketFresh: true }
  otherWays.value = new Map()
}

function take(answer: Answer): void {
  heard = performance.now()
  if (answer.kind === 'ready') {
    ready = true
    for (const order of queue) worker?.postMessage(order)
    queue = []
    return
  }
  if (answer.kind === 'ways') {
    waysWaiting.get(answer.id)?.take(answer.ways)
    waysWaiting.delete(answer.id)
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
