import { replaceWriting } from './draft.ts'
import { openEntry } from './place.ts'
import { closeReaction, likeReaction, openable, openReaction, queue } from './reactions.ts'

/** Above a preparation that is a reaction of a file: which one, and the way to the others. */
export function ReactionBar() {
  const now = queue.value
  if (now === null || now.at === null) return null
  const item = now.items[now.at]!
  const order = openable.value
  const place = order.indexOf(now.at)
  const [before, after] = [order[place - 1], order[place + 1]]
  return (
    <section class="reaction-bar" aria-label="Reactions of the file">
      <p>
        <b>
          Reaction {item.number} of {item.file}
        </b>
        {order.length > 1 && (
          <span class="soft">
            {' '}
            ({place + 1} of {order.length})
          </span>
        )}
        : {item.title === '' ? 'without a name' : item.title}
      </p>
      <p class="dos">
        <button type="button" class="do" disabled={before === undefined} onClick={() => openReaction(before!)}>
          The one before
        </button>
        <button type="button" class="do" disabled={after === undefined} onClick={() => openReaction(after!)}>
          The next one
        </button>
        <button type="button" class="do" onClick={() => openEntry('file')}>
          All of them
        </button>
        {before !== undefined && (
          <button type="button" class="do" onClick={() => replaceWriting(likeReaction(before))}>
            Source and conditions as in the one before
          </button>
        )}
        <button
          type="button"
          class="do"
          onClick={() => {
            closeReaction()
            openEntry('write')
          }}
        >
          Leave it for later
        </button>
      </p>
    </section>
  )
}

/** In place of saving: a reaction of a file is taken over together with the others. */
export function TakenTogether({ ready }: { readonly ready: boolean }) {
  const order = openable.value
  const now = queue.value
  const after = now === null || now.at === null ? undefined : order[order.indexOf(now.at) + 1]
  return (
    <p class="dos">
      {after !== undefined && (
        <button type="button" class={ready ? 'do strong' : 'do'} onClick={() => openReaction(after)}>
          On to the next one
        </button>
      )}
      <button type="button" class={after === undefined && ready ? 'do strong' : 'do'} onClick={() => openEntry('file')}>
        All of them: take them over together
      </button>
    </p>
  )
}
