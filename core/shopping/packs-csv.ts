import { hyphened } from '../library/plain-letters.ts'
import type { Checked, Problem } from '../problem/problem.ts'
import { minorDigitsOf } from '../quantity/money.ts'
import { numberIn } from '../quantity/number.ts'
import { parseQuantity } from '../quantity/parse.ts'
import { dateIn, type MaterialCell } from './csv-cells.ts'
import { type Column, type CsvRead, type CsvRow, csvTable, csvText, type RefusedRow } from './csv-table.ts'
import { type Pack, type PacksFile, priceFromOfPack, type Supplier } from './packs.ts'
import { type PriceFrom, priceFromOf, priceTrusts } from './price-from.ts'

const columns: readonly Column[] = [
  { name: 'supplier', also: ['vendor'], required: true },
  { name: 'supplier name' },
  { name: 'material', also: ['name', 'id', 'substance', 'compound'], required: true },
  { name: 'amount', also: ['size', 'pack', 'quantity'], required: true },
  { name: 'unit' },
  { name: 'price', required: true },
  { name: 'currency' },
  { name: 'carriage', also: ['delivery', 'shipping'] },
  { name: 'hazardous fee', also: ['hazardous goods fee', 'hazard fee'] },
  { name: 'minimum order', also: ['least order'] },
  { name: 'price source', also: ['source', 'price from'] },
  { name: 'price trust', also: ['how sure', 'trust'] },
  { name: 'price date', also: ['date', 'as of'] },
  { name: 'price before' },
  { name: 'price before source' },
  { name: 'price before trust' },
  { name: 'price before date' },
]

/** A line of a packs file: what is sold, and what is told of its seller. */
export interface PackRow {
  /** Null on a line that only tells of a supplier. */
  readonly pack: Pack | null
  readonly supplier: Supplier
}

export interface PacksRead extends CsvRead<PackRow> {
  /** The packs file that the good lines make, suppliers already known included. */
  readonly file: PacksFile
}

const units: Readonly<Record<string, Pack['unit']>> = { g: 'g', kg: 'kg', mL: 'mL', L: 'L' }

/**
 * Packs and prices out of a CSV file. Prices, carriage, fees and minimum orders are in whole units of the currency ("12,50"), one pack a
 * line; what is told of a supplier need stand on one of its lines only. A supplier is named by its id or its name. Where a price was got is
 * said on its own line; on a line without a pack it is said of the supplier's carriage and fees. An empty cell is not stated, and takes nothing
 * over from the file that the lines are added to.
 *
 * @param materialIn reads the cells that name a material
 * @param before the packs file that the lines are added to: its currency, its rates and its suppliers hold
 */
export function packsFromCsv(materialIn: MaterialCell, name: string, text: string, before: PacksFile): PacksRead {
  const table = csvTable(name, text, columns)
  const suppliers = new Map(before.suppliers.map(s => [s.id, s]))
  const told = new Map<string, Map<string, { readonly value: number; readonly line: number }>>()
  const values: PackRow[] = []
  const refused: RefusedRow[] = [...table.refused]
  const notes: Problem[] = []
  const firstLine = new Map<string, number>()
  for (const row of table.rows) {
    const reader = new RowReader(name, row, table.comma)
    const supplier = supplierOf(reader, suppliers, told, before.currency)
    const pack =
      row.cells.has('material') || row.cells.has('amount') || row.cells.has('price') ? packOf(materialIn, reader, supplier, before) : null
    const key = JSON.stringify([...row.cells].sort())
    const earlier = firstLine.get(key)
    if (earlier !== undefined)
      reader.add(
        'csv-row-repeated',
        [],
        `This line says the same as line ${earlier}.`,
        'Remove it: a pack can be bought as often as wanted.',
      )
    else firstLine.set(key, row.line)
    if (reader.problems.length > 0 || supplier === null) refused.push({ line: row.line, text: row.text, problems: reader.problems })
    else {
      suppliers.set(supplier.id, supplier)
      values.push({ pack, supplier })
      notes.push(...reader.warnings)
    }
  }
  const packs = [...before.packs, ...values.flatMap(v => v.pack ?? [])]
  const file = { ...before, suppliers: [...suppliers.values()], packs }
  return { values, notes, refused: refused.sort((a, b) => a.line - b.line), problems: table.problems, file }
}

/**
 * The packs as CSV: `packsFromCsv` gives the same suppliers and packs back, each with the statement of where its price was got that holds for
 * it, and so for a price that another was written over. Rates stay with the packs file.
 */
export function packsToCsv(file: PacksFile): string {
  const major = (minor: number | undefined, currency: string) =>
    minor === undefined ? undefined : (minor / 10 ** minorDigitsOf(currency)).toFixed(minorDigitsOf(currency))
  const tail = (supplier: Supplier) => [
    supplier.carriageUnknown ? undefined : major(supplier.carriageMinor, file.currency),
    supplier.carriageUnknown ? undefined : major(supplier.hazardousFeeMinor, file.currency),
    major(supplier.minimumOrderMinor, file.currency),
  ]
  const rows = file.suppliers.flatMap(supplier => {
    const own = file.packs.filter(pack => pack.supplier === supplier.id)
    const named = [supplier.id, supplier.name]
    const stated = priceFromOf(supplier, file)
    const isStated = Object.keys(stated).length > 0
    const alone = [...named, undefined, undefined, undefined, undefined, undefined, ...tail(supplier), ...fromCells(stated)]
    const lines = own.map(pack => [
      ...named,
      pack.material,
      pack.amount,
      pack.unit,
      major(pack.priceMinor, pack.currency ?? file.currency),
      pack.currency,
      ...tail(supplier),
      ...fromCells(priceFromOfPack(file, pack)),
      major(pack.inPlaceOf?.priceMinor, pack.currency ?? file.currency),
      ...(pack.inPlaceOf === undefined ? [] : fromCells(priceFromOfPack(file, { ...pack, priceFrom: pack.inPlaceOf.priceFrom }))),
    ])
    return own.length === 0 || isStated ? [alone, ...lines] : lines
  })
  return csvText(
    columns.map(column => column.name),
    rows,
  )
}

const fromCells = ({ source, trust, date }: PriceFrom) => [source, trust, date]

/** One line with its place, collecting what is wrong with it. */
class RowReader {
  readonly problems: Problem[] = []
  readonly warnings: Problem[] = []

  constructor(
    readonly name: string,
    readonly row: CsvRow,
    readonly comma: 'decimal' | 'ask',
  ) {}

  where = (column: string): readonly string[] => [this.name, `line ${this.row.line}`, column]

  add(code: string, column: readonly string[], what: string, cure: string): void {
    const why = 'The basket is only as right as the prices it is reckoned from.'
    this.problems.push({ code, where: [this.name, `line ${this.row.line}`, ...column], what, why, cure })
  }

  take<T>(checked: Checked<T>): T | null {
    if (checked.ok) {
      this.warnings.push(...checked.warnings)
      return checked.value
    }
    this.problems.push(...checked.problems)
    return null
  }

  /** A sum of money in minor units; undefined where the cell is empty. */
  money(column: string, currency: string): number | undefined | null {
    const text = this.row.cells.get(column)
    if (text === undefined) return undefined
    const value = this.take(numberIn(text, this.where(column), this.comma))
    if (value === null) return null
    const minor = value * 10 ** minorDigitsOf(currency)
    if (value >= 0 && Math.abs(minor - Math.round(minor)) < 1e-6) return Math.round(minor)
    this.add(
      'csv-money',
      [column],
      `"${text}" is no sum in ${currency}.`,
      'Write it as 12.50: no minus sign, no symbol of a currency, and no part of the smallest coin.',
    )
    return null
  }
}

function supplierOf(
  reader: RowReader,
  suppliers: ReadonlyMap<string, Supplier>,
  told: Map<string, Map<string, { readonly value: number; readonly line: number }>>,
  currency: string,
): Supplier | null {
  const named = reader.row.cells.get('supplier')
  if (named === undefined) {
    reader.add('csv-cell-empty', ['supplier'], 'The supplier is missing.', 'Fill it in, or remove the line.')
    return null
  }
  const id = hyphened(named)
  if (id === '') {
    reader.add(
      'csv-supplier',
      ['supplier'],
      `"${named}" holds no letter or digit of the Latin alphabet.`,
      'Give the supplier a name that has some.',
    )
    return null
  }
  const known = [...suppliers.values()].find(s => s.id === named || s.name.toLowerCase() === named.toLowerCase()) ?? suppliers.get(id)
  const own = told.get(known?.id ?? id) ?? new Map<string, { value: number; line: number }>()
  const figure = (column: string): number | undefined => {
    const minor = reader.money(column, currency)
    if (minor === undefined || minor === null) return undefined
    const earlier = own.get(column)
    if (earlier !== undefined && earlier.value !== minor)
      reader.add(
        'csv-supplier-disagrees',
        [column],
        `Line ${earlier.line} tells another ${column} of the same supplier.`,
        'Make them agree.',
      )
    else own.set(column, { value: minor, line: reader.row.line })
    return minor
  }
  const { cells } = reader.row
  const onItsOwn = !cells.has('material') && !cells.has('amount') && !cells.has('price')
  const from = onItsOwn ? statedIn(reader) : {}
  const priceFrom = Object.keys(from).length > 0 ? from : known?.priceFrom
  const [carriage, fee, minimum] = [figure('carriage'), figure('hazardous fee'), figure('minimum order') ?? known?.minimumOrderMinor]
  told.set(known?.id ?? id, own)
  return {
    id: known?.id ?? id,
    name: known?.name ?? reader.row.cells.get('supplier name') ?? named,
    carriageMinor: carriage ?? known?.carriageMinor ?? 0,
    hazardousFeeMinor: fee ?? known?.hazardousFeeMinor ?? 0,
    ...(carriage === undefined && (known === undefined || known.carriageUnknown) ? { carriageUnknown: true as const } : {}),
    ...(minimum === undefined ? {} : { minimumOrderMinor: minimum }),
    ...(priceFrom === undefined ? {} : { priceFrom }),
  }
}

/** Where a price of a line was got, as far as its cells say. */
function statedIn(reader: RowReader, of: 'price' | 'price before' = 'price'): PriceFrom {
  const { cells } = reader.row
  const source = cells.get(`${of} source`)
  const said = cells.get(`${of} trust`)
  const word = said?.toLowerCase()
  const trust = priceTrusts.find(one => one === word || (one === 'own bench' && word === 'own'))
  if (word !== undefined && trust === undefined)
    reader.add(
      'csv-price-trust',
      [`${of} trust`],
      `"${said}" does not say how sure a price is.`,
      `Write one of: ${priceTrusts.join(', ')}; or leave the cell empty where it is not known.`,
    )
  const day = cells.get(`${of} date`)
  const date = day === undefined ? null : reader.take(dateIn(day, reader.where(`${of} date`), 'A price is told with the day it held.'))
  return {
    ...(source === undefined ? {} : { source }),
    ...(trust === undefined ? {} : { trust }),
    ...(date === null ? {} : { date }),
  }
}

function packOf(materialIn: MaterialCell, reader: RowReader, supplier: Supplier | null, before: PacksFile): Pack | null {
  const { currency: own, rates } = before
  const { cells } = reader.row
  // Said of the others alone: a line keeps silent of its own price, and that is told by an empty statement.
  const nothingElse = supplier?.priceFrom === undefined && before.priceFrom === undefined
  const ownStatement = (stated: PriceFrom) => (Object.keys(stated).length === 0 && nothingElse ? {} : { priceFrom: stated })
  const [now, earlierFrom] = [statedIn(reader), statedIn(reader, 'price before')]
  for (const column of ['material', 'amount', 'price'])
    if (!cells.has(column)) reader.add('csv-cell-empty', [column], `The ${column} is missing.`, 'Fill it in, or remove the line.')
  const named = cells.get('material')
  const material = named === undefined ? null : reader.take(materialIn(named, reader.where('material')))
  const currency = cells.get('currency')?.toUpperCase() ?? own
  if (!/^[A-Z]{3}$/.test(currency) || (currency !== own && rates?.[currency] === undefined))
    reader.add(
      'csv-currency',
      ['currency'],
      `There is no rate for "${cells.get('currency')}".`,
      `Write ${own}, or add the rate to the packs file first.`,
    )
  const written = cells.get('amount')
  const unit = cells.get('unit')
  const text = written === undefined || unit === undefined || /[a-zµμ]\.?$/i.test(written) ? written : `${written} ${unit}`
  const quantity =
    text === undefined
      ? null
      : reader.take(parseQuantity(text, reader.where('amount'), { dimensions: ['mass', 'volume'], comma: reader.comma, zero: false }))
  const price = /^[A-Z]{3}$/.test(currency) ? reader.money('price', currency) : null
  const earlier = /^[A-Z]{3}$/.test(currency) ? reader.money('price before', currency) : null
  if (earlier === undefined && Object.keys(earlierFrom).length > 0)
    reader.add(
      'csv-cell-empty',
      ['price before'],
      'Where the price before was got is told, and the price itself is not.',
      'Fill it in, or empty the cells that tell of it.',
    )
  if (material === null || quantity === null || price === null || price === undefined) return null
  const packUnit = units[quantity.unit]
  // Milligrams and microlitres are sold too; the format writes them in g and mL.
  const small = quantity.unit === 'mg' || quantity.unit === 'µL' ? 1000 : 1e6
  return {
    supplier: supplier?.id ?? '',
    material: material.id,
    amount: packUnit === undefined ? quantity.value / small : quantity.value,
    unit: packUnit ?? (quantity.unit === 'µL' ? 'mL' : 'g'),
    priceMinor: price,
    ...(currency === own ? {} : { currency }),
    ...ownStatement(now),
    ...(earlier == null ? {} : { inPlaceOf: { priceMinor: earlier, ...ownStatement(earlierFrom) } }),
  }
}
