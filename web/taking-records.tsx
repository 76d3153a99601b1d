import type { VNode } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { RecordDifference } from '../core/library/differences.ts'
import { plan } from './state/store.ts'

type Taken = readonly Pick<RecordDifference, 'list' | 'id'>[]
type TakeRecords = (props: { readonly title: string; readonly file: unknown; readonly onDone: (taken: Taken) => void }) => VNode

/** Taking them over belongs to the entry pages, which are fetched only when somebody wants one. */
const fetched = (): Promise<TakeRecords> => import('./entry/take-records.tsx').then(({ TakeRecords }) => TakeRecords)

export interface Taking {
  /** What would be taken over, with the button; null until somebody looks. */
  readonly shown: VNode | null
  /** Its page could not be fetched. */
  readonly failed: boolean
  readonly look: () => void
}

/**
 * The way of a plan's own records into the library here.
 *
 * @param fileOf  the plan as a file, as it is when somebody looks: what is shown is just what is taken over
 * @param onTaken with what was taken over and not taken back
 */
export function useTaking(fileOf: () => unknown, onTaken: (taken: Taken) => void = () => {}): Taking {
  const [taking, setTaking] = useState<{ readonly Take: TakeRecords; readonly file: unknown } | null>(null)
  const [failed, setFailed] = useState(false)
  const { seed, title } = plan.value
  useEffect(() => setTaking(null), [seed])
  const look = (): void => {
    const file = fileOf()
    fetched().then(
      Take => setTaking({ Take, file }),
      () => setFailed(true),
    )
  }
  const done = (taken: Taken): void => {
    setTaking(null)
    if (taken.length > 0) onTaken(taken)
  }
  return { shown: taking === null ? null : <taking.Take title={title} file={taking.file} onDone={done} />, failed, look }
}

export const NotFetched = () => <p>The page for it could not be fetched: the server does not answer. Try again once it runs.</p>
