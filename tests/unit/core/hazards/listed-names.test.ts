import { describe, expect, it } from 'vitest'
import { comparable, namesListed } from '../../../../core/hazards/listed-names.ts'

const stands = (row: string, name: string, synonyms: string[] = []) => namesListed(row, synonyms).has(comparable(name))

describe('the names a row of a list stands for', () => {
  it.each([
    ['alpha-phenylacetoacetonitrile (APAAN)', 'APAAN'],
    ['alpha-phenylacetoacetonitrile (APAAN)', 'Alpha phenylacetoacetonitrile'],
    ['\u03b1-phenylacetoacetonitrile', 'alpha-phenylacetoacetonitrile'],
    ['phenylacetic acid, its esters and salts', 'phenylacetic acid'],
    ['piperidine and its salts', 'Piperidine'],
    ['hydrochloric acid, incl. anhydrous hydrogen chloride', 'hydrochloric acid'],
    ['benzilic acid, 2,2-diphenyl-2-hydroxyacetic acid', '2,2-diphenyl-2-hydroxyacetic acid'],
    ['(1R,2S)-(-)-chloroephedrine', 'chloroephedrine'],
    ['magnesium, powder', 'magnesium'],
    ['1-phenyl-2-propanone', '1-Phenyl 2-propanone'],
  ])('%s stands for %s', (row, name) => {
    expect(stands(row, name)).toBe(true)
  })
  it.each([
    ['(chloromethyl)benzene', 'benzene'],
    ['bis(2-hydroxyethyl) sulfide', 'sulfide'],
    ['diethyl (phenylacetyl)propanedioate', 'propanedioate'],
    ['piperidine and its salts', 'salts'],
  ])('%s does not stand for %s', (row, name) => {
    expect(stands(row, name)).toBe(false)
  })
})
