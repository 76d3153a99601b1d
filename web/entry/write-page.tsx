import { Problems } from '../parts/problem.tsx'
import { ChargePart } from './charge-part.tsx'
import { ConditionPart } from './condition-part.tsx'
import { canTakeBack, emptyWriting, replaceWriting, takeBack } from './draft.ts'
import { EquationPart } from './equation-part.tsx'
import { examples } from './examples.ts'
import { OutcomePart } from './outcome-part.tsx'
import { History } from './parts.tsx'
import { ReactionBar } from './reaction-bar.tsx'
import { readingState } from './reading.ts'
import { SaveStep } from './save-step.tsx'
import { TaskPart } from './task-part.tsx'

/** A preparation, typed on the left, what it was read as on the right. */
export function WritePage() {
  const { problems } = readingState.value
  return (
    <>
      <ReactionBar />
      <div class="dos entry-examples">
        <span class="soft">Try</span>
        {examples.map(example => (
          <button type="button" class="do" key={example.title} onClick={() => replaceWriting({ ...emptyWriting, ...example.writing })}>
            {example.title}
          </button>
        ))}
        <button type="button" class="do" onClick={() => replaceWriting(emptyWriting)}>
          Empty the page
        </button>
        <button type="button" class="do" disabled={!canTakeBack.value} onClick={takeBack}>
          Undo
        </button>
      </div>
      <Problems of={problems} />
      <EquationPart />
      <ChargePart />
      <OutcomePart />
      <TaskPart />
      <ConditionPart />
      <SaveStep />
      <History />
    </>
  )
}
