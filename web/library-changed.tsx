import type { Problem } from '../core/problem/problem.ts'
import { capital, counted } from '../core/report/words.ts'
import { Triangle } from './parts/problem.tsx'
import { changedSince, keepOldLibrary, takeNewLibrary } from './state/opening.ts'
import { plan } from './state/store.ts'

/** So many changes are told at once; the others on request. */
const toldAtOnce = 3

/** What became of the library since the plan was saved, as one note: its figures are the new ones until the person says otherwise. */
export function LibraryChanged() {
  // What is not held at all is told, and may be taken over, beside this.
  const changes = changedSince.value.filter(one => one.code === 'record-changed')
  if (plan.value.keepsRecords) return <RecordsKept changes={changes} />
  if (changes.length === 0) return null
  return (
    <div class="trouble" role="status">
      <div class="problem">
        <Triangle />
        <div>
          <b>The library here differs from what this plan was saved with</b>
          <dl>
            <dt>where</dt>
            <dd>{placesOf(changes)}</dd>
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

/** Settled, and remembered with the plan: told in one line, with what differs on request and the way back. */
const RecordsKept = ({ changes }: { readonly changes: readonly Problem[] }) => (
  <div class="records-kept" role="status">
    <details class="more-of">
      <summary>
        This plan keeps the records it was saved with{changes.length === 0 ? '' : `; the library now differs in ${placesOf(changes)}`}
      </summary>
      {changes.map(change => (
        <p key={change.where.join(' ')}>{change.what}</p>
      ))}
      <p class="dos">
        <button type="button" class="do" onClick={takeNewLibrary}>
          Reckon with the new
        </button>
      </p>
    </details>
  </div>
)

function placesOf(changes: readonly Problem[]): string {
  const records = (kind: string): number => changes.filter(change => change.where[0] === kind).length
  const where = [counted(records('transformations'), 'transformation'), counted(records('materials'), 'material')]
  return where.filter(text => !/^(no|0) /.test(text)).join(', ')
}
