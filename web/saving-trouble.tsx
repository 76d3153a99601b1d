import { capital, counted } from '../core/report/words.ts'
import { Problems, Triangle } from './parts/problem.tsx'
import { changedSince, keepOldLibrary, openPlan, takeNewLibrary } from './state/opening.ts'
import { save, savingProblems, savingState, settleConflict } from './state/saving.ts'

/** Why a plan is not on the server and what to do, or what has changed in the library since it was saved; it stands across the page until it is settled. */
export function SavingTrouble() {
  const state = savingState.value
  if (changedSince.value.length > 0 && state !== 'failed' && state !== 'conflict') return <LibraryChanged />
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

/** So many changes are told at once; the others on request. */
const toldAtOnce = 3

/** What became of the library since the plan was saved, as one note: its figures are the new ones until the person says otherwise. */
function LibraryChanged() {
  const changes = changedSince.value
  const records = (kind: string): number => changes.filter(change => change.where[0] === kind).length
  const where = [counted(records('transformations'), 'transformation'), counted(records('materials'), 'material')]
  return (
    <div class="trouble" role="status">
      <div class="problem">
        <Triangle />
        <div>
          <b>The library has changed since this plan was saved</b>
          <dl>
            <dt>where</dt>
            <dd>{where.filter(text => !/^(no|0) /.test(text)).join(', ')}</dd>
            <dt>why</dt>
            <dd>
              {changes.slice(0, toldAtOnce).map(change => (
                <p key={change.where.join(' ')}>{change.what}</p>
              ))}
              {changes.length > toldAtOnce && (
                <details class="more-of">
                  <summary>{capital(counted(changes.length - toldAtOnce, 'more change'))}</summary>
                  {changes.slice(toldAtOnce).map(change => (
                    <p key={change.where.join(' ')}>{change.what}</p>
                  ))}
                </details>
              )}
            </dd>
            <dt>cure</dt>
            <dd class="dos">
              <button type="button" class="do" onClick={takeNewLibrary}>
                Reckon with the new
              </button>
              <button type="button" class="do" onClick={keepOldLibrary}>
                Keep the old
              </button>
            </dd>
          </dl>
        </div>
      </div>
    </div>
  )
}
