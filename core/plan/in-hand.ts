import { type Library, materialOf } from '../library/library.ts'
import { measured } from '../library/reference-charge.ts'
import type { ChargedLine } from '../route/charged.ts'
import { flowOf } from '../route/flow.ts'
import type { LoggedStep } from './logged.ts'
import type { MergedSteps } from './merged-steps.ts'
import type { Plan } from './plan.ts'
import type { Settings } from './settings.ts'

/** Grams of compound (of feedstock as such) in an amount of the start's material. */
export function startCompoundG(library: Library, plan: Plan, start: string): number | null {
  const { material: id, massG } = plan.start
  if (massG === null) return null
  const material = materialOf(library, id)
  if (material.id === start) return massG
  const molarMass = library.molarMass.get(start)
  const { amountMol } = measured(library, material, massG, 'g')
  return amountMol === null || molarMass === undefined ? massG : amountMol * molarMass
}

/** Intermediates bought after a poor run, g by compound. */
export function toppedUp(plan: Plan): ReadonlyMap<string, number> {
  const up = new Map<string, number>()
  for (const { compound, massG } of plan.topUps ?? []) up.set(compound, (up.get(compound) ?? 0) + massG)
  return up
}

/** What remaining batches of logged steps take of compounds that are still to be made is set aside like what is kept back. */
export function withSetAside(
  kept: ReadonlyMap<string, number>,
  library: Library,
  merged: MergedSteps,
  logged: ReadonlyMap<string, LoggedStep>,
): ReadonlyMap<string, number> {
  const toBeMade = new Set(merged.steps.filter(s => !logged.has(s.transformation)).map(s => s.makes))
  const all = new Map(kept)
  for (const [step, what] of logged) {
    if (what.remainingG <= 0) continue
    for (const need of flowOf(library, step).needs) {
      if (toBeMade.has(need.compound)) all.set(need.compound, (all.get(need.compound) ?? 0) + need.perG * what.remainingG)
    }
  }
  return all
}

/** What no goal may use, by compound. */
export function keptBack(settings: Settings): ReadonlyMap<string, number> {
  const kept = new Map<string, number>()
  for (const { compound, massG } of settings.keptBack) kept.set(compound, (kept.get(compound) ?? 0) + massG)
  return kept
}

/** Lines of a made compound that was topped up, parted into what is made and what is bought. */
export function partlyBought(charges: readonly ChargedLine[], boughtPart: ReadonlyMap<string, number>): readonly ChargedLine[] {
  return charges.flatMap(line => {
    const part = line.supply === 'made' ? (boughtPart.get(line.material) ?? 0) : 0
    if (part === 0) return [line]
    const scaled = (by: number, supply: ChargedLine['supply']): ChargedLine => ({
      ...line,
      massG: line.massG === null ? null : line.massG * by,
      volumeMl: line.volumeMl === null ? null : line.volumeMl * by,
      amountMol: line.amountMol === null ? null : line.amountMol * by,
      equivalents: line.equivalents === null ? null : line.equivalents * by,
      supply,
    })
    return part >= 1 ? [scaled(1, 'bought')] : [scaled(1 - part, 'made'), scaled(part, 'bought')]
  })
}
