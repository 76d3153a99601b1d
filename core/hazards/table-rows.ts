import { z } from 'zod'
import { sourceSchema } from '../library/source.ts'

/** What every row of every table ends with: how sure it is, and where it was read. */
const proof = { confidence: z.string().min(1), sources: z.array(sourceSchema).min(1) }
const text = z.string().min(1)
const signal = z.enum(['Danger', 'Warning', 'none'])
const pictogram = z.string().regex(/^GHS0[1-9]$/)
const row = <K extends string, S extends z.ZodRawShape>(kind: K, shape: S) => z.strictObject({ kind: z.literal(kind), ...shape, ...proof })

export const hazardStatementSchema = row('hazardStatement', {
  code: text,
  statement: text,
  entries: z.array(z.strictObject({ class: text, classCode: text, category: z.string(), signal, pictograms: z.array(pictogram) })).min(1),
  annexVIClasses: z.array(text).optional(),
  parts: z.array(text).optional(),
  status: text.optional(),
  signal: text,
})
export const precautionaryStatementSchema = row('precautionaryStatement', {
  code: text,
  statement: text,
  group: text,
  olderText: text.optional(),
  status: text.optional(),
  parts: z.array(text).optional(),
})
export const benchPrecautionsSchema = row('benchPrecautions', { code: text, precautionary: z.array(text).min(1) })
export const pictogramSchema = row('pictogram', { code: pictogram, name: text, usedFor: text })
export const labelRuleSchema = row('labelRule', {
  id: text,
  text,
  logic: z.strictObject({
    if: z
      .strictObject({
        signal: signal.optional(),
        pictogram: pictogram.optional(),
        pictogramAny: z.array(pictogram).optional(),
        code: text.optional(),
      })
      .optional(),
    drop: z.strictObject({ signal: signal.optional(), pictogram: pictogram.optional(), code: text.optional() }).optional(),
    dropIfOnlyFor: z.strictObject({ pictogram, codes: z.array(text) }).optional(),
    optional: z.strictObject({ pictogram: z.array(pictogram) }).optional(),
    merge: text.optional(),
  }),
})

const memberSchema = z.strictObject({ compound: text, cas: text.optional() })
export const reactivityGroupSchema = row('reactivityGroup', {
  number: z.number().int(),
  name: text,
  smartsAny: z.array(text),
  smartsNone: z.array(text),
  smartsOrigin: text.optional(),
  members: z.array(memberSchema),
  membersOrigin: text.optional(),
})
export const reactivityConsequenceSchema = row('reactivityConsequence', { code: text, meaning: text })
export const reactivityRowSchema = row('reactivityRow', { group: z.number().int(), with: z.record(z.string(), z.array(text)) })
const groupPair = z.tuple([z.number().int(), z.number().int()])
export const reactivityDoubtSchema = row('reactivityDoubt', {
  pair: groupPair,
  transcription: z.array(text).optional(),
  remembered: z.array(text).optional(),
  stored: z.array(text),
  why: text,
})
export const reactivityNoteSchema = row('reactivityNote', { text })
export const incompatibleWasteSchema = row('incompatibleWaste', {
  set: text,
  groupA: z.array(text),
  groupB: z.array(text),
  consequence: text,
  reactivityGroupsA: z.array(z.number().int()),
  reactivityGroupsB: z.array(z.number().int()),
})

/** What a pattern cannot match without, counts by element symbols (`F,Cl,Br,I` = any of these; `#` = triple bonds): spares most searches. */
export const needsSchema = z.record(z.string(), z.number().int().positive())

/** One way to be a member of a rule's set: a material (by id or CAS), a reactivity group, or a structure. */
export const triggerMemberSchema = z.strictObject({
  compound: text.optional(),
  cas: text.optional(),
  group: z.number().int().optional(),
  smarts: text.optional(),
  needs: needsSchema.optional(),
})
export const severities = ['never', 'care', 'note'] as const
export const incidentRuleSchema = row('incidentRule', {
  id: text,
  title: text,
  trigger: z.strictObject({
    allOf: z.array(z.array(triggerMemberSchema).min(1)),
    step: z.enum(['gas', 'strong-exotherm', 'closed-tube', 'reflux']).optional(),
    conditions: z.array(text),
  }),
  applies: z.array(z.enum(['flask', 'workup', 'waste'])).min(1),
  severity: z.enum(severities),
  consequence: text,
  do: text,
})

export const regions = ['UN', 'EU', 'UK', 'US'] as const
export const actions = ['stop', 'licence or declaration needed', 'reporting of suspicious transactions'] as const
export const regulatedListSchema = row('regulatedList', {
  name: text,
  fullName: text,
  regions: z.array(z.enum(regions)).min(1),
  /** Also for what a step gives off, not only for what is bought, kept or made. */
  coversGivenOff: z.boolean(),
  note: text.optional(),
})
export const regulatedRuleSchema = row('regulatedRule', { id: text, text })
export const regulatedEntrySchema = row('regulatedEntry', {
  list: text,
  category: text,
  name: text,
  synonyms: z.array(text).optional(),
  cas: text.optional(),
  smiles: text.optional(),
  action: z.enum(actions),
  legal: text,
  saltsRule: text.optional(),
  covers: z.array(z.enum(['salts', 'esters'])).optional(),
  estersSmarts: text.optional(),
  estersNeed: needsSchema.optional(),
  /** The public's limit: above it the row applies, up to `licenceUpToMassFraction` a licence can help where one is possible. */
  public: z
    .strictObject({
      aboveMassFraction: z.number().min(0).max(1),
      countedAs: text.optional(),
      fractionInPure: z.number().gt(0).lte(1).optional(),
      licence: z.enum(['none', 'possible']),
      licenceUpToMassFraction: z.number().gt(0).lte(1).optional(),
    })
    .optional(),
  thresholdPerYear: text.optional(),
  family: text.optional(),
  exemptCas: z.array(text).optional(),
  note: text.optional(),
  screeningOnly: z.boolean().optional(),
})
export const structureAlertSchema = row('structureAlert', {
  id: text,
  smarts: text,
  needs: needsSchema,
  text,
  action: z.enum(actions),
  list: text,
  category: text,
  exemptCas: z.array(text).optional(),
  exemptSmiles: z.array(text).optional(),
})

export const storageGroupSchema = row('storageGroup', {
  id: text,
  name: text,
  prudentLetter: text,
  containment: text,
  examples: z.array(text),
})
export const shares = ['same-cabinet', 'same-cabinet-separate-tray', 'separate-cabinet'] as const
export const storagePairSchema = row('storagePair', { a: text, b: text, share: z.enum(shares), why: text.optional() })
export const storageSchemeSchema = row('storageScheme', { id: text, name: text, groups: z.record(z.string(), text), note: text })
export const storageRuleSchema = row('storageRule', { text })
export const peroxideClassSchema = row('peroxideClass', {
  class: text,
  meaning: text,
  testIntervalMonths: z.number().positive(),
  action: text,
  examples: z.array(text),
})
export const peroxideLimitSchema = row('peroxideLimit', { actionPpm: z.tuple([z.number(), z.number()]), text })
export const storageDoubtSchema = row('storageDoubt', {
  about: text,
  values: z.array(z.strictObject({ source: text, value: text })),
  used: text,
})
export const wasteStreamSchema = row('wasteStream', {
  id: text,
  name: text,
  accepts: z.array(text),
  neverWith: z.array(text),
  container: text,
})

/** What a residue is destroyed with where the source of a step says nothing: moles of reagent for one mole, by the equation; `material` = the library's, to be bought. */
export const quenchRuleSchema = row('quenchRule', {
  id: text,
  destroys: z.array(memberSchema).min(1),
  /** What counts as a quench of it among a source's own lines. */
  destroyedBy: z.array(memberSchema).min(1),
  reagent: text,
  material: text.optional(),
  reagentGPerMol: z.number().positive(),
  molPerMol: z.number().positive(),
  do: text,
  test: text,
})

export const ruleOfThumbSchema = row('ruleOfThumb', {
  id: text,
  name: text,
  value: z.number().optional(),
  unit: text.optional(),
  formula: text.optional(),
  text,
  use: text.optional(),
  maxVolumeL: z.number().optional(),
  minChargeML: z.number().optional(),
  range: z.tuple([z.number(), z.number()]).optional(),
  unitRange: text.optional(),
  thresholdsK: z.array(z.number()).optional(),
  example: text.optional(),
})
export const scaleTableSchema = row('scaleTable', {
  id: text,
  scaleFactor: z.number(),
  surfacePerVolume: z.number(),
  additionTimeFactorMin: z.number(),
})

/** A bench material's hazard data in the keys of a library material, to be taken over when somebody enters that material. */
export const hazardRecordSchema = row('hazardRecord', {
  id: text,
  name: text,
  cas: text.optional(),
  hazards: z.strictObject({ codes: z.array(text), signalWord: signal, from: text }),
  harmonised: z.array(text).optional(),
  flashC: z.number().optional(),
  flashFrom: text.optional(),
  reactivityGroups: z.array(z.number().int()).optional(),
  storageGroup: text,
  wasteStream: text,
  peroxideClass: text.optional(),
  peroxideChecked: z.boolean().optional(),
  exposureLimit: z
    .strictObject({
      basis: text,
      twa: text.optional(),
      stel: text.optional(),
      ceiling: text.optional(),
      notation: text.optional(),
    })
    .optional(),
  iarc: text.optional(),
  notes: z.array(text).optional(),
  addedFromMemory: z.array(text).optional(),
  sameDataAs: text.optional(),
})

/** Any row of any table: `kind` tells which. */
export const tableRowSchema = z.discriminatedUnion('kind', [
  hazardStatementSchema,
  precautionaryStatementSchema,
  benchPrecautionsSchema,
  pictogramSchema,
  labelRuleSchema,
  reactivityGroupSchema,
  reactivityConsequenceSchema,
  reactivityRowSchema,
  reactivityDoubtSchema,
  reactivityNoteSchema,
  incompatibleWasteSchema,
  incidentRuleSchema,
  regulatedListSchema,
  regulatedRuleSchema,
  regulatedEntrySchema,
  structureAlertSchema,
  storageGroupSchema,
  storagePairSchema,
  storageSchemeSchema,
  storageRuleSchema,
  peroxideClassSchema,
  peroxideLimitSchema,
  storageDoubtSchema,
  wasteStreamSchema,
  quenchRuleSchema,
  ruleOfThumbSchema,
  scaleTableSchema,
  hazardRecordSchema,
])
export type TableRow = z.infer<typeof tableRowSchema>
export type RowOf<K extends TableRow['kind']> = Extract<TableRow, { kind: K }>

/** A table file: `waybench-table`, version 1. Rows of any kind may stand in any file, so that a list can be split or added to at will. */
export const tableFileSchema = z.strictObject({
  format: z.literal('waybench-table'),
  version: z.literal(1),
  title: text,
  about: text,
  rows: z.array(z.unknown()),
})
