import { useMemo, useState } from 'preact/hooks'
import { plannedChargeG } from '../../core/logbook/planned-charge.ts'
import { nextBatch, withRun } from '../../core/logbook/run.ts'
import { standing as entriesThatStand } from '../../core/plan/logged.ts'
import { byNumber } from '../../core/plan/merged-steps.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { inBase } from '../../core/quantity/convert.ts'
import { parseQuantity } from '../../core/quantity/parse.ts'
import { massText } from '../../core/quantity/print.ts'
import { shortDate } from '../../core/report/dates.ts'
import { Problems } from '../parts/problem.tsx'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { standing } from '../state/reckoner.ts'
import { change, plan } from '../state/store.ts'

const blank = { charged: '', weighed: '', damp: '', purity: '', melting: '', batch: '', date: '', note: '', corrects: '', failed: false }

/** "94-95", or one figure; what cannot be read comes back as no range, which the log refuses with its reason. */
function meltingOf(text: string): readonly [number, number] | null {
  if (text.trim() === '') return null
  const [from, to] = text.split(/\s*(?:–|to|(?<=\d)\s*-)\s*/).map(part => Number(part.replace(',', '.').replace('−', '-')))
  return [from ?? Number.NaN, to ?? from ?? Number.NaN]
}

/** The blanks of a new entry: step, what was charged, what it weighed, how dry. */
export function NewRun() {
  const { evaluation } = standing.value
  const [step, setStep] = useState('')
  const [written, setWritten] = useState(blank)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const write = (patch: Partial<typeof blank>): void => setWritten({ ...written, ...patch })
  const steps = [...(evaluation?.steps ?? [])].sort((a, b) => byNumber(a.number, b.number))
  const chosen = steps.find(one => one.transformation === step) ?? steps[0]
  const facing = facts.value.library
  const planned = plan.value
  // What is shown in grey is what is logged where nothing else is written.
  const chargeG = useMemo(
    () => (chosen === undefined ? null : plannedChargeG(facing, planned, chosen.transformation)),
    [facing, planned, chosen?.transformation],
  )
  if (chosen === undefined) return null
  const earlier = entriesThatStand(plan.value.log).filter(entry => entry.step === chosen.transformation)
  const left = chosen.done?.leftToRun ?? chosen.batches

  const log = (): void => {
    const weighed = parseQuantity(written.weighed, ['weighed'], { dimensions: ['mass'], zero: true })
    const charged =
      written.charged.trim() === '' ? null : parseQuantity(written.charged, ['charged'], { dimensions: ['mass'], zero: false })
    const dampText = /%/.test(written.damp) ? written.damp : `${written.damp} %`
    const damp = written.damp.trim() === '' ? null : parseQuantity(dampText, ['loss on drying'], { dimensions: ['share'] })
    const percent = (text: string, what: string) =>
      text.trim() === '' ? null : parseQuantity(/%/.test(text) ? text : `${text} %`, [what], { dimensions: ['share'] })
    const purity = percent(written.purity, 'assay')
    const wrong = [weighed, charged, damp, purity].flatMap(one => (one !== null && !one.ok ? one.problems : []))
    if (wrong.length > 0 || !weighed.ok) {
      setProblems(wrong)
      return
    }
    const logged = withRun(facts.value.library, plan.value, {
      step: chosen.transformation,
      weighedG: inBase(weighed.value),
      chargedG: charged?.ok ? inBase(charged.value) : null,
      dampPercent: damp?.ok ? inBase(damp.value) * 100 : 0,
      purity: purity?.ok ? inBase(purity.value) : null,
      meltingC: meltingOf(written.melting),
      ...(written.batch.trim() === '' ? {} : { batch: Number(written.batch) }),
      date: written.date === '' ? null : written.date,
      failed: written.failed,
      note: written.note.trim(),
      replaces: written.corrects === '' ? null : written.corrects,
    })
    setProblems(logged.ok ? [] : logged.problems)
    const entry = logged.ok ? logged.value.log.at(-1) : undefined
    if (entry === undefined) return
    change({ do: 'log', entry })
    setWritten(blank)
  }
  return (
    <form
      class="lines"
      onSubmit={event => {
        event.preventDefault()
        log()
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
          value={written.charged}
          placeholder={chargeG === null ? '' : massText(chargeG)}
          onInput={event => write({ charged: event.currentTarget.value })}
        />
      </label>
      <label class="line">
        <span>Weighed, {nameOf(chosen.makes)}</span>
        <input
          class="blank"
          value={written.weighed}
          placeholder={left > 0 ? massText(chosen.ofCharge.medianG / left) : ''}
          aria-invalid={problems.some(problem => problem.where.includes('weighed'))}
          onInput={event => write({ weighed: event.currentTarget.value })}
        />
      </label>
      <label class="line">
        <span>Still to lose on drying</span>
        <input class="blank" value={written.damp} placeholder="dry" onInput={event => write({ damp: event.currentTarget.value })} />
      </label>
      <label class="line">
        <span>Assay, %</span>
        <input
          class="blank"
          value={written.purity}
          placeholder="taken as pure"
          onInput={event => write({ purity: event.currentTarget.value })}
        />
      </label>
      <label class="line">
        <span>Melting range, °C</span>
        <input class="blank" value={written.melting} placeholder="94–95" onInput={event => write({ melting: event.currentTarget.value })} />
      </label>
      <label class="line">
        <span>Batch</span>
        <input
          class="blank"
          inputMode="numeric"
          value={written.batch}
          placeholder={`${nextBatch(plan.value.log, chosen.transformation)}`}
          onInput={event => write({ batch: event.currentTarget.value })}
        />
      </label>
      <label class="line">
        <span>Day</span>
        <input class="blank" type="date" value={written.date} onChange={event => write({ date: event.currentTarget.value })} />
      </label>
      <label class="line">
        <span>Remark</span>
        <input class="blank" value={written.note} onInput={event => write({ note: event.currentTarget.value })} />
      </label>
      {earlier.length > 0 && (
        <label class="line">
          <span>Corrects</span>
          <select class="blank" value={written.corrects} onChange={event => write({ corrects: event.currentTarget.value })}>
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
          <input type="checkbox" checked={written.failed} onChange={event => write({ failed: event.currentTarget.checked })} />
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
