import { type Library, materialOf } from './library.ts'
import type { Material } from './material.ts'
import type { Unit } from './source.ts'
import { type ChargeLine, chargedRoles, type Transformation } from './transformation.ts'

const gramsPer: Partial<Record<Unit, number>> = { g: 1, kg: 1000, mg: 0.001 }
const millilitresPer: Partial<Record<Unit, number>> = { mL: 1, L: 1000 }
const molesPer: Partial<Record<Unit, number>> = { mol: 1, mmol: 0.001 }

/** The compound a material is or contains; null for a mixture without `contains`. */
export const compoundIn = (material: Material): string | null =>
  material.kind === 'mixture' ? (material.contains?.compound ?? null) : material.id

/** Mass (g), volume (mL) and moles of contained compound of an amount of a material; null where the library cannot tell. */
export interface Measured {
  readonly massG: number | null
  readonly volumeMl: number | null
  readonly amountMol: number | null
}

/**
 * An amount of a material in all three measures.
 *
 * @param amount in `unit`, at least 0
 * @returns g, mL (null without a density) and mol of the contained compound (null without a molar mass)
 * @example measured(library, hydrochloricAcid37, 10, 'mL') // 11.8 g, 10 mL, 0.1198 mol
 * Source: arithmetic contract of the library format; molar masses from the CIAAW weights.
 */
export function measured(library: Library, material: Material, amount: number, unit: Unit): Measured {
  const compound = compoundIn(material)
  const molarMass = compound === null ? undefined : library.molarMass.get(compound)
  const { densityGPerMl: density, contains } = material
  const molPerL = contains?.molPerL
  const fraction = material.kind === 'mixture' ? contains?.massFraction : 1

  const molePart = molesPer[unit]
  if (molePart !== undefined) {
    const amountMol = amount * molePart
    if (molPerL !== undefined) {
      const volumeMl = (amountMol / molPerL) * 1000
      return { massG: density === undefined ? null : volumeMl * density, volumeMl, amountMol }
    }
    if (molarMass === undefined || fraction === undefined) return { massG: null, volumeMl: null, amountMol }
    const massG = (amountMol * molarMass) / fraction
    return { massG, volumeMl: density === undefined ? null : massG / density, amountMol }
  }

  const gramPart = gramsPer[unit]
  const millilitrePart = millilitresPer[unit]
  const massG = gramPart !== undefined ? amount * gramPart : density === undefined ? null : amount * (millilitrePart ?? 0) * density
  const volumeMl =
    millilitrePart !== undefined ? amount * millilitrePart : density === undefined ? null : (amount * (gramPart ?? 0)) / density
  if (molPerL !== undefined) return { massG, volumeMl, amountMol: volumeMl === null ? null : (volumeMl * molPerL) / 1000 }
  const amountMol = massG === null || molarMass === undefined || fraction === undefined ? null : (massG * fraction) / molarMass
  return { massG, volumeMl, amountMol }
}

/** The lines that count as the charge of a reactant: by role, else its quench lines; only lines with an amount. */
export function linesOfReactant(library: Library, transformation: Transformation, compound: string): readonly ChargeLine[] {
  const own = transformation.charge.filter(l => l.amount !== null && compoundIn(materialOf(library, l.material)) === compound)
  const charged = own.filter(l => chargedRoles.has(l.role))
  return charged.length > 0 ? charged : own.filter(l => l.role === 'quench')
}

/** Moles of a reactant as charged at the source's scale (`n_r,ref`); null where no line gives an amount. */
export function referenceMoles(library: Library, transformation: Transformation, compound: string): number | null {
  const lines = linesOfReactant(library, transformation, compound)
  if (lines.length === 0) return null
  let sum = 0
  for (const line of lines) sum += measured(library, materialOf(library, line.material), line.amount ?? 0, line.unit).amountMol ?? 0
  return sum > 0 ? sum : null
}

/** Grams of the feedstock in an isolation's reference charge; null where no line gives an amount. */
export function referenceFeedstockG(library: Library, transformation: Transformation): number | null {
  let sum = 0
  for (const line of linesOfReactant(library, transformation, transformation.limiting)) {
    sum += measured(library, materialOf(library, line.material), line.amount ?? 0, line.unit).massG ?? 0
  }
  return sum > 0 ? sum : null
}

/** Water and the oxygen of the air are free where no line gives an amount. */
export const freeCompounds: ReadonlySet<string> = new Set(['water', 'oxygen'])

/**
 * Moles of a reactant demanded per mole of the limiting one, as charged: its excess included; where no line gives an amount, what the
 * equation consumes at full conversion. 0 for a free reactant without an amount.
 *
 * @throws RangeError for a limiting reactant without an amount: the loader refuses such data
 */
export function demandPerLimiting(library: Library, transformation: Transformation, compound: string): number {
  const limiting = referenceMoles(library, transformation, transformation.limiting)
  if (limiting === null) throw new RangeError(`${transformation.id}: the limiting reactant has no amount`)
  const charged = referenceMoles(library, transformation, compound)
  if (charged !== null) return charged / limiting
  return freeCompounds.has(compound) ? 0 : coefficientOf(transformation, compound) / coefficientOf(transformation, transformation.limiting)
}

/** Coefficient of a reactant, equal entries added; 0 where it is none. */
export const coefficientOf = (transformation: Transformation, compound: string): number =>
  transformation.reactants.reduce((sum, r) => (r.compound === compound ? sum + r.coefficient : sum), 0)

/** Coefficient of a product, equal entries added; 0 where it is none. */
export const productCoefficientOf = (transformation: Transformation, compound: string): number =>
  transformation.products.reduce((sum, r) => (r.compound === compound ? sum + r.coefficient : sum), 0)

/**
 * Yield on a reactant as charged: product made over product obtainable from that reactant as charged. Equals the yield for the limiting
 * reactant, smaller for one in excess, larger for one charged short.
 *
 * @param yieldFraction yield on the limiting reactant, 0 to 1
 * @returns fraction; Infinity for a free reactant without an amount
 */
export function yieldOnReactant(library: Library, transformation: Transformation, compound: string, yieldFraction: number): number {
  const perLimiting = demandPerLimiting(library, transformation, compound)
  const stoichiometric = coefficientOf(transformation, compound) / coefficientOf(transformation, transformation.limiting)
  return perLimiting === 0 ? Number.POSITIVE_INFINITY : (yieldFraction * stoichiometric) / perLimiting
}
