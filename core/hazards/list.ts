import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { exposureText } from '../library/physical.ts'
import { coefficientOf, productCoefficientOf } from '../library/reference-charge.ts'
import type { Vessel } from '../route/batches.ts'
import type { ChargedLine, ChargedStep } from '../route/charged.ts'
import { materialsOfSteps, type RouteMaterial } from '../route/materials.ts'
import { hazardClassOf, listOrder } from './classes.ts'
import { hazardCounts } from './counts.ts'
import { gasesOf, gasOf } from './gas.ts'
import type { HazardList, LabelledMaterial, Meeting } from './hazard-list.ts'
import { daysKept, type Timing } from './kept.ts'
import { codesInEffect, isOnlyEvolved, knownOf } from './known.ts'
import { labelOf } from './labels.ts'
import { labelledMaterialOf } from './mixture.ts'
import { type Bottle, peroxideLines } from './peroxides.ts'
import { protectionFor } from './protection.ts'
import { quenchLines } from './quench.ts'
import { regulatedAmong, traitsFor, type Whereabouts } from './regulated.ts'
import { roomLines } from './room.ts'
import { stepMeetings } from './step-meetings.ts'
import { stepNotes } from './step-notes.ts'
import { storageMeetings } from './storage.ts'
import { summaryOf } from './summary.ts'
import type { HazardTables } from './tables.ts'
import type { Traits } from './traits.ts'
import { wasteOf } from './waste.ts'
import { wasteMeetings } from './waste-meetings.ts'

export interface HazardsInput {
  readonly library: Library
  readonly tables: HazardTables
  readonly traits: ReadonlyMap<string, Traits>
  /** Steps to run, at their scale. */
  readonly steps: readonly ChargedStep[]
  /** The material in hand, a solution as itself. */
  readonly start: { readonly material: string; readonly massG: number | null }
  readonly settings: Whereabouts & {
    readonly vessels: readonly Vessel[]
    readonly hood: boolean | null
    readonly inertGas: boolean | null
    readonly roomVolumeM3?: number | null
  }
  /** Bottles in stock: peroxide formers among them are tested by their age. */
  readonly shelf?: readonly Bottle[]
  /** ISO date that decides what is overdue. */
  readonly today?: string | null
  /** What the calendar tells; absent = no days of storage, no waste by day. */
  readonly timing?: Timing
}

/**
 * Everything that can hurt, for the whole plan: each material once with its label at plan scale, what may not meet in steps, cabinets and
 * waste, regulated rows, gas, waste, and each step's dangers in words. Materials whose hazards are not known stand first.
 *
 * @throws RangeError for a material without traits
 */
export function hazardsOf(input: HazardsInput): HazardList {
  const { library, tables, traits, steps, start, settings } = input
  const timing = input.timing ?? null
  const targets = [...new Set(steps.filter(step => step.goesTo.some(to => to.step === null && to.goal !== null)).map(step => step.makes))]
  const materials = withCharged(
    materialsOfSteps(
      library,
      start.material,
      targets,
      steps.map(step => step.transformation),
    ),
    steps,
  )
  const labelled = materials.map(one => labelledMaterial(input, one))
  const gas = gasOf(library, steps, settings.vessels)
  const waste = wasteOf(library, tables, traits, steps, timing)
  return {
    materials: labelled.sort(inListOrder),
    meetings: [
      ...stepMeetings(library, tables, traits, steps),
      ...storageMeetings(library, tables, materials, timing),
      ...wasteMeetings(library, tables, traits, waste),
    ].sort(byPlaceAndSeverity),
    regulated: regulatedAmong(traits, materials, settings),
    gas,
    waste,
    unknown: labelled.filter(one => one.class === 'unknown' || one.known === 'unknown').map(one => one.material),
    notScreened: materials.map(one => one.material).filter(id => !traitsFor(traits, id).screened),
    steps: steps.map(step => ({
      step: step.number,
      notes: stepNotes(library, tables, step, gas, settings),
      ...summaryOf(labelled.filter(one => one.steps.includes(step.number))),
    })),
    counts: hazardCounts(library, materials),
    whole: summaryOf(labelled),
    quench: quenchLines(library, tables, steps),
    peroxides: peroxideLines(library, tables, steps, input.shelf ?? [], input.today ?? null),
    room: roomLines(library, steps, settings.roomVolumeM3 ?? null),
  }
}

/** What goes in without a line of its own: the solvent that a made compound's solution is made up with. */
function withCharged(materials: readonly RouteMaterial[], steps: readonly ChargedStep[]): readonly RouteMaterial[] {
  const listed = new Set(materials.map(one => one.material))
  const more = steps.flatMap(step => step.charges.filter(line => line.supply !== 'free' && !listed.has(line.material)))
  return [...materials, ...[...new Set(more.map(line => line.material))].map(material => ({ material, as: ['charged' as const] }))]
}

function labelledMaterial({ library, tables, steps, start, timing }: HazardsInput, { material: id, as }: RouteMaterial): LabelledMaterial {
  const material = labelledMaterialOf(library, id)
  const known = knownOf(material)
  const label = labelOf(tables, material, as)
  return {
    material: id,
    known,
    class: hazardClassOf(material, as),
    ...label,
    protection: protectionFor(codesInEffect(material, isOnlyEvolved(material, as)), known),
    from: material.hazards?.from ?? null,
    sources: material.sources.filter(source => source.for === 'hazards'),
    as,
    steps: steps.filter(step => isInStep(library, step, id)).map(step => step.number),
    ...amountOf(library, steps, start, id),
    exposureLimit: exposureText(material),
    note: material.note ?? null,
    storedDays: isOnlyEvolved(material, as) ? null : daysKept(timing ?? null, id),
  }
}

function isInStep(library: Library, step: ChargedStep, id: string): boolean {
  if (step.makes === id || step.charges.some(line => line.material === id)) return true
  const { products, gasEvolved } = transformationOf(library, step.transformation)
  return [...products, ...gasEvolved].some(({ compound }) => compound === id)
}

/**
 * How much of it the plan meets: all that is charged of it, all that is made, or all that comes off at full conversion, whichever is most.
 */
function amountOf(
  library: Library,
  steps: readonly ChargedStep[],
  start: HazardsInput['start'],
  id: string,
): { readonly massG: number | null; readonly volumeMl: number | null } {
  const material = materialOf(library, id)
  const lines = steps.flatMap(step => step.charges.filter(line => line.material === id && line.supply !== 'free'))
  const open = lines.some(line => line.massG === null)
  const made = steps.reduce((sum, step) => sum + (step.makes === id ? step.expectedG : givenOffG(library, step, id)), 0)
  const masses = [total(lines, line => line.massG) ?? 0, made, start.material === id ? (start.massG ?? 0) : 0]
  const massG = open || Math.max(...masses) === 0 ? null : Math.max(...masses)
  const { densityGPerMl: density } = material
  const liquid = material.form === 'liquid' || material.form === 'solution'
  const volumeMl = liquid && density !== undefined && massG !== null ? massG / density : liquid ? total(lines, line => line.volumeMl) : null
  return { massG, volumeMl }
}

/** Grams of a by-product or gas that a step gives at full conversion. */
function givenOffG(library: Library, step: ChargedStep, id: string): number {
  const transformation = transformationOf(library, step.transformation)
  const coefficient = productCoefficientOf(transformation, id) / coefficientOf(transformation, transformation.limiting)
  const asGas = gasesOf(library, transformation).find(gas => gas.compound === id)?.perMolLimiting ?? 0
  return (step.limiting.amountMol ?? 0) * Math.max(coefficient, asGas) * (library.molarMass.get(id) ?? 0)
}

/** Null where any line has no figure: a sum that leaves something out would read as all there is. */
function total(lines: readonly ChargedLine[], figure: (line: ChargedLine) => number | null): number | null {
  if (lines.length === 0) return null
  let sum = 0
  for (const line of lines) {
    const one = figure(line)
    if (one === null) return null
    sum += one
  }
  return sum
}

const inListOrder = (a: LabelledMaterial, b: LabelledMaterial): number =>
  listOrder.indexOf(a.class) - listOrder.indexOf(b.class) || (a.material < b.material ? -1 : 1)

const places: readonly Meeting['where'][] = ['step', 'storage', 'waste']
const severities: readonly Meeting['severity'][] = ['never', 'care', 'note']

/** Steps, then cabinets, then waste; within each what must never be first, and what is not meant before what is. The sort is stable. */
const byPlaceAndSeverity = (a: Meeting, b: Meeting): number =>
  places.indexOf(a.where) - places.indexOf(b.where) ||
  severities.indexOf(a.severity) - severities.indexOf(b.severity) ||
  Number(a.intended) - Number(b.intended)
