import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { compoundIn, productCoefficientOf } from '../library/reference-charge.ts'
import type { Role } from '../library/transformation.ts'
import type { ChargedLine, ChargedStep } from '../route/charged.ts'
import { gasesOf } from './gas.ts'
import type { WasteLine } from './hazard-list.ts'
import type { Timing } from './kept.ts'
import { stillToRun } from './still-to-run.ts'
import type { HazardTables } from './tables.ts'
import type { Traits } from './traits.ts'
import { streamFor, strictestFirst } from './waste-stream.ts'

/** What leaves the liquor by itself: these lines are waste of their own. All others end in the one liquor of the step. */
const ownWaste: Partial<Record<Role, string>> = {
  extraction: 'extract',
  recrystallisation: 'mother liquor of the recrystallisation',
  drying: 'spent drying agent',
}

type Part = WasteLine['from'][number]

/**
 * Waste of the whole plan, by container: of each step one liquor by mass balance (all that goes in less product and gas) plus each separate
 * extract, at typical yield, put in its stream (see `streamFor`). Where a part has no figure the sums are a lower bound. What has no known
 * stream is kept apart by step: nobody has said that the unknown residues of two steps may meet.
 */
export function wasteOf(
  library: Library,
  tables: HazardTables,
  traits: ReadonlyMap<string, Traits>,
  steps: readonly ChargedStep[],
  timing: Timing | null = null,
): readonly WasteLine[] {
  const bottles = new Map<string, { stream: string; parts: { part: Part; open: boolean }[] }>()
  const put = (stream: string, part: Part, open: boolean) => {
    const bottle = tables.wasteStreams[stream] === undefined ? `${stream} ${part.step}` : stream
    const { parts } = bottles.get(bottle) ?? { parts: [] }
    bottles.set(bottle, { stream, parts: [...parts, { part, open }] })
  }
  for (const step of steps.map(stillToRun)) {
    const lines = step.charges.filter(line => line.supply !== 'free')
    for (const line of lines) {
      const what = ownWaste[line.role]
      if (what === undefined) continue
      const { stream, first } = streamFor(library, traits, [line.material], [line])
      const part = { step: step.number, what, massG: line.massG, volumeMl: line.volumeMl, materials: [line.material], first }
      put(stream, part, line.massG === null)
    }
    const together = lines.filter(line => ownWaste[line.role] === undefined)
    const liquor = liquorOf(library, step, together)
    if (liquor === null) continue
    const { stream, first } = streamFor(library, traits, liquor.part.materials, together)
    put(stream, { ...liquor.part, first }, liquor.open)
  }
  return [...bottles.values()]
    .sort((a, b) => rank(a.stream) - rank(b.stream))
    .map(({ stream, parts }) => {
      const known = tables.wasteStreams[stream]
      return {
        stream,
        name: known?.name ?? `No stream known for step ${parts[0]?.part.step}: keep apart and ask`,
        container: known?.container ?? 'own labelled bottle',
        massG: sum(parts.map(({ part }) => part.massG)),
        volumeMl: sum(parts.map(({ part }) => part.volumeMl)),
        open: parts.some(({ open }) => open),
        from: parts.map(({ part }) => part),
        neverWith: known?.neverWith ?? ['anything else'],
        byDay: byDay(
          parts.map(({ part }) => part),
          timing,
        ),
      }
    })
}

/** The parts by the day on which their step is worked up, each batch its share; what has no day comes last. */
function byDay(parts: readonly Part[], timing: Timing | null): WasteLine['byDay'] {
  const days = new Map<string, Part[]>()
  for (const part of parts) {
    const dates = timing?.workedUp.get(part.step) ?? ['']
    const shareOf = (figure: number | null): number | null => (figure === null ? null : figure / dates.length)
    for (const date of dates)
      days.set(date, [...(days.get(date) ?? []), { ...part, massG: shareOf(part.massG), volumeMl: shareOf(part.volumeMl) }])
  }
  return [...days]
    .sort(([a], [b]) => Number(a === '') - Number(b === '') || (a < b ? -1 : 1))
    .map(([date, there]) => ({
      date: date === '' ? null : date,
      steps: [...new Set(there.map(part => part.step))],
      massG: sum(there.map(part => part.massG)),
      volumeMl: sum(there.map(part => part.volumeMl)),
    }))
}

const sum = (figures: readonly (number | null)[]): number | null => {
  const known = figures.filter(figure => figure !== null)
  return known.length === 0 ? null : known.reduce((total, figure) => total + figure, 0)
}

const rank = (stream: string): number => {
  const at = (strictestFirst as readonly string[]).indexOf(stream)
  return at < 0 ? -1 : at
}

/** What is left of vessel, quench and washes once the product is out and the gas is gone; null where nothing is. */
function liquorOf(
  library: Library,
  step: ChargedStep,
  lines: readonly ChargedLine[],
): { readonly part: Omit<Part, 'first'>; readonly open: boolean } | null {
  const transformation = transformationOf(library, step.transformation)
  const inG = sum(lines.map(line => line.massG))
  const open = lines.some(line => line.massG === null)
  const limiting = step.limiting.amountMol ?? 0
  const gases = gasesOf(library, transformation)
  // At typical yield as much of the gas is made as of the product.
  const conversion = transformation.kind === 'isolation' ? 0 : step.yieldFraction.typical
  const gasG = gases.reduce(
    (total, gas) => total + limiting * conversion * gas.perMolLimiting * (library.molarMass.get(gas.compound) ?? 0),
    0,
  )
  const outG = step.expectedG + step.coProducts.reduce((total, product) => total + product.expectedG, 0) + gasG
  const massG = inG === null ? null : Math.max(0, inG - outG)
  const gone = new Set([transformation.mainProduct, ...step.coProducts.map(product => product.compound), ...gases.map(gas => gas.compound)])
  const byProducts = transformation.products
    .map(product => product.compound)
    .filter(id => !gone.has(id) && materialOf(library, id).form !== 'gas' && productCoefficientOf(transformation, id) > 0)
  const materials = [...new Set([...leftOver(library, step, lines), ...byProducts])]
  if (materials.length === 0 && (massG === null || massG === 0)) return null
  const liquids = lines.filter(line => line.volumeMl !== null && ['liquid', 'solution'].includes(materialOf(library, line.material).form))
  const part = { step: step.number, what: 'liquor', massG, volumeMl: sum(liquids.map(line => line.volumeMl)), materials }
  return { part, open }
}

/** Share of a reactant that is taken as used up when so little of it is in excess. Common practice, no source. */
const usedUp = 0.02

/** Materials of the liquor: all that was charged, but for reactants that the equation uses up even at typical yield. */
const leftOver = (library: Library, step: ChargedStep, lines: readonly ChargedLine[]): readonly string[] =>
  lines.filter(line => shareLeft(library, step, line.material, lines) !== 0).map(line => line.material)

/**
 * Share of a charged material that the equation leaves over at typical yield: 1 for what takes no part in it, 0 for what it uses up.
 *
 * @param lines those that end in the liquor
 * @returns null where the amount is not known: some of it is left, nobody knows how much
 */
export function shareLeft(
  library: Library,
  step: ChargedStep,
  material: string,
  lines: readonly ChargedLine[] = step.charges,
): number | null {
  const transformation = transformationOf(library, step.transformation)
  const nu = (compound: string): number =>
    transformation.reactants.reduce((total, reactant) => total + (reactant.compound === compound ? reactant.coefficient : 0), 0)
  const compound = compoundIn(materialOf(library, material))
  if (compound === null || transformation.kind === 'isolation' || nu(compound) === 0) return 1
  const same = lines.filter(line => line.amountMol !== null && compoundIn(materialOf(library, line.material)) === compound)
  const moles = same.reduce((total, line) => total + (line.amountMol ?? 0), 0)
  if (moles === 0) return null
  const used = ((step.limiting.amountMol ?? 0) * step.yieldFraction.typical * nu(compound)) / nu(transformation.limiting)
  const share = (moles - used) / moles
  return share > usedUp ? share : 0
}
