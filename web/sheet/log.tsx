import { useState } from 'preact/hooks'
import type { LogEntry } from '../../core/plan/plan.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { inBase } from '../../core/quantity/convert.ts'
import { parseQuantity } from '../../core/quantity/parse.ts'
import { massText } from '../../core/quantity/print.ts'
import { Problems, Triangle } from '../parts/problem.tsx'
import { Name, Unknown } from '../parts/words.tsx'
import { nameOf } from '../state/names.ts'
import { standing } from '../state/reckoner.ts'
import { change, plan } from '../state/store.ts'
import { type Compared, comparedRuns, logAnswer, tooMuch } from './log-answer.ts'
import { shortDate } from './need-answer.ts'
import { Question } from './question.tsx'

/** Question 7: what was really charged and weighed, against plan and theory. */
export function Log() {
  const runs = comparedRuns(plan.value.log, standing.value.evaluation)
  return (
    <Question no={7} ask="What happened?" empty={runs.length === 0} answer={<Name text={logAnswer(runs, nameOf)} />}>
      {() => <LogBody runs={runs} />}
    </Question>
  )
}

function LogBody({ runs }: { readonly runs: readonly Compared[] }) {
  const { evaluation } = standing.value
  if (evaluation === null && runs.length === 0)
    return <p>Once a step was run, write here what it weighed; the plan is then reckoned on from that.</p>
  return (
    <>
      {runs.length > 0 && (
        <table class="t log">
          <thead>
            <tr>
              <th>Run</th>
              <th class="n">charged</th>
              <th class="n">weighed</th>
              <th class="n">plan</th>
              <th class="n">theory</th>
              <th class="n">yield</th>
            </tr>
          </thead>
          <tbody>
            {runs.map(run => (
              <RunRow run={run} key={run.entry.id} />
            ))}
          </tbody>
        </table>
      )}
      {evaluation !== null && <NewRun />}
      {runs.length === 0 && (
        <p class="s soft">
          A logged run replaces the estimate of its step, and later runs of it are expected nearer to what this bench gets.
        </p>
      )}
    </>
  )
}

function RunRow({ run }: { readonly run: Compared }) {
  const { entry, step } = run
  return (
    <>
      <tr>
        <th scope="row" class="plain">
          {step === null ? entry.step.replaceAll('-', ' ') : <Name text={`${nameOf(step.makes)}, step ${step.number}`} />}
          <span class="own block">
            {[
              entry.date === null ? '' : shortDate(entry.date, true),
              entry.dampPercent > 0 ? `damp, ${entry.dampPercent} % to lose` : 'dry',
              entry.failed ? 'failed' : '',
              entry.note,
            ]
              .filter(part => part !== '')
              .join(', ')}
          </span>
        </th>
        <td class="n own">{entry.chargedG === null ? <Unknown>as planned</Unknown> : massText(entry.chargedG)}</td>
        <td class="n own">{massText(entry.weighedG)}</td>
        <td class="n">{run.plannedG === null ? <Unknown /> : massText(run.plannedG)}</td>
        <td class="n">{run.theoryG === null ? <Unknown>none</Unknown> : massText(run.theoryG)}</td>
        <td class="n">{run.yieldFraction === null ? <Unknown /> : <b>{Math.round(run.yieldFraction * 100)} %</b>}</td>
      </tr>
      {tooMuch(run) && (
        <tr class="in">
          <td colSpan={6}>
            <div class="problem">
              <Triangle />
              <div>
                <b class="inline">Above 100 %: wet, impure or mis-weighed?</b> Kept as a note; it updates no yield. Dry to constant mass and
                log the second weighing as a correction.
              </div>
            </div>
          </td>
        </tr>
      )}
    </>
  )
}

/** The blanks of a new entry: step, what was charged, what it weighed, how dry. */
function NewRun() {
  const { evaluation } = standing.value
  const { log } = plan.value
  const [step, setStep] = useState('')
  const [charged, setCharged] = useState('')
  const [weighed, setWeighed] = useState('')
  const [damp, setDamp] = useState('')
  const [date, setDate] = useState('')
  const [failed, setFailed] = useState(false)
  const [note, setNote] = useState('')
  const [corrects, setCorrects] = useState('')
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const steps = evaluation?.steps ?? []
  const chosen = steps.find(one => one.transformation === step) ?? steps[0]
  if (chosen === undefined) return null
  const earlier = log.filter(entry => entry.step === chosen.transformation && !log.some(other => other.replaces === entry.id))

  const write = (): void => {
    const read = parseQuantity(weighed, ['weighed'], { dimensions: ['mass'], zero: failed })
    const readCharged = charged.trim() === '' ? null : parseQuantity(charged, ['charged'], { dimensions: ['mass'], zero: false })
    const readDamp =
      damp.trim() === '' ? null : parseQuantity(/%/.test(damp) ? damp : `${damp} %`, ['loss on drying'], { dimensions: ['share'] })
    const wrong = [read, readCharged, readDamp].flatMap(one => (one !== null && !one.ok ? one.problems : []))
    setProblems(wrong)
    if (wrong.length > 0 || !read.ok) return
    const entry: LogEntry = {
      id: `run-${log.length + 1}`,
      step: chosen.transformation,
      date: date === '' ? null : date,
      batch: earlier.length + 1,
      chargedG: readCharged?.ok ? inBase(readCharged.value) : null,
      weighedG: inBase(read.value),
      dampPercent: readDamp?.ok ? Math.min(100, inBase(readDamp.value) * 100) : 0,
      purity: null,
      failed,
      note: note.trim(),
      replaces: corrects === '' ? null : corrects,
    }
    change({ do: 'log', entry })
    setWeighed('')
    setCharged('')
    setDamp('')
    setNote('')
    setFailed(false)
    setCorrects('')
  }
  return (
    <form
      class="lines"
      onSubmit={event => {
        event.preventDefault()
        write()
      }}
    >
      <h3>Write down a run</h3>
      <label class="line">
        <span>Step</span>
        <select class="blank" value={chosen.transformation} onChange={event => setStep(event.currentTarget.value)}>
          {steps.map(one => (
            <option value={one.transformation} key={one.transformation}>
              {one.number}, {nameOf(one.makes)}
            </option>
          ))}
        </select>
      </label>
      <label class="line">
        <span>Charged, {nameOf(chosen.limiting.compound)}</span>
        <input
          class="blank"
          value={charged}
          placeholder={massText(chosen.limiting.massG / Math.max(1, chosen.batches))}
          onInput={event => setCharged(event.currentTarget.value)}
        />
      </label>
      <label class="line">
        <span>Weighed, {nameOf(chosen.makes)}</span>
        <input
          class="blank"
          value={weighed}
          placeholder={massText(chosen.medianG / Math.max(1, chosen.batches))}
          aria-invalid={problems.some(problem => problem.where.includes('weighed'))}
          onInput={event => setWeighed(event.currentTarget.value)}
        />
      </label>
      <label class="line">
        <span>Still to lose on drying</span>
        <input class="blank" value={damp} placeholder="dry" onInput={event => setDamp(event.currentTarget.value)} />
      </label>
      <label class="line">
        <span>Day</span>
        <input class="blank" type="date" value={date} onChange={event => setDate(event.currentTarget.value)} />
      </label>
      <label class="line">
        <span>Remark</span>
        <input class="blank" value={note} onInput={event => setNote(event.currentTarget.value)} />
      </label>
      {earlier.length > 0 && (
        <label class="line">
          <span>Corrects</span>
          <select class="blank" value={corrects} onChange={event => setCorrects(event.currentTarget.value)}>
            <option value="">nothing: a run of its own</option>
            {earlier.map(entry => (
              <option value={entry.id} key={entry.id}>
                {massText(entry.weighedG)}
                {entry.date === null ? '' : `, ${shortDate(entry.date)}`}
              </option>
            ))}
          </select>
        </label>
      )}
      <label class="line">
        <span>Failed</span>
        <span class="dot-choice">
          <input type="checkbox" checked={failed} onChange={event => setFailed(event.currentTarget.checked)} />
          spilt, lost or wrongly charged: it teaches nothing about the yield
        </span>
      </label>
      <Problems of={problems} />
      <button type="submit" class="do">
        Log this run
      </button>
    </form>
  )
}
