import { Problems } from './parts/problem.tsx'
import { openPlan } from './state/opening.ts'
import { save, savingProblems, savingState, settleConflict } from './state/saving.ts'

/** Why a plan is not on the server, and what to do; it stands across the page until it is settled. */
export function SavingTrouble() {
  const state = savingState.value
  if (state !== 'failed' && state !== 'conflict') return null
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
