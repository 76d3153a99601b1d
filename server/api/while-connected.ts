import type { ServerResponse } from 'node:http'

/** A signal that says so once whoever asked has gone before the answer was out: nobody searches on for him. */
export function whileConnected({ raw }: { readonly raw: ServerResponse }): AbortSignal {
  const gone = new AbortController()
  raw.once('close', () => {
    if (!raw.writableFinished) gone.abort()
  })
  return gone.signal
}
