import { useState } from 'preact/hooks'
import type { PlanRow } from '../api/replies.ts'
import { savedText } from '../parts/saved-text.ts'
import { dropKept, openPlan, openUnsaved, plansKept, unsaved } from '../state/opening.ts'

/** Plans that never reached the server. */
export function Unsaved() {
  if (unsaved.value.length === 0) return null
  return (
    <section aria-label="In this browser alone">
      <h2>In this browser alone</h2>
      <ul>
        {unsaved.value.map(draft => (
          <li key={draft.state.plan.seed}>
            <button type="button" class="do" onClick={() => openUnsaved(draft)}>
              {draft.state.plan.title}
            </button>
            <span class="soft s n">not on the server yet</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Plans on the server, the newest first, each with a way to be rid of it. */
export function Kept() {
  const plans = [...plansKept.value].sort((a, b) => (a.savedAt < b.savedAt ? 1 : -1))
  if (plans.length === 0) return null
  return (
    <section aria-label="Plans kept here">
      <h2>Plans kept here</h2>
      <ul>
        {plans.map(row => (
          <KeptPlan row={row} key={row.id} />
        ))}
      </ul>
    </section>
  )
}

/** Deleting is asked about in the row itself: it cannot be undone. */
function KeptPlan({ row }: { readonly row: PlanRow }) {
  const [asking, setAsking] = useState(false)
  return (
    <li>
      <button type="button" class="do" onClick={() => void openPlan(row.id)}>
        {row.title}
      </button>
      {asking ? (
        <span class="s dos" role="status">
          <span>Delete all its versions? There is no way back.</span>
          <button type="button" class="do" onClick={() => void dropKept(row.id)}>
            Delete<span class="unseen"> {row.title}</span>
          </button>
          <button type="button" class="do" onClick={() => setAsking(false)}>
            Keep<span class="unseen"> {row.title}</span>
          </button>
        </span>
      ) : (
        <span class="s dos">
          <span class="soft n">
            version {row.version}, saved {savedText(row.savedAt)}
          </span>
          <button type="button" class="do" onClick={() => setAsking(true)}>
            delete<span class="unseen"> {row.title}</span>
          </button>
        </span>
      )}
    </li>
  )
}
