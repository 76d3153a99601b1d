import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { inUnit, type StockUnit } from './measure.ts'
import { peroxideTestDue } from './peroxide-test.ts'
import type { ShelfItem } from './shelf.ts'

/** What may be taken out of one bottle. */
export interface Lot {
  /** Of what the label says, at the assay. */
  readonly amount: number
  /** Fraction of the bottle that is what the label says. */
  readonly assay: number
  readonly opened: string | null
  readonly place: string | null
}

/** Usable stock of one material. */
export interface Stock {
  readonly usable: number
  /** Oldest first: the order in which they are used up. */
  readonly lots: readonly Lot[]
  /** What is there but not counted, and what is counted with a caution. */
  readonly notes: readonly string[]
}

/**
 * Usable stock at its assay, oldest first. What has expired, and a peroxide former past its test, is told and not counted.
 *
 * @param today     `YYYY-MM-DD`; without it nothing can be known to have expired, and the notes say so
 * @param spokenForG grams that something else takes first (the start, where it stands on the same shelf)
 */
export function stockOf(
  library: Library,
  material: Material,
  unit: StockUnit,
  shelf: readonly ShelfItem[],
  today?: string,
  spokenForG = 0,
): Stock {
  const notes: string[] = []
  const lots: Lot[] = []
  const own = shelf.filter(item => item.material === material.id)
  for (const item of own.sort(byAge)) {
    const label = labelOf(item)
    const amount = inUnit(library, material, item.amount, item.unit, unit)
    if (amount === null) {
      notes.push(`${label} is not counted: ${material.name} has no density here, so that ${item.unit} cannot be turned into ${unit}.`)
      continue
    }
    if (item.expires !== undefined && today !== undefined && item.expires < today) {
      notes.push(`${label} is not counted: it expired on ${item.expires}.`)
      continue
    }
    const due = peroxideTestDue(material, item.opened)
    if (due !== null && today !== undefined && due < today) {
      notes.push(`${label} is not counted: it forms peroxides and its test was due on ${due}. Test it or discard it.`)
      continue
    }
    if (material.peroxideClass !== undefined && due === null)
      notes.push(`${label} is counted, but it forms peroxides and has no opening date: test it before use.`)
    if (today === undefined && (item.expires !== undefined || due !== null))
      notes.push(
        `${label} is counted: without a date of today its ${item.expires === undefined ? 'peroxide test' : 'expiry'} was not checked.`,
      )
    if (amount > 0)
      lots.push({ amount: amount * (item.assay ?? 1), assay: item.assay ?? 1, opened: item.opened ?? null, place: item.place ?? null })
  }
  const free = afterTaking(lots, inUnit(library, material, spokenForG, 'g', unit) ?? 0)
  return { usable: free.reduce((sum, lot) => sum + lot.amount, 0), lots: free, notes }
}

/** The bottles an amount comes from, oldest first. */
export function takenFrom(stock: Stock, amount: number): readonly Lot[] {
  const taken: Lot[] = []
  let left = amount
  for (const lot of stock.lots) {
    if (left <= 0) break
    taken.push({ ...lot, amount: Math.min(lot.amount, left) })
    left -= lot.amount
  }
  return taken
}

function afterTaking(lots: readonly Lot[], amount: number): readonly Lot[] {
  let left = amount
  return lots.flatMap(lot => {
    const remains = lot.amount - Math.min(lot.amount, left)
    left = Math.max(0, left - lot.amount)
    return remains > 0 ? [{ ...lot, amount: remains }] : []
  })
}

/** By opening date; what has none was not opened and comes last, the sooner to expire first. */
function byAge(a: ShelfItem, b: ShelfItem): number {
  return compare(a.opened ?? '9999', b.opened ?? '9999') || compare(a.expires ?? '9999', b.expires ?? '9999')
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

function labelOf(item: ShelfItem): string {
  const opened = item.opened === undefined ? '' : `, opened ${item.opened}`
  const place = item.place === undefined ? '' : ` (${item.place})`
  return `Stock of ${item.amount} ${item.unit}${opened}${place}`
}
