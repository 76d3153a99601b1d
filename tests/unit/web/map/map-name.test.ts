import { describe, expect, it } from 'vitest'
import { mapName } from '../../../../web/map/map-name.ts'

describe('a name on the map', () => {
  it.each([
    ['castor oil (modelled as glyceryl triricinoleate)', 'castor oil'],
    ['para red (1-(4-nitrophenylazo)-2-naphthol)', 'para red'],
    ['poly(methyl methacrylate) (per repeat unit)', 'poly(methyl methacrylate)'],
    ['eggshell, washed, dried, ground (about 95 % calcium carbonate)', 'eggshell'],
    ['oxalic acid 1 mol/L (made from the dihydrate)', 'oxalic acid 1 mol/L'],
  ])('%s is %s', (name, short) => {
    expect(mapName(name)).toBe(short)
  })

  it.each([
    'nylon-6,10',
    'copper(II) acetate monohydrate',
    '1,3-diphenyl-2,3-dihydro-1H-naphtho[1,2-e][1,3]oxazine',
    '4-(4-hydroxy-3-methoxyphenyl)but-3-en-2-one',
    'nitric acid, 70 %',
  ])('%s stays as it is', name => {
    expect(mapName(name)).toBe(name)
  })
})
