import type { Cover } from './covers.ts'
import { coversNeeds, type Decision, type Item, reachesMinimums, rounding } from './decision.ts'
import { isHazardousGood } from './hazardous-goods.ts'
import { LpModel } from './lp-text.ts'
import type { Making } from './made-up.ts'
import type { Offer } from './offers.ts'
import type { Supplier } from './packs.ts'

/** What a program makes least, and what it is held to. */
export interface Aim {
  /**
   * `missing` = solutions out of reach; `cost` = goods, carriage and fees; `suppliers` = orders to be placed; `left` = what is left over, each
   * material valued at its cheapest price per unit.
   */
  readonly least: 'missing' | 'cost' | 'suppliers' | 'left'
  readonly mostMissing?: number
  readonly mostSuppliers?: number
  readonly mostLeft?: number
  /** False leaves minimum orders out: a smaller program, whose optimum is one of the whole where it happens to reach them. */
  readonly minimums: boolean
}

export interface BasketModel {
  readonly text: string
  /** Some solution may turn out to be beyond what shelf and shop allow. */
  readonly mayMiss: boolean
  /** Some supplier that could be bought from has a minimum order. */
  readonly hasMinimums: boolean
  /** Reads the solver's columns; null where the answer does not hold. */
  readonly read: (columns: ReadonlyMap<string, number>) => Decision | null
}

type Term = readonly [coefficient: number, name: string]

/**
 * The whole purchase as one integer program: whole packs of every material over all suppliers, carriage once for each supplier used, its
 * hazardous-goods fee once where anything with hazards comes from it, its minimum order reached by buying more, and solutions made up from
 * what stands on the shelf or is bought.
 *
 * Where a material's covers are given, it is bought by one of them, which leaves the solver only the choice of suppliers: a far stronger
 * program than counts of packs. With minimum orders the counts stand beside the covers, which then bound their cost.
 *
 * @param items  every material that is needed or can be made up from; order decides nothing but names in the model
 * @param covers by item, from `coversOf`; for none whose demand depends on what is made up
 */
export function basketModel(items: readonly Item[], aim: Aim, covers: ReadonlyMap<Item, readonly Cover[]> = new Map()): BasketModel {
  const model = new LpModel()
  const byId = new Map(items.map(item => [item.material.id, item]))
  const cost = (minor: number) => (aim.least === 'cost' ? minor : 0)
  const usable = usableMakings(items)
  const hasMinimums = items.some(item => item.offers.some(offer => (offer.supplier.minimumOrderMinor ?? 0) > 0))
  const withMinimums = aim.minimums && hasMinimums
  /** What is left over is counted in packs, not in the cheapest covers. */
  const countsPacks = withMinimums || aim.least === 'left' || aim.mostLeft !== undefined

  const suppliers = new Map<Supplier, { readonly open: string; readonly fee: string | null }>()
  for (const { supplier } of items.flatMap(item => item.offers)) {
    if (suppliers.has(supplier)) continue
    const n = suppliers.size + 1
    const open = model.variable(`y${n}`, 'binary', cost(supplier.carriageMinor) + (aim.least === 'suppliers' ? 1 : 0))
    const fee = supplier.hazardousFeeMinor > 0 ? model.variable(`h${n}`, 'binary', cost(supplier.hazardousFeeMinor)) : null
    suppliers.set(supplier, { open, fee })
  }
  /** Buying there opens the order, and asks its fee. */
  const opens = (terms: readonly Term[], most: number, supplier: Supplier, item: Item): void => {
    const { open, fee } = suppliers.get(supplier)!
    model.row([...terms, [-most, open]], '<=', 0)
    if (fee !== null && isHazardousGood(item.material)) model.row([...terms, [-most, fee]], '<=', 0)
  }

  const makeNames = new Map<Making, { readonly amount: string; readonly chosen: string }>()
  for (const [index, making] of usable.entries()) {
    const target = byId.get(making.target)!
    const amount = model.variable(`v${index + 1}`, 'continuous', 0, target.need)
    const chosen = model.variable(`b${index + 1}`, 'binary', 0)
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

  const packNames = new Map<Offer, { readonly cover: string; readonly extra: string | null }>()
  const coverNames = new Map<Cover, string>()
  const missNames = new Map<string, string>()
  const leftTerms: Term[] = []
  let packCount = 0
  for (const [index, item] of items.entries()) {
    const { id } = item.material
    const drawn = usable.flatMap(m => [
      ...(m.source === id ? [{ making: m, perUnit: m.sourcePerUnit }] : []),
      ...(m.rest === id ? [{ making: m, perUnit: m.restPerUnit }] : []),
    ])
    const most = item.need + drawn.reduce((sum, { making, perUnit }) => sum + byId.get(making.target)!.need * perUnit, 0)
    if (most <= 0) continue
    const toBuy = Math.max(0, most - item.stock)
    const own = covers.get(item)
    if (own !== undefined) {
      for (const cover of own)
        coverNames.set(cover, model.variable(`p${coverNames.size + 1}`, 'binary', countsPacks ? 0 : cost(cover.costMinor)))
      model.row(
        own.map(cover => [1, coverNames.get(cover)!] as const),
        '>=',
        1,
      )
      for (const supplier of new Set(own.flatMap(cover => cover.suppliers))) {
        const there = own.filter(cover => cover.suppliers.includes(supplier))
        opens(
          there.map(cover => [1, coverNames.get(cover)!] as const),
          1,
          supplier,
          item,
        )
      }
      if (!countsPacks) continue
    }
    const cover: Term[] = []
    const paid: Term[] = []
    const worth = Math.min(...item.offers.map(offer => offer.priceMinor / offer.size))
    if (item.stock > 0) cover.push([1, model.variable(`u${index + 1}`, 'continuous', 0, item.stock)])
    for (const offer of toBuy > 0 ? item.offers : []) {
      const n = ++packCount
      // No more than alone would cover; a pack beyond that is only ever bought to reach a minimum order.
      const mostPacks = Math.ceil((toBuy / offer.size) * (1 - rounding))
      const name = model.variable(`x${n}`, 'integer', cost(offer.priceMinor), mostPacks)
      cover.push([Math.min(offer.size, toBuy), name])
      paid.push([offer.priceMinor, name])
      leftTerms.push([offer.size * worth, name])
      opens([[1, name]], mostPacks, offer.supplier, item)
      const minimum = withMinimums ? (offer.supplier.minimumOrderMinor ?? 0) : 0
      const extra = minimum > 0 && offer.priceMinor > 0 ? `m${n}` : null
      if (extra !== null) {
        const mostExtra = Math.ceil(minimum / offer.priceMinor)
        model.variable(extra, 'integer', cost(offer.priceMinor), mostExtra)
        opens([[1, extra]], mostExtra, offer.supplier, item)
        leftTerms.push([offer.size * worth, extra])
      }
      packNames.set(offer, { cover: name, extra })
    }
    for (const { making, perUnit } of drawn) if (item.offers.length > 0) leftTerms.push([-perUnit * worth, makeNames.get(making)!.amount])
    // However the packs are counted, they cost no less than the cheapest cover by the suppliers used.
    if (own !== undefined && paid.length > 0) model.row([...paid, ...own.map(c => [-c.costMinor, coverNames.get(c)!] as const)], '>=', 0)
    const makings = usable.filter(m => m.target === id)
    for (const making of makings) cover.push([1, makeNames.get(making)!.amount])
    // One recipe for one solution: nobody mixes half a bottle from pellets and half from concentrate.
    if (makings.length > 1)
      model.row(
        makings.map(m => [1, makeNames.get(m)!.chosen] as const),
        '<=',
        1,
      )
    if (makings.length > 0) {
      const miss = model.variable(`z${index + 1}`, 'binary', aim.least === 'missing' ? 1 : 0)
      missNames.set(id, miss)
      cover.push([item.need, miss])
      for (const making of makings)
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
    const scaled: Term[] = [...cover, ...drawn.map(d => [-d.perUnit, makeNames.get(d.making)!.amount] as const)]
    model.row(
      scaled.map(([coefficient, name]) => [coefficient / most, name] as const),
      '>=',
      (item.need / most) * (1 - rounding),
    )
  }
  if (withMinimums)
    for (const [supplier, { open }] of suppliers) {
      const minimum = supplier.minimumOrderMinor ?? 0
      if (minimum === 0) continue
      const goods: Term[] = []
      for (const [offer, { cover, extra }] of packNames)
        if (offer.supplier === supplier)
          goods.push([offer.priceMinor, cover], ...(extra === null ? [] : ([[offer.priceMinor, extra]] as Term[])))
      model.row([...goods, [-minimum, open]], '>=', 0)
    }
  if (aim.mostMissing !== undefined && missNames.size > 0)
    model.row(
      [...missNames.values()].map(name => [1, name] as const),
      '<=',
      aim.mostMissing,
    )
  if (aim.mostSuppliers !== undefined)
    model.row(
      [...suppliers.values()].map(({ open }) => [1, open] as const),
      '<=',
      aim.mostSuppliers,
    )
  if (aim.least === 'left') for (const [coefficient, name] of leftTerms) model.costs(coefficient, name)
  // A millionth of a minor unit of leeway, or rounding alone could leave nothing.
  if (aim.mostLeft !== undefined) model.row(leftTerms, '<=', aim.mostLeft + 1e-6 * Math.max(1, Math.abs(aim.mostLeft)))

  const read = (columns: ReadonlyMap<string, number>): Decision | null => {
    const whole = (name: string | null) => (name === null ? 0 : Math.round(columns.get(name) ?? 0))
    const counts = new Map<Offer, number>()
    for (const [offer, { cover, extra }] of packNames) {
      const count = whole(cover) + whole(extra)
      if (count > 0) counts.set(offer, count)
    }
    if (!countsPacks)
      for (const [cover, name] of coverNames) if (whole(name) > 0) for (const [offer, count] of cover.counts) counts.set(offer, count)
    const missing = new Set([...missNames].filter(([, name]) => whole(name) === 1).map(([id]) => id))
    const made = new Map<Making, number>()
    for (const making of makeNames.keys()) {
      const target = byId.get(making.target)!
      // Which recipe is the solver's choice; how much follows from the need, free of the solver's rounding.
      if (whole(makeNames.get(making)!.chosen) === 1 && !missing.has(making.target) && target.need > target.stock)
        made.set(making, target.need - target.stock)
    }
    const decision = { counts, made, missing }
    return coversNeeds(items, decision) && (!aim.minimums || reachesMinimums(decision)) ? decision : null
  }
  return { text: model.text(), mayMiss: missNames.size > 0, hasMinimums, read }
}

/** Makings whose source and what it is made up with are materials of the program. */
export function usableMakings(items: readonly Item[]): readonly Making[] {
  const ids = new Set(items.map(item => item.material.id))
  return items.flatMap(item => item.makings).filter(m => ids.has(m.source) && (m.rest === 'water' || ids.has(m.rest)))
}
