import { loadSolver } from './solver.ts'

/** Solves one model after another; solving blocks, so this thread does nothing else and can be ended. */
addEventListener('message', ({ data }: MessageEvent<string>) => {
  loadSolver().then(
    solver => postMessage(solver(data)),
    () => postMessage(null),
  )
})
// What is sent before this line runs may be lost while modules are still being fetched.
postMessage('ready')
