import type { WindowOfWeek } from './bench-time.ts'

/** Windows are lengthened by half an hour at a time, to a whole day at the most. */
const tickH = 0.5
const mostH = 24

/**
 * The least lengthening of one window of the week with which a plan gets its dates: by trying, since what is tried may only ever gain from
 * more time at the bench. Of equal lengths the first of the list.
 *
 * @param windows as stated
 * @param would   does everything find its place in these windows?
 * @returns that window as it would have to be; null where no single one would do
 */
export function windowThatWouldDo(
  windows: readonly WindowOfWeek[],
  would: (windows: readonly WindowOfWeek[]) => boolean,
): WindowOfWeek | null {
  let best: WindowOfWeek | null = null
  for (const [index, window] of windows.entries()) {
    const tried = (ticks: number): readonly WindowOfWeek[] => windows.with(index, lengthened(window, ticks * tickH))
    let least = Math.floor(window.hours / tickH) + 1
    let most = (best === null ? mostH : best.hours - tickH) / tickH
    if (least > most || !would(tried(most))) continue
    while (least < most) {
      const middle = (least + most) >> 1
      if (would(tried(middle))) most = middle
      else least = middle + 1
    }
    best = lengthened(window, most * tickH)
  }
  return best
}

/** Later in the evening as far as midnight, then earlier in the day: what was open stays open. */
function lengthened({ weekday, from, hours }: WindowOfWeek, to: number): WindowOfWeek {
  const [hour, minute] = from.split(':').map(Number)
  const begins = hour! + minute! / 60
  const latest = Math.max(24, begins + hours)
  const early = Math.max(0, Math.min(begins, latest - to))
  const minutes = Math.round(early * 60)
  const text = `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`
  return { weekday, from: text, hours: to }
}
