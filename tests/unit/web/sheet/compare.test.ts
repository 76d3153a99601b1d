import { describe, expect, it } from 'vitest'
import type { Evaluation } from '../../../../core/plan/evaluation.ts'
import { libraryOfParts } from '../../../../core/plan/library-of-parts.ts'
import { hasNoPrice } from '../../../../core/report/basket-gaps.ts'
import type { Basket } from '../../../../core/shopping/shopping.ts'
import { type Column, compareRows } from '../../../../web/sheet/compare.ts'
import { transformation } from '../../../support/small-library.ts'

const library = libraryOfParts({ title: 'none' }, [], [])

const basket = (totalMinor: number | null, priceUnknown: readonly string[]): Basket => ({
  totalMinor,
  complete: priceUnknown.length === 0,
  priceUnknown,
  amountUnknown: [],
  currency: 'EUR',
  orders: [],
  proven: true,
  boundMinor: totalMinor,
})

/** The parts of an evaluation that the comparison reads. */
const evaluated = (of: Basket, handsOnH: number | null): Evaluation =>
  ({
    steps: [],
    goals: [],
    shopping: [],
    basket: of,
    hazards: { gas: [], regulated: [] },
    days: { handsOnH, elapsedH: 30 },
    metrics: { route: { processMassIntensity: null, lowerBound: false } },
  }) as unknown as Evaluation

const column = (key: string, overallYieldOnStart: number, evaluation: Evaluation | null): Column => ({
  key,
  evaluation,
  row: {
    steps: [key],
    overallYieldOnStart,
    longestLinearYield: overallYieldOnStart,
    yieldTrust: [],
    made: [],
    bought: [],
    value: null,
    hazard: { gravest: 0, unknown: 0, danger: 0, warning: 0 },
    flags: [],
  },
})

const rowOf = (columns: readonly Column[], label: string) => compareRows(library, columns, 'lophine').find(row => row.label === label)!

describe('compareRows', () => {
  it('prints a batch far below what is published with two figures, never as nothing', () => {
    const step = transformation({ id: 'oxidation', largestProvenG: 500 })
    const of = libraryOfParts({ title: 'one step' }, [], [step])
    // By hand: 16 g over 500 g is 0.032.
    const evaluation = { ...evaluated(basket(0, []), 1), steps: [{ transformation: step.id, limiting: { massG: 16 }, batches: 1 }] }
    const rows = compareRows(of, [column('a', 0.8, evaluation as unknown as Evaluation)], 'lophine')
    expect(rows.find(row => row.label === 'Scale-up')!.cells[0]!.text).toBe('0.032\u00a0×')
  })

  it('counts prices and yields that were not seen in a source', () => {
    const [read, remembered] = [
      transformation({ id: 'read', confidence: 'checked' }),
      transformation({ id: 'remembered', confidence: 'memory' }),
    ]
    const of = libraryOfParts({ title: 'two steps' }, [], [read, remembered])
    const pack = (priceFrom: object) => ({ supplier: 's', amount: 1, unit: 'g', count: 1, priceMinor: 1, priceFrom })
    const shopping = [{ packs: [pack({ trust: 'seen', source: 'a list' }), pack({ trust: 'invented', source: 'x' }), pack({})] }]
    const evaluation = { ...evaluated(basket(3, []), 1), shopping } as unknown as Evaluation
    const rows = compareRows(of, [column('read', 0.8, evaluation), column('remembered', 0.8, null)], 'lophine')
    const texts = (label: string) => rows.find(row => row.label === label)!.cells.map(cell => cell.text)
    expect(texts('Prices not seen')).toEqual(['2', '…'])
    expect(texts('Yields not seen')).toEqual(['none', '1'])
  })

  it('marks the best of a row, and nothing where all are alike', () => {
    const columns = [column('a', 0.8, null), column('b', 0.9, null)]
    expect(rowOf(columns, 'Yield on start').cells.map(cell => cell.best)).toEqual([false, true])
    expect(rowOf(columns, 'Steps').cells.map(cell => cell.best)).toEqual([false, false])
  })

  it('says unknown for what is not known, and never lets it be best', () => {
    const columns = [
      column('a', 0.8, evaluated(basket(0, []), null)),
      column('b', 0.9, evaluated(basket(0, []), 2)),
      column('c', 0.7, evaluated(basket(0, []), 3)),
    ]
    expect(rowOf(columns, 'Hands-on').cells).toMatchObject([{ text: 'unknown', unknown: true }, { best: true }, { best: false }])
  })

  it('puts fewer unknown prices before a smaller total', () => {
    const columns = [column('a', 0.8, evaluated(basket(500, ['x']), 1)), column('b', 0.8, evaluated(basket(9000, []), 1))]
    expect(rowOf(columns, 'To buy, at least').cells.map(cell => cell.best)).toEqual([false, true])
  })

  it('leaves a cell open while its way is still being reckoned', () => {
    expect(rowOf([column('a', 0.8, null)], 'Elapsed').cells[0]?.text).toBe('…')
  })
})

describe('hasNoPrice', () => {
  it('takes a total of nothing for no total where prices are unknown', () => {
    expect(hasNoPrice(basket(0, ['x']))).toBe(true)
    expect(hasNoPrice(basket(null, ['x']))).toBe(true)
    expect(hasNoPrice(basket(0, []))).toBe(false)
    expect(hasNoPrice(basket(500, ['x']))).toBe(false)
  })
})
