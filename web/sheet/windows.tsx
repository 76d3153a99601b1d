import type { Settings } from '../../core/plan/settings.ts'
import { durationText } from '../../core/quantity/print.ts'

type Windows = Settings['windows']
const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun']
/** An evening class: a first figure to be written over. */
const usual = { from: '18:30', hours: 3 }

/** When the bench is worked: weekdays, from when, how long. One window a day here; a plan file may hold more. */
export function WindowRow({ windows, onWindows }: { readonly windows: Windows; readonly onWindows: (windows: Windows) => void }) {
  const first = windows[0] ?? { weekday: 1, ...usual }
  const isLikeFirst = ({ from, hours }: Windows[number]): boolean => from === first.from && hours === first.hours
  // Days with hours of their own, as a plan file may hold them, keep them.
  const all = (patch: Partial<Windows[number]>): void =>
    onWindows(windows.map(window => (isLikeFirst(window) ? { ...window, ...patch } : window)))
  const others = windows.filter(window => !isLikeFirst(window))
  return (
    <fieldset class="line">
      <legend>Bench days</legend>
      <div>
        <span class="days-of-week">
          {weekdays.map((name, at) => {
            const on = windows.some(window => window.weekday === at + 1)
            return (
              <label class="dot-choice" key={name}>
                <input
                  type="checkbox"
                  checked={on}
                  onChange={() =>
                    onWindows(
                      on
                        ? windows.filter(window => window.weekday !== at + 1)
                        : [...windows, { weekday: at + 1, from: first.from, hours: first.hours }].sort((a, b) => a.weekday - b.weekday),
                    )
                  }
                />
                {name}
              </label>
            )
          })}
        </span>
        {windows.length === 0 ? (
          <span class="soft">not stated: hours are told, no dates</span>
        ) : (
          <span class="item">
            from{' '}
            <input
              class="blank"
              type="time"
              aria-label="from"
              value={first.from}
              onChange={event => event.currentTarget.value !== '' && all({ from: event.currentTarget.value })}
            />{' '}
            for{' '}
            <input
              class="blank n"
              type="number"
              aria-label="hours"
              min={0.5}
              max={24}
              step={0.5}
              value={first.hours}
              onChange={event => {
                const hours = Number(event.currentTarget.value)
                if (hours > 0 && hours <= 24) all({ hours })
              }}
            />{' '}
            h
            {others.map(({ weekday, from, hours }) => (
              <span class="soft" key={`${weekday} ${from}`}>
                ; {weekdays[weekday - 1]} from {from} for {durationText(hours)}
              </span>
            ))}
          </span>
        )}
      </div>
    </fieldset>
  )
}
