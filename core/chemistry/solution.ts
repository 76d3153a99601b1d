/** The gas constant, J/(mol K), exact since 2019. Source: CODATA 2018 (N_A times k, both fixed by the SI). */
export const gasConstant = 8.31446261815324
/** One standard atmosphere, kPa, exact. */
export const atmosphereKPa = 101.325
/** 0 degrees Celsius in kelvin, exact. */
export const zeroCelsiusK = 273.15
/** Volume of one mole of gas at 25 C and 1 atm, L. The ideal law gives 24.465; printed as 24.47 in the trade. */
export const molarGasVolumeL = 24.47

/** Volume of an ideal gas, L (n R T / p; J per kPa is L). */
export function gasVolumeL(amountMol: number, temperatureK: number, pressureKPa: number): number {
  return (amountMol * gasConstant * temperatureK) / pressureKPa
}

/** How a bottle turns grams or millilitres into moles of the compound that counts. Absent = not known. */
export interface Strength {
  /** Of the compound that counts, g/mol. */
  readonly molarMass: number
  /** Of the liquid or solution as poured, g/mL. */
  readonly densityGPerMl?: number | undefined
  /** Compound in the bottle by mass, 0 to 1; 1 where absent. */
  readonly massFraction?: number | undefined
  /** Compound in the bottle per litre; where given it serves volumes without a density. */
  readonly molPerL?: number | undefined
}

/**
 * Moles of the compound in a mass of the bottle's content.
 *
 * @returns mol; null where a solution known only by mol/L has no density
 * @example molesInMass(24, { molarMass: 212.248 }) // 0.11307
 */
export function molesInMass(massG: number, strength: Strength): number | null {
  if (strength.massFraction === undefined && strength.molPerL !== undefined)
    return strength.densityGPerMl === undefined ? null : (massG / strength.densityGPerMl / 1000) * strength.molPerL
  return (massG * (strength.massFraction ?? 1)) / strength.molarMass
}

/**
 * Moles of the compound in a volume of the bottle's content.
 *
 * @returns mol; null without mol/L or a density
 */
export function molesInVolume(volumeMl: number, strength: Strength): number | null {
  if (strength.molPerL !== undefined) return (volumeMl / 1000) * strength.molPerL
  if (strength.densityGPerMl === undefined) return null
  return (volumeMl * strength.densityGPerMl * (strength.massFraction ?? 1)) / strength.molarMass
}

/** Mass of the bottle's content that holds so many moles of the compound, g; null as in {@link molesInMass}. */
export function massForMoles(amountMol: number, strength: Strength): number | null {
  const perGram = molesInMass(1, strength)
  return perGram === null ? null : amountMol / perGram
}

/** Volume of the bottle's content that holds so many moles of the compound, mL; null as in {@link molesInVolume}. */
export function volumeForMoles(amountMol: number, strength: Strength): number | null {
  const perMl = molesInVolume(1, strength)
  return perMl === null ? null : amountMol / perMl
}

/** Concentration of a solution from its mass fraction (0 to 1), density (g/mL) and the molar mass of what is dissolved, mol/L. */
export function molarityOf(massFraction: number, densityGPerMl: number, molarMass: number): number {
  return (1000 * densityGPerMl * massFraction) / molarMass
}

/** Stock needed for a dilution: c1 v1 = c2 v2, in whatever units the two strengths share; the answer has the unit of `wantedAmount`. */
export function stockForDilution(stockStrength: number, wantedStrength: number, wantedAmount: number): number {
  if (!(stockStrength > 0) || wantedStrength > stockStrength) throw new RangeError('a solution cannot be made stronger by diluting it')
  return (wantedStrength * wantedAmount) / stockStrength
}

/** One reactant as charged: moles, and its coefficient in the equation. */
export interface Charged {
  readonly amountMol: number
  readonly coefficient: number
}

/** Which reactant gives out first: the index with the least moles per coefficient (the first of equals), and how far the reaction goes. */
export function limitingOf(reactants: readonly Charged[]): { readonly index: number; readonly extentMol: number } {
  if (reactants.length === 0) throw new RangeError('a reaction needs a reactant')
  let index = 0
  for (const [at, reactant] of reactants.entries()) {
    const least = reactants[index]!
    if (reactant.amountMol / reactant.coefficient < least.amountMol / least.coefficient) index = at
  }
  return { index, extentMol: reactants[index]!.amountMol / reactants[index]!.coefficient }
}
