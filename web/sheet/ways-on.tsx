import { useEffect } from 'preact/hooks'
import { takenAfterLast, takenReason, type Way, type WayOn } from '../../core/logbook/replan.ts'
import { moneyText } from '../../core/quantity/money.ts'
import { massText } from '../../core/quantity/print.ts'
import { carriageOpen, hasNoPrice } from '../../core/report/basket-gaps.ts'
import { shortDate } from '../../core/report/dates.ts'
import { nameOf } from '../state/names.ts'
import { askWaysOn, waysOnward } from '../state/onward.ts'
import { change, choosing, plan as planned } from '../state/store.ts'

const words: Record<WayOn, string> = {
  'scale-down': 'Scale down',
  'top-up': 'Top up',
  repeat: 'Repeat the step',
  'another-route': 'Change route',
}

/** The four ways on from the last run, side by side; taking one makes it the plan. */
export function WaysOn() {
  useEffect(() => askWaysOn(), [])
  const { ways, waiting } = waysOnward.value
  const taken = takenAfterLast(planned.value)
  if (taken !== null) return <p class="s">{takenReason(taken)}</p>
  if (ways.length === 0) return waiting ? <p class="s soft">Reckoning the four ways on.</p> : null
  return (
    <div data-stale={waiting ? '' : undefined}>
      <h3>Ways on from here</h3>
      <ul class="ways-on">
        {ways.map(way => (
          <li key={way.way}>
            <b>{words[way.way]}</b>
            <WayTold way={way} />
          </li>
        ))}
      </ul>
    </div>
  )
}

function WayTold({ way }: { readonly way: Way }) {
  const { evaluation, plan } = way
  if (evaluation === null || plan === null) return <p>{way.reason ?? 'None.'}</p>
  const { basket, days } = evaluation
  return (
    <>
      <p>
        {evaluation.goals.map(goal => `${massText(goal.medianG)} ${nameOf(goal.target)}`).join(', ')}
        {way.added !== null && `; adds ${massText(way.added.medianG)} ${nameOf(way.added.compound)}`}
      </p>
      <p class="s soft">
        {basket === null || hasNoPrice(basket)
          ? 'cost unknown'
          : `${basket.complete && carriageOpen(basket) === null ? '' : 'at least '}${moneyText(basket.totalMinor ?? 0, basket.currency)}`}
        {days.finishDate === null ? '' : `, done ${shortDate(days.finishDate)}`}
      </p>
      {way.way !== 'scale-down' && (
        <button type="button" class="do" onClick={() => change({ do: 'open', plan, choosing: choosing.value })}>
          Take this way
        </button>
      )}
    </>
  )
}
