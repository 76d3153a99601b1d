import type { VNode } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { EntryPlace } from './place.ts'

type Loaded = (props: { readonly place: EntryPlace }) => VNode

/** The entry pages, fetched only when somebody opens one. */
export function LazyEntry({ place }: { readonly place: EntryPlace }): VNode {
  const [Loaded, setLoaded] = useState<Loaded | null>(null)
  const [failed, setFailed] = useState(false)
  useEffect(() => {
    let wanted = true
    import('./entry-page.tsx').then(
      ({ EntryPage }) => wanted && setLoaded(() => EntryPage),
      () => wanted && setFailed(true),
    )
    return () => {
      wanted = false
    }
  }, [])
  if (Loaded !== null) return <Loaded place={place} />
  return (
    <main class="entry">
      <p class="soft" role="status">
        {failed ? 'This page could not be fetched: the server does not answer. Load it again once it runs.' : 'Fetching the page.'}
      </p>
    </main>
  )
}
