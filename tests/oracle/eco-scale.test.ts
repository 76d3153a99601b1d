import { describe, expect, it } from 'vitest'
import { ecoPenalties, ecoScaleOf, hazardLetters, pricePoints, yieldPenalty } from '../../core/route/eco-penalties.ts'
import { ecoScale } from '../../core/route/eco-scale.ts'
import { chargedLine, chargedStep } from '../support/charged-steps.ts'
import { checkValuesOf } from '../support/check-values.ts'
import { material, smallLibrary, transformation } from '../support/small-library.ts'

// Van Aken, Strekowski, Patiny, Beilstein J. Org. Chem. 2006, 2:3. The table is from memory in the check values too, and says so.
const [table, example] = checkValuesOf('ecoscale', 2) as [
  ReturnType<typeof checkValuesOf>[number],
  ReturnType<typeof checkValuesOf>[number],
]

describe('EcoScale', () => {
  it('holds the penalty table whole', () => {
    const { penalties } = table.expected
    expect(ecoPenalties.safety).toEqual(penalties.safety)
    expect(ecoPenalties.setup).toEqual(penalties.technicalSetup)
    expect(ecoPenalties.temperature).toEqual(penalties.temperatureTime)
    expect(ecoPenalties.workUp).toEqual(penalties.workup)
    expect(ecoPenalties.price).toEqual(penalties.priceFor10mmol)
    expect(penalties.yield).toBe('(100 - percentYield)/2')
    expect(yieldPenalty(80)).toBe(10)
    expect([9.99, 10, 50, 50.01].map(price => pricePoints(price).points)).toEqual([0, 3, 3, 5])
  })

  // The example of the check values as a preparation of the library: one flammable solvent, two hours of reflux, a recrystallisation.
  const library = smallLibrary(
    [
      material({ id: 'a', formula: 'C7H6O2' }),
      material({ id: 'b', formula: 'C9H10O2' }),
      material({ id: 'spirit', form: 'liquid', hazards: { codes: ['H225', 'H319'], signalWord: 'Danger', from: 'a test' } }),
      material({ id: 'unread', hazards: { codes: [], signalWord: 'none', from: 'memory' } }),
    ],
    [
      transformation({
        id: 'reaction',
        charge: [{ material: 'a', role: 'substrate', amount: 1, unit: 'mol' }],
        temperatureC: [78, 80],
        tasks: [
          { do: 'set up', kind: 'hands', hours: 0.5, waitUpToH: 1 },
          { do: 'reflux', kind: 'watch', hours: 2, waitUpToH: 1, reaction: true },
        ],
      }),
      transformation({ id: 'isolation', kind: 'isolation' }),
    ],
  )
  const step = chargedStep({
    transformation: 'reaction',
    makes: 'b',
    yieldFraction: { low: 0.8, typical: example.inputs.percentYield / 100, high: 0.95 },
    expectedG: 150.17,
    charges: [
      chargedLine({ material: 'a', massG: 122, amountMol: 1 }),
      chargedLine({ material: 'spirit', role: 'solvent', massG: 100 }),
      chargedLine({ material: 'spirit', role: 'recrystallisation', at: 'workup', massG: 100 }),
    ],
  })
  const cheap = { priceOf: () => 100, minorPerUnit: 100, currency: 'USD' }

  it('comes to the worked example', () => {
    const found = ecoScale(library, step, cheap)!
    expect(found.rows.map(r => [r.kind, r.points])).toEqual([
      ['yield', 5],
      ['price', 0],
      ['safety', 5],
      ['setup', 0],
      ['temperature', 3],
      ['workUp', 1],
    ])
    expect(100 - found.score).toBeCloseTo(example.expected.penaltyPoints, 9)
    expect(found).toMatchObject({ band: example.expected.band, atMost: false })
    expect(found.score).toBeCloseTo(example.expected.ecoScale, 9)
  })

  it('is a bound where a price or a hazard is unknown, never a better score', () => {
    const known = ecoScale(library, step, cheap)!
    const unpriced = ecoScale(library, step, null)!
    expect(unpriced).toMatchObject({ atMost: true, score: known.score })
    const charges = [...step.charges, chargedLine({ material: 'unread', massG: 1 })]
    const unread = ecoScale(library, { ...step, charges }, cheap)!
    expect(unread).toMatchObject({ atMost: true, score: known.score })
    expect(unread.rows).toContainEqual({ kind: 'safety', what: 'no hazard data', because: 'unread', points: null })
    // Euros pass for dollars, and the row says so; yen do not.
    expect(ecoScale(library, step, { ...cheap, currency: 'EUR' })!.rows[1]!.because).toContain('EUR taken for USD')
    expect(ecoScale(library, step, { ...cheap, currency: 'JPY' })!.atMost).toBe(true)
  })

  it('has no form for an isolation', () => {
    expect(ecoScale(library, chargedStep({ transformation: 'isolation', makes: 'b' }), cheap)).toBeNull()
  })

  // Annex VII of Regulation (EC) No 1272/2008 pairs the old letters with the new codes; from memory.
  it.each([
    [['H225'], ['F highly flammable']],
    [['H224', 'H225'], ['F+ extremely flammable']],
    [['H301', 'H330'], ['T+ extremely toxic']],
    [
      ['H350i', 'H410'],
      ['T toxic', 'N dangerous for the environment'],
    ],
    [['H201'], ['E explosive']],
    [['H302', 'H315', 'H318', 'H272'], []],
  ])('reads %j as %j', (codes, letters) => {
    expect(hazardLetters(codes)).toEqual(letters)
  })

  it('bands the score', () => {
    const at = (points: number) => ecoScaleOf([{ kind: 'yield', what: '', because: '', points }]).band
    expect([at(24), at(25), at(49), at(50), at(120)]).toEqual(['excellent', 'acceptable', 'acceptable', 'inadequate', 'inadequate'])
  })
})
