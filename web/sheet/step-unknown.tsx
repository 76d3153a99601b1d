import type { Problem } from '../../core/problem/problem.ts'
import { Problems } from '../parts/problem.tsx'
import { askFactsAgain } from '../state/facts-asked.ts'
import { canKeepOld, keepOldLibrary } from '../state/opening.ts'
import { plan } from '../state/store.ts'
import { goTo, lookAtGoal } from '../state/view.ts'

/** What is to be done about records that are not here: a silent server is asked again, a step that is gone calls for a choice. */
export function StepUnknown({ problems }: { readonly problems: readonly Problem[] }) {
  const gone = problems.flatMap(({ code, where }) => (code === 'id-unknown' && where[0] === 'transformation' ? [where[1] ?? ''] : []))
  return (
    <Problems of={problems}>
      {gone.length > 0 && <WaysOutOf steps={gone} />}
      {problems.some(problem => problem.code !== 'id-unknown' && problem.code !== 'stopped') && (
        <button type="button" class="do" onClick={askFactsAgain}>
          Try again
        </button>
      )}
    </Problems>
  )
}

/** Where the library lacks steps of the plan. */
export const WaysOutOf = ({ steps }: { readonly steps: readonly string[] }) => (
  <>
    <button type="button" class="do" onClick={() => chooseAnother(steps)}>
      Choose another way
    </button>
    {canKeepOld(steps) && (
      <button type="button" class="do" onClick={keepOldLibrary}>
        Go on with the plan’s own {steps.length === 1 ? 'record' : 'records'}
      </button>
    )}
  </>
)

function chooseAnother(steps: readonly string[]): void {
  const goal = plan.value.goals.find(one => one.route.steps.some(step => steps.includes(step.transformation)))
  if (goal !== undefined) lookAtGoal(goal.target)
  goTo(3)
}
