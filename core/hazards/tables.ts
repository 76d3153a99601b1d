import { parseJson } from '../problem/json.ts'
import { didYouMean } from '../problem/nearest.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { schemaProblems } from '../problem/schema.ts'
import { tableProblems } from './table-checks.ts'
import { type RowOf, type TableRow, tableFileSchema, tableRowSchema } from './table-rows.ts'

type Slim<K extends TableRow['kind'], Keys extends keyof RowOf<K>> = Readonly<Pick<RowOf<K>, Keys>>
export type LabelRule = Slim<'labelRule', 'id' | 'text' | 'logic'>
export type ReactivityGroup = Slim<'reactivityGroup', 'number' | 'name' | 'smartsAny' | 'smartsNone' | 'members'>
export type IncidentRule = Omit<RowOf<'incidentRule'>, 'kind' | 'confidence'>
export type QuenchRule = Omit<RowOf<'quenchRule'>, 'kind' | 'confidence'>
export type RegulatedList = Slim<'regulatedList', 'name' | 'fullName' | 'regions' | 'coversGivenOff'>
export type RegulatedEntry = Omit<RowOf<'regulatedEntry'>, 'kind' | 'confidence'>
export type StructureAlert = Omit<RowOf<'structureAlert'>, 'kind' | 'confidence'>

/**
 * What the hazard list is reckoned from: plain JSON, so that a server can hand it to a page as it stands. Proofs of single statements stay in
 * the files; rules that are quoted with their source keep theirs.
 */
export interface HazardTables {
  /** By code. Where categories under one code differ in signal word or pictogram, each is an entry. */
  readonly statements: Readonly<Record<string, Slim<'hazardStatement', 'statement' | 'entries' | 'parts'>>>
  readonly precautions: Readonly<Record<string, string>>
  /** P codes that matter at the bench, by hazard code. */
  readonly benchPrecautions: Readonly<Record<string, readonly string[]>>
  /** What each pictogram is called, by GHS01 to GHS09. */
  readonly pictograms: Readonly<Record<string, string>>
  readonly labelRules: readonly LabelRule[]
  readonly reactivityGroups: readonly ReactivityGroup[]
  readonly consequences: Readonly<Record<string, string>>
  /** Consequence codes by group and group; the same both ways. */
  readonly matrix: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>
  readonly matrixSources: RowOf<'reactivityNote'>['sources']
  readonly incidentRules: readonly IncidentRule[]
  readonly storageGroups: Readonly<Record<string, Slim<'storageGroup', 'name' | 'containment'>>>
  /** By the two ids in order, joined by `|`. */
  readonly storagePairs: Readonly<Record<string, Slim<'storagePair', 'share' | 'why' | 'sources'>>>
  readonly peroxideClasses: Readonly<Record<string, Slim<'peroxideClass', 'meaning' | 'testIntervalMonths' | 'action'>>>
  readonly wasteStreams: Readonly<Record<string, Slim<'wasteStream', 'name' | 'accepts' | 'neverWith' | 'container'>>>
  readonly quenchRules: readonly QuenchRule[]
  readonly regulated: {
    readonly lists: readonly RegulatedList[]
    readonly entries: readonly RegulatedEntry[]
    readonly alerts: readonly StructureAlert[]
  }
}

/** A table file as it lies on disk or was loaded by the keeper of the library. */
export interface TableText {
  readonly name: string
  readonly text: string
}

const rowSchemas = new Map(tableRowSchema.options.map(option => [option.shape.kind.value as string, option]))

/**
 * The rows of table files, every fault told: file, row, key.
 *
 * @returns rows in the order of the files
 */
export function readTableRows(files: readonly TableText[]): Checked<readonly TableRow[]> {
  const problems: Problem[] = []
  const rows: TableRow[] = []
  for (const { name, text } of files) {
    const json = parseJson(name, text)
    if (!json.ok) {
      problems.push(...json.problems)
      continue
    }
    const file = tableFileSchema.safeParse(json.value)
    if (!file.success) {
      problems.push(...schemaProblems(file.error, tableFileSchema, json.value, [name]))
      continue
    }
    for (const [index, raw] of file.data.rows.entries()) {
      const where = [name, rowName(raw, index)]
      const kind = typeof raw === 'object' && raw !== null && 'kind' in raw ? String(raw.kind) : ''
      const schema = rowSchemas.get(kind)
      if (schema === undefined) {
        const known = [...rowSchemas.keys()]
        problems.push({
          code: 'table-kind',
          where: [...where, 'kind'],
          what: kind === '' ? 'The row does not say what kind it is.' : `"${kind}" is no kind of row.`,
          why: 'Rows are read by their kind; one that is not understood would be lost.',
          cure: `${didYouMean(kind, known)}Known kinds are ${known.join(', ')}.`,
        })
        continue
      }
      const parsed = schema.safeParse(raw)
      if (parsed.success) rows.push(parsed.data)
      else problems.push(...schemaProblems(parsed.error, schema, raw, where))
    }
  }
  return problems.length > 0 ? bad(problems) : good(rows)
}

/**
 * Reads table files and joins them into what the hazard list is reckoned from. Rows of any kind may stand in any file; further regulated
 * lists are further files.
 *
 * @param files  all tables but the collections of hazard records, which `loadHazardRecords` reads
 */
export function loadHazardTables(files: readonly TableText[]): Checked<HazardTables> {
  const read = readTableRows(files)
  if (!read.ok) return read
  const problems = tableProblems(read.value)
  if (problems.length > 0) return bad(problems)
  const rows = <K extends TableRow['kind']>(kind: K): readonly RowOf<K>[] => read.value.filter((row): row is RowOf<K> => row.kind === kind)
  const proofless = <R extends { kind: string; confidence: string }>({ kind, confidence, ...rest }: R): Omit<R, 'kind' | 'confidence'> =>
    rest
  return good({
    statements: Object.fromEntries(
      rows('hazardStatement').map(({ code, statement, entries, parts }) => [code, { statement, entries, ...(parts && { parts }) }]),
    ),
    precautions: Object.fromEntries(rows('precautionaryStatement').map(row => [row.code, row.statement])),
    benchPrecautions: Object.fromEntries(rows('benchPrecautions').map(row => [row.code, row.precautionary])),
    pictograms: Object.fromEntries(rows('pictogram').map(row => [row.code, row.name])),
    labelRules: rows('labelRule').map(({ id, text, logic }) => ({ id, text, logic })),
    reactivityGroups: rows('reactivityGroup').map(({ number, name, smartsAny, smartsNone, members }) => ({
      number,
      name,
      smartsAny,
      smartsNone,
      members,
    })),
    consequences: Object.fromEntries(rows('reactivityConsequence').map(row => [row.code, row.meaning])),
    matrix: Object.fromEntries(rows('reactivityRow').map(row => [String(row.group), row.with])),
    matrixSources: rows('reactivityNote')[0]?.sources ?? [],
    incidentRules: rows('incidentRule').map(proofless),
    storageGroups: Object.fromEntries(rows('storageGroup').map(({ id, name, containment }) => [id, { name, containment }])),
    storagePairs: Object.fromEntries(
      rows('storagePair').map(({ a, b, share, why, sources }) => [storagePairKey(a, b), { share, ...(why && { why }), sources }]),
    ),
    peroxideClasses: Object.fromEntries(
      rows('peroxideClass').map(({ class: name, meaning, testIntervalMonths, action }) => [name, { meaning, testIntervalMonths, action }]),
    ),
    wasteStreams: Object.fromEntries(
      rows('wasteStream').map(({ id, name, accepts, neverWith, container }) => [id, { name, accepts, neverWith, container }]),
    ),
    quenchRules: rows('quenchRule').map(proofless),
    regulated: {
      lists: rows('regulatedList').map(({ name, fullName, regions, coversGivenOff }) => ({ name, fullName, regions, coversGivenOff })),
      entries: rows('regulatedEntry').map(proofless),
      alerts: rows('structureAlert').map(proofless),
    },
  })
}

/**
 * The tables for a page that gets its traits ready-made: without the rows it would screen by, which are half of them and which nobody but
 * the screening needs.
 */
export const tablesForPage = (tables: HazardTables): HazardTables => ({
  ...tables,
  regulated: { ...tables.regulated, entries: [], alerts: [] },
})

export const storagePairKey = (a: string, b: string): string => (a < b ? `${a}|${b}` : `${b}|${a}`)

function rowName(raw: unknown, index: number): string {
  if (typeof raw === 'object' && raw !== null) {
    const record = raw as Record<string, unknown>
    for (const key of ['id', 'code', 'name', 'number', 'group']) if (record[key] !== undefined) return String(record[key])
  }
  return `row ${index + 1}`
}
