import { type Library, materialOf } from '../library/library.ts'
import { isBuyable, type Material } from '../library/material.ts'
import type { Problem } from '../problem/problem.ts'
import type { ChargedStep } from '../route/charged.ts'
import type { Item } from './decision.ts'
import { type Making, makingsOf } from './made-up.ts'
import type { StockUnit } from './measure.ts'
import { type Need, needsOf } from './needs.ts'
import { offersOf } from './offers.ts'
import type { PacksFile } from './packs.ts'
import type { ShelfItem } from './shelf.ts'
import { stockOf } from './shelf-use.ts'
import type { Row } from './shopping-line.ts'

/** What is needed, and where it may come from. */
export interface SupplyInput {
  readonly library: Library
  readonly steps: readonly ChargedStep[]
  /** Compounds of which a retained sample is kept: the goals' targets. */
  readonly products: readonly string[]
  readonly shelf: readonly ShelfItem[]
  readonly packs: PacksFile | null
  /** Added to every need, as a fraction. */
  readonly reserve: number
  /** One repeat of the riskiest step on top. */
  readonly repeat: boolean
  readonly retainedSampleG: number
  /** `YYYY-MM-DD`, for expiry and peroxide tests. */
  readonly today?: string
  /** Grams of a material on the shelf that something else takes first: the start in hand, what is kept back. */
  readonly spokenForG?: ReadonlyMap<string, number>
}

/** Every material that is needed, or that something needed may be made up from, with its stock and its packs. */
export interface Supply {
  readonly rows: ReadonlyMap<string, Row>
  /** Those that a basket can cover; the others have no price. */
  readonly items: readonly Item[]
  /** It has packs, or stock to give away. */
  readonly hasSupply: (material: string) => boolean
  /** Packs that were left out, and why. */
  readonly problems: readonly Problem[]
}

/** Needs, stock and packs of all materials of a plan's steps, before anything is decided. */
export function supplyOf(input: SupplyInput, mayMakeUp = true): Supply {
  const { library, packs } = input
  const problems: Problem[] = []
  const rows = new Map<string, Row>()
  const add = (material: Material, unit: StockUnit, need: Need | null) => {
    const stock = stockOf(library, material, unit, input.shelf, input.today, input.spokenForG?.get(material.id))
    const found = packs === null || !isBuyable(material) ? { offers: [], problems: [] } : offersOf(library, material, unit, packs)
    problems.push(...found.problems)
    const row = { material, unit, need, stock, offers: found.offers }
    rows.set(material.id, row)
    return row
  }
  for (const need of needsOf(input)) add(materialOf(library, need.material), need.unit, need)

  const shortOf = (row: Row) => row.need !== null && !row.need.free && (row.need.amount ?? 0) > row.stock.usable
  const unitOf = (material: Material): StockUnit => rows.get(material.id)?.unit ?? (material.form === 'solid' ? 'g' : 'mL')
  const makings = new Map<string, readonly Making[]>()
  const hasSupply = (id: string) => {
    const row = rows.get(id) ?? add(materialOf(library, id), unitOf(materialOf(library, id)), null)
    // What must itself be made up, or is short and not sold, has none to give away.
    return row.offers.length > 0 || (row.stock.usable > 0 && !shortOf(row))
  }
  for (const row of [...rows.values()]) {
    if (row.offers.length > 0 || !shortOf(row) || !mayMakeUp) continue
    const possible = makingsOf(library, row.material, row.unit, unitOf)
    const open = possible.filter(m => hasSupply(m.source) && (m.rest === 'water' || hasSupply(m.rest)))
    if (open.length > 0) makings.set(row.material.id, open)
  }

  const isSupplied = (row: Row) => !shortOf(row) || row.offers.length > 0 || makings.has(row.material.id)
  const items: Item[] = [...rows.values()]
    .filter(row => row.need?.free !== true && isSupplied(row))
    .map(row => ({
      material: row.material,
      need: row.need?.amount ?? 0,
      stock: row.stock.usable,
      offers: row.offers,
      makings: makings.get(row.material.id) ?? [],
    }))
  return { rows, items, hasSupply, problems }
}
