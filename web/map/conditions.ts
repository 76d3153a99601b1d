import { type FigureTrust, lineFigure, stepFigures } from '../../core/library/figure-trust.ts'
import { type Library, materialOf } from '../../core/library/library.ts'
import type { Mark } from '../../core/library/mark.ts'
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
  const isSolid = sureOf(transformation) === 'seen'
  const reagents = reagentTexts(library, transformation, inVessel, left, limiting)
  const solvents = [
    ...new Set(inVessel.filter(line => line.role === 'solvent').map(line => shortName(library, materialOf(library, line.material)))),
  ]
  const shown = reagents.slice(0, mostReagents)
  const last = [solvents.slice(0, 3).join('–'), temperatureText(transformation)].filter(text => text !== '')
  const briefTexts = shown.length > 0 ? [shown[0]!.text, ...(solvents[0] === undefined ? [] : [solvents[0]])] : last.slice(0, 1)
  const over = shown.map(({ text, isRecalled }) => [...braceText(text), ...(isSolid && isRecalled ? sign('remembered') : [])])
  return { over: [...over, ...last.map(text => braceText(text))], brief: briefTexts.map(text => braceText(text)) }
}

const sign = (mark: FigureTrust['mark']): Item => [{ t: markLetters[mark], mark: markWords[mark] }]

interface ReagentText {
  readonly text: string
  /** Its equivalents rest on an amount that is only remembered. */
  readonly isRecalled: boolean
}

function reagentTexts(
  library: Library,
  transformation: Transformation,
  lines: readonly ChargeLine[],
  left: ReadonlySet<string>,
  limiting: number | null,
): readonly ReagentText[] {
  const sums = new Map<string, { name: string; moles: number | null; catalyst: boolean; isRecalled: boolean }>()
  for (const line of lines) {
    const material = materialOf(library, line.material)
    const compound = compoundIn(material)
    if (!reagentRoles.has(line.role) || left.has(line.material) || (compound !== null && left.has(compound))) continue
    const moles = line.amount === null ? null : measured(library, material, line.amount, line.unit).amountMol
    const before = sums.get(line.material)
    const sum = before?.moles == null || moles === null ? (moles ?? before?.moles ?? null) : before.moles + moles
    const isRecalled = before?.isRecalled === true || lineFigure(transformation, line).mark === 'remembered'
    sums.set(line.material, { name: shortName(library, material), moles: sum, catalyst: line.role === 'catalyst', isRecalled })
  }
  return [...sums.values()].map(({ name, moles, catalyst, isRecalled }) => {
    if (moles === null || limiting === null) return { text: catalyst ? `${name} cat.` : name, isRecalled: false }
    const equivalents = moles / limiting
    const text =
      equivalents < catalytic
        ? `${name} ${numberText(equivalents * 100, 2, 1).replace(/\.0$/, '')}${noBreakSpace}%`
        : `${name} ${numberText(equivalents, equivalents < 1 ? 2 : 3, 2)}${noBreakSpace}eq`
    return { text, isRecalled }
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

/** Marks that stand over and under an arrow, for a legend. */
export function arrowMarks(library: Library, transformation: Transformation): readonly Mark[] {
  const { over } = conditionsOf(library, transformation, new Set([transformation.limiting]))
  const isRecalled = over.some(item => item.some(run => run.mark !== undefined))
  return [...(isRecalled ? (['remembered'] as const) : []), ...underMarks(transformation).values()]
}

/** Marks of what stands under an arrow, where they are not what the arrow's line says. */
function underMarks(transformation: Transformation): ReadonlyMap<FigureTrust['figure'], FigureTrust['mark']> {
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
  const signOf = (figure: 'times' | 'range of the yield'): Item => {
    const mark = marks.get(figure)
    return mark === undefined ? [] : sign(mark)
  }
  const text = yieldText(transformation)
  const end = text.lastIndexOf(')')
  const yields = end < 0 ? plain(text) : [{ t: text.slice(0, end) }, ...signOf('range of the yield'), { t: text.slice(end) }]
  return [[...plain(timeText(transformation)), ...signOf('times')], yields]
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
