import type { Decision, Item } from './decision.ts'
import { type Filling, fillingOf } from './filling.ts'
import { filledCost, goodsOf, type OpenGroup, openGroup, type Picked, type Relaxed, reducedPrice, relaxed } from './group-relaxed.ts'
import type { Offer } from './offers.ts'
import type { Supplier } from './packs.ts'
import { packsOnTop, type RecipeChoice, recipeChoices } from './recipe-choices.ts'
import { packsWithin } from './reduced-covers.ts'
import { isOpenTo, type SupplierGroup, supplierGroups } from './supplier-groups.ts'

/** The cheapest basket that reaches every minimum order. */
export interface WithMinimums {
  readonly decision: Decision
  readonly costMinor: number
  /** No basket costs less; the cost itself where that is proven. */
  readonly boundMinor: number
}

const mostChoices = 64
/** Packs of one material within the gap. */
const mostPacks = 2000
/** Picks taken up in all; counted, never timed. */
const usualBudget = 2_000_000

/**
 * The cheapest basket under minimum orders, where suppliers are few: every group of them is bounded by a relaxation of its minimums, and
 * where that leaves a gap to the best basket known, every pick of packs within the gap is looked at.
 *
 * Exact: a basket is a cover of every need with packs on top; each cover costs its relaxed bound plus what its packs cost more than the
 * cheapest at the same charges, so that those beyond the gap cannot be better.
 *
 * @returns `infeasible` where no basket reaches every minimum; null where this is not the way to find it (many suppliers, solutions with many
 * recipes, packs far too small)
 */
export function cheapestWithMinimums(
  items: readonly Item[],
  options: { readonly mostSuppliers?: number; readonly budget?: number; readonly shouldStop?: () => boolean } = {},
): WithMinimums | 'infeasible' | null {
  const choices = recipeChoices(items, mostChoices)
  if (choices === null) return null
  const suppliers = [...new Set(items.flatMap(item => item.offers).map(offer => offer.supplier))]
  const groups = supplierGroups(choices, suppliers, options.mostSuppliers)
  if (groups === null) return null
  return new MinimumSearch(items, choices, options.budget ?? usualBudget, options.shouldStop).best(groups)
}

class MinimumSearch {
  #best = Number.POSITIVE_INFINITY
  #found: { readonly open: OpenGroup; readonly picked: Picked } | null = null
  #work = 0
  readonly #onTop: ReturnType<typeof packsOnTop>
  readonly #fillings = new Map<string, { readonly offers: readonly Offer[]; readonly filling: Filling | null }>()

  constructor(
    items: readonly Item[],
    private readonly choices: readonly RecipeChoice[],
    private readonly budget: number,
    private readonly shouldStop: (() => boolean) | undefined,
  ) {
    this.#onTop = packsOnTop(items)
  }

  best(groups: readonly SupplierGroup[]): WithMinimums | 'infeasible' | null {
    const gaps: { readonly open: OpenGroup; readonly top: Relaxed }[] = []
    for (const group of groups) {
      if (group.boundMinor >= this.#best) break
      const fillings = this.#fillingsOf(group)
      if (fillings === null) return null
      const open = openGroup(group, fillings)
      const top = this.#relaxed(open)
      if (top === null) return null
      if (lowest(top) < this.#best) gaps.push({ open, top })
    }
    if (this.#found === null) return 'infeasible'
    gaps.sort((a, b) => a.top.boundMinor - b.top.boundMinor)
    let bound = Number.POSITIVE_INFINITY
    for (const { open, top } of gaps) {
      if (lowest(top) >= this.#best) break
      // Once more from where it came to: the steps are the better for a better basket.
      bound = Math.min(bound, this.#closeGap(open, this.#relaxed(open, top.charges) ?? top))
    }
    const { open, picked } = this.#found
    return { decision: this.#decisionOf(open, picked), costMinor: this.#best, boundMinor: Math.min(bound, this.#best) }
  }

  #relaxed(open: OpenGroup, from?: readonly number[]): Relaxed | null {
    return relaxed(
      open,
      () => this.#best,
      picked => this.#look(open, picked.goodsMinor, () => picked.counts),
      from,
    )
  }

  /** What packs on top can come to, by supplier of the group. */
  #fillingsOf(group: SupplierGroup): readonly Filling[] | null {
    const fillings: Filling[] = []
    for (const supplier of group.suppliers) {
      const { filling } = this.#onTopOf(group, supplier)
      if (filling === null) return null
      fillings.push(filling)
    }
    return fillings
  }

  /** One pack of each price, of what is wanted anyway where there is such a one. */
  #onTopOf(group: SupplierGroup, supplier: Supplier) {
    const key = `${this.choices.indexOf(group.choice)} ${supplier.id} ${group.hazardousFrom.has(supplier)}`
    let known = this.#fillings.get(key)
    if (known === undefined) {
      const byPrice = new Map<number, Offer>()
      const wanted = new Set(group.choice.wanted.map(({ item }) => item))
      for (const isWanted of [true, false])
        for (const { item, offer } of this.#onTop)
          if (
            wanted.has(item) === isWanted &&
            offer.supplier === supplier &&
            isOpenTo(group, item, offer) &&
            !byPrice.has(offer.priceMinor)
          )
            byPrice.set(offer.priceMinor, offer)
      const offers = [...byPrice.values()].sort((a, b) => a.priceMinor - b.priceMinor)
      known = {
        offers,
        filling: fillingOf(
          offers.map(offer => offer.priceMinor),
          supplier.minimumOrderMinor ?? 0,
        ),
      }
      this.#fillings.set(key, known)
    }
    return known
  }

  #look(open: OpenGroup, goodsMinor: readonly number[], counts: () => Picked['counts']): void {
    const cost = filledCost(open, goodsMinor)
    if (cost >= this.#best) return
    this.#best = cost
    this.#found = { open, picked: { counts: counts(), goodsMinor: [...goodsMinor] } }
  }

  /**
   * Looks at every pick within the gap between a group's bound and the best basket, the gap widening step by step.
   *
   * @returns what no basket of the group is cheaper than
   */
  #closeGap(open: OpenGroup, top: Relaxed): number {
    let seen = 0
    for (let within = 1; ; within *= 2) {
      const gap = Math.min(within, this.#best - 1 - top.boundMinor)
      if (gap < seen - 1e-6 || gap < 0) return Number.POSITIVE_INFINITY
      if (!this.#looksWithin(open, top, gap)) return Math.ceil(top.boundMinor + seen - 1e-6)
      if (top.boundMinor + gap >= this.#best - 1 - 1e-6) return Number.POSITIVE_INFINITY
      seen = gap
    }
  }

  /** @returns false where the work allowed, or the user, ended it */
  #looksWithin(open: OpenGroup, top: Relaxed, gap: number): boolean {
    const priceOf = reducedPrice(open, top.charges)
    const slack = 1e-6 * Math.max(1, top.boundMinor)
    const rows: { readonly index: number; readonly ways: readonly Row[] }[] = []
    for (const [index, one] of open.wanted.entries()) {
      const least = one.offers.reduce((sum, offer, at) => sum + priceOf(offer) * top.picked.counts[index]![at]!, 0)
      const ways = packsWithin(one, priceOf, least + gap + slack, mostPacks)
      if (ways === null) return false
      const own = ways.map(({ counts, cost }) => ({ counts, extra: cost - least, goods: goodsOf({ ...open, wanted: [one] }, [counts]) }))
      rows.push({ index, ways: own.sort((a, b) => a.extra - b.extra) })
    }
    // Those whose second way costs least come first, so that a branch ends where no further one has a second way left to it.
    rows.sort((a, b) => (a.ways[1]?.extra ?? Number.POSITIVE_INFINITY) - (b.ways[1]?.extra ?? Number.POSITIVE_INFINITY))
    const rest = restGoods(rows, open.minimums.length)
    const chosen = rows.map(row => row.ways[0]!)
    const goods = open.minimums.map(() => 0)
    const walk = (at: number, extra: number): boolean => {
      if (++this.#work > this.budget || ((this.#work & 4095) === 0 && this.shouldStop?.())) return false
      const row = rows[at]
      if (row === undefined || extra + (row.ways[1]?.extra ?? Number.POSITIVE_INFINITY) > gap + slack) {
        for (let later = at; later < rows.length; later++) chosen[later] = rows[later]!.ways[0]!
        this.#look(
          open,
          goods.map((sum, s) => sum + rest[at]![s]!),
          () => {
            const counts: (readonly number[])[] = []
            for (const [place, { index }] of rows.entries()) counts[index] = chosen[place]!.counts
            return counts
          },
        )
        return true
      }
      for (const way of row.ways) {
        if (extra + way.extra > gap + slack || top.boundMinor + extra + way.extra > this.#best - 1 + slack) break
        chosen[at] = way
        for (let s = 0; s < goods.length; s++) goods[s]! += way.goods[s]!
        const goesOn = walk(at + 1, extra + way.extra)
        for (let s = 0; s < goods.length; s++) goods[s]! -= way.goods[s]!
        if (!goesOn) return false
      }
      return true
    }
    return walk(0, 0)
  }

  #decisionOf(open: OpenGroup, { counts, goodsMinor }: Picked): Decision {
    const bought = new Map<Offer, number>()
    const add = (offer: Offer, count: number) => void (count > 0 && bought.set(offer, (bought.get(offer) ?? 0) + count))
    for (const [index, { offers }] of open.wanted.entries()) for (const [at, offer] of offers.entries()) add(offer, counts[index]![at]!)
    for (const [s, supplier] of open.group.suppliers.entries()) {
      const { offers } = this.#onTopOf(open.group, supplier)
      const more = open.fillings[s]!.packs(open.minimums[s]! - goodsMinor[s]!)
      for (const [at, offer] of offers.entries()) add(offer, more[at]!)
    }
    return { counts: bought, made: open.group.choice.made, missing: new Set() }
  }
}

/** One way to buy one material. */
interface Row {
  readonly counts: readonly number[]
  /** What it costs more than the cheapest, at the charges. */
  readonly extra: number
  readonly goods: readonly number[]
}

const lowest = ({ boundMinor }: Relaxed): number => Math.ceil(boundMinor - 1e-6)

/** By place: the goods of the first way of every row from there on. */
function restGoods(rows: readonly { readonly ways: readonly Row[] }[], suppliers: number): readonly (readonly number[])[] {
  const rest: (readonly number[])[] = [Array.from({ length: suppliers }, () => 0)]
  for (const row of [...rows].reverse()) rest.unshift(rest[0]!.map((sum, s) => sum + row.ways[0]!.goods[s]!))
  return rest
}
