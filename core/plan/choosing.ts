import { z } from 'zod'
import { idSchema } from '../library/source.ts'

/** Axes of comparison: those that the search proves, and two that re-order what was found. */
export const axes = ['start', 'yield', 'steps', 'cost', 'hands-on', 'elapsed', 'mass-intensity', 'hazard'] as const
export type Axis = (typeof axes)[number]

/** How routes are looked for, kept with the plan: it says what was asked, and moves no figure of what was chosen. Every key has a default. */
export const choosingSchema = z.strictObject({
  by: z.enum(axes).default('start'),
  /** Materials, in any role. */
  avoid: z.array(idSchema).default([]),
  /** Transformations. */
  avoidStep: z.array(idSchema).default([]),
  /** Compounds that every route makes or starts from. */
  mustPass: z.array(idSchema).default([]),
  /** Hazard statements, such as H350; letters behind included. */
  avoidCode: z.array(z.string().min(1)).default([]),
  /** Regulated lists, by a part of their name. */
  avoidList: z.array(z.string().min(1)).default([]),
  ownedOnly: z.boolean().default(false),
  /** Only steps whose charge and yield were seen in a source or run at the own bench. */
  seenOnly: z.boolean().default(false),
  maxSteps: z.number().int().positive().nullable().default(null),
  /** Compounds to make rather than buy. */
  make: z.array(idSchema).default([]),
  /** Two to four axes on which routes are compared at once; fewer = they are not. */
  unbeaten: z.array(z.enum(axes)).max(4).default(['start', 'hands-on', 'hazard']),
  /** Only routes at least so many steps different from every one listed before; 1 = all. */
  apart: z.number().int().min(1).max(100).default(1),
  /** Has the integer solver prove the best by steps or hands-on hours where the search could not. */
  prove: z.boolean().default(false),
})
export type Choosing = z.infer<typeof choosingSchema>

export const firstChoosing: Choosing = choosingSchema.parse({})
