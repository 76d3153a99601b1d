import { useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { byFlagLine } from '../../core/reading/by-flag.ts'
import { counted, inWords, listed } from '../../core/report/words.ts'
import { Problems } from '../parts/problem.tsx'
import { Name } from '../parts/words.tsx'
import { emptyWriting, replaceWriting, type Writing } from './draft.ts'
import { NewStructureList } from './new-structure-list.tsx'
import { keepNewNames, namedIn, withNewNames } from './new-structures.ts'
import { own, saveOwn, undoOwn } from './own.ts'
import { ChangeRows, Field } from './parts.tsx'
import { openEntry } from './place.ts'
import { type Standing, useTogether } from './reaction-records.ts'
import { closeReaction, leaveOut, markSaved, mend, openReaction, putAway, type Queued, queue, standsSaved } from './reactions.ts'

/** What was read of a file goes to where a preparation is written. */
export function toWriting(patch: Partial<Writing>): void {
  // A reaction of a list that is being written stays with the list.
  closeReaction()
  replaceWriting({ ...emptyWriting, ...patch })
  openEntry('write')
}

const today = (): string => new Date().toISOString().slice(0, 10)

/** The reactions of a file: looked through, mended, completed one after the other, and taken over together or not at all. */
export function ReactionChoice() {
  const now = queue.value
  const { standing, trial, problems } = useTogether(today())
  const [refused, setRefused] = useState<readonly Problem[]>([])
  if (now === null) return null
  const { items } = now
  const bad = items.filter(item => item.read === null && !item.left)
  const left = items.filter(item => item.left)
  const taken = items.length - left.length
  const ready = [...standing.values()].filter(one => one.record !== null).length
  const files = [...new Set(items.map(item => item.file))]
  const isSaved = standsSaved(now)
  const save = async (): Promise<void> => {
    const transformations = [...standing.values()].map(one => one.record)
    const what = `${counted(transformations.length, 'reaction')} from ${files.join(', ')}`
    keepNewNames()
    const found = await saveOwn(what, { materials: namedIn(transformations), transformations })
    setRefused(found)
    if (found.length === 0 && own.value !== null) markSaved(own.value.version)
  }
  return (
    <section aria-label="Reactions of the file">
      <h2>{headingOf(items.length, bad, taken, ready, isSaved)}</h2>
      <p class="s soft">
        {listed(files)}.
        {isSaved
          ? ' They stand in your own library.'
          : ' A reaction file holds no amounts, yields and times: open each and complete it. All of them are then taken over together, or none; nothing changes before.'}
      </p>
      <ol class="rows">
        {items.map((item, at) => (
          <Reaction item={item} at={at} standing={standing.get(at)} isSaved={isSaved} key={`${item.file} ${item.number}`} />
        ))}
      </ol>
      {!isSaved && <NewStructureList />}
      <Problems of={[...problems, ...refused, ...(trial?.refused ?? [])]} />
      {trial !== null && !isSaved && (
        <>
          <h3>What would change</h3>
          <ChangeRows rows={trial.rows} refused={trial.refused} />
          <Problems of={trial.warnings} />
        </>
      )}
      <p class="dos">
        {!isSaved && (
          <button type="button" class="do strong" disabled={trial === null || trial.refused.length > 0} onClick={() => void save()}>
            Take {taken === 1 ? 'it' : left.length > 0 ? `the ${taken}` : `all ${taken}`} over
          </button>
        )}
        {isSaved && (
          <button type="button" class="do" onClick={() => void undoOwn()}>
            Take them back
          </button>
        )}
        <button type="button" class="do" onClick={putAway}>
          {isSaved ? 'Done with this file' : 'Put this file away'}
        </button>
      </p>
    </section>
  )
}

function headingOf(count: number, bad: readonly Queued[], taken: number, ready: number, isSaved: boolean): string {
  const reactions = count === 1 ? 'One reaction' : `${count} reactions`
  if (isSaved) return `${taken === 1 ? 'One reaction is' : `${taken} reactions are`} taken over`
  if (bad.length > 0)
    return `${reactions}; refused while ${listed(bad.map(one => `number ${one.number}`))} cannot be read: mend it or leave it out`
  if (taken === 0) return `${reactions}, all left out`
  return `${reactions}: ${ready} of ${taken} ready to be taken over`
}

function Reaction({
  item,
  at,
  standing,
  isSaved,
}: {
  readonly item: Queued
  readonly at: number
  readonly standing: Standing | undefined
  readonly isSaved: boolean
}) {
  const title = item.title === '' ? `reaction ${item.number}` : item.title
  return (
    <li>
      <span class="reaction-row">
        {item.read === null || item.left || isSaved ? (
          <b class={item.left ? 'soft' : ''}>{title}</b>
        ) : (
          <button type="button" class="do" onClick={() => openReaction(at)}>
            {title}
          </button>
        )}
        <span class="s soft">{isSaved && !item.left ? 'taken over' : stateOf(item, standing)}</span>
        {!isSaved && (
          <button
            type="button"
            class="do s"
            onClick={() => leaveOut(at, !item.left)}
            aria-label={`${item.left ? 'take in again' : 'leave out'}: ${title}`}
          >
            {item.left ? 'take in again' : 'leave out'}
          </button>
        )}
      </span>
      {item.read !== null && !item.left && (
        <span class="s block">
          <Name text={withNewNames(item.read.equation).replace(' -> ', ' → ')} />
          {item.read.agents.length > 0 && (
            <span class="soft block">over the arrow, without amounts: {withNewNames(item.read.agents.join('; '))}</span>
          )}
          {(item.read.byFlag ?? []).length > 0 && <span class="block">{withNewNames(byFlagLine(item.read.byFlag ?? []))}</span>}
          {item.problems
            .filter(({ code }) => code === 'reaction-data-not-read')
            .map(({ what, cure }) => (
              <span key={what} class="block">
                {what} {cure}
              </span>
            ))}
          {!item.balanced && item.written === null && (
            <span class="block">it does not balance yet; where it is written a way is proposed</span>
          )}
          {item.read.unknown.length > 0 && <span class="block">new, added with it: {withNewNames(item.read.unknown.join('; '))}</span>}
        </span>
      )}
      {item.read === null && !item.left && <Mend item={item} at={at} />}
    </li>
  )
}

/** More than these are read where the preparation is written. */
const mostTold = 3

function stateOf(item: Queued, standing: Standing | undefined): string {
  if (item.left) return 'left out'
  if (item.read === null) return 'cannot be read'
  if (standing === undefined) return 'being read'
  if (standing.record !== null) return 'ready'
  const lacking = standing.lacking.map(one => one.what)
  return lacking.length > mostTold ? `${inWords(lacking.length)} things still to be said` : `still to be said: ${lacking.join('; ')}`
}

/** What is wrong with a reaction of the file, and its piece of the file to be mended in place. */
function Mend({ item, at }: { readonly item: Queued; readonly at: number }) {
  const [text, setText] = useState(item.text)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  return (
    <>
      <Problems of={problems.length > 0 ? problems : item.problems} />
      <Field label={`Reaction ${item.number} as it stands in ${item.file}`}>
        {ids => (
          <textarea
            {...ids}
            class="blank mono"
            rows={Math.min(10, text.split('\n').length + 1)}
            spellcheck={false}
            value={text}
            onInput={event => setText(event.currentTarget.value)}
          />
        )}
      </Field>
      <p class="dos">
        <button type="button" class="do" onClick={() => void mend(at, text).then(setProblems)}>
          Read it again
        </button>
      </p>
    </>
  )
}
