import { describe, expect, it } from 'vitest'
import { monthsAfter, peroxideLines } from '../../../../core/hazards/peroxides.ts'
import { limitOf, roomLines } from '../../../../core/hazards/room.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { bundledTables } from '../../../support/hazards.ts'

const { library } = bundled()
const tables = bundledTables()
const transformation = [...library.transformations.keys()][0]!
const step = (number: string, ...lines: readonly (readonly [material: string, massG: number])[]) =>
  chargedStep({
    transformation,
    makes: 'benzil',
    number,
    charges: lines.map(([material, massG]) => chargedLine({ material, role: 'solvent', massG, supply: 'bought' })),
  })

describe('peroxide formers', () => {
  const lines = (shelf: Parameters<typeof peroxideLines>[3], today: string | null = '2026-12-01') =>
    peroxideLines(library, tables, [step('1', ['diethyl-ether', 70]), step('2a', ['diethyl-ether', 7], ['ethanol', 40])], shelf, today)
  it('are told once, with the steps that use them and no other solvent', () => {
    expect(lines([])).toMatchObject([{ material: 'diethyl-ether', class: 'B', steps: ['1', '2a'], bottles: [] }])
  })
  // NMSU peroxide-former policy and Ohio University list: class B twelve months after opening.
  it('get a test date from their opening, held against the first day of the plan', () => {
    const bottles = lines([
      { material: 'diethyl-ether', opened: '2025-11-30', place: 'cabinet' },
      { material: 'diethyl-ether', opened: '2026-03-31' },
      { material: 'ethanol', opened: '2019-01-01' },
    ])[0]!.bottles
    expect(bottles).toEqual([
      { opened: '2025-11-30', place: 'cabinet', testBy: '2026-11-30', overdue: true },
      { opened: '2026-03-31', place: null, testBy: '2027-03-31', overdue: false },
    ])
  })
  it('are overdue where nobody knows when they were opened, and undecided where nobody knows what day it is', () => {
    expect(lines([{ material: 'diethyl-ether' }])[0]!.bottles[0]).toMatchObject({ testBy: null, overdue: true })
    expect(lines([{ material: 'diethyl-ether', opened: '2026-01' }], null)[0]!.bottles[0]).toMatchObject({
      testBy: '2027-01-01',
      overdue: null,
    })
  })
  it.each([
    ['2026-11-30', 3, '2027-02-28'],
    ['2027-11-30', 3, '2028-02-29'],
    ['2026-12', 12, '2027-12-01'],
    ['autumn', 3, null],
  ] as const)('%s and %i months is %s', (date, months, then) => {
    expect(monthsAfter(date, months)).toBe(then)
  })
})

// By hand, 24.47 L/mol at 25 C and 1 atm.
describe('what a room can take', () => {
  it('71.2 g of ether is 23.5 L of vapour: a tenth of 1 % of it needs 23.5 m3 of air', () => {
    const [line] = roomLines(library, [step('1', ['diethyl-ether', 71.2])], 20)
    expect(line!.fireNeedsM3).toBeCloseTo(((71.2 / 74.123) * 24.47) / 1000 / 0.001, 2)
    expect(line!.needsM3).toBeGreaterThanOrEqual(line!.fireNeedsM3!)
    expect(line).toMatchObject({ step: '1', exceeds: true, roomM3: 20 })
  })
  it('31.2 g of bromine is 4.78 L of vapour: at its limit of 0.1 ppm that is all the air of a large hall', () => {
    const [line] = roomLines(library, [step('1', ['bromine', 31.2])], 180)
    expect(library.materials.get('bromine')?.exposureLimit?.twa).toMatch(/^0.1 ppm/)
    expect(line!.limitNeedsM3).toBeCloseTo(((31.2 / 159.808) * 24.47) / 1000 / 1e-7, -1)
    expect(line).toMatchObject({ fireNeedsM3: null, exceeds: true })
  })
  it('looks at the most that stands there at once: one batch of the largest step', () => {
    const split = { ...step('2', ['diethyl-ether', 100]), batches: 4 }
    expect(roomLines(library, [step('1', ['diethyl-ether', 30]), split], null)).toMatchObject([{ step: '1', massG: 30, exceeds: null }])
  })
  it('passes over what does not evaporate: water, acetic acid, solids', () => {
    expect(roomLines(library, [step('1', ['water', 500], ['acetic-acid', 500], ['benzil', 20])], 10)).toEqual([])
  })
  it('reads a limit only where it is one', () => {
    expect(limitOf('0.7 mg/m3')).toEqual({ value: 0.7, unit: 'mg/m3' })
    expect([limitOf('see note'), limitOf(undefined)]).toEqual([null, null])
  })
})
