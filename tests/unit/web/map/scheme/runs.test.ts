import { describe, expect, it } from 'vitest'
import { nameRuns } from '../../../../../web/map/scheme/name-runs.ts'
import { braceText, formulaRuns, spoken } from '../../../../../web/map/scheme/runs.ts'

const subs = (text: string) => formulaRuns(text).map(run => (run.sub ? `_${run.t}` : run.t))

describe('formulas', () => {
  it.each([
    ['CuSO4·5H2O', ['CuSO', '_4', '·5H', '_2', 'O']],
    ['(NH4)2Fe(SO4)2·6H2O', ['(NH', '_4', ')', '_2', 'Fe(SO', '_4', ')', '_2', '·6H', '_2', 'O']],
    ['[NH(CH2)6NHCO(CH2)8CO]n', ['[NH(CH', '_2', ')', '_6', 'NHCO(CH', '_2', ')', '_8', 'CO]', '_n']],
    ['Sn', ['Sn']],
    ['ZnCl2', ['ZnCl', '_2']],
    ['2ZnCO3·3Zn(OH)2', ['2ZnCO', '_3', '·3Zn(OH)', '_2']],
  ])('%s', (formula, pieces) => {
    expect(subs(formula)).toEqual(pieces)
  })
})

describe('text with formulas in braces', () => {
  it('leaves digits outside braces alone', () => {
    expect(braceText('{Cu(OAc)2} 1 %, 24 g')).toEqual([{ t: 'Cu(OAc)' }, { t: '2', sub: true }, { t: ' 1 %, 24 g' }])
  })
  it('sets what stands between stars in italics, in the style given', () => {
    expect(braceText('*o*-xylene', { pen: true })).toEqual([
      { t: 'o', i: true, pen: true },
      { t: '-xylene', pen: true },
    ])
  })
  it('is said plainly', () => {
    expect(spoken(braceText('{NH4NO3}\u2003tetra\u00adphenyl'))).toBe('NH4NO3 tetraphenyl')
  })
})

describe('names', () => {
  it.each([
    ['o-phenylenediamine', 'o'],
    ['p-nitroaniline', 'p'],
    ['tert-butyl chloride', 'tert'],
  ])('%s has its descriptor in italics', (name, italic) => {
    expect(nameRuns(name)[0]).toEqual({ t: italic, i: true })
  })
  it.each(['benzil', '2-naphthol', 'nylon-6,10', 'sebacoyl chloride'])('%s has none', name => {
    expect(nameRuns(name)).toEqual([{ t: name }])
  })
})
