import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { wantGoal } from '../state/goals.ts'
import { beginPlan } from '../state/opening.ts'
import { bringFacts } from '../state/questions.ts'
import { entryServer, type StepRow, type Trial } from './api.ts'
import { ChargePart } from './charge-part.tsx'
import { ConditionPart } from './condition-part.tsx'
import { canTakeBack, emptyWriting, replaceWriting, takeBack, write, writing } from './draft.ts'
import { EquationPart } from './equation-part.tsx'
import { examples } from './examples.ts'
import { OutcomePart } from './outcome-part.tsx'
import { own, saveOwn, undoOwn } from './own.ts'
import { ChangeRows, Choice, History } from './parts.tsx'
import { closeEntry } from './place.ts'
import { readingState } from './reading.ts'
import { drafted } from './record.ts'
import { TaskPart } from './task-part.tsx'

const today = (): string => new Date().toISOString().slice(0, 10)

/** A preparation, typed on the left, what it was read as on the right. */
export function WritePage() {
  const { problems } = readingState.value
  return (
    <>
      <div class="dos entry-examples">
        <span class="soft">Try</span>
        {examples.map(example => (
          <button type="button" class="do" key={example.title} onClick={() => replaceWriting({ ...emptyWriting, ...example.writing })}>
            {example.title}
          </button>
        ))}
        <button type="button" class="do" onClick={() => replaceWriting(emptyWriting)}>
          Empty the page
        </button>
        <button type="button" class="do" disabled={!canTakeBack.value} onClick={takeBack}>
          Undo
        </button>
      </div>
      <Problems of={problems} />
      <EquationPart />
      <ChargePart />
      <OutcomePart />
      <TaskPart />
      <ConditionPart />
      <SavePart />
      <History />
    </>
  )
}

/** What would be saved, what is lacking, and the button. */
function SavePart() {
  const { reading, fresh } = readingState.value
  const known = new Set((own.value?.transformations ?? []).map(one => one.id))
  const { record, lacking } = drafted(writing.value, reading, today(), id => known.has(id))
  const [trial, setTrial] = useState<Trial | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [saved, setSaved] = useState<{ readonly from: string; readonly to: string; readonly name: string; readonly id: string } | null>(
    null,
  )
  const key = record === null ? '' : JSON.stringify(record)
  const version = own.value?.version ?? 0
  useEffect(() => {
    setProblems([])
    if (record === null) {
      setTrial(null)
      return
    }
    const stop = new AbortController()
    const timer = setTimeout(() => {
      entryServer
        .check({ transformations: [record] }, stop.signal)
        .then(setTrial, fault => !stop.signal.aborted && setProblems(problemsOf(fault)))
    }, 250)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [key, version])
  const save = async (): Promise<void> => {
    if (record === null) return
    const found = await saveOwn(String(record.name), { transformations: [record] })
    setProblems(found)
    if (found.length === 0)
      setSaved({ from: String(record.limiting), to: String(record.mainProduct), name: String(record.name), id: String(record.id) })
  }
  const isSaved = saved !== null && own.value?.transformations.some(one => one.id === saved.id) === true
  const nothingNew = trial !== null && trial.rows.length > 0 && trial.rows.every(row => row.change === 'same')
  return (
    <section class="entry-save" aria-label="Save">
      <InPlaceOf />
      <h2>
        {record === null
          ? 'Not ready to be saved'
          : trial === null
            ? 'Being checked'
            : trial.refused.length > 0
              ? 'It would be refused'
              : nothingNew
                ? 'Saved'
                : 'Ready to be saved'}
      </h2>
      {record === null && (
        <p>
          Still to be said: <b>{lacking.map(one => one.what).join('; ')}</b>. What is typed stays in this browser meanwhile.
        </p>
      )}
      {trial !== null && record !== null && (
        <>
          <ChangeRows rows={trial.rows} refused={trial.refused} />
          <Problems of={trial.refused} />
          <Problems of={trial.warnings.filter(one => one.where.includes(String(record.id)))} />
        </>
      )}
      <Problems of={problems} />
      <p class="dos">
        <button
          type="button"
          class="do strong"
          disabled={record === null || trial === null || trial.refused.length > 0 || !fresh || nothingNew}
          onClick={() => void save()}
        >
          Save to the own library
        </button>
        {isSaved && (
          <>
            <button
              type="button"
              class="do"
              onClick={() => {
                const name = readingState.value.reading?.materials[saved.from]?.name ?? saved.from
                closeEntry()
                void bringFacts([], [saved.from]).then(() => {
                  beginPlan({ material: saved.from, name, massG: null })
                  wantGoal(saved.to)
                })
              }}
            >
              Begin a plan with it
            </button>
            <button type="button" class="do" onClick={() => replaceWriting(emptyWriting)}>
              Write the next step
            </button>
            <button type="button" class="do" onClick={() => void undoOwn()}>
              Take it back
            </button>
          </>
        )}
      </p>
    </section>
  )
}

/** Steps of the library with the same equation: a new way beside them, or in place of one. */
function InPlaceOf() {
  const { reading } = readingState.value
  const [rows, setRows] = useState<readonly StepRow[]>([])
  const names = (terms: readonly { readonly compound: string | null }[]) =>
    terms.map(term => reading?.materials[term.compound ?? '']?.name ?? '?').sort()
  const from = reading === null ? [] : names(reading.reactants)
  const to = reading?.transformation.mainProduct === undefined ? '' : (reading.materials[reading.transformation.mainProduct]?.name ?? '')
  const version = own.value?.version ?? 0
  useEffect(() => {
    if (to === '') return setRows([])
    let wanted = true
    entryServer.steps(to, { trust: '', figure: '' }, 100).then(
      found => wanted && setRows(found.transformations.filter(row => row.to === to && [...row.from].sort().join('|') === from.join('|'))),
      () => wanted && setRows([]),
    )
    return () => {
      wanted = false
    }
  }, [to, from.join('|'), version])
  if (rows.length === 0) return null
  return (
    <Choice
      label={
        rows.length === 1
          ? 'The library has one way with the same reactants'
          : `The library has ${rows.length} ways with the same reactants`
      }
      help="A new way stands beside them and is ranked with them. In place of one, yours is used and the bundled one stays untouched beneath it."
      value={writing.value.inPlaceOf}
      options={[
        ['', 'this is a new way'],
        ...rows.map(row => [row.id, `in place of ${row.name} (usually ${row.yieldPercent.typical} %)`] as const),
      ]}
      onChoose={inPlaceOf => write({ inPlaceOf })}
    />
  )
}
