import loadHighs from 'highs'
import type { Solver } from '../../core/shopping/shopping.ts'
import { solverOf } from '../../core/shopping/solver-of.ts'

let loading: Promise<Solver> | null = null

/** The integer-program solver for Node, its WebAssembly loaded once per process at the first call. */
export function loadSolver(): Promise<Solver> {
  loading ??= loadHighs().then(highs => solverOf(highs))
  return loading
}
