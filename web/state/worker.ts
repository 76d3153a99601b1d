import type { Library } from '../../core/library/library.ts'
import { waysOn } from '../../core/logbook/replan.ts'
import { type EvaluateInput, evaluate } from '../../core/plan/evaluate.ts'
import { PlanRefused } from '../../core/plan/goals.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { libraryOf } from './facts.ts'
import type { Answer, Order, Reckoned } from './reckoning.ts'
import { loadSolver } from './solver.ts'

/**
 * Reckons plans beside the page, through the same core as the server and the command line. The newest plan wins: between two pieces of
 * work the worker looks whether another plan has come, and drops what nobody waits for any more.
 */
type Facts = { readonly library: Library; readonly traits: ReadonlyMap<string, unknown> }

let tables: unknown = null
let facts: Facts | null = null
let waiting: Extract<Order, { kind: 'plan' }> | null = null
let busy = false
let solver: Promise<Solver> | null = null

const say = (answer: Answer): void => postMessage(answer)

addEventListener('message', ({ data }: MessageEvent<Order>) => {
  if (data.kind === 'tables') {
    tables = data.tables
    void theSolver()
    return
  }
  if (data.kind === 'facts') {
    facts = { library: libraryOf(data.file), traits: new Map(Object.entries(data.traits)) }
    return
  }
  if (data.kind === 'ways') {
    onward(data).catch(failed)
    return
  }
  waiting = data
  if (!busy) work().catch(failed)
})
// What is sent before this line runs may be lost while modules are still being fetched.
say({ kind: 'ready' })

/** Our own mistake: told like one of the page, and the next plan is tried again. */
function failed(fault: unknown): never {
  busy = false
  throw fault
}

/** Lets messages that have come meanwhile be taken in. */
const breath = (): Promise<void> => new Promise(resolve => setTimeout(resolve, 0))

async function work(): Promise<void> {
  busy = true
  while (waiting !== null) {
    const order = waiting
    waiting = null
    for await (const answer of answers(order)) {
      say(answer)
      await breath()
      if (waiting !== null) break
    }
  }
  busy = false
}

async function* answers(order: Extract<Order, { kind: 'plan' }>): AsyncGenerator<Answer> {
  const { id, plan } = order
  if (order.atOnce) {
    yield { kind: 'whole', id, reckoned: reckoned(plan, null, { basketAtOnce: true }) }
    for (const other of order.others)
      yield { kind: 'other', id, key: other.key, reckoned: reckoned(other.plan, null, { basketAtOnce: true }) }
    yield { kind: 'done', id }
    return
  }
  const amounts = reckoned(plan, null)
  yield { kind: 'amounts', id, reckoned: amounts }
  if (amounts.ok === 'reckoned') {
    const ready = await theSolver()
    if (ready !== null) {
      // The basket first; what other baskets would cost is worth no waiting for it.
      yield { kind: 'whole', id, reckoned: reckoned(plan, ready) }
      yield { kind: 'whole', id, reckoned: reckoned(plan, ready, { alternatives: true }) }
    }
    for (const other of order.others) yield { kind: 'other', id, key: other.key, reckoned: reckoned(other.plan, ready) }
  }
  yield { kind: 'done', id }
}

/** The four ways on; asked for seldom, so it waits for nobody. */
async function onward({ id, plan, routes }: Extract<Order, { kind: 'ways' }>): Promise<void> {
  const solver = await theSolver()
  if (facts === null) throw new Error('a plan came before its facts')
  const ways = waysOn({
    library: facts.library,
    tables: tables as EvaluateInput['tables'],
    traits: facts.traits as EvaluateInput['traits'],
    plan,
    solver,
    routes: (start, target) => routes.filter(route => route.start === start && route.target === target),
  })
  say({ kind: 'ways', id, ways })
}

/** The integer solver is large, so it comes after everything else; without it the plan stands, without a basket. */
async function theSolver(): Promise<Solver | null> {
  solver ??= loadSolver()
  try {
    return await solver
  } catch {
    solver = null
    return null
  }
}

function reckoned(
  plan: Plan,
  withSolver: Solver | null,
  more: { readonly alternatives?: boolean; readonly basketAtOnce?: boolean } = {},
): Reckoned {
  if (facts === null) throw new Error('a plan came before its facts')
  try {
    const result = evaluate({
      library: facts.library,
      tables: tables as EvaluateInput['tables'],
      traits: facts.traits as EvaluateInput['traits'],
      plan,
      solver: withSolver,
      ...more,
    })
    return 'stopped' in result ? { ok: 'stopped', stopped: result.stopped } : { ok: 'reckoned', evaluation: result }
  } catch (fault) {
    if (fault instanceof PlanRefused) return { ok: 'wrong', problems: fault.problems }
    return {
      ok: 'wrong',
      problems: [
        {
          code: 'reckoning-failed',
          where: ['the amounts of this plan'],
          what: 'This plan could not be reckoned.',
          why: fault instanceof Error ? fault.message : String(fault),
          cure: 'Undo the last change, or choose another way; what you wrote is kept.',
        },
      ],
    }
  }
}
