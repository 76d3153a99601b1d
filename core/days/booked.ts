import type { BenchTime } from './bench-time.ts'
import { slackH } from './bench-time.ts'
import { wallTime } from './civil-date.ts'
import type { Booked, Days } from './days.ts'
import type { StepWork } from './tasks.ts'
import type { Timetable } from './timetable.ts'

/** Without windows, what stands longer than a working day stands overnight. */
const workingDayH = 8

/**
 * The timetable as entries of a calendar, in order of time. Work that was stopped and taken up again is one entry a window; windows are
 * counted from 0 among those that are used.
 *
 * @param firstDay day number of hour 0; null = no wall times
 */
export function bookedTasks(
  placed: readonly { readonly work: StepWork; readonly first: readonly number[] }[],
  { starts, ends }: Timetable,
  bench: BenchTime,
  hasWindows: boolean,
  firstDay: number | null,
): readonly Booked[] {
  const origin = starts.reduce((least, start) => Math.min(least, start), Number.POSITIVE_INFINITY)
  const entries = placed.flatMap(({ work, first }) =>
    first.flatMap((base, batch) =>
      work.tasks.flatMap((task, index) => {
        const [start, end] = [starts[base + index]!, ends[base + index]!]
        const pieces = task.splits ? bench.piecesOf(start, end) : [{ from: start, to: end }]
        return pieces.map(piece => ({
          work,
          task,
          batch: batch + 1,
          ...piece,
          stretch: hasWindows ? stretchOf(bench, piece.from, piece.to) : null,
        }))
      }),
    ),
  )
  const used = [...new Set(entries.flatMap(e => (e.stretch === null || e.task.kind === 'stand' ? [] : [e.stretch])))].sort((a, b) => a - b)
  const rank = new Map(used.map((stretch, index) => [stretch, index]))
  const wall = (hours: number) => (firstDay === null ? null : wallTime(firstDay, hours))
  return entries
    .map(
      ({ work, task, batch, from, to, stretch }): Booked => ({
        step: work.step,
        batch,
        do: task.do,
        kind: task.kind,
        startH: from - origin,
        endH: to - origin,
        start: wall(from),
        end: wall(to),
        window: stretch === null ? null : (rank.get(stretch) ?? null),
      }),
    )
    .sort((a, b) => a.startH - b.startH || a.endH - b.endH || (a.step < b.step ? -1 : a.step > b.step ? 1 : a.batch - b.batch))
}

/** Index of the window that holds all of it; null where none does. */
function stretchOf(bench: BenchTime, from: number, to: number): number | null {
  for (let index = bench.indexAt(from); index < bench.stretches.length; index++) {
    const stretch = bench.stretches[index]!
    if (stretch.from > from + slackH) return null
    if (to <= stretch.to + slackH) return index
  }
  return null
}

/** What stands or runs with nobody there: each task once, however many batches. */
export function unattendedOf(booked: readonly Booked[], works: readonly StepWork[], hasWindows: boolean): Days['unattended'] {
  const found = new Map<string, Days['unattended'][number]>()
  for (const entry of booked) {
    const hours = entry.endH - entry.startH
    if (entry.kind !== 'stand' || (hasWindows ? entry.window !== null : hours < workingDayH)) continue
    const task = works.find(w => w.step === entry.step)?.tasks.find(t => t.do === entry.do && t.kind === 'stand')
    found.set(`${entry.step} ${entry.do}`, { step: entry.step, do: entry.do, hours: task?.hours ?? hours, heated: task?.heated ?? false })
  }
  return [...found.values()]
}
