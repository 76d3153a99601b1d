import { z } from 'zod'
import { idSchema, sourceSchema, unitSchema } from './source.ts'

export const roles = [
  'substrate',
  'reagent',
  'catalyst',
  'base',
  'acid',
  'oxidant',
  'reductant',
  'solvent',
  'wash',
  'drying',
  'quench',
  'extraction',
  'recrystallisation',
  'other',
] as const
export type Role = (typeof roles)[number]
export const stages = ['vessel', 'quench', 'workup'] as const
export type Stage = (typeof stages)[number]

/** One line of what is charged, at the source's scale. `amount` null = as needed: never zero. */
export const chargeLineSchema = z.strictObject({
  material: idSchema,
  role: z.enum(roles),
  amount: z.number().positive().nullable(),
  unit: unitSchema,
  perGramProduct: z.number().positive().optional(),
  derived: z.boolean().optional(),
  at: z.enum(stages).optional(),
  from: z.string().min(1).optional().meta({
    description:
      'Where this amount comes from, where that is not as the sources say of the whole charge: text that begins with "memory", "from memory" or "common practice" (remembered), "set here" or "derived" (reckoned), "own bench", or is the citation of a source of the record (seen where that is checked). Any other text counts as remembered.',
  }),
})
export type ChargeLine = z.infer<typeof chargeLineSchema>

/** Percent of theory on the limiting reactant; for an isolation g of product per 100 g of feedstock. 10th, 50th, 90th percentile. */
export const yieldPercentSchema = z.strictObject({
  low: z.number(),
  typical: z.number(),
  high: z.number(),
  from: z.string().optional(),
})
export type YieldPercent = z.infer<typeof yieldPercentSchema>

export const reactantSchema = z.strictObject({ compound: idSchema, coefficient: z.number().positive() })
export type Reactant = z.infer<typeof reactantSchema>

export const reportSchema = z.strictObject({
  percent: z.number(),
  scaleG: z.number().positive().optional(),
  note: z.string().optional(),
  source: sourceSchema,
})

/** Ten years: no step takes longer. */
const mostHours = 87_600

export const taskSchema = z.strictObject({
  do: z.string().min(1),
  kind: z.enum(['hands', 'watch', 'stand']),
  hours: z.number().nonnegative().max(mostHours),
  waitUpToH: z.number().nonnegative(),
  splits: z.boolean().optional(),
  reaction: z.boolean().optional(),
})
export type Task = z.infer<typeof taskSchema>

export const holdPoints = ['never', 'hours', 'overnight', 'weeks'] as const

/** A balanced equation with its charge, yield, conditions, times, hazards and sources. Keys as in the library format. */
export const transformationSchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1),
  kind: z.enum(['reaction', 'isolation']),
  reactants: z.array(reactantSchema).min(1),
  products: z.array(reactantSchema).min(1),
  mainProduct: idSchema,
  limiting: idSchema,
  coProducts: z.array(z.strictObject({ compound: idSchema, yieldPercent: yieldPercentSchema, from: z.string().optional() })).optional(),
  charge: z.array(chargeLineSchema).min(1),
  yieldPercent: yieldPercentSchema,
  reports: z.array(reportSchema).optional(),
  lossG: z.number().nonnegative().optional(),
  tasks: z.array(taskSchema).optional(),
  timesBasis: z.enum(['source', 'estimate']).optional(),
  vesselKind: z.enum(['flask', 'beaker', 'pot', 'tube', 'mortar', 'tray', 'other']).optional(),
  foam: z.boolean().optional(),
  peakVolumeMl: z.number().positive().optional(),
  temperatureC: z.tuple([z.number(), z.number()]).optional(),
  elapsedHours: z.number().nonnegative().max(mostHours),
  handsOnHours: z.number().nonnegative().max(mostHours).optional(),
  operations: z.array(z.string()),
  equipment: z.array(z.string()),
  atmosphere: z.enum(['air', 'inert']),
  needsHood: z.boolean(),
  exotherm: z.enum(['none', 'mild', 'strong']),
  gasEvolved: z.array(z.strictObject({ compound: idSchema, perMolLimiting: z.number().positive() })),
  largestProvenG: z.number().positive().optional(),
  smallestProvenG: z.number().positive().optional(),
  holdPoint: z.enum(holdPoints).optional(),
  holdPointBasis: z.enum(['source', 'common practice']).optional(),
  hazardNotes: z.array(z.string()),
  intendedMeetings: z.array(z.strictObject({ materials: z.tuple([idSchema, idSchema]), condition: z.string() })).optional(),
  isolated: z.strictObject({ amount: z.number().positive(), unit: unitSchema }).optional(),
  isolatedBasis: z.string().optional(),
  note: z.string().optional(),
  sources: z.array(sourceSchema),
  confidence: z.enum(['checked', 'memory', 'common-practice']),
})
export type Transformation = z.infer<typeof transformationSchema>

/** Where a line goes unless it says otherwise: quench and work-up roles there, all else in the vessel. */
export function stageOf(line: ChargeLine): Stage {
  if (line.at) return line.at
  if (line.role === 'quench') return 'quench'
  return workUpRoles.has(line.role) ? 'workup' : 'vessel'
}
/** Roles that never count as a reactant's charge. */
export const workUpRoles: ReadonlySet<Role> = new Set(['wash', 'drying', 'extraction', 'recrystallisation'])
/** Roles whose lines make up a reactant's charge; quench lines stand in only where none of these has an amount. */
export const chargedRoles: ReadonlySet<Role> = new Set([
  'substrate',
  'reagent',
  'catalyst',
  'acid',
  'base',
  'oxidant',
  'reductant',
  'solvent',
  'other',
])
