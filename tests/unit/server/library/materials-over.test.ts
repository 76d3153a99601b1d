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

const told = (text: string, file = 'mine.csv') => {
  const records = recordsIn([{ name: file, text }], workshop)
  return records.ok ? records.value : records.problems.map(one => one.code)
}

it('a decimal comma is read where it can be nothing else, and asked about where it may part thousands', () => {
  const density = (text: string) => {
    const records = told(text)
    return Array.isArray(records) ? records : (records as { materials: readonly Material[] }).materials[0]!.densityGPerMl
  }
  expect(density('id;densityGPerMl\nbenzaldehyde;1,05\n')).toBe(1.05)
  expect(density('id;densityGPerMl\nbenzaldehyde;1,050\n')).toBe(1.05)
  expect(density('id\tdensityGPerMl\nbenzaldehyde\t1,05\n')).toBe(1.05)
  expect(density('id\tdensityGPerMl\nbenzaldehyde\t1,050\n')).toEqual(['number-two-readings'])
  expect(density('id,mp\nbenzil,94-96\n')).toEqual(['number-unreadable'])
})

it('rows of a table of materials go by id alone', () => {
  expect(told('id,flashC\nethanol,99\n')).toMatchObject({ materials: [{ id: 'ethanol', name: name.slice(1, -1), flashC: 99 }] })
  expect(told('id,flashC\n,99\n')).toEqual(['csv-cell-empty'])
  expect(told('flashC\n99\n')).toEqual(['csv-column-missing'])
})

it('an SD file says what it has no place for, field by field', () => {
  const ethanol = `ethanol\n\n\n  3  2  0  0  0  0  0  0  0  0999 V2000
    0.0000    0.0000    0.0000 C   0  0\n    1.0000    0.0000    0.0000 C   0  0\n    2.0000    0.0000    0.0000 O   0  0
  1  2  1  0\n  2  3  1  0\nM  END\n`
  const sdf = (...fields: readonly (readonly [string, string])[]) =>
    told(`${ethanol}${fields.map(([key, value]) => `> <${key}>\n${value}\n\n`).join('')}$$$$\n`, 'mine.sdf')
  expect(sdf(['id', 'ethanol'], ['melting point', '-114,1'])).toMatchObject({ materials: [{ meltingC: -114.1 }] })
  expect(sdf(['melting point', '94-96'])).toEqual(['number-unreadable'])
  expect(sdf(['supplier', 'X'], ['lot', '7'])).toEqual(['sdf-field-unknown', 'sdf-field-unknown'])
  expect(sdf(['density', '0.79'], ['densityGPerMl', '0.8'])).toEqual(['sdf-field-twice'])
})

it('a line of charges whose id and name are of two materials is asked about', () => {
  const line = (id: string, called: string) => told(`step,id,material,amount,unit,role\nbenzoin-thiamine,${id},${called},5,g,substrate\n`)
  expect(line('benzaldehyde', 'acetone')).toEqual(['csv-id-and-name'])
  expect(line('benzaldehyde', 'oil of ours')).toEqual(['csv-id-and-name'])
  for (const called of ['benzaldehyde', 'Benzaldehyde', 'PhCHO', ''])
    expect(line('benzaldehyde', called), called).toHaveProperty('transformations')
})
