import { useEffect, useRef, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { bringFacts } from '../state/facts-asked.ts'
import { wantGoal } from '../state/goals.ts'
import { beginPlan } from '../state/opening.ts'
import { entryServer, type Trial } from './api.ts'
import { emptyWriting, replaceWriting, write } from './draft.ts'
import { drafting, idsBeneath, sameWays } from './drafting.ts'
import { InPlaceOf } from './in-place-of.tsx'
import { namedIn } from './new-structures.ts'
import { lastSave, own, saveOwn, undoOwn } from './own.ts'
import { ChangeRows } from './parts.tsx'
import { closeEntry } from './place.ts'
import { TakenTogether } from './reaction-bar.tsx'
import { queue } from './reactions.ts'
import { readingState } from './reading.ts'
import { StillToSay } from './still-to-say.tsx'

/** What of a record this part speaks of. */
interface Said {
  readonly id: string
  readonly name: string
  readonly limiting: string
  readonly mainProduct: string
}

/** What would be saved, what is lacking, and the button; once it is saved, what comes next. */
export function SaveStep() {
  const { fresh } = readingState.value
  const { record, lacking, isKept } = drafting.value
  const [trial, setTrial] = useState<Trial | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [savedId, setSavedId] = useState<string | null>(null)
  const [saving, setSaving] = useState(false)
  const heading = useRef<HTMLHeadingElement>(null)
  const key = record === null ? '' : JSON.stringify(record)
  const said = record as Said | null
  // A reaction of a file is taken over together with the others, never by itself.
  const isOfFile = queue.value?.at != null
  useEffect(() => {
    setProblems([])
    setTrial(null)
    if (record === null || isKept) return
    const stop = new AbortController()
    const timer = setTimeout(() => {
      entryServer.check({ materials: isOfFile ? namedIn([record]) : [], transformations: [record] }, stop.signal).then(
        answer => {
          const row = answer.rows.find(one => one.list === 'transformations')
          const isUnsaid = row?.change === 'overrides' && (sameWays.peek() ?? []).every(way => way.id !== row.id)
          if (isUnsaid) idsBeneath.value = new Set([...idsBeneath.peek(), row.id])
          else setTrial(answer)
        },
        fault => !stop.signal.aborted && setProblems(problemsOf(fault)),
      )
    }, 250)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [key, isKept, own.value?.version])
  const save = async (): Promise<void> => {
    if (said === null) return
    setSaving(true)
    const found = await saveOwn(said.name, { transformations: [said] })
    setSaving(false)
    setProblems(found)
    if (found.length === 0) {
      setSavedId(said.id)
      // What is corrected on this page from now on is this record, and no second one.
      write({ inPlaceOf: said.id })
    }
    heading.current?.focus()
  }
  const takeBack = async (): Promise<void> => {
    await undoOwn()
    heading.current?.focus()
  }
  const refused = trial !== null && trial.refused.length > 0
  const ready = record !== null && trial !== null && fresh && sameWays.value !== null
  const title =
    record === null
      ? 'Not ready to be saved'
      : isKept
        ? said?.id === savedId
          ? 'Saved'
          : 'It is in the own library already, the same'
        : refused
          ? 'It would be refused'
          : ready
            ? isOfFile
              ? 'Ready to be taken over with the others'
              : 'Ready to be saved'
            : 'Being checked'
  return (
    <section class="entry-save" aria-label="Save">
      <InPlaceOf />
      <h2 tabIndex={-1} ref={heading}>
        {title}
      </h2>
      {record === null && <StillToSay of={lacking} />}
      {isKept && (
        <p>
          <b>{said?.name}</b> is planned with from now on. What you correct on this page corrects it; nothing is stored twice.
        </p>
      )}
      {trial !== null && record !== null && !isKept && (
        <>
          <ChangeRows rows={trial.rows} refused={trial.refused} />
          <Problems of={trial.refused} />
          <Problems of={trial.warnings.filter(one => one.where.includes(said?.id ?? ''))} />
        </>
      )}
      <Problems of={problems} />
      {isOfFile && <TakenTogether ready={ready && !refused} />}
      {!isOfFile && (
        <p class="dos">
          <button type="button" class="do strong" disabled={isKept || saving || refused || !ready} onClick={() => void save()}>
            Save to the own library
          </button>
          {isKept && said !== null && (
            <>
              <button type="button" class="do" onClick={() => planWith(said)}>
                Begin a plan with it
              </button>
              <button type="button" class="do" onClick={() => replaceWriting(emptyWriting)}>
                Write the next step
              </button>
              {said.id === savedId && lastSave.value !== null && (
                <button type="button" class="do" onClick={() => void takeBack()}>
                  Take it back
                </button>
              )}
            </>
          )}
        </p>
      )}
    </section>
  )
}

function planWith({ limiting, mainProduct }: Said): void {
  const name = readingState.value.reading?.materials[limiting]?.name ?? limiting
  closeEntry()
  void bringFacts([], [limiting]).then(() => {
    beginPlan({ material: limiting, name, massG: null })
    wantGoal(mainProduct)
  })
}
