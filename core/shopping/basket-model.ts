import type { Material } from '../library/material.ts'
import { isHazardousGood } from './hazardous-goods.ts'
import { LpModel } from './lp-text.ts'
import type { Making } from './made-up.ts'
import type { Offer } from './offers.ts'
import type { Supplier } from './packs.ts'

/** One material of the program: what is needed of it, what stands on the shelf, where it can come from. */
export interface Item {
  readonly material: Material
  /** In its unit; 0 for what is only there to make something up from. */
  readonly need: number
  readonly stock: number
  readonly offers: readonly Offer[]
  readonly makings: readonly Making[]
}

/** What the solver decided. */
export interface Decision {
  /** Whole packs. */
  readonly counts: ReadonlyMap<Offer, number>
  /** How much of the solution is made up this way, in its unit. */
  readonly made: ReadonlyMap<Making, number>
  /** Solutions that nothing suffices to make up. */
  readonly missing: ReadonlySet<string>
}

export interface BasketModel {
  readonly text: string
  /** Some solution may turn out to be beyond what shelf and shop allow. */
  readonly mayMiss: boolean
  /** Reads the solver's columns; null where the answer does not hold, looked at with no tolerance but that of rounding. */
  readonly read: (columns: ReadonlyMap<string, number>) => Decision | null
}

/** Rounding in sums of amounts; no balance sees it. */
const rounding = 1e-9

/**
 * The whole purchase as one integer program: whole packs of every material over all suppliers, carriage once for each supplier used, its
 * hazardous-goods fee once where anything with hazards comes from it, its minimum order reached by buying more, and solutions made up from
 * what stands on the shelf or is bought.
 *
 * @param items     every material that is needed or can be made up from; order decides nothing but names in the model
 * @param objective `missing` = as few solutions out of reach as possible; else cost, with no more than `mostMissing` out of reach
 */
export function basketModel(items: readonly Item[], objective: 'missing' | { readonly mostMissing: number }): BasketModel {
  const model = new LpModel()
  const byId = new Map(items.map(item => [item.material.id, item]))
  const cost = (minor: number) => (objective === 'missing' ? 0 : minor)
  const usable = items.flatMap(item => item.makings).filter(m => byId.has(m.source) && (m.rest === 'water' || byId.has(m.rest)))
  const takers = (id: string) =>
    usable.flatMap(m => [
      ...(m.source === id ? [{ making: m, perUnit: m.sourcePerUnit }] : []),
      ...(m.rest === id ? [{ making: m, perUnit: m.restPerUnit }] : []),
    ])

  const packNames = new Map<Offer, { readonly cover: string; readonly extra: string | null }>()
  const makeNames = new Map<Making, { readonly amount: string; readonly chosen: string }>()
  const missNames = new Map<string, string>()
  const suppliers = new Map<Supplier, { readonly open: string; readonly fee: string | null }>()
  for (const offer of items.flatMap(item => item.offers)) {
    const { supplier } = offer
    if (suppliers.has(supplier)) continue
    const n = suppliers.size + 1
    const open = model.variable(`y${n}`, 'binary', cost(supplier.carriageMinor))
    const fee = supplier.hazardousFeeMinor > 0 ? model.variable(`h${n}`, 'binary', cost(supplier.hazardousFeeMinor)) : null
    suppliers.set(supplier, { open, fee })
  }

  let makeCount = 0
  for (const making of usable) {
    const target = byId.get(making.target)!
    const n = ++makeCount
    const amount = model.variable(`v${n}`, 'continuous', 0, target.need)
    const chosen = model.variable(`b${n}`, 'binary', 0)
    makeNames.set(making, { amount, chosen })
    model.row(
      [
        [1, amount],
        [-target.need, chosen],
      ],
      '<=',
      0,
    )
  }

  let packCount = 0
  for (const [index, item] of items.entries()) {
    const { id } = item.material
    const drawn = takers(id)
    const most = item.need + drawn.reduce((sum, { making, perUnit }) => sum + byId.get(making.target)!.need * perUnit, 0)
    if (most <= 0) continue
    const toBuy = Math.max(0, most - item.stock)
    const cover: [number, string][] = []
    if (item.stock > 0) cover.push([1, model.variable(`u${index + 1}`, 'continuous', 0, item.stock)])
    for (const offer of toBuy > 0 ? item.offers : []) {
      const { open, fee } = suppliers.get(offer.supplier)!
      const n = ++packCount
      // No more than alone would cover; a pack beyond that is only ever bought to reach a minimum order.
      const mostPacks = Math.ceil((toBuy / offer.size) * (1 - rounding))
      const name = model.variable(`x${n}`, 'integer', cost(offer.priceMinor), mostPacks)
      cover.push([Math.min(offer.size, toBuy), name])
      model.row(
        [
          [1, name],
          [-mostPacks, open],
        ],
        '<=',
        0,
      )
      const minimum = offer.supplier.minimumOrderMinor ?? 0
      const extra = minimum > 0 && offer.priceMinor > 0 ? `m${n}` : null
      if (extra !== null) {
        const mostExtra = Math.ceil(minimum / offer.priceMinor)
        model.variable(extra, 'integer', cost(offer.priceMinor), mostExtra)
        model.row(
          [
            [1, extra],
            [-mostExtra, open],
          ],
          '<=',
          0,
        )
        if (fee !== null && isHazardousGood(item.material))
          model.row(
            [
              [1, extra],
              [-mostExtra, fee],
            ],
            '<=',
            0,
          )
      }
      if (fee !== null && isHazardousGood(item.material))
        model.row(
          [
            [1, name],
            [-mostPacks, fee],
          ],
          '<=',
          0,
        )
      packNames.set(offer, { cover: name, extra })
    }
    const own = usable.filter(m => m.target === id)
    for (const making of own) cover.push([1, makeNames.get(making)!.amount])
    // One recipe for one solution: nobody mixes half a bottle from pellets and half from concentrate.
    if (own.length > 1)
      model.row(
        own.map(m => [1, makeNames.get(m)!.chosen] as const),
        '<=',
        1,
      )
    if (own.length > 0) {
      const miss = model.variable(`z${index + 1}`, 'binary', objective === 'missing' ? 1 : 0)
      missNames.set(id, miss)
      cover.push([item.need, miss])
      for (const making of own)
        model.row(
          [
            [1, makeNames.get(making)!.chosen],
            [1, miss],
          ],
          '<=',
          1,
        )
    }
    // Scaled by the most that can be needed, so that the solver's tolerance is a share of it, not grams.
    const scaled: [number, string][] = [...cover, ...drawn.map(d => [-d.perUnit, makeNames.get(d.making)!.amount] as [number, string])]
    model.row(
      scaled.map(([coefficient, name]) => [coefficient / most, name] as const),
      '>=',
      (item.need / most) * (1 - rounding),
    )
  }
  for (const [supplier, { open }] of suppliers) {
    const minimum = supplier.minimumOrderMinor ?? 0
    if (minimum === 0) continue
    const goods: [number, string][] = []
    for (const [offer, { cover, extra }] of packNames)
      if (offer.supplier === supplier)
        goods.push([offer.priceMinor, cover], ...(extra === null ? [] : ([[offer.priceMinor, extra]] as [number, string][])))
    model.row([...goods, [-minimum, open]], '>=', 0)
  }
  if (objective !== 'missing' && missNames.size > 0)
    model.row(
      [...missNames.values()].map(name => [1, name] as const),
      '<=',
      objective.mostMissing,
    )

  const read = (columns: ReadonlyMap<string, number>): Decision | null => {
    const whole = (name: string | null) => (name === null ? 0 : Math.round(columns.get(name) ?? 0))
    const counts = new Map<Offer, number>()
    for (const [offer, { cover, extra }] of packNames) {
      const count = whole(cover) + whole(extra)
      if (count > 0) counts.set(offer, count)
    }
    const missing = new Set([...missNames].filter(([, name]) => whole(name) === 1).map(([id]) => id))
    const made = new Map<Making, number>()
    for (const making of makeNames.keys()) {
      const target = byId.get(making.target)!
      // Which recipe is the solver's choice; how much follows from the need, free of the solver's rounding.
      if (whole(makeNames.get(making)!.chosen) === 1 && !missing.has(making.target) && target.need > target.stock)
        made.set(making, target.need - target.stock)
    }
    const decision = { counts, made, missing }
    return holds(items, decision) ? decision : null
  }
  return { text: model.text(), mayMiss: missNames.size > 0, read }
}

/** Is every need covered by shelf, packs and makings, and every minimum order reached? */
function holds(items: readonly Item[], { counts, made, missing }: Decision): boolean {
  const goods = new Map<Supplier, number>()
  for (const [offer, count] of counts) goods.set(offer.supplier, (goods.get(offer.supplier) ?? 0) + offer.priceMinor * count)
  for (const [supplier, minor] of goods) if (minor < (supplier.minimumOrderMinor ?? 0)) return false
  return items.every(item => {
    const { id } = item.material
    if (missing.has(id)) return true
    const bought = item.offers.reduce((sum, offer) => sum + offer.size * (counts.get(offer) ?? 0), 0)
    const own = [...made].reduce((sum, [making, amount]) => (making.target === id ? sum + amount : sum), 0)
    const demand = demandOf(id, item.need, made)
    return item.stock + bought + own >= demand * (1 - 2 * rounding)
  })
}

/** What is taken of a material in all: needed as it is, and to make up solutions from. */
export function demandOf(material: string, need: number, made: ReadonlyMap<Making, number>): number {
  let demand = need
  for (const [making, amount] of made) {
    if (making.source === material) demand += amount * making.sourcePerUnit
    if (making.rest === material) demand += amount * making.restPerUnit
  }
  return demand
}
