import { type FigureTrust, stepFigures } from '../../core/library/figure-trust.ts'
import { type Library, materialOf } from '../../core/library/library.ts'
import { compoundIn, measured, referenceMoles } from '../../core/library/reference-charge.ts'
import { type ChargeLine, stageOf, type Transformation } from '../../core/library/transformation.ts'
import { trustInYield } from '../../core/library/trust.ts'
import { durationText, noBreakSpace, numberText } from '../../core/quantity/print.ts'
import { inPlaceOf } from '../../core/report/in-place-of.ts'
import { markLetters, markWords } from '../../core/report/marks.ts'
import { braceText, plain } from './scheme/runs.ts'
import type { Item, Sure } from './scheme/types.ts'
import { shortName } from './short-names.ts'

/** Below this share of the limiting reactant a line is written in mole percent. Common practice, no source. */
const catalytic = 0.105
const reagentRoles = new Set(['reagent', 'oxidant', 'reductant', 'catalyst', 'base', 'acid', 'other', 'substrate'])
/** More than this nobody reads over an arrow. */
const mostReagents = 3

export interface Conditions {
  /** Over the arrow: reagents with their equivalents, solvents, temperature. */
  readonly over: readonly Item[]
  /** The one or two items that tell this way from another. */
  readonly brief: readonly Item[]
}

/**
 * What stands over a step's arrow.
 *
 * @param left  compounds that are drawn or named elsewhere: the reactant that carries the row, drawn co-reactants, made ones
 */
export function conditionsOf(library: Library, transformation: Transformation, left: ReadonlySet<string>): Conditions {
  const limiting = referenceMoles(library, transformation, transformation.limiting)
  const inVessel = transformation.charge.filter(line => stageOf(line) === 'vessel')
  const reagents = reagentTexts(library, inVessel, left, limiting)
  const solvents = [
    ...new Set(inVessel.filter(line => line.role === 'solvent').map(line => shortName(library, materialOf(library, line.material)))),
  ]
  const shown = reagents.slice(0, mostReagents)
  const last = [solvents.slice(0, 3).join('–'), temperatureText(transformation)].filter(text => text !== '')
  const texts = last.length > 0 ? [...shown, ...last] : shown
  const briefTexts = shown.length > 0 ? [shown[0]!, ...(solvents[0] === undefined ? [] : [solvents[0]])] : last.slice(0, 1)
  return { over: texts.map(text => braceText(text)), brief: briefTexts.map(text => braceText(text)) }
}

function reagentTexts(
  library: Library,
  lines: readonly ChargeLine[],
  left: ReadonlySet<string>,
  limiting: number | null,
): readonly string[] {
  const sums = new Map<string, { name: string; moles: number | null; catalyst: boolean }>()
  for (const line of lines) {
    const material = materialOf(library, line.material)
    const compound = compoundIn(material)
    if (!reagentRoles.has(line.role) || left.has(line.material) || (compound !== null && left.has(compound))) continue
    const moles = line.amount === null ? null : measured(library, material, line.amount, line.unit).amountMol
    const before = sums.get(line.material)
    const sum = before?.moles == null || moles === null ? (moles ?? before?.moles ?? null) : before.moles + moles
    sums.set(line.material, { name: shortName(library, material), moles: sum, catalyst: line.role === 'catalyst' })
  }
  return [...sums.values()].map(({ name, moles, catalyst }) => {
    if (moles === null || limiting === null) return catalyst ? `${name} cat.` : name
    const equivalents = moles / limiting
    return equivalents < catalytic
      ? `${name} ${numberText(equivalents * 100, 2, 1).replace(/\.0$/, '')}${noBreakSpace}%`
      : `${name} ${numberText(equivalents, equivalents < 1 ? 2 : 3, 2)}${noBreakSpace}eq`
  })
}

/** "110–118 °C", "25 °C"; empty where the library does not say. */
export function temperatureText({ temperatureC }: Transformation): string {
  if (temperatureC === undefined) return ''
  const [from, to] = temperatureC
  const sign = (value: number): string => String(value).replace('-', '\u2212')
  return from === to ? `${sign(from)}${noBreakSpace}°C` : `${sign(from)}–${sign(to)}${noBreakSpace}°C`
}

/** What passes before work-up begins: watched and reacting time; where neither is known the elapsed time, worded so. */
export function timeText(transformation: Transformation): string {
  const reacting = (transformation.tasks ?? []).filter(task => task.kind === 'watch' || (task.kind === 'stand' && task.reaction === true))
  const hours = reacting.reduce((sum, task) => sum + task.hours, 0)
  return hours > 0 ? durationText(hours) : `${durationText(transformation.elapsedHours)}, with drying`
}

/** "91 % (85–95)": typical, low and high of a step; of an isolation "1.4 g per 100 g (0.8–2)". */
export function yieldText({ kind, yieldPercent: { low, typical, high } }: Transformation): string {
  if (kind === 'isolation') {
    const grams = (value: number): string => numberText(value, 2, 1)
    return `${grams(typical)}${noBreakSpace}g per 100${noBreakSpace}g (${grams(low)}–${grams(high)})`
  }
  const whole = (value: number): string => numberText(value, 3, 0)
  return `${whole(typical)}${noBreakSpace}% (${whole(low)}–${whole(high)})`
}

/** Marks of what stands under an arrow, where they are not what the arrow's line says. */
export function underMarks(transformation: Transformation): ReadonlyMap<FigureTrust['figure'], FigureTrust['mark']> {
  const sure = sureOf(transformation)
  return new Map(
    stepFigures(transformation)
      .filter(({ figure, mark }) => (figure === 'times' || figure === 'range of the yield') && mark !== sure && mark !== 'own bench')
      .map(({ figure, mark }) => [figure, mark]),
  )
}

/** Time and yield under an arrow, each with a letter where it is not as sure as the arrow's line says. */
export function underOf(transformation: Transformation): readonly Item[] {
  const marks = underMarks(transformation)
  const sign = (figure: 'times' | 'range of the yield'): Item => {
    const mark = marks.get(figure)
    return mark === undefined ? [] : [{ t: markLetters[mark], mark: markWords[mark] }]
  }
  const text = yieldText(transformation)
  const end = text.lastIndexOf(')')
  const yields = end < 0 ? plain(text) : [{ t: text.slice(0, end) }, ...sign('range of the yield'), { t: text.slice(end) }]
  return [[...plain(timeText(transformation)), ...sign('times')], yields]
}

/** Solid where what is charged and what it gives were read in a source or measured at this bench, dashed where the yield is remembered. */
export function sureOf(transformation: Transformation): Sure {
  return trustInYield(transformation) === 'remembered' ? 'remembered' : 'seen'
}

/**
 * The word for it under the arrow; null where the line is solid and the yield a source's.
 *
 * @param beneath typical yield, percent, that an own record stands in place of
 */
export function sureWord(transformation: Transformation, beneath?: number): string | null {
  if (trustInYield(transformation) === 'own bench')
    return beneath === undefined ? 'own bench' : `own bench, ${inPlaceOf(transformation, beneath)}`
  const sure = sureOf(transformation)
  if (sure === 'seen') return null
  return sure === 'remembered' && transformation.confidence === 'common-practice' ? 'common practice' : sure
}
