import { shortDate } from '../../core/report/dates.ts'

/** Days on which nobody is at the bench, one added or taken out at a time. */
export function DaysOffRow({
  daysOff,
  onDaysOff,
}: {
  readonly daysOff: readonly string[]
  readonly onDaysOff: (daysOff: string[]) => void
}) {
  return (
    <fieldset class="line">
      <legend>Days off</legend>
      <div>
        {daysOff.map(day => (
          <span class="item" key={day}>
            {shortDate(day, true)}{' '}
            <button type="button" class="do s" onClick={() => onDaysOff(daysOff.filter(other => other !== day))}>
              take out<span class="unseen">, {shortDate(day, true)}</span>
            </button>{' '}
          </span>
        ))}
        <input
          class="blank"
          type="date"
          aria-label="a further day off"
          value=""
          onChange={event => {
            const day = event.currentTarget.value
            if (day !== '' && !daysOff.includes(day)) onDaysOff([...daysOff, day].sort())
          }}
        />
      </div>
    </fieldset>
  )
}
