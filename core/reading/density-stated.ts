import type { BottleFound } from './bottle.ts'
import type { NameIndex } from './names.ts'

/** "d 1.84", "sp. gr. 1.42", "density 0.88 g/mL": how older procedures name the strength of an acid. */
const pattern =
  /[,;]?\s*(?:\bd(?:\s?20|₂₀|²⁰)?|\b[Dd]ensity|\b[Ss]p\.?\s?gr\.?|\b[Ss]pecific gravity)\s*(?:of|[=:≈])?\s*([0-2][.,]\d{1,4})(?:\s*g\s*\/\s*(?:m[lL]|cm[3³]))?/

/** A density that a line states, g/mL, with the line without it; null where it states none. */
export function densityIn(line: string): { readonly gPerMl: number; readonly rest: string } | null {
  const match = pattern.exec(line)
  if (match === null) return null
  const rest = `${line.slice(0, match.index)} ${line.slice(match.index + match[0].length)}`
  return { gPerMl: Number(match[1]!.replace(',', '.')), rest }
}

/** Tables of densities are printed to two decimals; those at 15, 20 and 25 °C differ by about one in the second. g/mL. */
const tolerances = [0.005, 0.0125] as const

/**
 * Which bottle a stated density means: of several that a name can mean, the one with that density; one with another density is asked about.
 * Of a pure acid and its solution with one density, the solution: that is what is sold by it.
 */
export function byDensity(found: BottleFound, gPerMl: number, index: NameIndex): BottleFound {
  const agrees = (id: string, within: number): boolean =>
    Math.abs((index.materials.get(id)?.densityGPerMl ?? Number.NaN) - gPerMl) <= within + 1e-9
  if (found.kind === 'ambiguous') {
    if (found.none) return found
    for (const within of tolerances) {
      const fits = found.candidates.filter(id => agrees(id, within))
      const sold = fits.length > 1 ? fits.filter(id => index.materials.get(id)?.form === 'solution') : fits
      if (sold.length === 1) return { kind: 'material', material: sold[0]!, assumed: `by its density, ${gPerMl} g/mL` }
      if (fits.length > 0) return found
    }
    return found
  }
  if (found.kind !== 'material') return found
  const known = index.materials.get(found.material)?.densityGPerMl
  if (known === undefined || agrees(found.material, 2 * tolerances[1])) return found
  return {
    kind: 'ambiguous',
    candidates: [found.material],
    why: `the line states a density of ${gPerMl} g/mL, and here it has ${known} g/mL`,
  }
}
