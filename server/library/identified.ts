import type { Depiction } from '../../core/chemistry/drawing.ts'
import { hill, molarMass, parseFormula } from '../../core/chemistry/formula.ts'
import type { Structure } from '../../core/chemistry/structure.ts'
import { type HazardRecords, loadHazardRecords, withRecord } from '../../core/hazards/records.ts'
import { traitsOf } from '../../core/hazards/traits.ts'
import { casDigits } from '../../core/library/checks/cas-digits.ts'
import type { Material } from '../../core/library/material.ts'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import type { Checked, Problem } from '../../core/problem/problem.ts'
import { readCelsius } from '../../core/reading/celsius-text.ts'
import { readDensity } from '../../core/reading/density-text.ts'
import { idOfName } from '../../core/reading/id-of-name.ts'
import { stopProblems } from '../../core/report/stops.ts'
import { depictionOf } from '../depict/depiction-of.ts'
import { bundledTables } from './bundled.ts'
import { type LikelyDouble, likelyDoubles } from './likely-doubles.ts'
import { isOfSomething, solutionTyped } from './solution-typed.ts'
import type { Workshop } from './workshop.ts'

/** What a person typed of a material; an empty text is nothing said. */
export interface TypedMaterial {
  readonly name: string
  readonly smiles: string
  readonly formula: string
  readonly cas: string
  readonly form: Material['form']
  readonly density?: string
  readonly melting?: string
  readonly boiling?: string
  readonly flash?: string
  /** Id of a record that it is to stand in place of: what is as that one has it is not asked about again. */
  readonly over?: string
  /** Of a solution: id of the compound in it, its strength as written, id of what it is made up with (empty = water). */
  readonly of?: string
  readonly strength?: string
  readonly rest?: string
}

export interface Identified {
  readonly material: Material
  /** With what the hazard tables hold under its CAS number or name, sources and all; null where they hold nothing. To be confirmed. */
  readonly withHazards: Material | null
  readonly record: { readonly id: string; readonly name: string; readonly cas: string | null } | null
  /** g/mol */
  readonly molarMass: number | null
  readonly depiction: Depiction
  readonly groups: readonly { readonly number: number; readonly name: string }[]
  /** False = neither structure nor CAS number: lists could be searched for the name alone. */
  readonly screened: boolean
  readonly regulated: readonly { readonly action: string; readonly list: string; readonly category: string; readonly reason: string }[]
  /** Materials that are probably the same, surest first. */
  readonly matches: readonly LikelyDouble[]
  readonly problems: readonly Problem[]
}

/** A structure larger than this is drawn by nobody at a small bench, and drawing it would hold up the others. Heavy atoms. */
const mostDrawnAtoms = 80

let records: HazardRecords | null = null
const hazardRecords = (): HazardRecords => {
  if (records !== null) return records
  const loaded = loadHazardRecords(bundledTables().filter(({ name }) => name.startsWith('tables/hazards-')))
  if (!loaded.ok) throw new Error(loaded.problems.map(problem => problem.what).join(' '))
  records = loaded.value
  return records
}

/**
 * Mass, formula, identity, groups, screening, hazards and likely doubles of a material, from its structure, formula, CAS number and name.
 *
 * @param parsed  its SMILES as read, where that was done before; null where none is typed
 */
export function identified(
  workshop: Workshop,
  typed: TypedMaterial,
  parsed: Checked<Structure> | null = structureTyped(workshop, typed),
): Identified {
  const { library, tables, toolkit } = workshop
  const problems: Problem[] = []
  const smiles = typed.smiles.trim()
  if (parsed !== null && !parsed.ok) problems.push(...parsed.problems)
  const structure = parsed?.ok ? parsed.value : null
  const written = typed.formula.trim()
  const composition = written === '' ? null : parseFormula(written, ['new material', 'formula'])
  if (composition !== null && !composition.ok) problems.push(...composition.problems)
  const own = composition?.ok ? composition.value : null
  if (structure !== null && own !== null && (hill(own) !== structure.formula || own.charge !== structure.composition.charge))
    problems.push(disagrees(written, structure.formula))
  // The structure decides; a formula beside it that differs is an error until one of the two is mended.
  const whole = structure !== null ? structure.formula : own !== null ? hill(own) : ''
  // An open end alone has a structure and no atoms that count.
  const formula = whole === '' ? null : whole
  const counted = structure?.composition ?? own
  const name = typed.name.trim()
  const cas = typed.cas.trim()
  const { form, density: dense = '', of = '', strength = '', rest = '' } = typed
  const density = dense.trim() === '' ? null : readDensity(dense, form, ['new material', 'density'])
  if (density !== null && !density.ok) problems.push(...density.problems)
  const points = pointsTyped(typed)
  problems.push(...points.problems)
  const known = library.materials.get(typed.over ?? '')
  const inIt = { form, of, strength, rest }
  const solution = solutionTyped(inIt, library)
  problems.push(...solution.problems)
  const { contains } = solution
  const material: Material = {
    id: known?.id ?? idOfName(name || formula || 'material', library.materials),
    name: name || formula || 'material',
    kind: contains !== null ? 'mixture' : formula === null ? 'feedstock' : smiles.includes('*') ? 'polymer' : 'compound',
    ...(formula === null || contains !== null ? {} : { formula }),
    ...(contains === null && written !== '' && own !== null && formula !== null && written !== formula ? { displayFormula: written } : {}),
    ...(structure === null || contains !== null ? {} : { smiles }),
    ...(cas === '' ? {} : { cas }),
    form,
    ...(density?.ok === true ? { densityGPerMl: density.value } : {}),
    ...points.read,
    ...(contains === null ? {} : { contains }),
    sources: [],
  }
  if (cas !== '')
    problems.push(...casDigits(material).map(({ code, what, why, cure }) => ({ code, where: ['new material', 'cas'], what, why, cure })))
  if (
    known?.kind !== 'feedstock' &&
    known?.kind !== 'mixture' &&
    smiles === '' &&
    written === '' &&
    name !== '' &&
    formula === null &&
    cas === '' &&
    !isOfSomething(inIt)
  )
    problems.push(form === 'solution' ? solutionOfNothing : nothingToGoBy)
  const parts = [contains?.compound, contains?.rest].flatMap(id => library.materials.get(id ?? '') ?? [])
  const traits = traitsOf(libraryOfParts({ title: '' }, [material, ...parts], []), tables, toolkit).get(material.id)!
  const stops = traits.regulated.filter(match => match.action === 'stop')
  if (stops.length > 0)
    problems.push(
      ...stopProblems(
        libraryOfParts({ title: '' }, [material, ...parts], []),
        stops.map(match => ({ ...match, material: material.id, barred: true, as: [] })),
      ).map(problem => ({ ...problem, cure: 'It cannot be entered, and no step that holds it in any role can be.' })),
    )
  const matches = likelyDoubles(workshop, { name, smiles, cas, structure, formula, known })
  // A row is found by number or name: where those are a compound's that has another structure, one of the two is wrong, and so may the row be.
  const isAnothers = structure !== null && matches.some(match => isOtherStructure(match, library.materials.get(match.id)))
  const record = isAnothers ? null : hazardRecords().of(material)
  return {
    material,
    withHazards: record === null ? null : withRecord(material, record),
    record: record === null ? null : { id: record.id, name: record.name, cas: record.cas ?? null },
    molarMass: counted === null ? null : molarMass(counted),
    depiction:
      structure !== null && heavyAtoms(structure.composition.counts) > mostDrawnAtoms
        ? { kind: 'formula', formula: structure.formula }
        : depictionOf(material),
    groups: traits.groups.map(number => ({ number, name: tables.reactivityGroups.find(group => group.number === number)?.name ?? '' })),
    screened: traits.screened,
    regulated: traits.regulated.map(({ action, list, category, reason }) => ({ action, list, category, reason })),
    matches,
    problems,
  }
}

/** Forms in which the one may be the other, written with more or with less said of its hands. */
const sameButForHands: ReadonlySet<LikelyDouble['form']> = new Set(['racemate', 'one hand', 'states less', 'states more'])

const isOtherStructure = ({ by, form }: LikelyDouble, held: Material | undefined): boolean =>
  (by === 'CAS number' || by === 'name') && held?.kind === 'compound' && held.smiles !== undefined && !sameButForHands.has(form)

function structureTyped({ toolkit }: Workshop, { smiles }: TypedMaterial): Checked<Structure> | null {
  return smiles.trim() === '' ? null : toolkit.parse(smiles.trim(), ['new material', 'smiles'])
}

const pointNames = { melting: 'melting point', boiling: 'boiling point', flash: 'flash point' } as const
const pointKeys = { melting: 'meltingC', boiling: 'boilingC', flash: 'flashC' } as const

/** Melting, boiling and flash point as typed, as far as they are read. */
function pointsTyped(typed: TypedMaterial): {
  readonly read: Pick<Material, 'meltingC' | 'boilingC' | 'flashC'>
  readonly problems: readonly Problem[]
} {
  const told = (['melting', 'boiling', 'flash'] as const)
    .filter(field => (typed[field] ?? '').trim() !== '')
    .map(field => [field, readCelsius(typed[field]!, pointNames[field], ['new material', field])] as const)
  return {
    read: Object.fromEntries(told.flatMap(([field, point]) => (point.ok ? [[pointKeys[field], point.value]] : []))),
    problems: told.flatMap(([, point]) => (point.ok ? [] : point.problems)),
  }
}

const heavyAtoms = (counts: ReadonlyMap<string, number>): number =>
  [...counts].reduce((sum, [symbol, count]) => (symbol === 'H' ? sum : sum + count), 0)

const disagrees = (written: string, ofStructure: string): Problem => ({
  code: 'formula-disagrees',
  where: ['new material', 'formula'],
  what: `The formula ${written} is not that of the structure, which is ${ofStructure}.`,
  why: 'Molar mass and balance follow from it.',
  cure: 'Correct one of the two, or leave the formula out.',
})

const nothingToGoBy: Problem = {
  code: 'material-without-formula',
  where: ['new material'],
  what: 'A name alone gives no molar mass.',
  why: 'Moles, balance and screening need a structure, a formula or a CAS number.',
  cure: 'Give a SMILES or a formula; without either it is entered as a feedstock, weighed out and never counted in moles.',
}

const solutionOfNothing: Problem = {
  ...nothingToGoBy,
  what: 'A name alone says neither what is dissolved nor how much of it.',
  why: 'Moles are counted on the compound in it, and screening looks at that.',
  cure: 'Say what it is a solution of, and how strong; without either it is entered as a feedstock, measured out and never counted in moles.',
}
