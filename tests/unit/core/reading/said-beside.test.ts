import { describe, expect, it } from 'vitest'
import { lineFigure } from '../../../../core/library/figure-trust.ts'
import type { ChargeLine, Transformation } from '../../../../core/library/transformation.ts'
import { withFacts } from '../../../../core/reading/charge-table.ts'
import { saidBeside } from '../../../../core/reading/said-beside.ts'
import { prepared } from '../../../support/reader.ts'

const charge = (...lines: readonly string[]) => prepared('2 benzaldehyde -> benzoin', ...lines)

describe('words beside a charge', () => {
  it.each([
    [
      'anhydrous potassium carbonate (20.7 g, 0.150 mol), from memory',
      'anhydrous potassium carbonate (20.7 g, 0.150 mol)',
      'from memory',
      undefined,
    ],
    ['DMF (about 60 mL, remembered)', 'DMF (about 60 mL)', 'from memory', undefined],
    ['20 mL brine (from memory)', '20 mL brine', 'from memory', undefined],
    ['10 g benzil, from memory {benzil}', '10 g benzil {benzil}', 'from memory', undefined],
    ['10 mL water; by common practice', '10 mL water', 'common practice', undefined],
    ['hexane, 20 mL for recrystallization', 'hexane, 20 mL', undefined, 'recrystallisation'],
    ['20 mL hexane for washing', '20 mL hexane', undefined, 'wash'],
    ['hexane for washing, 20 mL, remembered', 'hexane, 20 mL', 'from memory', 'wash'],
    ['ether (3 x 20 mL) for the extraction', 'ether (3 x 20 mL)', undefined, 'extraction'],
    ['100 g ice for the quench', '100 g ice', undefined, 'quench'],
    // Words that are no such thing stay.
    ['remembered acid 5 g', 'remembered acid 5 g', undefined, undefined],
    ['hydrogen peroxide for synthesis, 5 mL', 'hydrogen peroxide for synthesis, 5 mL', undefined, undefined],
  ])('%s', (text, rest, from, role) => {
    const said = saidBeside(text)
    expect([said.rest, said.from, said.role]).toEqual([rest, from, role])
  })
})

describe('a charge with words beside it', () => {
  it('keeps in its record that the amount is remembered, and marks it so though all else was read', () => {
    const read = charge('21.2 g benzaldehyde', 'potassium carbonate (20.7 g, 0.150 mol), from memory', 'DMF (about 60 mL, remembered)')
    expect(read.problems).toEqual([])
    expect(read.unread).toEqual([])
    const lines = read.transformation.charge as readonly ChargeLine[]
    expect(lines.map(one => one.from)).toEqual([undefined, 'from memory', 'from memory'])
    expect(read.lines[1]!.text).toBe('potassium carbonate (20.7 g, 0.150 mol), from memory')
    const step = { ...read.transformation, sources: [{ citation: 'a page', checked: true }], confidence: 'checked' } as Transformation
    expect(lines.map(one => lineFigure(step, one).mark)).toEqual(['seen', 'remembered', 'remembered'])
  })
  it('may be told otherwise by a person, who also says that it was read after all', () => {
    const line = { material: 'benzil', role: 'reagent', amount: 1, unit: 'g', from: 'from memory' } as const
    expect(withFacts(line, undefined, undefined).from).toBe('from memory')
    expect(withFacts(line, undefined, { from: 'own bench' }).from).toBe('own bench')
    expect(withFacts(line, undefined, { from: '' })).not.toHaveProperty('from')
    expect(withFacts({ ...line, amount: 2 }, 'base', { from: 'common practice' })).toMatchObject({ role: 'base', from: 'common practice' })
  })
  it('goes where its purpose says: no solvent of the vessel', () => {
    const read = charge(
      '21.2 g benzaldehyde',
      'hexane, 20 mL for recrystallization',
      '20 mL hexane for washing',
      '100 g ice for the quench',
    )
    expect(read.problems).toEqual([])
    expect(read.unread).toEqual([])
    expect(read.transformation.charge!.map(one => one.role)).toEqual(['substrate', 'recrystallisation', 'wash', 'quench'])
    expect(read.notes.join()).not.toContain('left aside')
  })
})
