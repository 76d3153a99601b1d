import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Identified, type Trial } from './api.ts'
import { calledInWriting, emptyMaterial, materialRecord, setMaterial, typedMaterial } from './material-draft.ts'
import { own, saveOwn, undoOwn } from './own.ts'
import { ChangeRows } from './parts.tsx'
import { openEntry } from './place.ts'

/** What a save would do, and the button. */
export function SaveMaterial({ told }: { readonly told: Identified }) {
  const [trial, setTrial] = useState<Trial | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [savedId, setSavedId] = useState<string | null>(null)
  const record = materialRecord(typedMaterial.value, told)
  const isSaved = savedId !== null && own.value?.materials.some(one => one.id === savedId) === true
  const blocked = told.problems.some(one => one.code !== 'material-without-formula')
  const key = JSON.stringify(record)
  useEffect(() => {
    const stop = new AbortController()
    setTrial(null)
    const timer = setTimeout(() => {
      entryServer
        .check({ materials: [record] }, stop.signal)
        .then(setTrial, fault => !stop.signal.aborted && setProblems(problemsOf(fault)))
    }, 250)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [key, own.value?.version])
  const save = async (): Promise<void> => {
    const found = await saveOwn(String(record.name), { materials: [record] })
    setProblems(found)
    if (found.length > 0) return
    setSavedId(String(record.id))
    if (calledInWriting.value !== null) {
      calledInWriting.value = null
      typedMaterial.value = emptyMaterial
      openEntry('write')
    }
  }
  return (
    <section class="entry-save" aria-label="Save">
      <h2>{trial === null ? 'Being checked' : trial.refused.length > 0 || blocked ? 'It would be refused' : 'Ready to be saved'}</h2>
      {trial !== null && (
        <>
          <ChangeRows rows={trial.rows} refused={trial.refused} />
          <Problems of={told.problems.some(one => one.code === 'stopped') ? [] : trial.refused} />
          <Problems of={trial.warnings.filter(one => one.where.includes(String(record.id)))} />
        </>
      )}
      <Problems of={problems} />
      <p class="dos">
        <button
          type="button"
          class="do strong"
          disabled={trial === null || trial.refused.length > 0 || blocked}
          onClick={() => void save()}
        >
          {calledInWriting.value === null ? 'Save to the own library' : 'Save, and back to the preparation'}
        </button>
        {isSaved && (
          <button type="button" class="do" onClick={() => void undoOwn()}>
            Take it back
          </button>
        )}
        <button type="button" class="do" onClick={() => setMaterial(emptyMaterial)}>
          Empty the page
        </button>
      </p>
    </section>
  )
}
