import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { materialCell } from '../../../../core/reading/material-cell.ts'
import { NameIndex } from '../../../../core/reading/names.ts'
import { type PacksFile, packsFileSchema, priceFromOfPack } from '../../../../core/shopping/packs.ts'
import { packsFromCsv, packsToCsv } from '../../../../core/shopping/packs-csv.ts'
import { priceFigure } from '../../../../core/shopping/price-from.ts'
import { dataFolder } from '../../../../server/library/bundled.ts'
import { index } from '../../../support/reader.ts'
import { material, smallLibrary } from '../../../support/small-library.ts'

const library = smallLibrary([material({ id: 'salt' }), material({ id: 'oil', form: 'liquid' })])
const empty: PacksFile = {
  format: 'waybench-packs',
  version: 1,
  currency: 'EUR',
  rates: { USD: 0.9, JPY: 0.006 },
  suppliers: [],
  packs: [],
}
const read = (text: string, before = empty) => packsFromCsv(materialCell(new NameIndex(library.materials, [])), 'packs.csv', text, before)
const codes = (text: string) => read(text).refused.map(row => [row.line, ...row.problems.map(p => p.code)])

describe('packs as CSV', () => {
  it('are read with prices in whole units of their currency', () => {
    const { file, refused, problems } = read(
      'supplier;material;amount;unit;price;currency;carriage;hazardous fee;minimum order\nKiln Lane;salt;0,5;kg;12,50;;8,90;12;20\nKiln Lane;oil;250 mL;;300;JPY;;;\n',
    )
    expect([refused, problems]).toEqual([[], []])
    expect(file.suppliers).toEqual([
      { id: 'kiln-lane', name: 'Kiln Lane', carriageMinor: 890, hazardousFeeMinor: 1200, minimumOrderMinor: 2000 },
    ])
    expect(file.packs).toEqual([
      { supplier: 'kiln-lane', material: 'salt', amount: 0.5, unit: 'kg', priceMinor: 1250 },
      { supplier: 'kiln-lane', material: 'oil', amount: 250, unit: 'mL', priceMinor: 300, currency: 'JPY' },
    ])
  })

  it('find a supplier that is already known, by id or name, and keep what is known of it', () => {
    const before = { ...empty, suppliers: [{ id: 'kl', name: 'Kiln Lane', carriageMinor: 890, hazardousFeeMinor: 0 }] }
    const { file } = read('supplier;material;amount;price\nkiln lane;salt;1 kg;1\nkl;salt;2 kg;2\n', before)
    expect(file.suppliers).toEqual(before.suppliers)
    expect(file.packs.map(p => p.supplier)).toEqual(['kl', 'kl'])
  })

  it('of a supplier whose carriage stands nowhere, leave it unknown: there and back', () => {
    const { file } = read('supplier;material;amount;price\nKiln Lane;salt;1 kg;1\n')
    expect(file.suppliers).toEqual([{ id: 'kiln-lane', name: 'Kiln Lane', carriageMinor: 0, hazardousFeeMinor: 0, carriageUnknown: true }])
    expect(read(packsToCsv(file)).file).toEqual(file)
    // A stated nought is no unknown; a later line may tell what an earlier one left open.
    const stated = 'supplier;material;amount;price;carriage\nKiln Lane;salt;1 kg;1;\nKiln Lane;salt;2 kg;2;0\n'
    expect(read(stated).file.suppliers).toEqual([{ id: 'kiln-lane', name: 'Kiln Lane', carriageMinor: 0, hazardousFeeMinor: 0 }])
  })

  it('answer every bad line with its number and lose none', () => {
    const text = [
      'supplier;material;amount;unit;price;currency;carriage',
      'A;salt;1;kg;1,00;;5',
      'A;slat;1;kg;1,00;;',
      ';salt;1;kg;1,00;;',
      'A;salt;1;kg;cheap;;',
      'A;salt;1;kg;-1;;',
      'A;salt;1;kg;1,005;;',
      'A;salt;1;h;1;;',
      'A;salt;0;kg;1;;',
      'A;salt;1;kg;1,00;CHF;',
      'A;salt;1;kg;1,00;;6',
      'A;salt;1;kg;1,00;;5',
      'A;salt;1;kg;;;',
    ].join('\n')
    expect(codes(text)).toEqual([
      [3, 'csv-material-unknown'],
      [4, 'csv-cell-empty'],
      [5, 'number-unreadable'],
      [6, 'csv-money'],
      [7, 'csv-money'],
      [8, 'quantity-dimension'],
      [9, 'quantity-zero'],
      [10, 'csv-currency'],
      [11, 'csv-supplier-disagrees'],
      [12, 'csv-row-repeated'],
      [13, 'csv-cell-empty'],
    ])
    expect(read(text).file.packs).toHaveLength(1)
  })

  it('give back what was written: the demo, and a supplier without packs', () => {
    const demo: PacksFile = JSON.parse(readFileSync(join(dataFolder(), 'demo', 'packs.json'), 'utf8'))
    const file = {
      ...demo,
      suppliers: [...demo.suppliers, { id: 'later', name: 'Later', carriageMinor: 1, hazardousFeeMinor: 2 }],
    }
    const {
      file: again,
      refused,
      problems,
    } = packsFromCsv(materialCell(index), 'packs.csv', packsToCsv(file), { ...file, suppliers: [], packs: [] })
    expect([refused, problems]).toEqual([[], []])
    // What is said once of the whole file is said of each supplier and each pack in a table.
    const stated = { priceFrom: demo.priceFrom! }
    expect(stated.priceFrom.trust).toBe('invented')
    expect(again.suppliers).toEqual(file.suppliers.map(supplier => ({ ...supplier, ...stated })))
    const bySupplier = (packs: PacksFile['packs']) => file.suppliers.flatMap(s => packs.filter(p => p.supplier === s.id))
    expect(again.packs).toEqual(bySupplier(file.packs).map(pack => ({ ...pack, ...stated })))
    expect(again.packs.length).toBeGreaterThan(20)
  })

  const from = (source: string, trust: 'seen' | 'remembered', date?: string) => ({ source, trust, ...(date === undefined ? {} : { date }) })
  const salt = { supplier: 'kl', material: 'salt', unit: 'g', priceMinor: 100 } as const
  const lane = { id: 'kl', name: 'Kiln Lane', carriageMinor: 890, hazardousFeeMinor: 0 }

  it('keep where each price was got: of the pack, else of its supplier, else of the file, else not stated', () => {
    const file: PacksFile = {
      ...empty,
      priceFrom: from('all of it', 'remembered'),
      suppliers: [
        { ...lane, priceFrom: from('=list "A"; page 4', 'seen', '2026-11-03') },
        { id: 'other', name: 'Other', carriageMinor: 0, hazardousFeeMinor: 0 },
      ],
      packs: [
        { ...salt, amount: 1 },
        { ...salt, amount: 2, priceFrom: from('told by phone', 'remembered', '2026-11') },
        { ...salt, amount: 3, priceFrom: {} },
        { ...salt, amount: 4, priceFrom: { source: 'a page' } },
        { ...salt, amount: 5, supplier: 'other' },
      ],
    }
    const told = (of: PacksFile) => of.packs.map(pack => priceFromOfPack(of, pack))
    expect(told(file)).toEqual([
      from('=list "A"; page 4', 'seen', '2026-11-03'),
      from('told by phone', 'remembered', '2026-11'),
      {},
      { source: 'a page' },
      from('all of it', 'remembered'),
    ])
    expect(packsFileSchema.parse(JSON.parse(JSON.stringify(file)))).toEqual(file)
    const again = read(packsToCsv(file), { ...empty })
    expect([again.refused, again.problems]).toEqual([[], []])
    expect(told(again.file)).toEqual(told(file))
    expect(again.file.suppliers[0]!.priceFrom).toEqual(file.suppliers[0]!.priceFrom)
  })

  it('keep the price that another was written over, and where it was got', () => {
    const own = { trust: 'own bench', source: 'the shop round the corner', date: '2026-11' } as const
    const listed = { ...lane, priceFrom: from('a list', 'seen') }
    const over = (amount: number, inPlaceOf: PacksFile['packs'][number]['inPlaceOf']) => ({ ...salt, amount, priceFrom: own, inPlaceOf })
    const file: PacksFile = {
      ...empty,
      suppliers: [listed],
      packs: [
        over(1, { priceMinor: 90, priceFrom: from('told by phone', 'remembered', '2026-11-03') }),
        over(2, { priceMinor: 80 }),
        over(3, { priceMinor: 0, priceFrom: {} }),
      ],
    }
    const again = read(packsToCsv(file), { ...empty })
    expect([again.refused, again.problems]).toEqual([[], []])
    // What held for the second by its supplier is said of it by itself.
    expect(again.file.packs).toEqual([file.packs[0], over(2, { priceMinor: 80, priceFrom: from('a list', 'seen') }), file.packs[2]])
    // Of nothing said, nothing is said.
    const bare: PacksFile = { ...empty, suppliers: [lane], packs: [{ ...salt, amount: 1, inPlaceOf: { priceMinor: 90 } }] }
    expect(read(packsToCsv(bare), { ...empty }).file.packs).toEqual(bare.packs)
    expect(codes('supplier;material;amount;price;price before source\nA;salt;1 g;1;a list\n')).toEqual([[2, 'csv-cell-empty']])
    expect(codes('supplier;material;amount;price;price before;price before trust\nA;salt;1 g;1;2;certain\n')).toEqual([
      [2, 'csv-price-trust'],
    ])
  })

  it('take no statement over from the file that they are added to', () => {
    const before: PacksFile = { ...empty, priceFrom: { source: 'made up', trust: 'invented' }, suppliers: [lane] }
    const { file } = read('supplier;material;amount;price\nkl;salt;1 kg;1\n', before)
    expect(priceFromOfPack(file, file.packs[0]!)).toEqual({})
    expect(priceFigure(priceFromOfPack(file, file.packs[0]!))).toEqual({ trust: 'unknown', mark: 'unknown', source: null })
  })

  it('refuse a word that does not say how sure, and a day that the calendar lacks', () => {
    const text =
      'supplier;material;amount;price;price source;how sure;price date\nA;salt;1 g;1;a list;certain;\nA;salt;2 g;1;a list;own;2026-02-30\n'
    expect(codes(text)).toEqual([
      [2, 'csv-price-trust'],
      [3, 'csv-date'],
    ])
  })
})
