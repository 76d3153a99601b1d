import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { materialCell } from '../../../../core/reading/material-cell.ts'
import { NameIndex } from '../../../../core/reading/names.ts'
import type { ShelfItem } from '../../../../core/shopping/shelf.ts'
import { shelfFromCsv, shelfToCsv } from '../../../../core/shopping/shelf-csv.ts'
import { index } from '../../../support/reader.ts'
import { material, smallLibrary } from '../../../support/small-library.ts'

const library = smallLibrary([
  material({ id: 'benzoin', name: 'benzoin', cas: '119-53-9' }),
  material({ id: 'acetic-acid', name: 'acetic acid', synonyms: ['glacial acetic acid', 'acid'], form: 'liquid' }),
  material({ id: 'formic-acid', name: 'formic acid', synonyms: ['acid'], form: 'liquid' }),
])
const read = (text: string) => shelfFromCsv(materialCell(new NameIndex(library.materials, [])), 'shelf.csv', text)
const codes = (text: string) => read(text).refused.map(row => [row.line, ...row.problems.map(p => p.code)])

describe('a shelf as CSV', () => {
  it.each([
    ['semicolons and decimal commas', 'material;amount;unit;assay\nbenzoin;1,5;g;0,98\n'],
    ['commas and points', 'material,amount,unit,assay\nbenzoin,1.5,g,98 %\n'],
    ['commas, with a quoted decimal comma', 'material,amount,unit,assay\nbenzoin,"1,5",g,"98 %"\n'],
    ['tabs', 'material\tamount\tunit\tassay\nbenzoin\t1.5\tg\t0.98\n'],
    ['a byte order mark, CRLF, other headings, the unit behind the number', '\ufeffName;Quantity;Purity\r\n119-53-9;1,5 g;98%\r\n'],
  ])('is read with %s', (_, text) => {
    const { values, refused, problems } = read(text)
    expect([refused, problems]).toEqual([[], []])
    expect(values).toEqual([{ material: 'benzoin', amount: 1.5, unit: 'g', assay: 0.98 }])
  })

  it('reads three digits behind a comma as decimals where semicolons part the cells, and asks elsewhere', () => {
    expect(read('material;amount\nbenzoin;1,200 g\n').values[0]!.amount).toBe(1.2)
    expect(codes('material,amount\nbenzoin,"1,200 g"\n')).toEqual([[2, 'number-two-readings']])
  })

  it('answers every bad line with its number and loses none', () => {
    const text = [
      'material;amount;unit;assay;opened;expires;place',
      'benzoin;24;g;;2025-11-12;;dry shelf',
      'benzion;1;g;;;;',
      'benzoin;much;g;;;;',
      'benzoin;1;parsec;;;;',
      'acid;1;mL;;;;',
      'benzoin;1;g;98;;;',
      'benzoin;1;g;;03/04/2026;;',
      'benzoin;1;g;;2026-02-30;;',
      'benzoin;24;g;;2025-11-12;;dry shelf',
      ';1;g;;;;',
      'benzoin;1;g;;;;here;and there',
      'acetic-acid;50;mL;;12.3.2026;;acid tray',
    ].join('\n')
    const { values, refused } = read(text)
    expect(values.map(v => v.material)).toEqual(['benzoin', 'acetic-acid'])
    expect(values[1]).toMatchObject({ opened: '2026-03-12', place: 'acid tray' })
    expect(refused.map(row => [row.line, ...row.problems.map(p => p.code)])).toEqual([
      [3, 'csv-material-unknown'],
      [4, 'number-unreadable'],
      [5, 'quantity-unit-unknown'],
      [6, 'csv-material-ambiguous'],
      [7, 'csv-assay'],
      [8, 'csv-date'],
      [9, 'csv-date'],
      [10, 'csv-row-repeated'],
      [11, 'csv-cell-empty'],
      [12, 'csv-row-too-long'],
    ])
    expect(refused[0]!.problems[0]!.cure).toMatch(/Did you mean "benzoin"/)
    expect(refused[0]!.text).toBe('benzion;1;g;;;;')
    expect(refused.every(row => row.problems.every(p => p.where[1] === `line ${row.line}`))).toBe(true)
    // All that was written is in one of the two lists.
    expect(values.length + refused.length).toBe(text.split('\n').length - 1)
  })

  it('tells every fault of one line', () => {
    expect(codes('material;amount;assay\nbenzion;-3 g;2\n')).toEqual([[2, 'csv-material-unknown', 'quantity-negative', 'csv-assay']])
  })

  it.each([
    ['a wrong column', 'material;amount;colour\nbenzoin;1 g;white\n', 'csv-column-unknown'],
    ['a missing column', 'material;unit\nbenzoin;g\n', 'csv-column-missing'],
    ['a repeated column', 'material;amount;quantity\nbenzoin;1 g;2 g\n', 'csv-column-repeated'],
    ['a nameless column', 'material;amount;\nbenzoin;1 g;white\n', 'csv-column-unnamed'],
    ['an open quotation mark', 'material;amount\n"benzoin;1 g\n', 'csv-syntax'],
  ])('with %s is refused as a whole, its lines kept', (_, text, code) => {
    const { values, refused, problems } = read(text)
    expect(problems.map(p => p.code)).toEqual([code])
    expect([values.length, refused.length]).toEqual([0, 1])
  })

  it('counts lines as an editor does, line breaks in cells included', () => {
    expect(codes('material;amount;place\nbenzoin;1 g;"left\nbehind"\nbenzion;1 g;\n')).toEqual([[4, 'csv-material-unknown']])
  })

  it('gives back what was written, whatever stands in it', () => {
    const place = fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme' }).filter(text => text.trim() === text)
    const item = fc.record(
      {
        material: fc.constantFrom('benzoin', 'acetic-acid'),
        amount: fc.double({ min: 1e-3, max: 1e5, noNaN: true }).map(value => Number(value.toPrecision(6))),
        unit: fc.constantFrom('g' as const, 'kg' as const, 'mg' as const, 'mL' as const, 'L' as const, 'mol' as const, 'mmol' as const),
        assay: fc.integer({ min: 1, max: 1000 }).map(n => n / 1000),
        opened: fc.constantFrom('2026-03-01', '2024-02-29', '2025-11'),
        place: fc.oneof(place, fc.constantFrom('=1+1', "'=1", '-5', '"a";b', "o'clock", '@home')),
      },
      { requiredKeys: ['material', 'amount', 'unit'] },
    )
    fc.assert(
      fc.property(fc.uniqueArray(item, { maxLength: 5, selector: one => JSON.stringify(one) }), items => {
        const { values, refused, problems } = read(shelfToCsv(items as readonly ShelfItem[]))
        expect([refused, problems]).toEqual([[], []])
        expect(values).toEqual(items)
      }),
      { seed: 5, numRuns: 300 },
    )
  })
})

describe('materials of a table are named as everywhere else', () => {
  const whole = (name: string) => shelfFromCsv(materialCell(index), 'shelf.csv', `material;amount\n"${name}";10 g\n`)
  // Each name's bottles as the table of ambiguous names lists them; CAS 119-53-9 is benzoin (Common Chemistry).
  it.each([
    ['copper(II) acetate', 'copper-acetate-monohydrate'],
    ['benzoin', 'benzoin'],
    ['119-53-9', 'benzoin'],
    ['3 M NaOH', 'sodium-hydroxide-3m'],
    ['NaOAc.3H2O', 'sodium-acetate-trihydrate'],
    ['HCl {hydrochloric-acid-conc}', 'hydrochloric-acid-conc'],
  ])('%s', (name, id) => {
    const { values, refused } = whole(name)
    expect(refused).toEqual([])
    expect(values[0]!.material).toBe(id)
  })
  it('every id under the heading of ids is just that one, also where the same word names several bottles', () => {
    const items = [...index.materials.keys()].map((material, at): ShelfItem => ({ material, amount: at + 1, unit: 'g' }))
    const { values, refused, notes, problems } = shelfFromCsv(materialCell(index), 'shelf.csv', shelfToCsv(items))
    expect([refused, notes, problems]).toEqual([[], [], []])
    expect(values).toEqual(items)
    // A name beside it is for people; where the id is left out, the name is read.
    const both = shelfFromCsv(materialCell(index), 'shelf.csv', 'material;id;amount\nammonia;ammonia;1 g\nbenzil;;2 g\nx;no-such;3 g\n')
    expect(both.values.map(one => one.material)).toEqual(['ammonia', 'benzil'])
    expect(both.refused.map(one => one.problems[0]!.code)).toEqual(['csv-material-unknown'])
  })
  it('the usual one of several bottles is taken with a word about it', () => {
    const { values, notes } = whole('acetic acid')
    expect(values[0]!.material).toBe('acetic-acid')
    expect(notes[0]!.what).toContain('"acetic acid" is taken as acetic acid, glacial')
    expect(whole('Ethanol').notes[0]!.what).toContain('the usual bottle is')
  })
  it.each(['sodium acetate', 'ammonia', '7 M NaOH', '1,3-diphenylpropan-1-one'])('%s is asked about, by names', name => {
    const { values, refused } = whole(name)
    expect(values).toEqual([])
    const [problem] = refused[0]!.problems
    expect(problem!.code).toMatch(/csv-material-(ambiguous|unknown)/)
    expect(problem!.cure).not.toContain('Did you mean')
    if (name === 'sodium acetate') expect(problem!.cure).toContain('sodium acetate trihydrate')
  })
})
