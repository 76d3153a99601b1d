import { describe, expect, it } from 'vitest'
import { historyOf, stepped, undone } from '../../../../web/state/history.ts'
import { emptyState } from '../../../../web/state/sheet-state.ts'

const begun = stepped(historyOf(emptyState(1)), { do: 'start', material: 'benzoin', massG: 24 })

describe('history', () => {
  it('goes back to exactly what was', () => {
    const further = stepped(begun, { do: 'choosing', patch: { by: 'cost' } })
    expect(undone(further).now).toBe(begun.now)
    expect(undone(undone(further)).now.plan.start.material).toBe('')
  })

  it('takes a dragged slider as one step', () => {
    let history = begun
    for (let massG = 1; massG <= 20; massG++) history = stepped(history, { do: 'have', massG })
    expect(history.now.plan.start.massG).toBe(20)
    expect(undone(history).now.plan.start.massG).toBe(24)
  })

  it('parts the amounts of two goals', () => {
    let history = begun
    history = stepped(history, { do: 'goal-amount', target: 'a', amount: { kind: 'mass', massG: 1 } })
    const between = history.now
    history = stepped(history, { do: 'goal-amount', target: 'b', amount: { kind: 'mass', massG: 1 } })
    expect(undone(history).now).toBe(between)
  })

  it('begins a new step after Undo', () => {
    let history = stepped(begun, { do: 'have', massG: 10 })
    history = undone(history)
    history = stepped(history, { do: 'have', massG: 11 })
    expect(undone(history).now.plan.start.massG).toBe(24)
  })

  it('stays where there is nothing to undo', () => {
    const first = historyOf(emptyState(1))
    expect(undone(first)).toBe(first)
  })
})
