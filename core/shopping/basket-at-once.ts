import type { Library } from '../library/library.ts'
import { costBound } from './cost-bound.ts'
import { coversNeeds, type Decision, type Item, reachesMinimums } from './decision.ts'
import { fillingOf } from './filling.ts'
import type { Decided } from './least-cost.ts'
import type { Offer } from './offers.ts'
import { ordersOf } from './orders.ts'
import type { Supplier } from './packs.ts'
import { packsOnTop, type RecipeChoice, recipeChoices } from './recipe-choices.ts'
import { leastPacks, type Wanted } from './reduced-covers.ts'

const mostChoices = 64

/**
 * A basket without a program, for whoever will wait no longer: each material from the one supplier where it is cheapest, suppliers given up
 * one by one as long as that saves, orders below their minimum filled up. It covers every need; the bound tells how much a cheaper basket
 * could save at the most.
 *
 * @returns null where none is found this way
 */
export function basketAtOnce(library: Library, items: readonly Item[]): Decided | null {
  const missing = outOfReach(items)
  const reached = without(items, missing)
  let best: Priced | null = null
  for (const choice of recipeChoices(reached, mostChoices) ?? []) {
    const found = new Shop(library, reached, choice).cheapest()
    if (found !== null && (best === null || found.costMinor < best.costMinor)) best = found
  }
  if (best === null) return null
  const decision: Decision = { ...best, missing }
  if (!coversNeeds(items, decision) || !reachesMinimums(decision)) return null
  return { decision, costMinor: best.costMinor, boundMinor: Math.min(best.costMinor, costBound(items)) }
}

interface Priced extends Pick<Decision, 'counts' | 'made'> {
  readonly costMinor: number
}

const isMadeUp = ({ makings, need, stock }: Item): boolean => makings.length > 0 && need > stock

/** Solutions that cannot be made up even where nothing else is. */
function outOfReach(items: readonly Item[]): ReadonlySet<string> {
  const solutions = items.filter(isMadeUp)
  return new Set(
    solutions
      .filter(one => {
        const others = new Set(solutions.filter(other => other !== one).map(other => other.material.id))
        return recipeChoices(without(items, others), mostChoices)?.length === 0
      })
      .map(one => one.material.id),
  )
}

const without = (items: readonly Item[], ids: ReadonlySet<string>): readonly Item[] =>
  items.map(item => (ids.has(item.material.id) ? { ...item, need: 0 } : item))

/** One choice of recipes, and where each material may be bought for it. */
class Shop {
  /** By material wanted and supplier: packs that suffice. */
  readonly #ways: readonly ReadonlyMap<Supplier, Bought>[]
  readonly #onTop: readonly Offer[]
  readonly #all: readonly Supplier[]

  constructor(
    private readonly library: Library,
    items: readonly Item[],
    private readonly choice: RecipeChoice,
  ) {
    this.#onTop = packsOnTop(items).map(({ offer }) => offer)
    this.#all = [...new Set(choice.wanted.flatMap(({ item }) => item.offers).map(offer => offer.supplier))]
    this.#ways = choice.wanted.map(({ item, amount }) => {
      const own = this.#all.map(supplier => ({ supplier, offers: item.offers.filter(offer => offer.supplier === supplier) }))
      return new Map(
        own.flatMap(({ supplier, offers }) => (offers.length === 0 ? [] : [[supplier, boughtBy({ offers, amount })] as const])),
      )
    })
  }

  cheapest(): Priced | null {
    let open = this.#all
    let best = this.#from(open)
    for (;;) {
      let better: { readonly open: readonly Supplier[]; readonly found: Priced } | null = null
      for (const given of open) {
        const left = open.filter(supplier => supplier !== given)
        const found = this.#from(left)
        if (found !== null && found.costMinor < (better?.found ?? best ?? { costMinor: Number.POSITIVE_INFINITY }).costMinor)
          better = { open: left, found }
      }
      if (better !== null) {
        open = better.open
        best = better.found
      } else if (best === null && open.length > 1) open = open.slice(0, -1)
      else return best
    }
  }

  /** Everything from these suppliers, each material where it is cheapest; null where one has it not, or its minimum cannot be reached. */
  #from(open: readonly Supplier[]): Priced | null {
    const counts = new Map<Offer, number>()
    const add = (offer: Offer, count: number): void => void (count > 0 && counts.set(offer, (counts.get(offer) ?? 0) + count))
    const goods = new Map<Supplier, number>()
    for (const ways of this.#ways) {
      let least: { readonly supplier: Supplier; readonly bought: Bought } | null = null
      for (const supplier of open) {
        const bought = ways.get(supplier)
        if (bought !== undefined && (least === null || bought.costMinor < least.bought.costMinor)) least = { supplier, bought }
      }
      if (least === null) return null
      for (const [offer, count] of least.bought.counts) add(offer, count)
      goods.set(least.supplier, (goods.get(least.supplier) ?? 0) + least.bought.costMinor)
    }
    for (const [supplier, minor] of goods) {
      const short = (supplier.minimumOrderMinor ?? 0) - minor
      if (short <= 0) continue
      const own = this.#onTop.filter(offer => offer.supplier === supplier)
      const filling = fillingOf(
        own.map(offer => offer.priceMinor),
        short,
      )
      if (filling === null || !Number.isFinite(filling.least(short))) return null
      for (const [at, count] of filling.packs(short).entries()) add(own[at]!, count)
    }
    const costMinor = ordersOf(this.library, counts).reduce((sum, order) => sum + order.totalMinor, 0)
    return { counts, made: this.choice.made, costMinor }
  }
}

interface Bought {
  readonly costMinor: number
  readonly counts: ReadonlyMap<Offer, number>
}

/** The cheapest packs of one supplier; where looking for them takes too much work, the one pack that suffices most cheaply by itself. */
function boughtBy(wanted: Wanted): Bought {
  const { offers, amount } = wanted
  const taken = leastPacks(wanted, offer => offer.priceMinor)
  if (taken !== null) return { costMinor: taken.cost, counts: new Map(offers.map((offer, at) => [offer, taken.counts[at]!])) }
  const alone = offers.map(offer => ({ offer, count: Math.ceil(amount / offer.size) }))
  const { offer, count } = alone.reduce((a, b) => (b.count * b.offer.priceMinor < a.count * a.offer.priceMinor ? b : a))
  return { costMinor: count * offer.priceMinor, counts: new Map([[offer, count]]) }
}
