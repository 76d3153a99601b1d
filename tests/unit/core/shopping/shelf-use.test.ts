import { describe, expect, it } from 'vitest'
import type { ShelfItem } from '../../../../core/shopping/shelf.ts'
import { stockOf, takenFrom } from '../../../../core/shopping/shelf-use.ts'
import { material, smallLibrary } from '../../../support/small-library.ts'

const ether = material({ id: 'ether', form: 'liquid', densityGPerMl: 0.7, peroxideClass: 'B' })
const salt = material({ id: 'salt' })
const library = smallLibrary([ether, salt])
const stock = (shelf: readonly ShelfItem[], today?: string) => stockOf(library, salt, 'g', shelf, today)
const item = (own: Partial<ShelfItem>): ShelfItem => ({ material: 'salt', amount: 10, unit: 'g', ...own })

describe('stock on the shelf', () => {
  it('counts at its assay, in any unit', () => {
    expect(stock([item({ assay: 0.9 }), item({ amount: 1, unit: 'kg' })]).usable).toBeCloseTo(1009, 9)
    expect(stockOf(library, ether, 'g', [{ material: 'ether', amount: 100, unit: 'mL', opened: '2026-01-01' }]).usable).toBeCloseTo(70, 9)
  })

  it('is used oldest first; what is not opened comes last', () => {
    const found = stock([item({ place: 'sealed' }), item({ opened: '2026-02-01' }), item({ opened: '2024-05-01' })])
    expect(takenFrom(found, 15)).toEqual([
      { amount: 10, assay: 1, opened: '2024-05-01', place: null },
      { amount: 5, assay: 1, opened: '2026-02-01', place: null },
    ])
  })

  it('is not counted once expired, and that is said', () => {
    const found = stock([item({ expires: '2026-11-30' }), item({ expires: '2026-12-01', amount: 3 })], '2026-12-01')
    expect(found.usable).toBe(3)
    expect(found.notes).toEqual([expect.stringMatching(/not counted: it expired on 2026-11-30/)])
  })

  it('says that expiry was not checked where there is no date of today', () => {
    const found = stock([item({ expires: '2020-01-01' })])
    expect(found.usable).toBe(10)
    expect(found.notes[0]).toMatch(/was not checked/)
  })

  // Class B: 12 months after opening. Source: NMSU peroxide-former policy; UNR; Ohio University list.
  it.each([
    ['2025-11-30', 0],
    ['2025-12-01', 70],
    ['2025-12-02', 70],
  ])('of a peroxide former opened %s counts %f g on 2026-12-01', (opened, usable) => {
    expect(stockOf(library, ether, 'g', [{ material: 'ether', amount: 100, unit: 'mL', opened }], '2026-12-01').usable).toBeCloseTo(
      usable,
      9,
    )
  })

  it('of a peroxide former without an opening date is flagged, never used silently', () => {
    const found = stockOf(library, ether, 'mL', [{ material: 'ether', amount: 100, unit: 'mL' }], '2026-12-01')
    expect(found.usable).toBe(100)
    expect(found.notes[0]).toMatch(/test it before use/)
  })

  it('in a unit that cannot be turned into the other is told, not guessed', () => {
    const found = stock([item({ unit: 'mL' })])
    expect(found.usable).toBe(0)
    expect(found.notes[0]).toMatch(/no density/)
  })

  it('goes first to what it is spoken for', () => {
    const found = stockOf(library, salt, 'g', [item({ opened: '2024-01-01' }), item({})], undefined, 12)
    expect(found.usable).toBe(8)
    expect(found.lots).toEqual([{ amount: 8, assay: 1, opened: null, place: null }])
  })
})
