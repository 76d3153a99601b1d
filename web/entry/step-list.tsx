import { signal } from '@preact/signals'
import { useRef, useState } from 'preact/hooks'
import { ownBench } from '../../core/library/trust.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { MarkLegend, MarkSign } from '../parts/mark.tsx'
import { Problems } from '../parts/problem.tsx'
import { MarkedName, TrustWord } from '../parts/trust-word.tsx'
import { Name } from '../parts/words.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Kept, type StepRow } from './api.ts'
import { numberTyped } from './number-typed.ts'
import { saveOwn } from './own.ts'
import { TextField } from './parts.tsx'
import { useFound } from './use-found.ts'

/** Transformations with their yields and how sure they are. */
export function StepList({ words, kept }: { readonly words: string; readonly kept: Kept }) {
  const { answer, problems } = useFound(entryServer.steps, words, kept)
  const [openId, setOpenId] = useState<string | null>(null)
  const rows = answer?.transformations ?? []
  return (
    <>
      <Problems of={problems} />
      {answer !== null && (
        <p class="soft" role="status">
          {answer.found} {answer.found === 1 ? 'transformation' : 'transformations'}
          {answer.found > rows.length ? `; the first ${rows.length} are shown` : ''}.
        </p>
      )}
      <ul class="rows steps">
        {rows.map(row => (
          <li key={row.id}>
            <div class="step-row">
              <span>
                <b>
                  <Name text={row.name} />
                </b>
                <span class="soft">
                  {' '}
                  {row.from.join(' + ')} → {row.to}
                </span>
              </span>
              <span class="nb">
                {row.yieldPercent.low}–{row.yieldPercent.high}, usually <b>{row.yieldPercent.typical}</b>{' '}
                {row.kind === 'isolation' ? 'g per 100 g' : '%'}
              </span>
              <span>
                <TrustWord trust={row.trust} />
                {row.runs > 0 && <span class="soft s">, {row.runs === 1 ? 'one run here' : `${row.runs} runs here`}</span>}
                {row.beneath !== null && (
                  <span class="s">
                    {' '}
                    in place of {row.beneath.low}–{row.beneath.high}, usually {row.beneath.typical}
                  </span>
                )}
              </span>
              <button
                type="button"
                class="do"
                aria-expanded={openId === row.id}
                onClick={() => setOpenId(openId === row.id ? null : row.id)}
              >
                {openId === row.id ? 'fold' : 'sources, own yield'}
              </button>
            </div>
            {openId === row.id && <Opened row={row} />}
          </li>
        ))}
      </ul>
    </>
  )
}

/** What the record of a step states, figure by figure and line by line. */
function Figures({ row: { figures, charges } }: { readonly row: StepRow }) {
  return (
    <>
      <p>
        {figures
          .filter(one => one.figure !== 'charges')
          .map(one => (
            <MarkedName of={one} value={one.value} key={one.figure} />
          ))}
      </p>
      <ul class="charges-told s">
        {charges.map((line, at) => (
          <li key={`${line.material} ${at}`}>
            <Name text={line.material} />{' '}
            <span class="nb" data-mark={line.mark}>
              {line.value ?? 'as needed'}
              <MarkSign of={line} />
            </span>
          </li>
        ))}
      </ul>
      <MarkLegend used={charges.map(one => one.mark)} />
    </>
  )
}

interface OwnYield {
  readonly low: string
  readonly typical: string
  readonly high: string
  readonly note: string
}
/** Own yields by the step they are of, as typed and not saved: a row that is folded loses nothing. */
const typedYields = signal<ReadonlyMap<string, OwnYield>>(new Map())

/** The sources of a step, and a yield of one's own for it. */
function Opened({ row }: { readonly row: StepRow }) {
  const { yieldPercent } = row
  const stated = { low: String(yieldPercent.low), typical: String(yieldPercent.typical), high: String(yieldPercent.high), note: '' }
  const { low, typical, high, note } = typedYields.value.get(row.id) ?? stated
  const type = (patch: Partial<OwnYield>): void => {
    typedYields.value = new Map(typedYields.peek()).set(row.id, { low, typical, high, note, ...patch })
  }
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const values = [low, typical, high].map(numberTyped)
  const inReason = values.every(value => value !== null && value >= 0 && value <= 100) && values[1]! > 0
  const fits = inReason && values[0]! <= values[1]! && values[1]! <= values[2]!
  const key = JSON.stringify([values, note.trim()])
  const [savedKey, setSavedKey] = useState<string | null>(null)
  const said = useRef<HTMLParagraphElement>(null)
  const save = async (): Promise<void> => {
    try {
      const step = await entryServer.step(row.id)
      const citation = `${ownBench}, ${new Date().toISOString().slice(0, 10)}${note.trim() === '' ? '' : `: ${note.trim()}`}`
      const record = {
        ...step,
        yieldPercent: { low: values[0], typical: values[1], high: values[2], from: ownBench },
        sources: [{ citation, for: 'yield', checked: true }, ...step.sources.filter(one => !one.citation.startsWith(ownBench))],
      }
      const found = await saveOwn(`own yield of ${row.name}`, { transformations: [record] })
      setProblems(found)
      if (found.length > 0) return
      setSavedKey(key)
      said.current?.focus()
    } catch (fault) {
      setProblems(problemsOf(fault))
    }
  }
  const drop = async (): Promise<void> => {
    setSavedKey(null)
    typedYields.value = new Map([...typedYields.peek()].filter(([id]) => id !== row.id))
    setProblems(await saveOwn(`${row.name} taken out`, { removeTransformations: [row.id] }))
  }
  return (
    <div class="working">
      <Figures row={row} />
      <ul class="s">
        {row.sources.map(source => (
          <li key={source}>{source}</li>
        ))}
      </ul>
      <p class="dos s">
        {(['csv', 'tsv'] as const).map(form => (
          <a
            class="do"
            key={form}
            href={`./api/v1/transformations/${encodeURIComponent(row.id)}/charges?form=${form}`}
            download={`${row.id}-charges.${form}`}
          >
            charges as {form.toUpperCase()}
          </a>
        ))}
      </p>
      <div class="three">
        <TextField label="Own: on a bad day" help="One run in ten gives less." value={low} onText={low => type({ low })} />
        <TextField label="usually" help="Half the runs give more." value={typical} invalid={!fits} onText={typical => type({ typical })} />
        <TextField label="on a good day" help="One run in ten gives more." value={high} onText={high => type({ high })} />
      </div>
      <TextField
        label="Notebook page"
        help="Where it is written down. The bundled record stays as it is; yours stands in its place."
        value={note}
        onText={note => type({ note })}
      />
      {!fits && <p class="s wrong">Give three numbers from 0 to 100 in rising order, the usual one above 0: 55, 70, 80.</p>}
      <Problems of={problems} />
      <p role="status" tabIndex={-1} ref={said}>
        {savedKey === key && <b>Saved: plans reckon with it from now on.</b>}
      </p>
      <p class="dos">
        <button type="button" class="do strong" disabled={!fits || savedKey === key} onClick={() => void save()}>
          Plan with this yield
        </button>
        {row.own && (
          <button type="button" class="do" onClick={() => void drop()}>
            {row.overrides ? 'Back to the bundled one' : 'Take it out of the library'}
          </button>
        )}
      </p>
    </div>
  )
}
