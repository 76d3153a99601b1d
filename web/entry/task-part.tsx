import { commaRuleOf } from '../../core/reading/measures.ts'
import { type TaskProposed, tasksProposed } from '../../core/reading/tasks-proposed.ts'
import { replaceWriting, textOf, write, writing } from './draft.ts'
import { numberTyped } from './number-typed.ts'
import { Choice, TextField } from './parts.tsx'
import { readingState } from './reading.ts'
import { changedTask, emptyTask, lookedOver, type TypedTask, tasksTyped, typedOf } from './typed-tasks.ts'

const guessWords: Readonly<Record<TaskProposed['guessed'][number], string>> = {
  task: 'that it is done',
  kind: 'who must be there',
  hours: 'the hours',
}

/** Said once above all tasks, and read out with each field of each. */
const helps = {
  do: { label: 'What is done', help: 'in a few words, as it is to stand on the bench sheet: stir at 60 °C.' },
  kind: {
    label: 'Meanwhile you',
    help: 'work at it where it takes your hands; keep an eye on it where somebody must stay in the room; may leave it where it stands safely alone, also overnight.',
  },
  hours: { label: 'Hours', help: 'as a number: 0.5 is half an hour.' },
  wait: {
    label: 'Then may wait, h',
    help: 'the longest it may stand before the next task. Left open: not at all; after the last, as “The product may wait” below says.',
  },
  reaction: { label: 'The mixture reacts meanwhile', help: 'its hours count as time of the reaction, and stand under the arrow.' },
  splits: { label: 'May be stopped and taken up again', help: 'it may be parted over two evenings.' },
} as const

const wrongHours = (text: string): string | null => {
  const hours = numberTyped(text)
  return text.trim() === '' || (hours !== null && hours >= 0) ? null : `“${text.trim()}” is no number of hours: write 0.5.`
}

/** What is done in which order, for how long, and who must be there: what evenings are planned from. */
export function TaskPart() {
  const { tasks, holdPoint } = writing.value
  const read = tasksTyped(tasks, holdPoint)
  const proposed = proposals()
  const set = (at: number, patch: Partial<TypedTask>, said?: TaskProposed['guessed'][number]): void =>
    write({ tasks: tasks.map((one, index) => (index === at ? changedTask(one, patch, said) : one)) })
  return (
    <section aria-label="Tasks" class="entry-tasks" data-field="tasks">
      <h2>What is done, and who must be there</h2>
      <p class="s soft">
        Evenings are planned from these. Without them all hours count as work of your hands, at the longest.
        {read.estimated && (
          <b>
            {' '}
            What is marked a guess was proposed, not read, and stays an estimate when it is looked over: the record will say that its times
            are estimates until the hours are typed.
          </b>
        )}
      </p>
      <div class="s soft help task-help">
        {tasks.length > 0 &&
          Object.entries(helps).map(([field, { label, help }]) => (
            <p id={`task-help-${field}`} key={field}>
              <b>{label}</b>: {help}
            </p>
          ))}
      </div>
      {tasks.map((task, at) => (
        <fieldset class="task" key={at}>
          <legend class="s">Task {at + 1}</legend>
          <TextField
            label={helps.do.label}
            helpAt="task-help-do"
            value={task.do}
            wrong={task.do.trim() === '' && task.hours.trim() !== '' ? 'Say what is done in these hours.' : null}
            onText={text => set(at, { do: text })}
            class="what"
          />
          <Choice
            label={helps.kind.label}
            helpAt="task-help-kind"
            value={task.kind}
            options={[
              ['hands', 'work at it'],
              ['watch', 'keep an eye on it'],
              ['stand', 'may leave it'],
            ]}
            onChoose={kind => set(at, { kind }, 'kind')}
          />
          <TextField
            label={helps.hours.label}
            helpAt="task-help-hours"
            value={task.hours}
            wrong={wrongHours(task.hours)}
            onText={hours => set(at, { hours }, 'hours')}
          />
          <TextField
            label={helps.wait.label}
            helpAt="task-help-wait"
            value={task.wait}
            placeholder={at === tasks.length - 1 ? 'as below' : '0'}
            wrong={wrongHours(task.wait)}
            onText={wait => set(at, { wait })}
          />
          <div class="ticks s">
            {task.kind !== 'hands' && (
              <label>
                <input
                  type="checkbox"
                  aria-describedby="task-help-reaction"
                  checked={task.reaction}
                  onChange={event => set(at, { reaction: event.currentTarget.checked })}
                />{' '}
                the mixture reacts meanwhile
              </label>
            )}
            <label>
              <input
                type="checkbox"
                aria-describedby="task-help-splits"
                checked={task.splits}
                onChange={event => set(at, { splits: event.currentTarget.checked })}
              />{' '}
              may be stopped and taken up again
            </label>
            {task.guessed.length > 0 && <span class="guess">a guess: {task.guessed.map(one => guessWords[one]).join(', ')}</span>}
            {task.guessed.length === 0 && (task.judged ?? []).length > 0 && <span class="guess">hours estimated, looked over</span>}
            <button
              type="button"
              class="do"
              aria-label={`Remove task ${at + 1}`}
              onClick={() => replaceWriting({ tasks: tasks.filter((_, index) => index !== at) })}
            >
              remove
            </button>
          </div>
        </fieldset>
      ))}
      {read.tasks.length > 0 && (
        <p class="s" role="status">
          {read.elapsedHours} h in all, {read.handsOnHours} h of them hands-on.
        </p>
      )}
      <p class="dos">
        <button type="button" class="do" onClick={() => write({ tasks: [...tasks, emptyTask] })}>
          Add a task
        </button>
        {proposed.length > 0 && tasks.length === 0 && (
          <button type="button" class="do" onClick={() => replaceWriting({ tasks: proposed.map(typedOf) })}>
            Propose tasks, as guesses to look over
          </button>
        )}
        {read.guessed && (
          <button type="button" class="do" onClick={() => replaceWriting({ tasks: lookedOver(tasks) })}>
            I have looked them over: they are right
          </button>
        )}
      </p>
    </section>
  )
}

/** What the text and the typed hours suggest. */
function proposals(): readonly TaskProposed[] {
  const { reading } = readingState.value
  const it = writing.value
  const operations = reading?.transformation.operations ?? []
  const main = reading?.transformation.mainProduct
  const solid = main !== undefined && reading?.materials[main]?.form === 'solid'
  return tasksProposed(
    operations,
    { elapsedHours: numberTyped(it.hours), handsOnHours: numberTyped(it.handsOn), solid },
    commaRuleOf(textOf(it)),
  )
}
