import { beforeAll, describe, expect, it } from 'vitest'
import { testApp } from '../../support/app.ts'
import { waybench, waybenchJson } from '../../support/terminal.ts'

// The record of lophine, as its sources have it: benzil and benzaldehyde were read, ammonium acetate, acetic acid and the water they are poured
// into are from memory, the ammonia is reckoned, the alcohol is not stated. No outside source: what the record says of itself is what is told.
const told: readonly (readonly [string, string])[] = [
  ['benzil', 'seen'],
  ['benzaldehyde', 'seen'],
  ['ammonium acetate', 'remembered'],
  ['acetic acid, glacial', 'remembered'],
  ['water', 'remembered'],
  ['ammonia, 25 % in water', 'derived'],
]
const letters: Readonly<Record<string, string>> = { seen: 's', remembered: 'r', derived: 'd' }
const plan = ['plan', '--from', 'benzoin', '--have', '24 g', '--to', 'lophine', '--steps', 'benzil-nitric-acid,lophine']
const remembered = 'from memory: amounts of ammonium acetate (8 mol per mol benzil), acetic acid and water'

describe('a charge that was read in part is told line by line', () => {
  const files = new Map<string, string>()
  beforeAll(async () => {
    for (const name of ['pack.html', 'pack.txt', 'pack.csv']) await waybench([...plan, '--print', name], files)
  })

  it('to programs, and in one no surer than its least sure line', async () => {
    const { json } = await waybenchJson(plan)
    const [, step] = json.trust.steps
    expect(step.charges.slice(0, told.length).map((line: { mark: string }) => line.mark)).toEqual(told.map(([, mark]) => mark))
    expect(step.charges[2].source).toBe(remembered)
    expect(step.charges[0].source).not.toContain('memory')
    const charges = step.figures.find((one: { figure: string }) => one.figure === 'charges')
    expect(charges).toMatchObject({ mark: 'remembered', trust: 'remembered', inPart: true })
    expect(charges.source.startsWith(`in part ${remembered}; hobby-chemistry article`)).toBe(true)
    expect(json.trust.steps[0].figures[0]).not.toHaveProperty('inPart')
  })

  it('in print: text, table and pages', () => {
    const text = files.get('pack.txt')!
    const isRow = (row: string, name: string, mark: string) => row.includes(name) && new RegExp(`[gL] +${letters[mark]}( |$)`).test(row)
    for (const [name, mark] of told.slice(1))
      expect(
        text.split('\n').some(row => isRow(row, name, mark)),
        name,
      ).toBe(true)
    expect(text.replace(/\s+/g, ' ')).toContain('Charges: remembered in part.')
    const rows = files
      .get('pack.csv')!
      .split(/\r?\n/)
      .filter(row => row.startsWith('charge,2,'))
    for (const [name, mark] of told.slice(1))
      expect(
        rows.some(row => row.includes(name) && row.includes(`,${mark},`)),
        name,
      ).toBe(true)
    const sheet = files
      .get('pack.html')!
      .split('<section class="leaf')
      .find(part => part.startsWith(' leaf-step') && part.includes('ammonium acetate'))!
    const table = sheet.slice(sheet.indexOf('<table class="t charge'), sheet.indexOf('</table>'))
    expect([...table.matchAll(/<span data-mark="([^"]+)"/g)].map(match => match[1]).slice(0, told.length)).toEqual(
      // In order of stages: the quench after what goes into the vessel.
      told.map(([, mark]) => mark),
    )
    // What is done there is told of the record in the main, not of these amounts.
    expect(sheet).toMatch(/<ol class="ops" data-mark="seen"/)
  })

  it('by the API, where a filter finds it', async () => {
    const app = await testApp()
    const found = async (trust: string) =>
      (await app.inject(`/api/v1/transformations?q=lophine&figure=charges&trust=${encodeURIComponent(trust)}`))
        .json()
        .transformations.find((one: { id: string }) => one.id === 'lophine')
    for (const trust of ['remembered', 'seen', 'derived', 'not seen']) expect(await found(trust), trust).toBeDefined()
    expect(await found('own bench')).toBeUndefined()
    const row = await found('remembered')
    expect(row.charges.slice(0, told.length).map((line: { mark: string }) => line.mark)).toEqual(told.map(([, mark]) => mark))
    expect(row.figures.find((one: { figure: string }) => one.figure === 'charges')).toMatchObject({ mark: 'remembered', inPart: true })
    const table = await app.inject('/api/v1/transformations/lophine/charges')
    expect(table.body.split('\r\n').filter(line => line.includes(remembered))).toHaveLength(3)
    await app.close()
  })

  it('among the weak spots of the library', async () => {
    const { json } = await waybenchJson(['check', 'bundled', '--weak', '--trust', 'remembered'])
    const spot = json.weak.find((one: { id: string; kind: string }) => one.id === 'lophine' && one.kind === 'remembered charges')
    expect(spot.what).toBe('remembered, not read: ammonium acetate, acetic acid, glacial, water')
  })
})
