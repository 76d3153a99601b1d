import { expect, it } from 'vitest'
import type { Material } from '../../../../core/library/material.ts'
import { trustInPhysical } from '../../../../core/library/physical.ts'
import { recordsIn } from '../../../../server/library/records-in.ts'
import { bundledWorkshop } from '../../../support/app.ts'

// Law: no table of materials makes a figure surer than it is. Nothing outside is needed to say so.

const workshop = await bundledWorkshop()
const name = `"${workshop.library.materials.get('ethanol')!.name}"`
const read = (text: string, over = workshop): Material => {
  const records = recordsIn([{ name: 'mine.csv', text }], over)
  if (!records.ok) throw new Error(JSON.stringify(records.problems))
  return records.value.materials[0] as Material
}

it('a figure that it changes is remembered, from the table, whoever gave the one before', () => {
  expect(trustInPhysical(workshop.library.materials.get('ethanol')!, 'flash point')).toBe('seen')
  const mine = read(`id,name,flashC\nethanol,${name},99\n`)
  expect(mine.flashC).toBe(99)
  expect(trustInPhysical(mine, 'flash point')).toBe('remembered')
  expect(trustInPhysical(mine, 'density')).toBe(trustInPhysical(workshop.library.materials.get('ethanol')!, 'density'))
})

it('a second table of the same name speaks for what it changes too', () => {
  const first = read(`id,name,flashC\nethanol,${name},99\n`)
  const known = { ...workshop, library: { ...workshop.library, materials: new Map([['ethanol', first]]) } }
  const second = read(`id,name,densityGPerMl\nethanol,${name},0.9\n`, known)
  for (const figure of ['flash point', 'density'] as const) expect(trustInPhysical(second, figure), figure).toBe('remembered')
  expect(second.sources.filter(one => one.citation === 'from the table mine.csv')).toEqual([
    { citation: 'from the table mine.csv', for: 'flash point, density', checked: false },
  ])
})
