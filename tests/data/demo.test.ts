import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { isBuyable } from '../../core/library/material.ts'
import { defaultSettings, settingsSchema } from '../../core/plan/settings.ts'
import { packsFileSchema } from '../../core/shopping/packs.ts'
import { shelfFileSchema } from '../../core/shopping/shelf.ts'
import { bundled, dataFolder } from '../../server/library/bundled.ts'
import { filesBelow, textOf } from '../support/tree.ts'
import { allReported, demoTitles } from '../unit/core/report/demo-plans.ts'

const { library } = bundled()
const read = (file: string): unknown => JSON.parse(readFileSync(join(dataFolder(), 'demo', file), 'utf8'))
const shelf = shelfFileSchema.parse(read('shelf.json'))
const packs = packsFileSchema.parse(read('packs.json'))
const settings = settingsSchema.parse(read('settings.json'))

describe('the demo', () => {
  it('has 24 g of benzoin and a handful of bottles on its shelf, all in the library', () => {
    expect(shelf.items.find(item => item.material === 'benzoin')).toMatchObject({ amount: 24, unit: 'g' })
    expect(shelf.items.length).toBeGreaterThan(5)
    expect(shelf.items.filter(item => !library.materials.has(item.material))).toEqual([])
  })
  it('says that it is invented', () => {
    expect(shelf.note).toMatch(/invented/i)
    expect(packs.note).toMatch(/invented/i)
    expect(settings.bench).toMatch(/invented/i)
    for (const { name } of packs.suppliers) expect(name).toMatch(/\(invented\)$/)
  })
  it('sells materials that the library has and lets be bought, from suppliers of the file, each pack once', () => {
    const suppliers = new Set(packs.suppliers.map(supplier => supplier.id))
    expect(suppliers.size).toBeGreaterThanOrEqual(2)
    for (const pack of packs.packs) {
      expect(suppliers).toContain(pack.supplier)
      const material = library.materials.get(pack.material)
      expect(material === undefined ? false : isBuyable(material), pack.material).toBe(true)
      if (pack.unit === 'mL' || pack.unit === 'L')
        expect(material?.densityGPerMl ?? material?.contains?.molPerL, pack.material).toBeDefined()
    }
    const keys = packs.packs.map(({ supplier, material, amount, unit }) => `${supplier} ${material} ${amount} ${unit}`)
    expect(new Set(keys).size).toBe(keys.length)
  })
  it('prices what its ways need, but for those that nobody quotes', () => {
    const steps = [
      ...['benzil-copper-ammonium-nitrate', 'benzil-nitric-acid', 'lophine', 'diphenylquinoxaline', 'tetraphenylcyclopentadienone-koh'],
      ...['hexaphenylbenzene', 'benzil-dihydrazone', 'diphenylacetylene-dihydrazone'],
      ...['sebacic-acid-fusion-mineral-oil', 'sebacoyl-chloride-thionyl', 'nylon-6-10-interfacial'],
      ...['copper-sulfate-copper-nitric', 'tetraamminecopper-sulfate'],
      ...['extract-cinnamaldehyde-bark', 'cinnamyl-alcohol-borohydride'],
    ].map(id => library.transformations.get(id)!)
    const made = new Set(steps.map(step => step.mainProduct))
    const atHand = new Set([...packs.packs, ...shelf.items].map(item => item.material))
    const missing = new Set(
      steps
        .flatMap(step => step.charge.map(line => line.material))
        .filter(id => {
          const { compound, rest = 'water' } = library.materials.get(id)?.contains ?? { compound: id, rest: id }
          // A solution is made up from its compound where no bottle of it is sold.
          return !made.has(compound) && !atHand.has(id) && !(atHand.has(compound) && atHand.has(rest))
        }),
    )
    expect([...missing].sort()).toEqual(['1-3-diphenylacetone', 'benzene', 'mercury-oxide'])
  })
  it('dates each of its ways in, with Saturdays where evenings are too short', async () => {
    const dated = await allReported()
    expect(dated.map(({ title, evaluation }) => [title, evaluation.days.finishDate, evaluation.days.tooLong])).toEqual(
      demoTitles.map(title => [title, expect.stringMatching(/^2026-12-/), []]),
    )
  })
  it('opens on weekday evenings of three and a half hours, in the EU, with a hood and without inert gas', () => {
    expect(settings.windows.map(window => [window.weekday, window.hours])).toEqual([1, 2, 3, 4, 5].map(day => [day, 3.5]))
    expect(settings).toMatchObject({ region: 'EU', buyer: 'professional', hood: true, inertGas: false, reserve: defaultSettings.reserve })
    expect(settings.daysOff.length).toBeGreaterThan(0)
  })
})

it('stays clear of the families that neither the library nor the demo may hold', () => {
  // Put together from pieces, so that the words do not stand in the tree.
  const families = [
    ['phth', 'al'],
    ['anthra', 'nil'],
    ['vinyl', ' glove'],
  ].map(pieces => pieces.join(''))
  const paths = [...filesBelow('routes-data', /\.(json|md)$/)].filter(path => !path.includes('/tables/'))
  expect(paths.length).toBeGreaterThanOrEqual(60)
  for (const path of paths) {
    const text = textOf(path).toLowerCase().replaceAll(`na${families[0]}`, '')
    for (const family of families) expect(text.includes(family), `${path}: ${family}`).toBe(false)
  }
})
