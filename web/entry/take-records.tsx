import './entry.css'
import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Trial } from './api.ts'
import { saveOwn, undoOwn } from './own.ts'
import { ChangeRows } from './parts.tsx'

/**
 * The own records that a plan brings, before they are taken into the library here: what would be added, changed, refused; all or nothing,
 * and taken back.
 *
 * @param file  the plan as a file
 */
export function TakeRecords({ title, file, onDone }: { readonly title: string; readonly file: unknown; readonly onDone: () => void }) {
  const [trial, setTrial] = useState<Trial | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [saved, setSaved] = useState(false)
  const [saving, setSaving] = useState(false)
  const files = [{ name: `${title}.json`, text: JSON.stringify(file) }]
  useEffect(() => {
    const left = new AbortController()
    entryServer.check({ files }, left.signal).then(setTrial, fault => left.signal.aborted || setProblems(problemsOf(fault)))
    return () => left.abort()
  }, [])
  const take = async (): Promise<void> => {
    setSaving(true)
    const found = await saveOwn(`records of the plan “${title}”`, { files })
    setSaving(false)
    setProblems(found)
    setSaved(found.length === 0)
  }
  const takeBack = async (): Promise<void> => {
    await undoOwn()
    onDone()
  }
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
                ? 'Your library holds them by now'
                : `${records} would be taken into your library, all or none`}
      </h2>
      {trial !== null && !saved && <ChangeRows rows={trial.rows} refused={refused} />}
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
        <button type="button" class="do" onClick={onDone}>
          {saved ? 'Done' : 'Not now'}
        </button>
      </p>
    </section>
  )
}
