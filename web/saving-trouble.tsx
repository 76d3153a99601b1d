import { LibraryChanged } from './library-changed.tsx'
import { Problems } from './parts/problem.tsx'
import { RecordsBrought } from './records-brought.tsx'
import { openPlan } from './state/opening.ts'
import { save, savingProblems, savingState, settleConflict } from './state/saving.ts'

/** Why a plan is not on the server and what to do; or what changed in the library since it was saved and what it lacks of the plan. It stands across the page until it is settled. */
export function SavingTrouble() {
  const state = savingState.value
  if (state !== 'failed' && state !== 'conflict')
    return (
      <>
        <LibraryChanged />
        <RecordsBrought />
      </>
    )
  return (
    <div class="trouble">
      <Problems of={savingProblems.value}>
        {state === 'failed' ? (
          <button type="button" class="do" onClick={() => void save()}>
            Try again
          </button>
        ) : (
          <>
            <button type="button" class="do" onClick={() => void settleConflict('mine', openPlan)}>
              Keep mine as the newer version
            </button>
            <button type="button" class="do" onClick={() => void settleConflict('theirs', openPlan)}>
              Take the other one
            </button>
          </>
        )}
      </Problems>
    </div>
  )
}
