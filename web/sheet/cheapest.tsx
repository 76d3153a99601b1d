import { useEffect, useRef, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { minorDigitsOf, moneyText } from '../../core/quantity/money.ts'
import { priceSentence } from '../../core/report/price-words.ts'
import type { CheapestReply } from '../api/replies.ts'
import { streamCheapest } from '../api/stream.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { carriedInSearch } from '../state/brought.ts'
import { halfDone } from '../state/half-done.ts'
import { standing } from '../state/reckoner.ts'
import { change, choosing, plan } from '../state/store.ts'

/** An empty field is no limit. */
const limit = (text: string): number | null => {
  const value = Number(text.replace(',', '.'))
  return text.trim() === '' || !(value >= 0) ? null : value
}

/**
 * The cheapest way to all goals: routes, make-or-buy and packs chosen together, within what may be spent and what is forbidden in question 3.
 * The routes are taken there and then; Undo brings the others back.
 */
export function Cheapest() {
  // What is forbidden stands in another question: whoever goes there and comes back finds the limits as they were.
  const [asked, setAsked] = halfDone('cheapest way', { open: false, budget: '', hands: '', by: '' })
  const { open, budget, hands, by } = asked
  const [waiting, setWaiting] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [reply, setReply] = useState<CheapestReply | null>(null)
  const currency = plan.value.packs?.currency ?? 'EUR'
  const [far, setFar] = useState({ found: 0, work: 0 })
  const running = useRef<{ readonly leave: () => void; readonly stop: () => void } | null>(null)
  const [stopping, setStopping] = useState(false)
  // Whoever leaves the question leaves the search too.
  useEffect(() => () => running.current?.leave(), [])
  const look = async (): Promise<void> => {
    setWaiting(true)
    setStopping(false)
    setFar({ found: 0, work: 0 })
    const leaving = new AbortController()
    const enough = new Promise<void>(resolve => {
      running.current = { leave: () => leaving.abort(), stop: resolve }
    })
    const budgetMajor = limit(budget)
    try {
      const found = await streamCheapest(
        {
          plan: plan.value,
          choosing: choosing.value,
          carried: carriedInSearch.value,
          limits: {
            budgetMinor: budgetMajor === null ? null : Math.round(budgetMajor * 10 ** minorDigitsOf(currency)),
            maxHandsOnH: limit(hands),
            finishBy: by === '' ? null : by,
          },
        },
        told => told.kind === 'progress' && setFar({ found: told.found, work: told.work }),
        leaving.signal,
        enough,
      )
      setProblems([])
      setReply(found)
      change({ do: 'routes', routes: found.routes })
    } catch (fault) {
      if (leaving.signal.aborted) return
      setReply(null)
      setProblems(problemsOf(fault))
    } finally {
      setWaiting(false)
    }
  }
  return (
    <details
      class="more-of"
      open={open}
      onToggle={event => {
        if (event.currentTarget.open !== open) setAsked({ ...asked, open: event.currentTarget.open })
      }}
    >
      <summary>The cheapest way to all goals</summary>
      <form
        class="line-form"
        onSubmit={event => {
          event.preventDefault()
          void look()
        }}
      >
        <label class="field">
          <span>budget, {currency}</span>
          <input
            class="blank n"
            size={6}
            inputMode="decimal"
            value={budget}
            onInput={event => setAsked({ ...asked, budget: event.currentTarget.value })}
          />
        </label>
        <label class="field">
          <span>hours of hands, at most</span>
          <input
            class="blank n"
            size={5}
            inputMode="decimal"
            value={hands}
            onInput={event => setAsked({ ...asked, hands: event.currentTarget.value })}
          />
        </label>
        <label class="field">
          <span>done by</span>
          <input class="blank" type="date" value={by} onInput={event => setAsked({ ...asked, by: event.currentTarget.value })} />
        </label>
        <button type="submit" class="do" disabled={waiting || plan.value.goals.length === 0}>
          {waiting ? 'Looking …' : 'Find and take it'}
        </button>
        {waiting && (
          <button
            type="button"
            class="do"
            disabled={stopping}
            onClick={() => {
              setStopping(true)
              running.current?.stop()
            }}
          >
            {stopping ? 'Stopping …' : 'Stop, take the best so far'}
          </button>
        )}
      </form>
      <p class="s soft">What question 3 forbids stays forbidden. Leave a field empty for no limit.</p>
      {waiting && far.found > 0 && (
        <p class="s soft" role="status">
          {far.found} ways; {far.work} reckoned in full.
        </p>
      )}
      <Problems of={problems} />
      {reply !== null && (
        <div role="status">
          <p>
            <b>
              The cheapest of {reply.ways} {reply.ways === 1 ? 'way' : 'ways'}
              {reply.figures.totalMinor === null ? '' : `: ${moneyText(reply.figures.totalMinor, currency)}`}
              {reply.figures.priceUnknown > 0 ? ` and ${reply.figures.priceUnknown} unknown` : ''}
            </b>
            {reply.proven
              ? ', proven.'
              : `; not proven, the search was cut short${reply.boundMinor === null ? '' : `: none costs less than ${moneyText(reply.boundMinor, currency)}`}.`}{' '}
            <span class="soft">{standing.value.evaluation === null ? '' : priceSentence(standing.value.evaluation)}</span>
          </p>
          {reply.changedByLimits !== null && <p>The limits change the way. {reply.changedByLimits}</p>}
          <ul class="s">
            {reply.reasons.map(reason => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </div>
      )}
    </details>
  )
}
