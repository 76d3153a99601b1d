import { useEffect, useState } from 'preact/hooks'
import { gapText } from '../../core/report/shopping-notes.ts'
import { reckoning, solveOn, standing, stopSolving, takenAtOnce } from '../state/reckoner.ts'

/** So long the cheapest basket is waited for before stopping is offered. */
const patienceMs = 500

/** How sure the basket is. One that takes long to solve can be stopped; one that was stopped can be solved after all. */
export function Solving() {
  const waits = reckoning.value && standing.value.fresh && !standing.value.basketFresh
  const [long, setLong] = useState(false)
  useEffect(() => {
    setLong(false)
    if (!waits) return
    const timer = setTimeout(() => setLong(true), patienceMs)
    return () => clearTimeout(timer)
  }, [waits])
  if (waits && long)
    return (
      <p role="status">
        Looking for the cheapest basket …{' '}
        <button type="button" class="do" onClick={stopSolving}>
          Stop, take one at once
        </button>
      </p>
    )
  const { evaluation } = standing.value
  const gap = evaluation === null ? null : gapText(evaluation)
  if (gap === null) return null
  return (
    <p>
      {takenAtOnce.value && 'The search for the cheapest basket was stopped. '}
      {gap}{' '}
      {takenAtOnce.value && (
        <button type="button" class="do" onClick={solveOn}>
          Look for it to the end
        </button>
      )}
    </p>
  )
}
