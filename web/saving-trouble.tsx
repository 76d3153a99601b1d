import { LibraryChanged } from './library-changed.tsx'
import { Problems } from './parts/problem.tsx'
import { WaysOutOf } from './sheet/step-unknown.tsx'
import { changedSince, openPlan } from './state/opening.ts'
import { facts, stepsOfPlanAlone } from './state/questions.ts'
import { save, savingProblems, savingState, settleConflict } from './state/saving.ts'

/** The library was changed under the open plan, which goes on with its own records of what is gone. */
const StepGone = ({ steps }: { readonly steps: readonly string[] }) => (
  <div class="trouble" role="status">
    <Problems
      of={steps.map(id => ({
        code: 'record-gone',
        where: ['transformations', id],
        what: `The library no longer holds ${facts.value.library.transformations.get(id)?.name ?? id}.`,
        why: 'The plan uses it, and reckons on with its own record of it.',
        cure: 'Keep that record with the plan, or choose another way.',
      }))}
    >
      <WaysOutOf steps={steps} />
    </Problems>
  </div>
)

/** Why a plan is not on the server and what to do, or what has changed in the library since it was saved; it stands across the page until it is settled. */
export function SavingTrouble() {
  const state = savingState.value
  if (changedSince.value.length > 0 && state !== 'failed' && state !== 'conflict') return <LibraryChanged />
  const alone = stepsOfPlanAlone.value
  if (state !== 'failed' && state !== 'conflict') return alone.length > 0 ? <StepGone steps={alone} /> : null
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
