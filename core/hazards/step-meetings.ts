import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { compoundIn } from '../library/reference-charge.ts'
import { stageOf, type Transformation } from '../library/transformation.ts'
import type { ChargedStep } from '../route/charged.ts'
import { gasesOf } from './gas.ts'
import type { Meeting } from './hazard-list.ts'
import { asQuestion, type Present, presentAs, waysToFire } from './present.ts'
import type { HazardTables, IncidentRule } from './tables.ts'
import type { Traits } from './traits.ts'

/**
 * Incident rules inside each step: what is in the flask, what the quench and the work-up bring to it, and what the product meets on its way
 * to the dish. They warn and never end planning. Where every partner is a reactant of the equation, or the pair is listed as meant to meet,
 * the meeting is intended and its condition is told.
 */
export function stepMeetings(
  library: Library,
  tables: HazardTables,
  traits: ReadonlyMap<string, Traits>,
  steps: readonly ChargedStep[],
): readonly Meeting[] {
  const rules = tables.incidentRules.filter(rule => rule.applies.includes('flask') || rule.applies.includes('workup'))
  const bySet = rules.filter(rule => rule.trigger.step === undefined)
  const byStep = rules.filter(rule => rule.trigger.step !== undefined)
  return steps.flatMap(step => {
    const transformation = transformationOf(library, step.transformation)
    const inStep = placesOf(library, traits, transformation)
    return [
      ...bySet.flatMap(rule => meetingsOf(library, rule, step, transformation, inStep)),
      ...byStep
        .filter(rule => isSuchAStep(rule, step, transformation, library))
        .map(rule => meetingOf(rule, step, gasesAt(library, rule, transformation), false, [])),
    ]
  })
}

/** What stands together in a step, and which ways of meeting there are real. */
interface Place {
  readonly present: readonly Present[]
  readonly isReal: (way: readonly Present[]) => boolean
}

function placesOf(library: Library, traits: ReadonlyMap<string, Traits>, transformation: Transformation): readonly Place[] {
  const as = (ids: readonly string[]): Present[] => [...new Set(ids)].map(id => presentAs(library, traits, id))
  const lines = transformation.charge
  const recrystallising = as(lines.filter(line => line.role === 'recrystallisation').map(line => line.material))
  const working = as(lines.filter(line => line.role !== 'recrystallisation' && stageOf(line) !== 'vessel').map(line => line.material))
  const charged = as(lines.filter(line => line.role !== 'recrystallisation').map(line => line.material))
  const openReactants = transformation.reactants
    .map(reactant => reactant.compound)
    .filter(compound => !lines.some(line => compoundIn(materialOf(library, line.material)) === compound) && compound !== 'oxygen')
  const products = as(
    transformation.products.map(product => product.compound).filter(id => id !== 'water' && materialOf(library, id).form !== 'gas'),
  )
  const holdsProduct = (way: readonly Present[]) => way.some(one => products.includes(one))
  return [
    { present: [...charged, ...as(openReactants)], isReal: () => true },
    // What is charged into the vessel has met the product by being made into it: only what comes later is news to it.
    { present: [...products, ...working], isReal: holdsProduct },
    { present: [...products, ...recrystallising], isReal: () => true },
  ]
}

function meetingsOf(
  library: Library,
  rule: IncidentRule,
  step: ChargedStep,
  transformation: Transformation,
  places: readonly Place[],
): readonly Meeting[] {
  const ways = places.flatMap(place => waysToFire(rule, place.present).filter(place.isReal))
  if (ways.length === 0) return []
  const judged = ways.map(way => ({ way, meant: meantTo(library, transformation, way) }))
  return [false, true].flatMap(intended => {
    const these = judged.filter(({ meant }) => (meant !== null) === intended)
    if (these.length === 0) return []
    const conditions = [...new Set(these.flatMap(({ meant }) => meant ?? []))]
    const materials = [...new Set(these.flatMap(({ way }) => way.map(one => one.material.id)))]
    return [meetingOf(rule, step, materials, intended, conditions)]
  })
}

const meetingOf = (
  rule: IncidentRule,
  step: ChargedStep,
  materials: readonly string[],
  intended: boolean,
  conditions: readonly string[],
): Meeting => ({
  where: 'step',
  place: step.number,
  severity: rule.severity,
  materials,
  title: rule.title,
  consequence: rule.consequence,
  do: rule.do,
  intended,
  ...(rule.trigger.allOf.length < 2 && { general: true }),
  conditions: [...conditions, ...rule.trigger.conditions.map(asQuestion)],
  sources: rule.sources,
})

/** Above this scale a strong exotherm is a danger of its own. Scale table, `scale-strong-exotherm`. */
const strongExothermScale = 2
/** Above this temperature a tube counts as heated, C. Common practice, no source. */
const heatedAboveC = 40

/** Rules that no pair of materials sets off, but what a step is. */
function isSuchAStep(rule: IncidentRule, step: ChargedStep, transformation: Transformation, library: Library): boolean {
  switch (rule.trigger.step) {
    case 'gas':
      return gasesOf(library, transformation).length > 0
    case 'strong-exotherm':
      return transformation.exotherm === 'strong' && step.scale / step.batches > strongExothermScale
    case 'closed-tube':
      return transformation.vesselKind === 'tube' && (transformation.temperatureC?.[1] ?? 0) > heatedAboveC
    case 'reflux':
      return transformation.operations.some(operation => /reflux|boil|distil/i.test(operation))
    default:
      return false
  }
}

const gasesAt = (library: Library, rule: IncidentRule, transformation: Transformation): readonly string[] =>
  rule.trigger.step === 'gas' ? [...new Set(gasesOf(library, transformation).map(gas => gas.compound))] : []

/** The conditions under which a meeting is meant; null where it is not. A rule about one material alone is never meant. */
function meantTo(library: Library, transformation: Transformation, way: readonly Present[]): readonly string[] | null {
  if (way.length < 2) return null
  const reactants = new Set(transformation.reactants.map(reactant => reactant.compound))
  const ids = way.map(({ material }) => new Set([material.id, compoundIn(material) ?? material.id]))
  const conditions: string[] = []
  for (let a = 0; a < ids.length; a++) {
    for (let b = a + 1; b < ids.length; b++) {
      const listed = (transformation.intendedMeetings ?? []).filter(
        ({ materials: [one, other] }) =>
          (isIn(library, one, ids[a]!) && isIn(library, other, ids[b]!)) || (isIn(library, other, ids[a]!) && isIn(library, one, ids[b]!)),
      )
      conditions.push(...listed.map(meeting => meeting.condition))
      const react = [...ids[a]!].some(id => reactants.has(id)) && [...ids[b]!].some(id => reactants.has(id))
      if (listed.length === 0 && !react) return null
    }
  }
  return conditions
}

/** A pair may name the bottle or the compound in it. */
const isIn = (library: Library, id: string, ids: ReadonlySet<string>): boolean =>
  ids.has(id) || ids.has(compoundIn(materialOf(library, id)) ?? id)
