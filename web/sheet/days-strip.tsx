import type { Booked } from '../../core/days/days.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { durationText } from '../../core/quantity/print.ts'
import { windowWord } from '../../core/report/answers.ts'
import { shortDate } from '../../core/report/dates.ts'
import { noWindowText, wouldDoText } from '../../core/report/no-window.ts'
import { capital, counted, degrees, stepsText } from '../../core/report/words.ts'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { plan } from '../state/store.ts'

const width = 440
const lanes = 96
const laneHeight = 22
const top = 22

/** Bench windows used, each as wide as its work, with what is done in it; what stands alone runs dotted between them. */
export function DaysStrip({ evaluation }: { readonly evaluation: Evaluation }) {
  const { days, steps } = evaluation
  const { windows } = plan.value.settings
  const [one, many] = windowWord(windows)
  const title =
    days.windowsUsed === null
      ? days.handsOnH === null
        ? 'Hands-on hours are not known for every step'
        : `${durationText(days.handsOnH)} hands-on; the longest chain takes ${durationText(days.elapsedH)}`
      : `${counted(days.windowsUsed, one, many)}${lengthText(windows)}${days.finishDate === null ? '' : `, done ${shortDate(days.finishDate, true)}`}`
  return (
    <div>
      <h3>{capital(title)}</h3>
      {days.booked.length > 0 && days.windowsUsed !== null && <Strip booked={days.booked} steps={steps} />}
      {days.unattended.map(({ step, do: what, hours, heated }) => (
        <p class="s" key={`${step} ${what}`}>
          Runs alone: {nameOfStep(evaluation, step)}, {degrees(what)}, {durationText(hours)}
          {heated ? ', heated: hang the notice beside it' : ''}.
        </p>
      ))}
      {days.tooLong.map(long => (
        <p class="s" key={`${long.step} ${long.do}`}>
          {capital(nameOfStep(evaluation, long.step))}, {noWindowText(long, windows, id => nameOfStep(evaluation, id))}
        </p>
      ))}
      {days.tooLong.length > 0 && <p class="s">{wouldDoText(days)}</p>}
      {days.notes.map(note => (
        <p class="s soft" key={note}>
          {degrees(note)}
        </p>
      ))}
      <TimesTrust evaluation={evaluation} />
      {windows.length === 0 && <p class="s soft">Say in question 1 when the bench is worked; then the days stand here.</p>}
    </div>
  )
}

/** " of 3.5 h" where all windows are as long; nothing where they differ. */
const lengthText = (windows: readonly { readonly hours: number }[]): string => {
  const lengths = new Set(windows.map(window => window.hours))
  return lengths.size === 1 ? ` of ${durationText([...lengths][0]!)}` : ''
}

/** Which steps' hours are estimates: a day planned on them may end otherwise. */
function TimesTrust({ evaluation }: { readonly evaluation: Evaluation }) {
  const { transformations } = facts.value.library
  const guessed = evaluation.steps.filter(step => transformations.get(step.transformation)?.timesBasis !== 'source')
  if (evaluation.steps.length === 0) return null
  return (
    <p class="s soft">
      {guessed.length === 0
        ? 'All times are those of the sources.'
        : `Times ${guessed.length === evaluation.steps.length ? '' : `of ${stepsText(guessed.map(step => step.number))} `}are estimated from the operations${guessed.length === evaluation.steps.length ? '' : '; the others are those of their sources'}.`}
    </p>
  )
}

const nameOfStep = (evaluation: Evaluation, id: string): string => {
  const step = evaluation.steps.find(one => one.transformation === id || one.number === id)
  return step === undefined ? id : `step ${step.number}`
}

interface Window {
  readonly index: number
  readonly x: number
  readonly w: number
  readonly startH: number
  readonly endH: number
  readonly label: string
}

/** More windows than this cannot be told apart on 440 px. */
const mostWindows = 12

function Strip({ booked, steps }: { readonly booked: readonly Booked[]; readonly steps: Evaluation['steps'] }) {
  const windows = windowsOf(booked)
  if (windows.length === 0 || windows.length > mostWindows) return null
  const rows = steps.map(step => ({ step, work: booked.filter(one => one.step === step.transformation || one.step === step.number) }))
  const height = top + rows.length * laneHeight + 6
  const at = (hour: number): number => xOf(windows, hour)
  return (
    <>
      <svg class="strip" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={spokenStrip(rows)}>
        {windows.map(window => (
          <g key={window.index}>
            <text x={window.x} y={11}>
              {window.label}
            </text>
            <path class="edge" d={`M${window.x} ${top - 1}v-4h${window.w}v4`} />
          </g>
        ))}
        {rows.map(({ step, work }, row) => {
          const y = top + row * laneHeight
          const standing = standingParts(work)
          return (
            <g key={step.transformation}>
              <path class="hair" d={`M0 ${y + laneHeight}H${width}`} />
              <text x={0} y={y + 15}>
                {laneName(nameOf(step.makes))}
              </text>
              {standing.map(([from, to]) => (
                <path class="alone" d={`M${at(from)} ${y + 11}H${at(to)}`} key={from} />
              ))}
              {work
                .filter(one => one.kind !== 'stand')
                .map(one => {
                  const x = at(one.startH)
                  const w = Math.max(1.5, at(one.endH) - x)
                  return one.kind === 'hands' ? (
                    <rect class="hands" x={x} y={y + 6} width={w} height={10} key={one.startH} />
                  ) : (
                    <path class="edge" d={`M${x} ${y + 6.5}h${w}M${x} ${y + 15.5}h${w}`} key={one.startH} />
                  )
                })}
            </g>
          )
        })}
      </svg>
      <p class="key-line s soft" aria-hidden="true">
        <span>
          <svg viewBox="0 0 22 9" aria-hidden="true">
            <rect class="hands" width={22} height={9} />
          </svg>{' '}
          hands on
        </span>
        <span>
          <svg viewBox="0 0 22 9" aria-hidden="true">
            <path class="edge" d="M0 .5h22M0 8.500h22" />
          </svg>{' '}
          runs, watched
        </span>
        <span>
          <svg viewBox="0 0 22 9" aria-hidden="true">
            <path class="alone" d="M1 5h20" />
          </svg>{' '}
          alone
        </span>
      </p>
    </>
  )
}

function windowsOf(booked: readonly Booked[]): readonly Window[] {
  const byWindow = new Map<number, Booked[]>()
  for (const one of booked) if (one.window !== null) byWindow.set(one.window, [...(byWindow.get(one.window) ?? []), one])
  const indices = [...byWindow.keys()].sort((a, b) => a - b)
  const gap = 12
  const w = (width - lanes - gap * (indices.length - 1)) / Math.max(1, indices.length)
  return indices.map((index, at) => {
    const work = byWindow.get(index) ?? []
    const startH = Math.min(...work.map(one => one.startH))
    const endH = Math.max(...work.map(one => one.endH))
    const start = work.map(one => one.start).find(text => text !== null)
    return { index, x: lanes + at * (w + gap), w, startH, endH, label: labelOf(start ?? null, index, w) }
  })
}

function labelOf(start: string | null, index: number, w: number): string {
  if (start === null) return String(index + 1)
  const text = shortDate(start, w >= 58)
  return w >= 34 ? text : String(Number(start.slice(8, 10)))
}

/** Hours to px: true inside a window, squeezed between them. */
function xOf(windows: readonly Window[], hour: number): number {
  for (const [at, window] of windows.entries()) {
    if (hour < window.startH) return window.x - 6
    if (hour <= window.endH) {
      const span = Math.max(1, ...windows.map(one => one.endH - one.startH))
      return window.x + ((hour - window.startH) / span) * window.w
    }
    const next = windows[at + 1]
    if (next !== undefined && hour < next.startH) return next.x - 6
  }
  const last = windows[windows.length - 1]
  return last === undefined ? 0 : last.x + last.w
}

/** Spans in which nothing but standing goes on, for the dotted line. */
function standingParts(work: readonly Booked[]): readonly (readonly [number, number])[] {
  return work.filter(one => one.kind === 'stand' && one.endH > one.startH).map(one => [one.startH, one.endH] as const)
}

const laneName = (name: string): string => (name.length <= 15 ? name : `${name.slice(0, 14)}…`)

function spokenStrip(rows: readonly { readonly step: Evaluation['steps'][number]; readonly work: readonly Booked[] }[]): string {
  return rows
    .map(({ step, work }) => {
      const days = [...new Set(work.filter(one => one.kind !== 'stand' && one.start !== null).map(one => shortDate(one.start ?? '', true)))]
      return `${nameOf(step.makes)}: ${days.length === 0 ? 'no date' : days.join(', ')}`
    })
    .join('; ')
}
