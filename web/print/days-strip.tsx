import { dayOf, weekdayOf } from '../../core/days/civil-date.ts'
import type { Booked } from '../../core/days/days.ts'
import { byNumber } from '../../core/plan/merged-steps.ts'
import type { Settings } from '../../core/plan/settings.ts'
import { dateAndTime, shortDate } from '../../core/report/dates.ts'
import type { ChargedStep } from '../../core/route/charged.ts'

const width = 680
const lane = 118
const top = 22
const rowHeight = 18
const gap = 12
/** More brackets than this cannot be told apart in one strip: they are then a list. */
const mostBrackets = 12

interface Bracket {
  readonly index: number
  readonly x: number
  readonly w: number
  readonly startH: number
  readonly hours: number
  readonly label: string
}

interface StripProps {
  readonly booked: readonly Booked[]
  readonly steps: readonly ChargedStep[]
  readonly windows: Settings['windows']
  readonly nameOf: (id: string) => string
}

/** Bench brackets side by side, each a bracket as long as its window: solid = hands on, open = watched, dotted = alone between them. */
export function DaysStrip({ booked, steps, windows, nameOf }: StripProps) {
  const brackets = bracketsOf(booked, windows)
  if (brackets.length === 0) return null
  if (brackets.length > mostBrackets) return <DaysList booked={booked} steps={steps} nameOf={nameOf} />
  const rows = [...steps].sort((a, b) => byNumber(a.number, b.number))
  const height = top + rows.length * rowHeight + 4
  const at = (hour: number): number => xOf(brackets, hour)
  return (
    <>
      <svg class="strip" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`Days: ${brackets.map(one => one.label).join(', ')}`}>
        {brackets.map(bracket => (
          <g key={bracket.index}>
            <text x={bracket.x} y={11}>
              {bracket.label}
            </text>
            <path class="edge" d={`M${bracket.x} ${top - 1}v-4h${bracket.w}v4`} />
          </g>
        ))}
        {rows.map((step, row) => {
          const y = top + row * rowHeight
          const work = booked.filter(one => one.step === step.transformation || one.step === step.number)
          return (
            <g key={step.transformation}>
              <path class="hair" d={`M0 ${y + rowHeight}H${width}`} />
              <text x={0} y={y + 13}>
                {laneName(`${step.number} ${nameOf(step.makes)}`)}
              </text>
              {work
                .filter(one => one.kind === 'stand')
                .map(one => (
                  <path
                    class="alone"
                    d={`M${at(one.startH) + 2} ${y + 9}H${Math.max(at(one.startH) + 6, at(one.endH) - 2)}`}
                    key={`s${one.startH}-${one.batch}`}
                  />
                ))}
              {work
                .filter(one => one.kind !== 'stand')
                .map(one => {
                  const x = at(one.startH)
                  const w = Math.max(1.5, at(one.endH) - x)
                  return one.kind === 'hands' ? (
                    <rect class="hands" x={x} y={y + 4} width={w} height={10} key={`h${one.startH}-${one.batch}`} />
                  ) : (
                    <path class="edge" d={`M${x} ${y + 4.5}h${w}M${x} ${y + 13.5}h${w}`} key={`w${one.startH}-${one.batch}`} />
                  )
                })}
            </g>
          )
        })}
      </svg>
      <p class="key-line s soft">
        <svg viewBox="0 0 22 10" aria-hidden="true">
          <rect class="hands" width={22} height={10} />
        </svg>{' '}
        hands on
        <svg viewBox="0 0 22 10" aria-hidden="true">
          <path class="edge" d="M0 .500h22M0 9.500h22" />
        </svg>{' '}
        runs, watched
        <svg viewBox="0 0 22 10" aria-hidden="true">
          <path class="alone" d="M1 5h20" />
        </svg>{' '}
        alone: stands or dries
      </p>
    </>
  )
}

function DaysList({ booked, steps, nameOf }: Omit<StripProps, 'windows'>) {
  const attended = booked.filter(one => one.kind !== 'stand')
  const indices = [...new Set(attended.map(one => one.window))].filter(one => one !== null).sort((a, b) => a - b)
  const numberOf = (id: string): string => {
    const step = steps.find(one => one.transformation === id || one.number === id)
    return step === undefined ? id : `${step.number} ${nameOf(step.makes)}`
  }
  return (
    <table class="t days-list">
      <tbody>
        {indices.map(index => {
          const work = attended.filter(one => one.window === index)
          const first = work[0]?.start ?? null
          return (
            <tr key={index}>
              <td class="nb">{first === null ? `window ${index + 1}` : dateAndTime(first)}</td>
              <td>{[...new Set(work.map(one => numberOf(one.step)))].join('; ')}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

function bracketsOf(booked: readonly Booked[], windows: Settings['windows']): readonly Bracket[] {
  const byWindow = new Map<number, Booked[]>()
  for (const one of booked) if (one.window !== null) byWindow.set(one.window, [...(byWindow.get(one.window) ?? []), one])
  const raw = [...byWindow.entries()]
    .sort(([a], [b]) => a - b)
    .map(([index, work]) => {
      const first = work.reduce((earliest, one) => (one.startH < earliest.startH ? one : earliest))
      const endH = Math.max(...work.map(one => one.endH))
      const window = windowOf(first.start, windows)
      const offset = window === null || first.start === null ? 0 : clockH(first.start.slice(11, 16)) - clockH(window.from)
      const startH = first.startH - offset
      return {
        index,
        startH,
        hours: Math.max(window?.hours ?? 0, endH - startH),
        start: first.start,
      }
    })
  const room = width - lane - gap * (raw.length - 1)
  const total = raw.reduce((sum, one) => sum + one.hours, 0)
  // Few brackets do not fill the line: an hour is at most so wide.
  const perHour = Math.min(26, room / Math.max(1, total))
  let x = lane
  return raw.map(one => {
    const w = one.hours * perHour
    const bracket = { ...one, x, w, label: labelOf(one.start, one.index, w + gap) }
    x += bracket.w + gap
    return bracket
  })
}

/** As much of a date as the room bears: "Mon 7 Dec", "7 Dec" or "7". */
function labelOf(start: string | null, index: number, room: number): string {
  if (start === null) return room < 60 ? String(index + 1) : `window ${index + 1}`
  if (room >= 62) return shortDate(start, true)
  return room >= 40 ? shortDate(start) : String(Number(start.slice(8, 10)))
}

const clockH = (text: string): number => Number(text.slice(0, 2)) + Number(text.slice(3, 5)) / 60

/** The bench window that a wall time lies in. */
function windowOf(start: string | null, windows: Settings['windows']): Settings['windows'][number] | null {
  const day = start === null ? null : dayOf(start.slice(0, 10))
  if (start === null || day === null) return null
  const time = clockH(start.slice(11, 16))
  return windows.find(one => one.weekday === weekdayOf(day) && clockH(one.from) <= time && time < clockH(one.from) + one.hours) ?? null
}

/** Hours to px: true inside a bracket; between two, just before the next. */
function xOf(brackets: readonly Bracket[], hour: number): number {
  for (const [at, bracket] of brackets.entries()) {
    if (hour < bracket.startH) return bracket.x - gap / 2
    const next = brackets[at + 1]
    if (hour <= bracket.startH + bracket.hours) return bracket.x + ((hour - bracket.startH) / bracket.hours) * bracket.w
    if (next === undefined) return bracket.x + bracket.w + gap / 2
  }
  return lane
}

const laneName = (name: string): string => (name.length <= 19 ? name : `${name.slice(0, 18)}…`)
