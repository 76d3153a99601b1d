import type { Material } from '../library/material.ts'
import type { Role } from '../library/transformation.ts'
import type { ChargeRead } from './charge-line.ts'

/** Reactivity groups (EPA-600/2-80-076) that tell what a reagent does. */
const acids = new Set([1, 2, 3])
const caustic = 10
const oxidizing = 104
const reducing = 105

/** Salts that dry a solution where no equation names them. Common practice, no source. */
const dryingAgents = new Set(['magnesium-sulfate', 'sodium-sulfate', 'calcium-chloride', 'calcium-sulfate', 'molecular-sieves'])

/**
 * What a line does in the step: as its verb says; else what the equation says; else what the material is known for. To be looked over by a
 * person: a reader cannot tell a catalyst from an acid.
 *
 * @param inEquation   the compound is a reactant
 * @param isLimiting   and the limiting one
 * @param equivalents  moles over those of the limiting reactant; null where not known
 */
export function roleOf(line: ChargeRead, material: Material, inEquation: boolean, isLimiting: boolean, equivalents: number | null): Role {
  if (line.roleHint !== null) return line.roleHint
  if (isLimiting) return 'substrate'
  const groups = new Set(material.reactivityGroups ?? [])
  const has = (group: number): boolean => groups.has(group)
  const working: Role | null = has(caustic)
    ? 'base'
    : has(oxidizing)
      ? 'oxidant'
      : has(reducing)
        ? 'reductant'
        : [...acids].some(has) && material.kind === 'mixture'
          ? 'acid'
          : null
  if (inEquation) return working ?? 'reagent'
  if (dryingAgents.has(material.id)) return 'drying'
  if (working !== null) return equivalents !== null && equivalents < 0.25 ? 'catalyst' : working
  const pours = material.form === 'liquid' || material.form === 'solution'
  const byVolume = line.unit === 'mL' || line.unit === 'L'
  if (pours && byVolume && (equivalents === null ? (line.amount ?? 0) >= 1 : equivalents >= 1)) return 'solvent'
  return equivalents !== null && equivalents < 0.5 ? 'catalyst' : 'other'
}
