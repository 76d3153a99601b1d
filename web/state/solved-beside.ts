import type { Solved } from '../../core/choose/searching.ts'

/** How often it is looked whether anybody still waits. */
const lookMs = 100

/**
 * Solves a model in a thread of its own, which ends with the work.
 *
 * @param left     nobody waits any more
 * @param stopped  they would rather have what there is
 * @returns undefined where there is no solver, or it was ended
 */
export function solvedBeside(model: string, left: AbortSignal, stopped: () => boolean): Promise<Solved | undefined> {
  return new Promise(resolve => {
    const worker = new Worker(new URL('./solve-worker.ts', import.meta.url), { type: 'module' })
    const end = (solved?: Solved): void => {
      clearInterval(looking)
      worker.terminate()
      resolve(solved)
    }
    const looking = setInterval(() => {
      if (left.aborted || stopped()) end()
    }, lookMs)
    worker.addEventListener('message', ({ data }: MessageEvent<Solved | null | 'ready'>) => {
      if (data === 'ready') worker.postMessage(model)
      else end(data ?? undefined)
    })
    worker.addEventListener('error', () => end())
  })
}
