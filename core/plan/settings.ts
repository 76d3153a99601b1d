import { z } from 'zod'
import { idSchema } from '../library/source.ts'
import { mostBatches } from '../route/batches.ts'
import { dateSchema } from './date-schema.ts'

/** Percent of theory; for an isolation g per 100 g of feedstock. Nothing gained at all is no yield to plan with. */
const percentSchema = z.number().positive().max(100)

/** What the person owns and how they work. Every key has a default, so that an empty object is a complete answer. */
export const settingsSchema = z.strictObject({
  bench: z.string().default(''),
  /** Whose hand: published yields as they stand, or what people report at a first attempt. */
  hand: z.enum(['practised', 'first-time']).default('practised'),
  startDate: dateSchema.nullable().default(null),
  /** Bench windows; weekday 1 = Monday to 7 = Sunday; `from` is local wall time. */
  windows: z
    .array(
      z.strictObject({
        weekday: z.number().int().min(1).max(7),
        from: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/),
        hours: z.number().positive().max(24),
      }),
    )
    .max(200)
    .default([]),
  daysOff: z.array(dateSchema).max(5000).default([]),
  deliveryDays: z.number().int().nonnegative().max(3650).default(5),
  /** Empty = not stated: one batch, its volume told. */
  vessels: z
    .array(
      z.strictObject({
        kind: z.enum(['flask', 'beaker', 'pot', 'tube', 'mortar', 'tray', 'other']),
        volumeMl: z.number().min(0.01).max(1e7),
        count: z.number().int().positive().max(10_000),
      }),
    )
    .max(200)
    .default([]),
  heatSources: z.number().int().nonnegative().nullable().default(null),
  hood: z.boolean().nullable().default(null),
  inertGas: z.boolean().nullable().default(null),
  /** Grams of the start or of an intermediate that no goal may use. */
  keptBack: z.array(z.strictObject({ compound: idSchema, massG: z.number().nonnegative() })).default([]),
  roomVolumeM3: z.number().min(0.01).max(1e6).nullable().default(null),
  region: z.enum(['UN', 'EU', 'UK', 'US']).default('UN'),
  buyer: z.enum(['public', 'professional']).default('public'),
  /** Added to every need, as a fraction. */
  reserve: z.number().min(0).max(5).default(0.1),
  repeatRiskiest: z.boolean().default(false),
  /** Of each product, kept as a sample; 0 = none. */
  retainedSampleG: z.number().nonnegative().max(1e6).default(0),
  /** Chance with which all mass goals together are to be reached; null = at typical yields. */
  confidence: z.number().gt(0).lt(1).nullable().default(null),
  /** Batches asked for, by transformation. */
  batches: z.record(z.string(), z.number().int().positive().max(mostBatches)).default({}),
  /** When a batch is called far from what was published: what differs from the usual thresholds (times the largest scale, part of the smallest, g). */
  scale: z
    .strictObject({
      above: z.number().min(1).max(1e6),
      aboveStrongExotherm: z.number().min(1).max(1e6),
      below: z.number().nonnegative().max(1),
      leastProductG: z.number().nonnegative().max(1e6),
    })
    .partial()
    .default({}),
  /** Share of the variance of a yield that belongs to the bench rather than to the single run. */
  benchShare: z.number().min(0).max(1).default(0.5),
  /** Own yields, percent, by transformation; they stand before the library's. */
  yields: z
    .record(
      z.string(),
      z
        .strictObject({ low: z.number().min(0).max(100), typical: percentSchema, high: percentSchema })
        .refine(({ low, typical, high }) => low <= typical && typical <= high, { message: 'low, typical and high in rising order' }),
    )
    .default({}),
  /** When a solvent is worth distilling off for reuse: what differs from the usual rule of thumb. */
  recovery: z
    .strictObject({
      share: z.number().min(0).max(1),
      mlPerHour: z.number().min(1).max(1e6),
      handsH: z.number().nonnegative().max(1000),
      apartC: z.number().nonnegative().max(1000),
      leastMl: z.number().nonnegative().max(1e7),
      worthPerHourMinor: z.number().nonnegative().max(1e10),
    })
    .partial()
    .default({}),
})
export type Settings = z.infer<typeof settingsSchema>

export const defaultSettings: Settings = settingsSchema.parse({})
