import loadHighs from 'highs'
import wasmUrl from 'highs/runtime?url'
import type { Solver } from '../../core/shopping/shopping.ts'
import { solverOf } from '../../core/shopping/solver-of.ts'

let loading: Promise<Solver> | null = null

/**
 * The integer-program solver for a module worker: its 3.5 MB of WebAssembly come with the first call, from the page's own server. Not for
 * the page itself: solving blocks its thread.
 */
export function loadSolver(): Promise<Solver> {
  loading ??= loadHighs({ locateFile: () => wasmUrl }).then(highs => solverOf(highs))
  // A failed download may be tried again.
  loading.catch(() => {
    loading = null
  })
  return loading
}
