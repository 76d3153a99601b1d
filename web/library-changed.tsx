import type { Problem } from '../core/problem/problem.ts'
import { capital, counted } from '../core/report/words.ts'
import { Triangle } from './parts/problem.tsx'
import { keepOldLibrary, takeNewLibrary } from './state/opening.ts'
import { changedSince, fileAsSaved, noLongerChanged, ownChanged } from './state/records-saved-with.ts'
import { plan } from './state/store.ts'
import { NotFetched, type Taking, useTaking } from './taking-records.tsx'

/** So many changes are told at once; the others on request. */
const toldAtOnce = 3

/** What became of the library since the plan was saved, as one note: its figures are the new ones until the person says otherwise. */
export function LibraryChanged() {
  // What is not held at all is told, and may be taken over, beside this.
  const changes = changedSince.value.filter(one => one.code === 'record-changed')
  const taking = useTaking(fileAsSaved, noLongerChanged)
  if (taking.shown !== null) return <div class="trouble">{taking.shown}</div>
  if (plan.value.keepsRecords) return <RecordsKept changes={changes} taking={taking} />
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
              <p>Until you choose, this page reckons with the new.</p>
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
              <TakeOwn taking={taking} />
            </dd>
          </dl>
        </div>
      </div>
    </div>
  )
}

/** Settled, and remembered with the plan: told in one line, with what differs on request and the way back. */
const RecordsKept = ({ changes, taking }: { readonly changes: readonly Problem[]; readonly taking: Taking }) => (
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
        <TakeOwn taking={taking} />
      </p>
    </details>
  </div>
)

/** What the plan brings by its maker's own bench, a yield over a bundled one too, into the library here. */
const TakeOwn = ({ taking: { look, failed } }: { readonly taking: Taking }) =>
  ownChanged.value.length === 0 ? null : (
    <>
      <button type="button" class="do" onClick={look}>
        Take {ownChanged.value.length === 1 ? 'its own record' : `its ${ownChanged.value.length} own records`} into your library
      </button>
      {failed && <NotFetched />}
    </>
  )

function placesOf(changes: readonly Problem[]): string {
  const records = (kind: string): number => changes.filter(change => change.where[0] === kind).length
  const where = [counted(records('transformations'), 'transformation'), counted(records('materials'), 'material')]
  return where.filter(text => !/^(no|0) /.test(text)).join(', ')
}
