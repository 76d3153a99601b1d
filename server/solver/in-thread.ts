import { createRequire } from 'node:module'
import { pathToFileURL } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { Solver } from '../../core/shopping/shopping.ts'
import { type LpSolver, solverOf } from '../../core/shopping/solver-of.ts'

/** A limit on work, never on time; some ten seconds on programs of a thousand arcs, as far as is worth waiting for one proof. */
const options = { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.000001, mip_max_nodes: 20_000, random_seed: 0 }

/** The thread: the program as it stands, and where that met the limit, with parts allowed, which bounds it. */
const thread = `
const { parentPort, workerData } = require('node:worker_threads')
const { highs, model, options } = workerData
import(highs).then(async module => {
  const solver = await module.default()
  const whole = solver.solve(model, options)
  const relaxed = /limit/i.test(whole.Status) ? solver.solve(model, { ...options, solve_relaxation: true }) : null
  parentPort.postMessage({ whole, relaxed })
})
`

type Solution = ReturnType<LpSolver['solve']>

/**
 * Solves one model in a thread of its own, so that whoever else asks the server is answered meanwhile.
 *
 * @param signal ends the thread, and with it the work
 * @returns what a {@link Solver} returns; `failed` where the thread came to nothing
 */
export async function solvedInThread(model: string, signal?: AbortSignal): Promise<ReturnType<Solver>> {
  const highs = pathToFileURL(createRequire(import.meta.url).resolve('highs')).href
  const worker = new Worker(thread, { eval: true, workerData: { highs, model, options } })
  const stop = () => void worker.terminate()
  signal?.addEventListener('abort', stop, { once: true })
  try {
    const answer = await new Promise<{ whole: Solution; relaxed: Solution | null } | null>(resolve => {
      worker.once('message', resolve)
      worker.once('error', () => resolve(null))
      worker.once('exit', () => resolve(null))
    })
    if (answer === null) return { status: 'failed', columns: new Map() }
    // Read by the one reader of HiGHS's answers, as if it solved here.
    return solverOf({ solve: (_, { solve_relaxation }) => (solve_relaxation ? (answer.relaxed ?? answer.whole) : answer.whole) })(model)
  } finally {
    signal?.removeEventListener('abort', stop)
    await worker.terminate()
  }
}
