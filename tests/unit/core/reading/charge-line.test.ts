import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readChargeLine } from '../../../../core/reading/charge-line.ts'
import { commaRuleOf, measuresIn } from '../../../../core/reading/measures.ts'
import { ambiguousNames, index } from '../../../support/reader.ts'

/** Lines as procedures write them with the right reading: tests/support/reader-lines.json; written for this project, common practice. */
const lines: readonly { text: string; material: string | null; amount: number | null; unit: string; note?: string }[] = JSON.parse(
  readFileSync(new URL('../../../support/reader-lines.json', import.meta.url), 'utf8'),
)
const read = (text: string) => readChargeLine(text, index, commaRuleOf(text))
const materialOf = (text: string) => {
  const found = read(text)?.found
  return found?.kind === 'material' ? found.material : null
}

describe('lines as procedures write them', () => {
  it('are forty', () => {
    expect(lines.length).toBeGreaterThanOrEqual(40)
  })
  it.each(lines)('$text', ({ text, material, amount, unit }) => {
    const line = read(text)
    expect({
      material: line?.found.kind === 'material' ? line.found.material : null,
      amount: line?.amount ?? null,
      unit: line?.unit,
    }).toEqual({
      material,
      amount,
      unit,
    })
  })
  it('takes what is stated per gram of product for just that', () => {
    expect(read('recrystallised from 95 % EtOH (8 mL per gram)')).toMatchObject({
      amount: null,
      perGramProduct: 8,
      roleHint: 'recrystallisation',
    })
  })
})

describe('what a verb tells', () => {
  it.each([
    ['poured into 250 mL ice water', 'quench', 'water'],
    ['wash with 2 x 20 mL ice water', 'wash', 'water'],
    ['filter and wash with cold water, 30 mL', 'wash', 'water'],
    ['extracted with 3 × 25 mL of ether', 'extraction', 'diethyl-ether'],
    ['dried over anhydrous MgSO4', 'drying', 'magnesium-sulfate'],
    ['recrystallize from methanol', 'recrystallisation', 'methanol'],
    ['dissolve 5 g benzil', null, 'benzil'],
  ])('%s', (text, roleHint, material) => {
    expect(read(text)?.roleHint).toBe(roleHint)
    expect(materialOf(text)).toBe(material)
  })
})

describe('nothing is guessed', () => {
  it('an ambiguous name of the table wins over names, synonyms, formulas and ids', () => {
    const asked = ambiguousNames.filter(row => row.default === null)
    expect(asked.length).toBeGreaterThanOrEqual(500)
    const wrong = asked.filter(row => index.lookUp(row.name).kind !== 'ambiguous').map(row => row.name)
    expect(wrong).toEqual([])
  })
  it('a default of the table is taken and told', () => {
    const line = read('20 mL ethanol')
    expect(line?.found).toMatchObject({ kind: 'material', material: 'ethanol-95' })
    expect(line?.notes.join()).toContain('read as ethanol-95')
  })
  it.each(['7 M NaOH, 10 mL', '35 % NaOH, 10 mL', '10 mL of 5 M HCl', '5 N H2SO4, 5 mL', '12 % ammonia, 3 mL', '4 % formic acid 10 mL'])(
    'the nearest strength is never taken: %s',
    text => {
      expect(materialOf(text)).toBeNull()
    },
  )
  it('with a strength the solid or pure compound is never taken', () => {
    expect(materialOf('30 % NaOH, 20 mL')).toBeNull()
    expect(materialOf('20 % NaOH, 20 mL')).toBe('sodium-hydroxide-20pct')
  })
  it.each([
    'ammonium chloride solution 10 mL',
    'iodine (aq) 5 mL',
    'potassium iodide soln. 5 mL',
    'silver nitrate, aqueous, 5 mL',
    'dilute acetic acid 10 mL',
    'diluted acetic acid, 10 mL',
    'dilute formic acid 5 mL',
    'dry ethanol 20 mL',
  ])('a solution without its strength is asked about, and never the pure compound taken: %s', text => {
    expect(materialOf(text)).toBeNull()
    expect(read(text)?.found.kind).toBe('ambiguous')
  })
  it.each([
    ['dry ice 100 g', 'dry-ice'],
    ['100 mL absolute ethanol', 'ethanol'],
    ['ethanol (abs.) 100 mL', 'ethanol'],
    ['acetic acid (glacial) 10 mL', 'acetic-acid'],
    ['tartaric acid (racemic) 5 g', 'dl-tartaric-acid'],
    ['1.0 g (excess) sodium borohydride', 'sodium-borohydride'],
    ['dried over sodium sulfate', 'sodium-sulfate'],
    ['dilute with water, 50 mL', 'water'],
  ])('a word that tells one from another counts: %s', (text, material) => {
    expect(materialOf(text)).toBe(material)
  })
  it('what is left aside is told', () => {
    expect(read('benzoin (from step 1) 5 g')?.notes.join()).toContain('left aside: from step 1')
    expect(read('technical acetone, 20 mL')?.notes.join()).toContain('left aside: technical')
    for (const text of ['hot water, 20 mL', 'water (hot), 20 mL']) expect(read(text)?.notes).toEqual([])
  })
  // Densities at 20 °C of sulfuric acid 96 %, nitric acid 70 %, hydrochloric acid 37 %, ammonia 25 % (handbook tables, from memory).
  it.each([
    ['H2SO4, d 1.84, 3 mL', 'sulfuric-acid-conc'],
    ['nitric acid (sp. gr. 1.42) 10 mL', 'nitric-acid-conc'],
    ['HCl, d = 1.19 g/mL, 10 mL', 'hydrochloric-acid-conc'],
    ['ammonia, sp. gr. 0.91, 10 mL', 'ammonia-25'],
    ['ammonia (density 0.88) 10 mL', null],
    ['sulfuric acid, d 1.50, 3 mL', null],
    ['benzaldehyde (d = 1.5) 5 mL', null],
    ['benzaldehyde (d 1.05) 5 mL', 'benzaldehyde'],
  ])('a density tells one strength from another, and contradicts one that is not it: %s', (text, material) => {
    expect(materialOf(text)).toBe(material)
    expect(read(text)?.unit).toBe('mL')
  })
  it('three capitals are asked about where only small letters are a name', () => {
    expect(read('10 mL TEA')?.found.kind).toBe('ambiguous')
    expect(materialOf('10 g tea')).not.toBeNull()
    expect(materialOf('10 mL DMF')).not.toBeNull()
  })
  it('capitals tell cobalt from carbon monoxide', () => {
    expect(index.lookUp('Co').kind).toBe('unknown')
  })
  it('every name, synonym and id that the table does not ask about finds its own material', () => {
    const tabled = new Set(ambiguousNames.map(row => row.name.toLowerCase()))
    let looked = 0
    const wrong: string[] = []
    for (const material of index.materials.values())
      for (const name of [material.id, material.name, ...(material.synonyms ?? [])]) {
        if (tabled.has(name.toLowerCase()) || index.ambiguous(name) !== null) continue
        looked++
        const found = index.lookUp(name)
        if (found.kind !== 'material' || found.material !== material.id) wrong.push(`${name}: ${material.id}`)
      }
    expect(looked).toBeGreaterThanOrEqual(5000)
    expect(wrong).toEqual([])
  })
  it('every bundled name can be typed into a line with an amount', () => {
    const wrong: string[] = []
    for (const material of index.materials.values()) {
      if (index.ambiguous(material.name) !== null) continue
      const unit = material.form === 'solid' ? 'g' : 'mL'
      const line = read(`2.5 ${unit} ${material.name}`)
      if (line?.found.kind !== 'material' || line.found.material !== material.id || line.amount !== 2.5)
        wrong.push(`${material.name}: ${JSON.stringify(line?.found)} ${line?.amount}`)
    }
    expect(wrong).toEqual([])
  })
})

describe('measures', () => {
  it.each([
    ['2,3-diphenylquinoxaline 5 g', [[5, 'g']]],
    ['5 mL N,N-dimethylaniline', [[5, 'mL']]],
    ['1-butanol, 10 ml', [[10, 'mL']]],
    ['CuSO4·5H2O, 6.25 g', [[6.25, 'g']]],
    [
      'heat at 60-65 °C for 1 1/2 h',
      [
        [62.5, '°C'],
        [1.5, 'h'],
      ],
    ],
    ['cool to -5 °C', [[-5, '°C']]],
    ['3 × 25 mL', [[75, 'mL']]],
    ['1,200 mL', [[1200, 'mL']]],
    ['0.5–0.7 g', [[0.6, 'g']]],
  ] as const)('%s', (text, expected) => {
    expect(measuresIn(text, 'thousands').map(one => [Number(one.value.toPrecision(12)), one.unit])).toEqual(expected)
  })
  it('asks about a thousands comma where commas are decimal elsewhere', () => {
    expect(commaRuleOf('2,65 g Acetanilid\n1,200 mL Wasser')).toBe('ask')
    expect(commaRuleOf('1,200 mL water')).toBe('thousands')
  })
})

it('reads anything without a throw, a hang or a bad number', () => {
  const pieces = fc.constantFrom(
    '5',
    'g',
    'mL',
    '%',
    'M',
    '(',
    ')',
    ',',
    'conc.',
    'HCl',
    'NaOH',
    'of',
    '×',
    '-',
    '½',
    '1,200',
    'water',
    '·',
    '\u202e',
    '\u200b',
    'é',
    '水',
    '1e999',
    '0',
    'per gram',
  )
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ unit: 'binary', maxLength: 120 }),
        fc.array(pieces, { maxLength: 14 }).map(parts => parts.join(' ')),
      ),
      text => {
        const line = readChargeLine(text, index, 'thousands')
        if (line?.amount != null) expect(Number.isFinite(line.amount) && line.amount >= 0).toBe(true)
      },
    ),
    { numRuns: 2000 },
  )
})
