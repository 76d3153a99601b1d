import type { Material } from '../library/material.ts'

/**
 * Months after opening within which a peroxide former is tested or discarded, by class. Sources: NMSU peroxide-former policy; UNR
 * peroxide-forming chemicals policy; Ohio University list (class A 3 months, B and C 12); class D is treated as B, common practice. Houses
 * with stricter rules (six months for every class) exist.
 */
const monthsToTest: Readonly<Record<string, number>> = { A: 3, B: 12, C: 12, D: 12 }

/** By when a peroxide former must be tested: `YYYY-MM-DD` as text, null for what forms none or has no (readable) opening date. */
export function peroxideTestDue(material: Material, opened: string | undefined): string | null {
  if (material.peroxideClass === undefined || opened === undefined) return null
  const read = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/.exec(opened)
  if (read === null) return null
  const month = Number(read[1]) * 12 + Number(read[2]) - 1 + (monthsToTest[material.peroxideClass] ?? 3)
  // Only ever compared as text, so that the 31st of a short month does no harm; a month without its day begins with it.
  return `${String(Math.floor(month / 12)).padStart(4, '0')}-${String((month % 12) + 1).padStart(2, '0')}-${read[3] ?? '01'}`
}
