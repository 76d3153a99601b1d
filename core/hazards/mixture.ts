import { type Library, materialOf } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { knownOf } from './known.ts'
import { type AcuteRoute, acuteRoutes, aquaticFrom, carriedOverFrom, dangerCodes, relevantFrom, skinAndEye } from './mixture-limits.ts'
import { massFractionIn } from './strength.ts'

/** One constituent as the rules see it. */
export interface Ingredient {
  readonly fraction: number
  readonly codes: readonly string[]
  /** Sums do not hold for it: an acid or base of extreme pH, or one of which that is not known. */
  readonly extreme: boolean
  /** LD50 or LC50 where it is known, mg/kg or mg/L; else the category's converted point estimate counts. */
  readonly ate?: Partial<Record<keyof typeof acuteRoutes, number>>
}

const sum = (ingredients: readonly Ingredient[], codes: RegExp, least = relevantFrom): number =>
  ingredients.reduce((total, one) => total + (one.fraction >= least && one.codes.some(code => codes.test(code)) ? one.fraction : 0), 0)

/** A sum of fractions stands a hair above or below its limit by rounding alone. */
const reaches = (value: number, limit: number): boolean => value >= limit * (1 - 1e-9)

/** Skin and eyes by summation; acids, bases and what else sums do not hold for by their own limit. UN GHS 3.2.3.3, 3.3.3.3. */
export function skinAndEyeCodes(ingredients: readonly Ingredient[]): readonly string[] {
  const extreme = ingredients.filter(one => one.extreme)
  const corrosive = sum(ingredients, /^H314$/)
  const irritant = sum(ingredients, /^H315$/)
  const damaging = sum(ingredients, /^H31[48]$/)
  const eyeIrritant = sum(ingredients, /^H319$/)
  const isCorrosive = reaches(corrosive, skinAndEye.corrosive) || reaches(sum(extreme, /^H314$/), skinAndEye.extreme)
  const codes: string[] = []
  if (isCorrosive) return ['H314']
  if (reaches(skinAndEye.weight * corrosive + irritant, skinAndEye.irritant)) codes.push('H315')
  if (reaches(damaging, skinAndEye.eyeDamage) || reaches(sum(extreme, /^H31[48]$/), skinAndEye.extreme)) codes.push('H318')
  else if (reaches(skinAndEye.weight * damaging + eyeIrritant, skinAndEye.eyeIrritant)) codes.push('H319')
  return codes
}

/**
 * Acute toxicity estimate of a mixture: 100 / ATEmix = sum of C_i / ATE_i, over ingredients of 1 % and more that fall in a category.
 *
 * @param ingredients with their mass fractions and estimates, mg/kg or mg/L
 * @returns in the same unit; null where no ingredient counts
 * Source: UN GHS 3.1.3.6.1.
 * @example acuteToxicityEstimate([{ fraction: 0.5, ate: 500 }]) // 1000
 */
export function acuteToxicityEstimate(ingredients: readonly { readonly fraction: number; readonly ate: number | null }[]): number | null {
  const counted = ingredients.filter(one => one.ate !== null && one.fraction >= relevantFrom)
  if (counted.length === 0) return null
  return 1 / counted.reduce((total, { fraction, ate }) => total + fraction / ate!, 0)
}

/** Category 1 to 4 of an estimate; null above all of them. */
export function acuteCategory(route: keyof typeof acuteRoutes, estimate: number): 1 | 2 | 3 | 4 | null {
  const at = acuteRoutes[route].upTo.findIndex(limit => estimate <= limit * (1 + 1e-9))
  return at < 0 ? null : ((at + 1) as 1 | 2 | 3 | 4)
}

/** The estimate that an ingredient brings: its own, else that of the category which its codes tell; of two categories under one code the stricter. */
function estimateOf({ codes, ate }: Ingredient, name: keyof typeof acuteRoutes): number | null {
  const own = ate?.[name]
  if (own !== undefined) return own
  const route: AcuteRoute = acuteRoutes[name]
  const at = route.codes.findIndex(code => codes.some(one => one.split('+').includes(code)))
  return at < 0 ? null : route.pointEstimates[at]!
}

function acuteCodes(ingredients: readonly Ingredient[]): readonly string[] {
  const found = (Object.keys(acuteRoutes) as (keyof typeof acuteRoutes)[]).flatMap((name): readonly string[] => {
    const estimate = acuteToxicityEstimate(ingredients.map(one => ({ fraction: one.fraction, ate: estimateOf(one, name) })))
    const category = estimate === null ? null : acuteCategory(name, estimate)
    return category === null ? [] : [acuteRoutes[name].codes[category - 1]!]
  })
  // Vapour and mist may come out differently: of codes for one way in, the strictest.
  return ['H300', 'H301', 'H302', 'H310', 'H311', 'H312', 'H330', 'H331', 'H332'].filter(
    code => found.includes(code) && !found.some(other => other < code && other.slice(0, 3) === code.slice(0, 3)),
  )
}

function aquaticCodes(ingredients: readonly Ingredient[]): readonly string[] {
  const of = (code: string): number => sum(ingredients, new RegExp(`^${code}$`), 0.001)
  const [acute, first, second, third, fourth] = ['H400', 'H410', 'H411', 'H412', 'H413'].map(of) as [number, number, number, number, number]
  const codes: string[] = []
  if (reaches(acute, aquaticFrom)) codes.push('H400')
  if (reaches(first, aquaticFrom)) codes.push('H410')
  else if (reaches(10 * first + second, aquaticFrom)) codes.push('H411')
  else if (reaches(100 * first + 10 * second + third, aquaticFrom)) codes.push('H412')
  else if (reaches(first + second + third + fourth, aquaticFrom)) codes.push('H413')
  return codes
}

/** Codes of a cylinder: a gas that is dissolved has none. */
const cylinder = /^H28[01]$/

/**
 * Codes of a mixture from those of its ingredients. Physical hazards cannot be reckoned from strength: those of the ingredients are taken
 * over as they stand. Multiplying factors for water organisms are not known here and count as 1.
 */
export function mixtureCodes(ingredients: readonly Ingredient[]): readonly string[] {
  const carried = ingredients.flatMap(({ fraction, codes }) =>
    codes.flatMap(code => {
      if (/^H2/.test(code)) return cylinder.test(code) ? [] : [code]
      const rule = carriedOverFrom.find(one => one.codes.test(code) && reaches(fraction, one.fraction))
      return rule === undefined ? [] : [rule.becomes ?? code]
    }),
  )
  return [...new Set([...carried, ...skinAndEyeCodes(ingredients), ...acuteCodes(ingredients), ...aquaticCodes(ingredients)])]
}

/** Mineral acids, oxidising ones, caustics: their pH is extreme at a few percent. Groups of EPA-600/2-80-076. */
const extremeGroups = [1, 2, 10]

function ingredientOf(material: Material, fraction: number): Ingredient {
  const codes = material.hazards?.codes ?? []
  const groups = material.reactivityGroups
  // An acid or base that no group is known of is taken for one of extreme pH.
  const extreme = groups === undefined || groups.some(group => extremeGroups.includes(group))
  return { fraction, codes, extreme }
}

/**
 * A material with the label that counts for it: the one stated, and only for a mixture that states none, one reckoned from its constituents.
 * Where a constituent's hazards or the strength are not known, or nothing comes out although a constituent has codes, it stays unknown.
 */
export function asLabelled(library: Library, material: Material): Material {
  const { contains } = material
  if (material.hazards !== undefined || material.kind !== 'mixture' || contains === undefined) return material
  const fraction = massFractionIn(library, material)
  const compound = library.materials.get(contains.compound)
  const rest = library.materials.get(contains.rest ?? 'water')
  if (fraction === null || compound === undefined) return material
  const isPure = fraction > 1 - 1e-9
  const others = isPure ? [] : rest === undefined ? (contains.rest === undefined ? [] : null) : [rest]
  if (others === null) return material
  const parts = [compound, ...others]
  if (parts.some(part => knownOf(part) === 'unknown')) return material
  const codes = mixtureCodes([ingredientOf(compound, fraction), ...others.map(one => ingredientOf(one, 1 - fraction))])
  if (codes.length === 0 && parts.some(part => (part.hazards?.codes.length ?? 0) > 0)) return material
  const physical = parts.filter(part => part.hazards?.codes.some(code => /^H2/.test(code) && !cylinder.test(code)))
  const danger = codes.some(code => dangerCodes.test(code)) || physical.some(part => part.hazards?.signalWord === 'Danger')
  const remembered = parts.some(part => knownOf(part) === 'remembered')
  const names = parts.map((part, at) => (at === 0 ? `${Number((100 * fraction).toPrecision(3))} % ${part.name}` : part.name)).join(' in ')
  return {
    ...material,
    hazards: {
      codes: [...codes],
      signalWord: danger ? 'Danger' : codes.some(code => !/^H41[123]$|^EUH/.test(code)) ? 'Warning' : 'none',
      from: `${remembered ? 'memory of the parts, ' : ''}mixture rules of the UN GHS, reckoned for ${names}`,
    },
    sources: [...material.sources, ...parts.flatMap(part => part.sources.filter(source => source.for === 'hazards'))],
  }
}

/** The same by id. */
export const labelledMaterialOf = (library: Library, id: string): Material => asLabelled(library, materialOf(library, id))
