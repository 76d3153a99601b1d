import { describe, expect, it } from 'vitest'
import type { GoalAmount } from '../../../../core/plan/plan.ts'
import type { Route } from '../../../../core/route/route.ts'
import type { Change } from '../../../../web/state/change.ts'
import { changed } from '../../../../web/state/changed.ts'
import { emptyState, hasStart, type SheetState } from '../../../../web/state/sheet-state.ts'

const route = (target: string, ...steps: readonly string[]): Route => ({
  start: 'benzoin',
  target,
  steps: steps.map((transformation, at) => ({ transformation, makes: at === steps.length - 1 ? target : 'benzil' })),
})
const stateAfter = (...changes: readonly Change[]): SheetState => changes.reduce(changed, emptyState(7))
const inHand: Change = { do: 'start', material: 'benzoin', massG: 24 }
const goal = (target: string): Change => ({ do: 'add-goal', route: route(target, 'oxidise', target) })
const amounts = (state: SheetState): readonly GoalAmount[] => state.plan.goals.map(one => one.amount)

describe('changed', () => {
  it('leaves what it was given alone', () => {
    const before = stateAfter(inHand, goal('lophine'))
    const frozen = structuredClone(before)
    changed(before, { do: 'have', massG: 12 })
    changed(before, { do: 'drop-goal', target: 'lophine' })
    expect(before).toEqual(frozen)
  })

  it('gives the first goal everything, each further one half of what is free', () => {
    expect(amounts(stateAfter(inHand, goal('lophine'), goal('quinoxaline'), goal('dienone')))).toEqual([
      { kind: 'rest' },
      { kind: 'share', fraction: 0.5 },
      { kind: 'share', fraction: 0.25 },
    ])
  })

  it('asks for grams where nothing is in hand to take a share of', () => {
    const state = stateAfter({ do: 'start', material: 'benzoin', massG: null }, goal('lophine'))
    expect(amounts(state)).toEqual([{ kind: 'mass', massG: 5 }])
  })

  it('turns shares and the rest into grams once the amount in hand is taken away', () => {
    const state = stateAfter(inHand, goal('lophine'), goal('quinoxaline'), { do: 'have', massG: null })
    expect(amounts(state).every(amount => amount.kind === 'mass')).toBe(true)
  })

  it('lets one goal at most take the rest', () => {
    const state = stateAfter(inHand, goal('lophine'), goal('quinoxaline'), {
      do: 'goal-amount',
      target: 'quinoxaline',
      amount: { kind: 'rest' },
    })
    expect(amounts(state).filter(amount => amount.kind === 'rest')).toHaveLength(1)
    expect(state.plan.goals.find(one => one.target === 'quinoxaline')?.amount.kind).toBe('rest')
  })

  it('keeps the amount of a goal that is chosen again by another route', () => {
    const other: Change = { do: 'add-goal', route: route('lophine', 'oxidise-gently', 'lophine') }
    const state = stateAfter(inHand, goal('lophine'), { do: 'goal-amount', target: 'lophine', amount: { kind: 'mass', massG: 3 } }, other)
    expect(state.plan.goals).toEqual([{ target: 'lophine', route: other.route, amount: { kind: 'mass', massG: 3 } }])
  })

  it('drops goals, log and make-or-buy with another start, and nothing else', () => {
    const state = stateAfter(
      { do: 'put-on-shelf', item: { material: 'ethanol', amount: 250, unit: 'mL' }, at: null },
      inHand,
      { do: 'choosing', patch: { make: ['benzaldehyde'], avoid: ['benzene'] } },
      goal('lophine'),
      { do: 'start', material: 'benzil', massG: 10 },
    )
    expect(state.plan.goals).toEqual([])
    expect(state.choosing.make).toEqual([])
    expect(state.choosing.avoid).toEqual(['benzene'])
    expect(state.plan.shelf).toHaveLength(1)
  })

  it('keeps the goals where the same start only weighs something else', () => {
    const state = stateAfter(inHand, goal('lophine'), { do: 'start', material: 'benzoin', massG: 12 })
    expect(state.plan.goals).toHaveLength(1)
    expect(state.plan.start.massG).toBe(12)
  })

  it('puts a bottle in the place of the one it replaces', () => {
    const state = stateAfter(
      { do: 'put-on-shelf', item: { material: 'ethanol', amount: 250, unit: 'mL' }, at: null },
      { do: 'put-on-shelf', item: { material: 'acetic-acid', amount: 50, unit: 'mL' }, at: null },
      { do: 'put-on-shelf', item: { material: 'ethanol', amount: 100, unit: 'mL' }, at: 0 },
    )
    expect(state.plan.shelf.map(item => [item.material, item.amount])).toEqual([
      ['ethanol', 100],
      ['acetic-acid', 50],
    ])
    expect(changed(state, { do: 'take-off-shelf', at: 0 }).plan.shelf.map(item => item.material)).toEqual(['acetic-acid'])
  })

  it('writes a price into packs that were not there, and over the same pack', () => {
    const price = (priceMinor: number): Change => ({
      do: 'price',
      currency: 'EUR',
      supplier: { id: 'corner-shop', name: 'Corner shop', carriageMinor: 0, hazardousFeeMinor: 0 },
      pack: { supplier: 'corner-shop', material: 'ethanol', amount: 1, unit: 'L', priceMinor },
    })
    const packs = stateAfter(price(900), price(950)).plan.packs
    expect(packs?.suppliers).toHaveLength(1)
    expect(packs?.packs.map(pack => pack.priceMinor)).toEqual([950])
  })

  it('begins with nothing in hand', () => {
    expect(hasStart(emptyState(1))).toBe(false)
    expect(hasStart(stateAfter(inHand))).toBe(true)
  })
})
