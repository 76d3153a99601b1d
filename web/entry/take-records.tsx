import './entry.css'
import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { capital } from '../../core/report/words.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { type Edit, entryServer, type Trial } from './api.ts'
import { saveOwn, undoOwn } from './own.ts'
import { ChangeRows } from './parts.tsx'

/**
 * The own records that a plan brings, before they are taken into the library here: what would be added, changed, refused; all or nothing,
 * and taken back.
 *
 * @param file    the plan as a file
 * @param onDone  with what was taken over and stands
 */
export function TakeRecords({
  title,
  file,
  onDone,
}: {
  readonly title: string
  readonly file: unknown
  readonly onDone: (taken: readonly Pick<Row, 'list' | 'id'>[]) => void
}) {
  const [trial, setTrial] = useState<Trial | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [saved, setSaved] = useState(false)
  const [saving, setSaving] = useState(false)
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const [offered, setOffered] = useState<Trial['rows']>([])
  const files = [{ name: `${title}.json`, text: JSON.stringify(file) }]
  const edit: Edit = left.size === 0 ? { files } : chosenOf(file, offered, left)
  useEffect(() => {
    const gone = new AbortController()
    entryServer.check(edit, gone.signal).then(
      answer => {
        setTrial(answer)
        if (left.size === 0) setOffered(answer.rows.filter(row => row.change !== 'same'))
      },
      fault => gone.signal.aborted || setProblems(problemsOf(fault)),
    )
    return () => gone.abort()
  }, [left])
  const leave = (key: string): void => {
    const next = new Set(left)
    if (!next.delete(key)) next.add(key)
    setTrial(null)
    setLeft(next)
  }
  const take = async (): Promise<void> => {
    setSaving(true)
    const found = await saveOwn(`records of the plan “${title}”`, edit)
    setSaving(false)
    setProblems(found)
    setSaved(found.length === 0)
  }
  const takeBack = async (): Promise<void> => {
    await undoOwn()
    onDone([])
  }
  const taken = offered.filter(row => !left.has(keyOf(row)))
  const news = trial?.rows.filter(row => row.change !== 'same').length ?? 0
  const records = news === 1 ? 'one record' : `${news} records`
  const refused = trial?.refused ?? []
  return (
    <section class="records-taking" aria-label="Records of the plan" aria-live="polite">
      <h2>
        {saved
          ? `Saved: ${records} in your library`
          : trial === null
            ? 'Being checked'
            : refused.length > 0
              ? `Refused: ${refused.length} ${refused.length === 1 ? 'fault' : 'faults'}, nothing would be taken over`
              : news === 0
                ? left.size > 0
                  ? 'Nothing of it is chosen'
                  : 'Your library holds them by now'
                : `${capital(records)} would be taken into your library, all or none`}
      </h2>
      {trial !== null && !saved && <ChangeRows rows={trial.rows} refused={refused} />}
      {!saved && offered.length > 1 && (
        <fieldset>
          <legend>Taken over</legend>
          <div class="dos">
            {offered.map(row => (
              <label class="dot-choice" key={keyOf(row)}>
                <input type="checkbox" checked={!left.has(keyOf(row))} onChange={() => leave(keyOf(row))} />
                <span>{row.name}</span>
              </label>
            ))}
          </div>
        </fieldset>
      )}
      <Problems of={[...refused, ...problems]} />
      {!saved && trial !== null && trial.warnings.length > 0 && (
        <details>
          <summary class="do">{trial.warnings.length === 1 ? 'One thing to mind' : `${trial.warnings.length} things to mind`}</summary>
          <Problems of={trial.warnings} />
        </details>
      )}
      <p class="dos">
        {saved ? (
          <button type="button" class="do" onClick={() => void takeBack()}>
            Take it back
          </button>
        ) : (
          <button
            type="button"
            class="do strong"
            disabled={trial === null || refused.length > 0 || news === 0 || saving}
            onClick={() => void take()}
          >
            Take {news === 1 ? 'it' : 'all of them'} over
          </button>
        )}
        <button type="button" class="do" onClick={() => onDone(saved ? taken : [])}>
          {saved ? 'Done' : 'Not now'}
        </button>
      </p>
    </section>
  )
}

type Row = Trial['rows'][number]
const keyOf = ({ list, id }: Pick<Row, 'list' | 'id'>): string => `${list} ${id}`

/** Of what a plan brings, all but what is left out. */
function chosenOf(file: unknown, offered: readonly Row[], left: ReadonlySet<string>): Edit {
  const { slice } = file as { readonly slice: Readonly<Record<Row['list'], readonly { readonly id: string }[]>> }
  const of = (list: Row['list']) => {
    const ids = new Set(offered.filter(row => row.list === list && !left.has(keyOf(row))).map(row => row.id))
    return slice[list].filter(record => ids.has(record.id))
  }
  return { materials: of('materials'), transformations: of('transformations') }
}
