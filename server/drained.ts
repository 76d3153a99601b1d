import type { IncomingMessage } from 'node:http'

/** So much of a request that is too large is still taken in, bytes: ten times what is read. Beyond it the connection is simply closed. */
const mostBytes = 200 * 1024 * 1024
/** A sender that is silent for so long is not waited for, ms. */
const silenceMs = 2000

/**
 * Takes in what is left of a request and throws it away, so that a sender who writes everything before it listens hears the reply instead of
 * meeting a closed door (EPIPE). Resolves at the end of the request, after `mostBytes`, or where the sender has fallen silent.
 */
export function drained(request: IncomingMessage): Promise<void> {
  return new Promise(resolve => {
    if (request.complete || request.destroyed) return resolve()
    let left = mostBytes
    const done = (): void => {
      clearTimeout(silence)
      request.off('data', count)
      resolve()
    }
    const silence = setTimeout(done, silenceMs)
    const count = (chunk: Buffer): void => {
      left -= chunk.length
      silence.refresh()
      if (left < 0) done()
    }
    request.on('data', count)
    for (const end of ['end', 'close', 'error'] as const) request.once(end, done)
    request.resume()
  })
}
