import { type Library, materialOf } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import type { Role } from '../library/transformation.ts'
import type { ChargedLine, ChargedStep } from '../route/charged.ts'
import type { ShoppingLine } from './shopping.ts'

/**
 * When getting a solvent back by distillation is worth it. All figures are rules of thumb (common practice, no source) and adjustable.
 */
export interface RecoveryRule {
  /** Part of a liquor's solvent that a simple distillation gives back. */
  readonly share: number
  /** What a small still brings over in an hour, mL. */
  readonly mlPerHour: number
  /** Setting up, cutting the fractions, cleaning; hours of hands for each solvent. */
  readonly handsH: number
  /** Other liquids in the same liquor must boil so many degrees above or below, or a simple distillation does not part them. */
  readonly apartC: number
  /** Less than this is not worth the glass. */
  readonly leastMl: number
  /** What an hour of hands and of watching must save at the least, minor units. */
  readonly worthPerHourMinor: number
}

export const usualRecoveryRule: RecoveryRule = {
  share: 0.75,
  mlPerHour: 200,
  handsH: 0.5,
  apartC: 30,
  leastMl: 100,
  worthPerHourMinor: 1000,
}

/** One solvent of a plan: how much of it could be got back, how long that takes, and whether it is worth it. */
export interface SolventRecovery {
  readonly material: string
  readonly usedMl: number
  readonly recoverableMl: number
  /** Hands and watching together, h. */
  readonly hours: number
  /** At the price paid in the basket; null where that is unknown. */
  readonly savesMinor: number | null
  readonly worthIt: boolean
  readonly why: string
}

const solventRoles: ReadonlySet<Role> = new Set(['solvent', 'wash', 'extraction', 'recrystallisation'])

/**
 * For every organic solvent of a plan the part that a simple distillation could give back. Counted liquor by liquor (vessel and work-up of a
 * step together, a recrystallisation by itself); where another liquid of the liquor boils too near, or the boiling point is unknown, nothing.
 * Never for what forms peroxides: its residue may explode.
 */
export function solventRecovery(
  library: Library,
  steps: readonly ChargedStep[],
  lines: readonly ShoppingLine[],
  rule: RecoveryRule = usualRecoveryRule,
): readonly SolventRecovery[] {
  const found = new Map<string, { usedMl: number; partableMl: number; reason: string | null }>()
  for (const step of steps)
    for (const liquor of liquorsOf(step.charges)) {
      const volatile = liquor.filter(line => (line.volumeMl ?? 0) > 0 && materialOf(library, line.material).form !== 'solid')
      for (const line of liquor) {
        const material = materialOf(library, line.material)
        if (line.volumeMl === null || line.volumeMl <= 0 || !isSolvent(material) || !solventRoles.has(line.role)) continue
        const one = found.get(material.id) ?? { usedMl: 0, partableMl: 0, reason: null }
        one.usedMl += line.volumeMl
        const hindrance = hindranceIn(library, material, volatile, rule)
        if (hindrance === null) one.partableMl += line.volumeMl
        else one.reason ??= hindrance
        found.set(material.id, one)
      }
    }
  return [...found].map(([material, { usedMl, partableMl, reason }]) => verdict(material, usedMl, partableMl, reason, lines, rule))
}

function verdict(
  material: string,
  usedMl: number,
  partableMl: number,
  reason: string | null,
  lines: readonly ShoppingLine[],
  rule: RecoveryRule,
): SolventRecovery {
  const recoverableMl = partableMl * rule.share
  const hours = recoverableMl > 0 ? recoverableMl / rule.mlPerHour + rule.handsH : 0
  const perMl = pricePerMl(lines.find(line => line.material === material))
  const savesMinor = perMl === null ? null : Math.round(perMl * recoverableMl)
  const shared = { material, usedMl, recoverableMl, hours, savesMinor }
  if (recoverableMl <= 0) return { ...shared, worthIt: false, why: reason ?? 'Nothing of it is left in a liquor.' }
  if (recoverableMl < rule.leastMl) return { ...shared, worthIt: false, why: `Less than ${rule.leastMl} mL would come back.` }
  if (savesMinor === null)
    return { ...shared, worthIt: false, why: 'Its price is not known, so that nothing says that it is worth the hours.' }
  const worthIt = savesMinor >= rule.worthPerHourMinor * hours
  return { ...shared, worthIt, why: worthIt ? 'It saves what the hours ask for, or more.' : 'It saves less than the hours ask for.' }
}

/** What the basket pays for a millilitre; null where nothing of it was bought, or by mass. */
function pricePerMl(line: ShoppingLine | undefined): number | null {
  if (line === undefined || line.costMinor === null) return null
  const boughtMl = line.packs.reduce(
    (sum, pack) => sum + pack.count * pack.amount * (pack.unit === 'L' ? 1000 : pack.unit === 'mL' ? 1 : Number.NaN),
    0,
  )
  return boughtMl > 0 ? line.costMinor / boughtMl : null
}

/** What boils away from what is dissolved in it: a liquid compound that is not water. */
const isSolvent = (material: Material): boolean => material.form === 'liquid' && material.id !== 'water'

function liquorsOf(charges: readonly ChargedLine[]): readonly (readonly ChargedLine[])[] {
  return [charges.filter(line => line.role !== 'recrystallisation'), charges.filter(line => line.role === 'recrystallisation')]
}

function hindranceIn(library: Library, material: Material, liquor: readonly ChargedLine[], rule: RecoveryRule): string | null {
  if (material.peroxideClass !== undefined)
    return 'It forms peroxides, which a distillation gathers in the residue: it is never distilled for reuse here.'
  if (material.boilingC === undefined) return 'Its boiling point is not known here.'
  for (const line of liquor) {
    if (line.material === material.id) continue
    const other = materialOf(library, line.material)
    if (other.boilingC === undefined && other.form === 'solution') {
      const water = library.materials.get('water')?.boilingC ?? 100
      if (Math.abs(water - material.boilingC) >= rule.apartC) continue
      return `${other.name} brings water, which boils too near.`
    }
    if (other.boilingC === undefined) return `${other.name} goes into the same liquor, and its boiling point is not known here.`
    if (Math.abs(other.boilingC - material.boilingC) < rule.apartC) return `${other.name} boils too near for a simple distillation.`
  }
  return null
}
