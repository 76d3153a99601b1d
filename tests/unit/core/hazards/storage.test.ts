import { describe, expect, it } from 'vitest'
import { storageMeetings } from '../../../../core/hazards/storage.ts'
import type { MaterialUse } from '../../../../core/route/materials.ts'
import { bundledTables } from '../../../support/hazards.ts'
import { material, smallLibrary } from '../../../support/small-library.ts'

const library = smallLibrary([
  material({ id: 'ethanol', form: 'liquid', storageGroup: 'flammable' }),
  material({ id: 'acetone', form: 'liquid', storageGroup: 'flammable' }),
  material({ id: 'nitric-acid', form: 'liquid', storageGroup: 'oxidising-acid' }),
  material({ id: 'hydrogen', form: 'gas', storageGroup: 'compressed-gas' }),
  material({ id: 'new-compound' }),
  material({ id: 'water', form: 'liquid', storageGroup: 'general' }),
])
const meetings = (...materials: readonly (readonly [string, MaterialUse])[]) =>
  storageMeetings(
    library,
    bundledTables(),
    materials.map(([id, use]) => ({ material: id, as: [use] })),
  )

describe('cabinets', () => {
  it('keep an oxidising acid away from flammables', () => {
    const [found] = meetings(['ethanol', 'charged'], ['nitric-acid', 'charged'])
    expect(found).toMatchObject({
      where: 'storage',
      severity: 'care',
      materials: ['ethanol', 'nitric-acid'],
      do: 'Keep them in separate cabinets.',
    })
  })
  it('let two flammables stand together', () => {
    expect(meetings(['ethanol', 'charged'], ['acetone', 'charged'])).toEqual([])
  })
  it('have no room for a gas that a step gives off, nor for water', () => {
    expect(meetings(['hydrogen', 'gas'], ['nitric-acid', 'charged'], ['water', 'charged'])).toEqual([])
    expect(meetings(['hydrogen', 'charged'], ['nitric-acid', 'charged'])).toHaveLength(1)
  })
  it('keep apart what belongs to no known group', () => {
    expect(meetings(['ethanol', 'charged'], ['new-compound', 'made'])).toMatchObject([
      { place: 'not known', materials: ['new-compound'], severity: 'care' },
    ])
  })
})
