import { useEffect } from 'preact/hooks'
import { savedText } from './parts/saved-text.ts'
import { printPack } from './print-pack.ts'
import { openList } from './state/opening.ts'
import { saved, savingState } from './state/saving.ts'
import { hasStart } from './state/sheet-state.ts'
import { canUndo, change, plan, sheet, undo } from './state/store.ts'

/** The title strip of a bench sheet: mark, plan, version and when saved, bench; at the right Undo and Print. */
export function Head() {
  const { title, settings } = plan.value
  useEffect(() => {
    document.title = hasStart(sheet.value) ? `${title}, Waybench` : 'Waybench'
  }, [title, sheet.value])
  return (
    <header class="title-strip">
      <a
        class="mark"
        href="./"
        onClick={event => {
          event.preventDefault()
          openList()
        }}
      >
        Waybench
      </a>
      {hasStart(sheet.value) ? (
        <>
          <h1 class="unseen">{title}</h1>
          <dl>
            <div class="plan">
              <dt>Plan</dt>
              <dd>
                <input
                  type="text"
                  class="blank bare title"
                  aria-label="name of this plan"
                  value={title}
                  maxLength={500}
                  onInput={event => change({ do: 'rename', title: event.currentTarget.value })}
                  onBlur={event => {
                    if (event.currentTarget.value.trim() === '') change({ do: 'rename', title: 'Untitled plan' })
                  }}
                />
              </dd>
            </div>
            <div class="saved">
              <dt>Version</dt>
              <dd>
                <SavedText />
              </dd>
            </div>
            {settings.bench !== '' && (
              <div class="bench">
                <dt>Bench</dt>
                <dd>{settings.bench}</dd>
              </div>
            )}
          </dl>
          <nav aria-label="Plan">
            <button type="button" class="do undo" disabled={!canUndo.value} onClick={undo}>
              Undo
            </button>
            <button type="button" class="do" disabled={plan.value.goals.length === 0} onClick={() => void printPack()}>
              Print<span class="wide-only"> the pack</span>
            </button>
          </nav>
        </>
      ) : null}
    </header>
  )
}

/** The version and how it stands; on the phone the number alone. */
function SavedText() {
  const state = savingState.value
  if (saved.value === null)
    return <span role="status">{state === 'failed' ? 'in this browser only' : state === 'saving' ? 'being saved' : 'not saved yet'}</span>
  const { version, savedAt } = saved.value
  const more =
    state === 'failed'
      ? 'newer one in this browser only'
      : state === 'conflict'
        ? 'changed elsewhere'
        : state !== 'clean'
          ? 'being saved'
          : `saved ${savedText(savedAt)}`
  return (
    <span role="status">
      <span class="narrow-only">version </span>
      {version}
      <span class="wide-only">, {more}</span>
    </span>
  )
}
