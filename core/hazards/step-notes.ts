import { type Library, materialOf, transformationOf } from '../library/library.ts'
import type { Transformation } from '../library/transformation.ts'
import type { ChargedStep } from '../route/charged.ts'
import type { GasLine } from './hazard-list.ts'
import type { HazardTables } from './tables.ts'

/** What a bench owns, as far as a step's dangers ask for it; null = not stated. */
export interface Bench {
  readonly hood: boolean | null
  readonly inertGas: boolean | null
}

/** Above this bath or reaction temperature a step counts as heated, C. Common practice, no source. */
const heatedAboveC = 40
/** Above this times the source's scale a mild exotherm is worth a word. Common practice, no source. */
const sameScale = 1.5
/** Above this scale a strong exotherm is a danger of its own. Scale table, `scale-strong-exotherm`. */
const strongExothermScale = 2
/** Peroxide formers: evaporating more than this calls for a test first, mL. Scale table, `peroxide-check-volume`. */
const peroxideTestMl = 50
/** Flammable solvent open at the bench beyond which it belongs in the cabinet, mL. Scale table, `quantity-limits`. */
const openSolventMl = 1000
/** Flash point below which a liquid counts as flammable here, C: GHS flammable liquids, category 3 and stricter. */
const flammableBelowC = 60

/** Dangers of one step in words: the source's own first, then what heat, gas, air, solvents and standing alone add at this scale. */
export function stepNotes(
  library: Library,
  tables: HazardTables,
  step: ChargedStep,
  gas: readonly GasLine[],
  bench: Bench,
): readonly string[] {
  const transformation = transformationOf(library, step.transformation)
  return [
    ...transformation.hazardNotes.map(note => unscaled(note, step)),
    ...hood(transformation, bench),
    ...air(transformation, bench),
    ...heat(transformation, step),
    ...gas.filter(line => line.step === step.number).map(line => gasNote(library, line)),
    ...closed(transformation, step, gas),
    ...alone(transformation),
    ...peroxides(library, tables, step),
    ...solvents(library, step),
  ]
}

/** Amounts inside the source's own words stay what they are there: it is said, so that nobody takes them for those of this plan. */
const unscaled = (note: string, step: ChargedStep): string =>
  Math.abs(step.scale / step.batches - 1) < 0.02 || !/\d\s?(mL|mg|g|kg|L|litres?)\b/.test(note)
    ? note
    : `${note.replace(/\.$/, '')} (amounts as in the source, not scaled).`

function hood(transformation: Transformation, bench: Bench): string[] {
  if (!transformation.needsHood) return []
  return [bench.hood === false ? 'Needs a hood, and the settings say there is none: do not run it here.' : 'In the hood.']
}

function air(transformation: Transformation, bench: Bench): string[] {
  if (transformation.atmosphere !== 'inert') return []
  return [bench.inertGas === false ? 'Needs inert gas, and the settings say there is none.' : 'Under inert gas, with an open bubbler.']
}

/** The dosing time grows at least with the cube root of the scale: cooling surface per volume falls with it (scale table). */
function heat(transformation: Transformation, step: ChargedStep): string[] {
  if (transformation.exotherm === 'none') return []
  const times = step.scale / step.batches
  const strong = transformation.exotherm === 'strong'
  const first = strong
    ? 'Strongly exothermic: add slowly, with a thermometer in the mixture and the ice bath ready.'
    : 'Warms by itself: watch the temperature while adding.'
  // A hair above the source's scale is no other scale: nothing has to be said about it.
  if (times <= (strong ? 1 : sameScale)) return [first]
  const slower = `At ${figure(times)} times the source's scale dosing takes at least ${figure(Math.cbrt(times))} times as long.`
  const far = strong && times > strongExothermScale ? ' Run it once at half of this before, or split it: heat outgrows cooling.' : ''
  return [`${first} ${slower}${far}`]
}

function gasNote(library: Library, line: GasLine): string {
  const name = materialOf(library, line.compound).name
  const space =
    line.freeVesselMl === null
      ? ''
      : `, into ${figure(line.freeVesselMl / 1000)} L of free vessel (${figure((line.litresPerBatch * 1000) / line.freeVesselMl)} times)`
  return `Gives up to ${figure(line.litresPerBatch)} L of ${name} a batch${space}: never in a closed vessel.`
}

/** A tube is what people stopper: with gas coming off it is refused. */
const closed = (transformation: Transformation, step: ChargedStep, gas: readonly GasLine[]): string[] =>
  transformation.vesselKind === 'tube' && gas.some(line => line.step === step.number)
    ? ['The tube stays open, or gets a vent: closed it is refused here, since gas comes off.']
    : []

function alone(transformation: Transformation): string[] {
  const top = transformation.temperatureC?.[1]
  if (top === undefined || top <= heatedAboveC) return []
  const standing = (transformation.tasks ?? []).filter(task => task.kind === 'stand' && task.reaction === true)
  return standing.map(task => `Runs alone while hot, ${figure(task.hours)} h (${task.do}): hang up the notice for unattended work.`)
}

function peroxides(library: Library, tables: HazardTables, step: ChargedStep): string[] {
  const formers = step.charges.filter(line => materialOf(library, line.material).peroxideClass !== undefined)
  return [...new Set(formers.map(line => line.material))].map(id => {
    const { name, peroxideClass } = materialOf(library, id)
    const action = tables.peroxideClasses[peroxideClass ?? '']?.action ?? 'test before use'
    const volumeMl = formers.reduce((sum, line) => sum + (line.material === id ? (line.volumeMl ?? 0) : 0), 0)
    const evaporate =
      volumeMl > peroxideTestMl ? ` ${figure(volumeMl)} mL is evaporated here at most: test first, and never to dryness.` : ''
    return `${capitalised(name)} forms peroxides: ${action}.${evaporate}`
  })
}

function solvents(library: Library, step: ChargedStep): string[] {
  const flammable = step.charges.filter(line => (materialOf(library, line.material).flashC ?? Number.POSITIVE_INFINITY) < flammableBelowC)
  const volumeMl = flammable.reduce((sum, line) => sum + (line.volumeMl ?? 0), 0)
  return volumeMl > openSolventMl
    ? [`${figure(volumeMl / 1000)} L of flammable solvent in all: no more than a litre open at the bench at a time.`]
    : []
}

const figure = (value: number): string => String(Number(value.toPrecision(2)))
const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
