import type { Marked } from '../library/mark.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { type PriceFigure, type PriceFrom, priceFigure, sourceNotStated } from '../shopping/price-from.ts'
import type { PackCount } from '../shopping/shopping.ts'
import { markLetters, markText } from './marks.ts'
import { capital, counted } from './words.ts'

/** Every price of the basket that is paid, with where it was got: packs, then what suppliers ask besides. */
export function pricesOf({ shopping, basket }: Pick<Evaluation, 'shopping' | 'basket'>): readonly PriceFigure[] {
  return [
    ...shopping.flatMap(line => line.packs.map(pack => priceFigure(pack.priceFrom))),
    ...(basket?.orders ?? []).filter(order => order.carriageMinor + order.hazardousFeeMinor > 0).map(order => priceFigure(order.priceFrom)),
  ]
}

/** A price's mark, with its source or that none is stated. */
export function priceMarked(from: PriceFrom): Marked {
  const { mark, source } = priceFigure(from)
  return { mark, source: source ?? sourceNotStated }
}

/** The marks of the packs of a line, each once. */
export function marksOfPacks(packs: readonly PackCount[]): readonly Marked[] {
  const told = packs.map(pack => priceMarked(pack.priceFrom))
  return told.filter((one, at) => told.findIndex(other => other.mark === one.mark && other.source === one.source) === at)
}

/** "seen in a source: Kiln Lane list, 2026-11-03"; of a price without one "source not stated". */
const priceText = ({ mark, source }: PriceFigure): string =>
  mark === 'unknown' ? (source ?? sourceNotStated) : markText({ mark, source: source ?? sourceNotStated })

/**
 * Where the prices of a basket are from, as one sentence with the letters that stand beside them: "Prices: i invented for the demonstration:
 * made up for the demonstration."; null where nothing is bought.
 */
export function priceSentence(evaluation: Pick<Evaluation, 'shopping' | 'basket'>): string | null {
  const prices = pricesOf(evaluation)
  if (prices.length === 0) return null
  const counts = new Map<string, number>()
  for (const one of prices) {
    const told = `${markLetters[one.mark]} ${priceText(one)}`
    counts.set(told, (counts.get(told) ?? 0) + 1)
  }
  const parts = [...counts].map(([told, count]) => (counts.size === 1 ? told : `${told} (${counted(count, 'price')})`))
  return `${capital(counts.size === 1 && prices.length > 1 ? 'all prices' : 'prices')}: ${parts.join('; ')}.`
}
