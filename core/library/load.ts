import { z } from 'zod'
import { type Composition, molarMass, parseFormula } from '../chemistry/formula.ts'
import type { Toolkit } from '../chemistry/structure.ts'
import { parseJson } from '../problem/json.ts'
import { didYouMean } from '../problem/nearest.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { further, schemaProblems } from '../problem/schema.ts'
import { materialChecks, reckoningChecks, transformationChecks } from './checks/all.ts'
import { type CheckContext, problemOf, type TableKeys } from './checks/check.ts'
import { allResolve } from './checks/ids-resolve.ts'
import { type Gathered, Gathering } from './gather.ts'
import { type Library, libraryFileSchema } from './library.ts'
import { type Material, materialSchema } from './material.ts'
import { type Transformation, transformationSchema } from './transformation.ts'

/** A library file as it lies on disk or was dropped into a page. */
export interface LibraryText {
  readonly name: string
  readonly text: string
}

export interface LoadOptions {
  /** Shown as the library's title; by default the title of the only file, or the titles joined. */
  readonly title?: string
  /** Keys of the tables; a table left out is not checked against. */
  readonly tables?: TableKeys
  /** Reads structures. Without it formulas are not held against them. */
  readonly toolkit?: Toolkit
  /**
   * A checked library that lies beneath: records of the files are added to it, and one with the same id stands in place of its own. Rules
   * are then held against the records of the files and against those beneath that name a replaced one.
   */
  readonly over?: Library
}

/** Looking for the id that was meant walks all materials; beyond this many the fault is not in single letters. */
const mostProposals = 200

/** What a keeper can still go through; a file with more was written wrongly by a program. */
const mostProblems = 10_000

/** A file with its records unread, so that one faulty record does not hide the others. */
const envelopeSchema = libraryFileSchema.extend({ materials: z.array(z.unknown()), transformations: z.array(z.unknown()) })

/**
 * Reads library files, merges them by id and holds every record against every rule.
 *
 * Records that the schema refuses do not hide the faults of the others: all problems come back at once, each with file, record and field.
 * Warnings do not refuse the library.
 *
 * @param files  their order makes no difference to the library, only to the order of the problems
 * @example loadLibrary([{ name: 'mine.json', text }], { tables })
 */
export function loadLibrary(files: readonly LibraryText[], options: LoadOptions = {}): Checked<Library> {
  const titles: string[] = []
  const materials = new Gathering<Material>('materials', materialSchema)
  const transformations = new Gathering<Transformation>('transformations', transformationSchema)
  const problems: Problem[] = []
  for (const { name, text } of files) {
    const json = parseJson(name, text)
    if (!json.ok) {
      problems.push(...json.problems)
      continue
    }
    const envelope = envelopeSchema.safeParse(json.value)
    if (!envelope.success) {
      problems.push(...schemaProblems(envelope.error, envelopeSchema, json.value, [name]))
      continue
    }
    titles.push(envelope.data.title)
    materials.add(name, envelope.data.materials)
    transformations.add(name, envelope.data.transformations)
  }
  for (const problem of [...materials.problems, ...transformations.problems]) problems.push(problem)

  const title = options.title ?? titles.join('; ')
  const [own, ownSteps] = [materials.gathered(), transformations.gathered()]
  const { over } = options
  const { context, library } = contextOf(title, layered(over?.materials, own), layered(over?.transformations, ownSteps), options)
  const toCheck = over === undefined ? library : touched(library, own, ownSteps)
  const warnings: Problem[] = []
  const sort = (finding: Parameters<typeof problemOf>[0], where: readonly string[]) =>
    (finding.severity === 'error' ? problems : warnings).push(problemOf(finding, where))
  for (const material of toCheck.materials.values())
    for (const check of materialChecks)
      for (const finding of check(material, context)) sort(finding, [materials.fileOf(material.id) || library.title, material.id])
  for (const transformation of toCheck.transformations.values()) {
    // What reckons needs every material it names; a missing one has been told by then.
    const checks = allResolve(transformation, context) ? [...transformationChecks, ...reckoningChecks] : transformationChecks
    for (const check of checks)
      for (const finding of check(transformation, context))
        sort(finding, [transformations.fileOf(transformation.id) || library.title, transformation.id])
  }
  if (problems.length === 0) return good(library, warnings)
  return bad([
    ...problems.slice(0, mostProblems),
    ...further(
      problems.length - mostProblems,
      files.map(file => file.name),
    ),
  ])
}

/** Records over those beneath, in order of id. */
function layered<R>(beneath: ReadonlyMap<string, R> | undefined, own: Gathered<R>): Gathered<R> {
  if (beneath === undefined) return own
  const entries = [...new Map([...beneath, ...own.records])].sort(([one], [other]) => (one < other ? -1 : 1))
  return { records: new Map(entries), refused: own.refused }
}

/** What has to be looked at anew when records are laid over a checked library: they themselves, and what names a replaced material. */
function touched(
  library: Library,
  own: Gathered<Material>,
  ownSteps: Gathered<Transformation>,
): Pick<Library, 'materials' | 'transformations'> {
  const isOwn = (id: string | undefined) => id !== undefined && own.records.has(id)
  const names = (t: Transformation) =>
    [...t.reactants, ...t.products, ...t.gasEvolved].some(one => isOwn(one.compound)) || t.charge.some(line => isOwn(line.material))
  const inside = ({ contains }: Material) => isOwn(contains?.compound) || isOwn(contains?.rest)
  const only = <R>(records: ReadonlyMap<string, R>, fits: (id: string, record: R) => boolean) =>
    new Map([...records].filter(([id, record]) => fits(id, record)))
  return {
    materials: only(library.materials, (id, material) => isOwn(id) || inside(material)),
    transformations: only(library.transformations, (id, step) => ownSteps.records.has(id) || names(step)),
  }
}

/** The library as far as its records could be read, in order of id, with its indices; and what the rules look at. */
function contextOf(
  title: string,
  materials: Gathered<Material>,
  transformations: Gathered<Transformation>,
  options: LoadOptions,
): { readonly context: CheckContext; readonly library: Library } {
  const compositions = new Map<string, Composition>()
  const masses = new Map<string, number>()
  const firstWithCas = new Map<string, string>()
  const compounds = [...materials.records].filter(([, { kind }]) => kind === 'compound' || kind === 'polymer')
  // A record laid over another that takes a number of a third is the one to be told, whatever the order of their ids.
  const hadIt = ([id, { cas }]: readonly [string, Material]): boolean =>
    options.over === undefined || options.over.materials.get(id)?.cas === cas
  for (const [id, { cas }] of [...compounds.filter(hadIt), ...compounds.filter(one => !hadIt(one))])
    if (cas !== undefined && !firstWithCas.has(cas)) firstWithCas.set(cas, id)
  for (const [id, { formula }] of compounds) {
    const composition = formula === undefined ? null : parseFormula(formula)
    if (composition === null || !composition.ok) continue
    compositions.set(id, composition.value)
    masses.set(id, molarMass(composition.value))
  }
  const makers = new Map<string, Transformation[]>()
  const users = new Map<string, Transformation[]>()
  const list = (index: Map<string, Transformation[]>, id: string, transformation: Transformation) => {
    const found = index.get(id)
    if (found === undefined) index.set(id, [transformation])
    else if (found.at(-1) !== transformation) found.push(transformation)
  }
  for (const transformation of transformations.records.values()) {
    list(makers, transformation.mainProduct, transformation)
    for (const { compound } of transformation.reactants) list(users, compound, transformation)
  }
  let proposalsLeft = mostProposals
  const meantMaterial = (id: string): string => (proposalsLeft-- > 0 ? didYouMean(id, materials.records.keys()) : '')
  const library = { title, materials: materials.records, transformations: transformations.records, molarMass: masses, makers, users }
  const context: CheckContext = {
    library,
    compositions,
    firstWithCas,
    meantMaterial,
    refusedIds: new Set([...materials.refused, ...transformations.refused]),
    tables: options.tables ?? {},
    ...(options.toolkit && { toolkit: options.toolkit }),
  }
  return { context, library }
}
