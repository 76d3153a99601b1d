import { z } from 'zod'
import { toldDifferences } from '../library/differences.ts'
import { becomeUnknown, goneText } from '../library/hazards-lost.ts'
import type { Library } from '../library/library.ts'
import { libraryFileSchema } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { isOwnWord } from '../library/own-word.ts'
import { idSchema } from '../library/source.ts'
import { isOwnBench } from '../library/trust.ts'
import { askedAs } from '../problem/asked-as.ts'
import { parseJson } from '../problem/json.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { schemaProblems } from '../problem/schema.ts'
import { packsFileSchema } from '../shopping/packs.ts'
import { shelfItemSchema } from '../shopping/shelf.ts'
import { canonical } from './canonical.ts'
import { choosingSchema } from './choosing.ts'
import { dateSchema } from './date-schema.ts'
import { PlanRefused } from './goals.ts'
import { libraryOfParts } from './library-of-parts.ts'
import { missingSteps, stepMissing } from './missing-steps.ts'
import type { LogEntry, Plan } from './plan.ts'
import { settingsSchema } from './settings.ts'
import { sha256 } from './sha256.ts'
import { sliceFile, sliceOfPlan } from './slice.ts'

const routeSchema = z.strictObject({
  start: idSchema,
  target: idSchema,
  steps: z.array(z.strictObject({ transformation: idSchema, makes: idSchema })),
})
const amountSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('mass'), massG: z.number().positive() }),
  z.strictObject({ kind: z.literal('share'), fraction: z.number().gt(0).lte(1) }),
  z.strictObject({ kind: z.literal('rest'), leastG: z.number().positive().optional() }),
])

export const logEntrySchema = z.strictObject({
  id: z.string().min(1),
  step: idSchema,
  date: dateSchema.nullable(),
  batch: z.number().int().positive(),
  chargedG: z.number().positive().max(1e9).nullable(),
  chargedAs: z.literal('planned').optional(),
  weighedG: z.number().nonnegative().max(1e9),
  dampPercent: z.number().min(0).lt(100),
  purity: z.number().gt(0).lte(1).nullable(),
  meltingC: z.tuple([z.number(), z.number()]).optional(),
  failed: z.boolean(),
  note: z.string(),
  replaces: z.string().nullable(),
})

/** A plan as data, without its library. */
export const planSchema = z.strictObject({
  title: z.string().max(500),
  start: z.strictObject({ material: idSchema, massG: z.number().positive().nullable() }),
  goals: z.array(
    z.strictObject({
      target: idSchema,
      amount: amountSchema,
      route: routeSchema,
      groups: z.strictObject({ count: z.number().int().min(2).max(1000), as: z.enum(['runs', 'lot']) }).optional(),
    }),
  ),
  shelf: z.array(shelfItemSchema),
  packs: packsFileSchema.nullable(),
  settings: settingsSchema,
  choosing: choosingSchema.optional(),
  log: z.array(logEntrySchema).max(20_000),
  topUps: z.array(z.strictObject({ compound: idSchema, massG: z.number().positive().max(1e9) })).optional(),
  repeats: z
    .array(z.strictObject({ step: idSchema, limitingG: z.number().positive().max(1e9) }))
    .max(1000)
    .optional(),
  taken: z
    .array(
      z.strictObject({
        way: z.enum(['top-up', 'repeat', 'another-route']),
        after: z.string().min(1),
        addedG: z.number().nonnegative().max(1e9),
      }),
    )
    .max(1000)
    .optional(),
  edition: z.strictObject({ number: z.number().int().positive(), changed: z.array(z.string()) }).optional(),
  keepsRecords: z.boolean().optional(),
  // Streams of draws are seeded by 32 bits.
  seed: z.number().int().min(0).max(4_294_967_295),
})

/** The plan file, `waybench-plan` version 1: everything needed to evaluate it again. */
export const planFileSchema = planSchema.extend({
  format: z.literal('waybench-plan'),
  version: z.literal(1),
  library: z.strictObject({ title: z.string(), hash: z.string().regex(/^[0-9a-f]{64}$/) }),
  slice: libraryFileSchema,
})
export type PlanFile = z.infer<typeof planFileSchema>

/** A plan that was opened, with what became of the library since it was saved. */
export interface OpenedPlan {
  readonly plan: Plan
  /** The library as it was: what the plan uses of it. */
  readonly slice: Library
  /** Identity of the library it was saved with. */
  readonly library: { readonly title: string; readonly hash: string }
}

const known = new WeakMap<Library, string>()

/** Identity of a library: SHA-256 of its records in order of id, keys in order of name. */
export function libraryHash(library: Library): string {
  const before = known.get(library)
  if (before !== undefined) return before
  const ordered = <T extends { readonly id: string }>(records: Iterable<T>): T[] => [...records].sort((a, b) => (a.id < b.id ? -1 : 1))
  const hash = sha256(canonical([ordered(library.materials.values()), ordered(library.transformations.values())]))
  known.set(library, hash)
  return hash
}

/**
 * The plan as a file: plan, identity of its library, and the slice it uses.
 *
 * @param compared transformations of the ways that it was compared with, so that they can be compared where the library lacks them
 * @throws PlanRefused where the library lacks a step of its routes or of its log: whoever writes it must bring them first
 */
export function planFileOf(library: Library, plan: Plan, compared: readonly string[] = []): PlanFile {
  const missing = missingSteps(library, plan)
  if (missing.length > 0) throw new PlanRefused(missing.map(stepMissing))
  const file = {
    format: 'waybench-plan',
    version: 1,
    ...plan,
    library: { title: library.title, hash: libraryHash(library) },
    slice: sliceFile(sliceOfPlan(library, plan, compared)),
  }
  return planFileSchema.parse(JSON.parse(JSON.stringify(file)))
}

/**
 * A plan file from its text.
 *
 * @returns every problem with file and field. Warnings: entries of the log that replace one which is not there
 */
export function readPlanFile(name: string, text: string): Checked<OpenedPlan> {
  const json = parseJson(name, text)
  return json.ok ? planFromFile(name, json.value) : bad(json.problems)
}

/** The same from JSON that was parsed before. */
export function planFromFile(name: string, value: unknown): Checked<OpenedPlan> {
  const parsed = planFileSchema.safeParse(value)
  if (!parsed.success) return bad(schemaProblems(parsed.error, planFileSchema, value, [name]))
  const { format: _format, version: _version, library, slice, ...plan } = parsed.data
  const problems = logProblems(plan.log, name)
  if (problems.length > 0) return bad(problems)
  const opened: OpenedPlan = {
    plan: plan as Plan,
    slice: libraryOfParts({ title: slice.title }, slice.materials, slice.transformations),
    library,
  }
  return good(opened)
}

/** Two entries that replaced each other would both be gone, and with them what was weighed: a correction names one that stands before it. */
function logProblems(log: readonly Pick<LogEntry, 'id' | 'replaces'>[], name: string): readonly Problem[] {
  const problems: Problem[] = []
  const before = new Set<string>()
  for (const { id, replaces } of log) {
    if (before.has(id)) {
      problems.push({
        code: 'log-id-twice',
        where: [name, 'log', id],
        what: `Two log entries are called ${id}.`,
        why: 'A correction names the entry that it replaces.',
        cure: 'Give one of them another id.',
      })
    }
    if (replaces !== null && !before.has(replaces)) {
      problems.push({
        code: 'log-replaces',
        where: [name, 'log', id, 'replaces'],
        what: `Entry ${id} replaces ${replaces === id ? 'itself' : `${replaces}, which does not stand before it`}.`,
        why: 'A correction comes after what it corrects; otherwise what was weighed would count for nothing.',
        cure: 'Name an earlier entry of the log, or null.',
      })
    }
    before.add(id)
  }
  return problems
}

/**
 * What changed in a library since a plan was saved, as warnings: records of its slice that are gone or differ, field by field; empty where
 * the library is the same. A plan that keeps its records reckons as before all the same, and each warning says so.
 */
export function changesSince(library: Library, opened: OpenedPlan): readonly Problem[] {
  if (libraryHash(library) === opened.library.hash) return []
  const changes: Problem[] = []
  const keeps = opened.plan.keepsRecords === true
  const nameOf = (id: string): string => library.materials.get(id)?.name ?? opened.slice.materials.get(id)?.name ?? id
  const compare = <R extends Pick<Material, 'id' | 'name' | 'sources'>>(
    kind: string,
    before: ReadonlyMap<string, R>,
    now: ReadonlyMap<string, R>,
  ): void => {
    for (const [id, record] of before) {
      const current = now.get(id)
      if (current === undefined) {
        // Taken out since, or never held here: the file cannot tell one from the other.
        changes.push({
          code: 'record-gone',
          where: [kind, id],
          what: `The library here does not hold ${record.name}; the plan brings it.`,
          why: 'The plan reckons with its own record of it.',
          cure: 'Leave it so, take the record into your own library, or choose another route.',
        })
        continue
      }
      const fields = toldDifferences(record, current, nameOf)
      if (fields.length === 0) continue
      changes.push({
        code: 'record-changed',
        where: [kind, id],
        what: `${record.name}${differs(record, current)}: ${fields.map(({ text }) => text).join('. ')}.${fewer(record, current)}`,
        why: keeps ? 'The plan keeps the record it was saved with.' : 'The plan now reckons with the new figures.',
        cure: keeps
          ? `Leave it so, or reckon with the new: ${askedAs('keepsRecords: false')}.`
          : `Look over the amounts again, or keep the records that the plan was saved with: ${askedAs('keepsRecords: true')}.`,
      })
    }
  }
  compare('materials', opened.slice.materials, library.materials)
  compare('transformations', opened.slice.transformations, library.transformations)
  return changes
}

/** Said beside what changed, and never left to be read out of it: a known hazard that is told no more. */
function fewer(before: object, now: object): string {
  const of = (record: object) => (record as { readonly hazards?: Material['hazards'] }).hazards
  if (becomeUnknown(of(before), of(now))) return ' Its hazards are unknown now, which is not safe.'
  const gone = goneText(of(before), of(now))
  return gone === null ? '' : ` Fewer hazards than the plan was saved with: ${gone}.`
}

/** A figure of somebody's own bench, or put right by them, was never in a library that does not tell it. */
function differs(record: Pick<Material, 'sources'>, now: Pick<Material, 'sources'>): string {
  if (record.sources.some(isOwnBench) && !now.sources.some(isOwnBench)) return ', in the plan by its own bench, here not'
  return isOwnWord(record) && !isOwnWord(now) ? ', put right in the plan, here not' : ' changed since the plan was saved'
}
