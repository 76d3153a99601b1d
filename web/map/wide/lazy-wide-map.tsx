import type { VNode } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { WideMapProps } from './wide-map.tsx'

type Loaded = (props: WideMapProps) => VNode

/** The wide network, fetched only when somebody looks at it: the first page stays light. */
export function LazyWideMap(props: WideMapProps): VNode {
  const [Loaded, setLoaded] = useState<Loaded | null>(null)
  const [failed, setFailed] = useState(false)
  useEffect(() => {
    let wanted = true
    import('./wide-map.tsx').then(
      ({ default: made }) => wanted && setLoaded(() => made),
      () => wanted && setFailed(true),
    )
    return () => {
      wanted = false
    }
  }, [])
  if (failed) return <p class="soft">The network could not be fetched; the list of question 2 says the same.</p>
  return Loaded ? (
    <Loaded {...props} />
  ) : (
    <p class="soft" role="status">
      Fetching the network.
    </p>
  )
}
