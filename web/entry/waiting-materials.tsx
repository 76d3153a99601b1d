import { Name } from '../parts/words.tsx'
import { bringBack, thrownAway, throwWaiting, turnTo, waiting } from './material-draft.ts'
import { draftName, type MaterialDraft } from './material-drafts.ts'
import { openEntry, openMending } from './place.ts'

/** Materials that were begun and are not saved, with the way back to each; what was thrown away last too. */
export function WaitingMaterials() {
  const away = thrownAway.value
  if (waiting.value.length === 0 && away === null) return null
  return (
    <section aria-label="Begun and not saved">
      <ul class="rows s">
        {waiting.value.map(one => (
          <li key={JSON.stringify([one.called, one.typed.over?.id])}>
            Begun and not saved:{' '}
            <b>
              <Name text={draftName(one)} />
            </b>
            {one.typed.over === null ? '' : ', put right in part'}{' '}
            <button type="button" class="do s" onClick={() => goOn(one)}>
              Go on with it
            </button>{' '}
            <button type="button" class="do s" onClick={() => throwWaiting(one)}>
              Throw it away
            </button>
          </li>
        ))}
        {away !== null && (
          <li>
            Thrown away:{' '}
            <b>
              <Name text={draftName(away)} />
            </b>{' '}
            <button
              type="button"
              class="do s"
              onClick={() => {
                bringBack()
                open(away)
              }}
            >
              Bring it back
            </button>
          </li>
        )}
      </ul>
    </section>
  )
}

function open({ typed: { over } }: MaterialDraft): void {
  if (over === null) openEntry('material')
  else openMending(over.id)
}

/** A record is read anew first: it may say something else by now. */
function goOn(one: MaterialDraft): void {
  if (one.typed.over === null) turnTo(one)
  open(one)
}
