import { useEffect, useRef, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Identified, type Trial } from './api.ts'
import { replaceWriting, writing } from './draft.ts'
import { calledInWriting, markSaved, throwAway, typedMaterial } from './material-draft.ts'
import { type Called, draftOf } from './material-drafts.ts'
import { emptyMaterial } from './material-typed.ts'
import { lastSave, own, saveOwn, undoOwn } from './own.ts'
import { ChangeRows } from './parts.tsx'
import { openEntry } from './place.ts'
import { answered, type Lack } from './record.ts'
import { StillToSay } from './still-to-say.tsx'

interface Props {
  readonly told: Identified
  /** What was told is of what stands in the fields now. */
  readonly fresh: boolean
  readonly lacking: readonly Lack[]
  /** As it would be saved. */
  readonly record: object
  /** One that is saved already and says the same; then it is the record. */
  readonly isKept: boolean
  /** It is to stand in place of one of the library. */
  readonly isMended: boolean
}

/** What a save would do, and the button. */
export function SaveMaterial({ told, fresh, lacking, record, isKept, isMended }: Props) {
  const [trial, setTrial] = useState<Trial | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [savedId, setSavedId] = useState<string | null>(null)
  const [saving, setSaving] = useState(false)
  const heading = useRef<HTMLHeadingElement>(null)
  const { id, name } = record as { readonly id: string; readonly name: string }
  const blocked = told.problems.some(one => one.code !== 'material-without-formula')
  const key = JSON.stringify(record)
  useEffect(() => {
    const stop = new AbortController()
    setTrial(null)
    setProblems([])
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
    setSaving(true)
    const found = await saveOwn(isMended ? `${name} put right` : name, { materials: [record] })
    setSaving(false)
    setProblems(found)
    if (found.length === 0) {
      setSavedId(id)
      markSaved(lastSave.peek()?.version ?? null)
    }
    const called = calledInWriting.peek()
    if (found.length > 0 || called === null) return heading.current?.focus()
    nameInWriting(called, id, name)
    throwAway()
    openEntry('write')
  }
  const takeBack = async (): Promise<void> => {
    await undoOwn()
    heading.current?.focus()
  }
  const refused = trial !== null && trial.refused.length > 0
  const differs = trial === null || trial.rows.some(row => row.change !== 'same')
  const title = isKept
    ? savedId === id
      ? 'Saved'
      : 'It is in the own library already, the same'
    : isMended && !differs
      ? 'Nothing differs from the record yet'
      : lacking.length > 0
        ? 'Not ready to be saved'
        : trial === null || !fresh
          ? 'Being checked'
          : refused || blocked
            ? 'It would be refused'
            : 'Ready to be saved'
  return (
    <section class="entry-save" aria-label="Save">
      <h2 tabIndex={-1} ref={heading}>
        {title}
      </h2>
      {isKept && <p>Preparations and plans find it by its name, its structure and its CAS number.</p>}
      {lacking.length > 0 && <StillToSay of={lacking} />}
      {trial !== null && !isKept && differs && (isMended || lacking.length === 0) && (
        <>
          <ChangeRows rows={trial.rows} refused={trial.refused} blocked={blocked} />
          <Problems of={told.problems.some(one => one.code === 'stopped') ? [] : trial.refused} />
          {/* A hazard that goes is told in the row itself. */}
          <Problems of={trial.warnings.filter(one => one.where.includes(id) && !/^hazards-become-/.test(one.code))} />
        </>
      )}
      <Problems of={problems} />
      <p class="dos">
        <button
          type="button"
          class="do strong"
          disabled={isKept || saving || !fresh || trial === null || !differs || refused || blocked || lacking.length > 0}
          onClick={() => void save()}
        >
          {isMended
            ? 'Put it right in the own library'
            : calledInWriting.value === null
              ? 'Save to the own library'
              : 'Save, and back to the preparation'}
        </button>
        {isKept && savedId === id && (
          <button type="button" class="do" onClick={() => void takeBack()}>
            Take it back
          </button>
        )}
        {isKept && (
          <button type="button" class="do" onClick={() => openEntry('write')}>
            Write a preparation with it
          </button>
        )}
        {!isMended && (
          <button type="button" class="do" onClick={() => throwAway(draftOf(emptyMaterial, calledInWriting.value))}>
            {!isKept ? 'Empty the page' : 'Enter the next material'}
          </button>
        )}
      </p>
    </section>
  )
}

/** The writing finds what was entered for it, also where it was given another name meanwhile. */
function nameInWriting({ text, line }: Called, id: string, name: string): void {
  const { equation, body } = writing.value
  const named = (written: string): string => written.replaceAll(text, `${name} {${id}}`)
  if (line !== null) replaceWriting({ body: answered(body, line, id) })
  else if (text !== name && text !== typedMaterial.value.smiles.trim()) replaceWriting({ equation: named(equation), body: named(body) })
}
