import loadHighs from 'highs'
import type { Solver } from '../../core/shopping/shopping.ts'
import { solverOf } from '../../core/shopping/solver-of.ts'

let loading: ReturnType<typeof loadHighs> | null = null

/**
 * The integer-program solver for Node, its WebAssembly loaded once per process at the first call.
 *
 * @param maxNodes of branch and bound; beyond it the best found comes back with its bound
 */
export async function loadSolver(maxNodes?: number): Promise<Solver> {
  loading ??= loadHighs()
  return solverOf(await loading, maxNodes)
}
