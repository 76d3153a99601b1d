import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { coefficientOf, freeCompounds, productCoefficientOf } from '../library/reference-charge.ts'
import type { ChargedLine, ChargedStep } from './charged.ts'
import type { MassMetrics } from './mass-metrics.ts'
import { reactantLines } from './reactant-lines.ts'

/** Masses of one step, or of a route, from which the metrics follow; g. */
export interface Masses {
  /** Equation's reactants as charged, counted as compound; water and oxygen at their stoichiometric amount. */
  readonly reactantsG: number
  readonly inputsG: number
  readonly waterG: number
  readonly productG: number
  /** Second products worth keeping. */
  readonly keptG: number
  readonly open: boolean
}

type InputMasses = Omit<Masses, 'productG' | 'keptG'>

/**
 * Mass metrics of one step at typical yields. An isolation has no equation: no atom economy and no reaction mass efficiency.
 *
 * Sources: atom economy, Trost, Science 1991, 254, 1471; E-factor, Sheldon; reaction mass efficiency, Constable, Curzons and Cunningham,
 * Green Chem. 2002, 4, 521; process mass intensity, ACS Green Chemistry Institute pharmaceutical roundtable. Titles from memory.
 */
export function stepMetrics(library: Library, step: ChargedStep): MassMetrics {
  const isolation = transformationOf(library, step.transformation).kind === 'isolation'
  return metricsOf(stepMasses(library, step), isolation ? null : atomEconomy(library, step.transformation), !isolation)
}

/** What the metrics of one step are reckoned from. */
export function stepMasses(library: Library, step: ChargedStep): Masses {
  const keptG = step.coProducts.reduce((sum, c) => sum + c.expectedG, 0)
  return { ...massesOf(library, step, () => true), productG: step.expectedG, keptG }
}

/** Mass of the main product over mass of all reactants, by the equation; null for an isolation. */
export function atomEconomy(library: Library, id: string): number | null {
  const transformation = transformationOf(library, id)
  if (transformation.kind === 'isolation') return null
  const mass = (compound: string): number => library.molarMass.get(compound) ?? Number.NaN
  const reactants = [...new Set(transformation.reactants.map(r => r.compound))]
  const all = reactants.reduce((sum, compound) => sum + coefficientOf(transformation, compound) * mass(compound), 0)
  const product = productCoefficientOf(transformation, transformation.mainProduct) * mass(transformation.mainProduct)
  return Number.isFinite(all) && all > 0 ? product / all : null
}

/**
 * Mass metrics of a route or of the merged steps of a plan: all that is bought or started from over what is wanted in the end, intermediates
 * once. In atom economy co-reactants that are made count their own reactants; what an isolation gives counts as itself.
 *
 * @param wants final products, g at typical yields
 */
export function routeMetrics(library: Library, steps: readonly ChargedStep[], wants: ReadonlyMap<string, number>): MassMetrics {
  const reactions = steps.every(s => transformationOf(library, s.transformation).kind === 'reaction')
  return metricsOf(routeMasses(library, steps, wants), routeAtomEconomy(library, steps, wants), reactions)
}

/** What the metrics of a route are reckoned from: intermediates once. */
export function routeMasses(library: Library, steps: readonly ChargedStep[], wants: ReadonlyMap<string, number>): Masses {
  const made = new Set(steps.map(s => s.makes))
  let all: InputMasses = { reactantsG: 0, inputsG: 0, waterG: 0, open: false }
  let keptG = 0
  for (const step of steps) {
    const own = massesOf(library, step, compound => !made.has(compound))
    all = {
      reactantsG: all.reactantsG + own.reactantsG,
      inputsG: all.inputsG + own.inputsG,
      waterG: all.waterG + own.waterG,
      open: all.open || own.open,
    }
    keptG += step.coProducts.reduce((sum, c) => sum + c.expectedG, 0)
  }
  const productG = [...wants.values()].reduce((sum, g) => sum + g, 0)
  return { ...all, productG, keptG }
}

function metricsOf(masses: Masses, economy: number | null, reactions: boolean): MassMetrics {
  const { productG, keptG } = masses
  const some = productG > 0
  return {
    atomEconomy: economy,
    reactionMassEfficiency: some && reactions && masses.reactantsG > 0 ? productG / masses.reactantsG : null,
    eFactor: some ? (masses.inputsG - productG - keptG) / productG : null,
    eFactorWithoutWater: some ? (masses.inputsG - masses.waterG - productG - keptG) / productG : null,
    processMassIntensity: some ? masses.inputsG / productG : null,
    lowerBound: masses.open,
  }
}

/** By the equations alone, every yield 1: wanted products over all that their equations take from outside. */
function routeAtomEconomy(library: Library, steps: readonly ChargedStep[], wants: ReadonlyMap<string, number>): number | null {
  const demandMol = new Map<string, number>()
  let productG = 0
  for (const [compound, massG] of wants) {
    const mass = library.molarMass.get(compound)
    if (mass === undefined) return null
    productG += massG
    demandMol.set(compound, massG / mass)
  }
  let outsideG = 0
  for (let i = steps.length - 1; i >= 0; i--) {
    const t = transformationOf(library, steps[i]!.transformation)
    const wanted = demandMol.get(t.mainProduct) ?? 0
    demandMol.delete(t.mainProduct)
    if (t.kind === 'isolation') {
      outsideG += wanted * (library.molarMass.get(t.mainProduct) ?? Number.NaN)
      continue
    }
    const times = wanted / productCoefficientOf(t, t.mainProduct)
    for (const { compound, coefficient } of t.reactants) demandMol.set(compound, (demandMol.get(compound) ?? 0) + times * coefficient)
  }
  for (const [compound, amountMol] of demandMol) outsideG += amountMol * (library.molarMass.get(compound) ?? Number.NaN)
  return outsideG > 0 && Number.isFinite(outsideG) ? productG / outsideG : null
}

/**
 * @param counts whether a reactant comes from outside: in a route what an earlier step makes counts there and not again
 */
function massesOf(library: Library, step: ChargedStep, counts: (compound: string) => boolean): InputMasses {
  const transformation = transformationOf(library, step.transformation)
  let inputsG = 0
  let waterG = 0
  let open = false
  const byCompound = new Map<string, number>()
  const reactants = reactantLines(library, transformation)
  for (const line of step.charges) {
    if (line.supply === 'free') continue
    const compound = compoundOf(library, line)
    const own = line.supply === 'made' && compound !== null && !counts(compound) ? 0 : line.massG
    if (line.massG === null || line.basis === 'open') open = true
    inputsG += own ?? 0
    waterG += waterIn(library, line)
    const counted = reactants.find(r => r.compound === compound && (line.line === null || r.lines.includes(line.line)))
    if (compound !== null && counted && line.amountMol !== null) {
      byCompound.set(compound, (byCompound.get(compound) ?? 0) + line.amountMol)
    }
  }
  return { reactantsG: reactantMassG(library, step, byCompound, counts), inputsG, waterG, open }
}

function reactantMassG(
  library: Library,
  step: ChargedStep,
  charged: ReadonlyMap<string, number>,
  counts: (compound: string) => boolean,
): number {
  const t = transformationOf(library, step.transformation)
  const limitingMol = step.limiting.amountMol
  if (limitingMol === null) return 0
  let sum = 0
  for (const compound of new Set(t.reactants.map(r => r.compound))) {
    if (!counts(compound)) continue
    const exact = (limitingMol * coefficientOf(t, compound)) / coefficientOf(t, t.limiting)
    const amountMol = freeCompounds.has(compound) ? exact : (charged.get(compound) ?? exact)
    sum += amountMol * (library.molarMass.get(compound) ?? 0)
  }
  return sum
}

const compoundOf = (library: Library, line: ChargedLine): string | null => {
  const material = materialOf(library, line.material)
  return material.kind === 'mixture' ? (material.contains?.compound ?? null) : material.id
}

/** Water as such, and the water inside a solution; 0 where the library cannot tell. */
function waterIn(library: Library, line: ChargedLine): number {
  if (line.massG === null) return 0
  if (line.material === 'water') return line.massG
  const material = materialOf(library, line.material)
  const { contains } = material
  if (material.form !== 'solution' || !contains || (contains.rest ?? 'water') !== 'water') return 0
  if (contains.massFraction !== undefined) return line.massG * (1 - contains.massFraction)
  const molarMass = library.molarMass.get(contains.compound)
  return line.amountMol === null || molarMass === undefined ? 0 : Math.max(0, line.massG - line.amountMol * molarMass)
}
