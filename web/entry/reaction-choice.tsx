import { Name } from '../parts/words.tsx'
import type { ReactionRead } from './api.ts'
import { emptyWriting, replaceWriting, type Writing } from './draft.ts'
import { openEntry } from './place.ts'

/** A remark, which the reader passes over, above what has no amount yet. */
const overArrow = '# over the arrow in the file: give each its amount'

/** What was read of a file goes to where a preparation is written. */
export function toWriting(patch: Partial<Pick<Writing, 'equation' | 'body' | 'roles' | 'facts' | 'name'>>): void {
  replaceWriting({ ...emptyWriting, ...patch })
  openEntry('write')
}

export const writeReaction = ({ equation, agents, title }: ReactionRead): void =>
  toWriting({ equation, body: agents.length === 0 ? '' : [overArrow, ...agents].join('\n'), name: title })

/** The reactions of a file: each is completed and saved by itself. */
export const ReactionChoice = ({ of }: { readonly of: readonly ReactionRead[] }) => (
  <section aria-label="Reactions of the file">
    <h2>{of.length} reactions in it: which is written down first?</h2>
    <p class="s soft">A reaction file holds no amounts: each becomes a preparation to be completed. Choose the file again for the next.</p>
    <ul class="rows">
      {of.map((reaction, at) => (
        <li key={`${reaction.equation} ${at}`}>
          <button type="button" class="do" onClick={() => writeReaction(reaction)}>
            {reaction.title === '' ? `reaction ${at + 1}` : reaction.title}
          </button>{' '}
          <Name text={reaction.equation.replace(' -> ', ' → ')} />
          {reaction.agents.length > 0 && <span class="soft s block">over the arrow, without amounts: {reaction.agents.join('; ')}</span>}
        </li>
      ))}
    </ul>
  </section>
)
