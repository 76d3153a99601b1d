import { z } from 'zod'
import { type Mark, trustOfMark } from '../library/mark.ts'
import type { Trust } from '../library/trust.ts'

/** How sure a price is, in the words that figures of the library are told by. */
export const priceTrusts = ['seen', 'remembered', 'own bench', 'invented'] as const

/** Where a price was got: in words, how sure, and when. Each may be left out: what is not stated is not known. */
export const priceFromSchema = z.strictObject({
  source: z.string().regex(/\S/).max(1000).optional(),
  trust: z.enum(priceTrusts).optional(),
  /** The day or month it held, `YYYY-MM-DD` or `YYYY-MM`. */
  date: z.union([z.iso.date(), z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/)]).optional(),
})
export type PriceFrom = z.infer<typeof priceFromSchema>

/** What speaks for the prices of a pack: its own statement, else that of its supplier, else that of the whole file. */
export interface PriceStated {
  readonly priceFrom?: PriceFrom | undefined
}

/** The statement that holds for a pack, or for what a supplier asks besides; empty where none does. An empty one of its own hides those behind it. */
export const priceFromOf = (...nearestFirst: readonly (PriceStated | undefined)[]): PriceFrom =>
  nearestFirst.find(one => one?.priceFrom !== undefined)?.priceFrom ?? {}

/** The same with its mark, ready to be told. */
export interface PriceFigure {
  readonly trust: Trust
  readonly mark: Exclude<Mark, 'reckoned'>
  /** "Kiln Lane list, page 4, 2026-11-03"; null where no source is stated. */
  readonly source: string | null
}

export function priceFigure({ source, trust, date }: PriceFrom): PriceFigure {
  const mark = trust ?? 'unknown'
  const unsure = trust === undefined && source !== undefined ? 'not said whether it was seen there' : undefined
  const told = [source, date, unsure].filter(part => part !== undefined)
  return {
    trust: trustOfMark(mark),
    mark,
    source: source === undefined ? (date === undefined ? null : `source not stated, ${date}`) : told.join(', '),
  }
}

/** What is said of a price without a source. */
export const sourceNotStated = 'source not stated'
