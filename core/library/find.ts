import type { Library } from './library.ts'
import { isBuyable, type Material } from './material.ts'
import { plainLetters } from './plain-letters.ts'

export interface Found {
  readonly material: Material
  /** What the words matched, as it stands in the library, where that is not the name. */
  readonly matched: string
  /** Some transformation takes it, or the compound in it, as a reactant: it can be a start. */
  readonly canStart: boolean
}

/** Case, accents, Greek beta and blanks do not keep a chemist from a name; hyphens and digits do matter less than letters. */
export const folded = (text: string): string =>
  plainLetters(text)
    .replace(/[\s_]+/g, ' ')
    .trim()

/** Can a plan begin with it? Never water or the oxygen of the air. */
export function canStart(library: Library, material: Material): boolean {
  const compound = material.kind === 'mixture' ? material.contains?.compound : material.id
  return compound !== undefined && compound !== 'water' && compound !== 'oxygen' && library.users.has(compound)
}

/**
 * Materials by name, synonym, formula, id or CAS number: an exact match first, then the beginning of a name, of a word in it, then
 * anywhere; what a plan can start from before what it cannot; then by name.
 *
 * @param most  how many rows at the most
 */
export function findMaterials(library: Library, words: string, most = 20): readonly Found[] {
  const wanted = folded(words)
  if (wanted === '') return []
  const rows: { found: Found; rank: number }[] = []
  for (const material of library.materials.values()) {
    const best = bestMatch(material, wanted)
    if (best === null) continue
    const starts = canStart(library, material)
    rows.push({
      found: { material, matched: best.text, canStart: starts },
      rank: best.rank * 4 + (starts ? 0 : 2) + (isBuyable(material) ? 0 : 1),
    })
  }
  rows.sort(
    (a, b) =>
      a.rank - b.rank ||
      a.found.material.name.length - b.found.material.name.length ||
      (a.found.material.id < b.found.material.id ? -1 : 1),
  )
  return rows.slice(0, most).map(row => row.found)
}

function bestMatch(material: Material, wanted: string): { text: string; rank: number } | null {
  let best: { text: string; rank: number } | null = null
  const offer = (text: string | undefined, penalty: number) => {
    if (text === undefined) return
    const rank = rankOf(folded(text), wanted)
    if (rank !== null && (best === null || rank + penalty < best.rank)) best = { text, rank: rank + penalty }
  }
  offer(material.name, 0)
  offer(material.id, 0.2)
  for (const synonym of material.synonyms ?? []) offer(synonym, 0.4)
  offer(material.displayFormula, 0.5)
  offer(material.formula, 0.5)
  offer(material.cas, 0)
  return best
}

function rankOf(text: string, wanted: string): number | null {
  if (text === wanted) return 0
  if (text.startsWith(wanted)) return 1
  const at = text.indexOf(wanted)
  if (at < 0) return null
  return /[\s\-,()']/.test(text[at - 1]!) ? 2 : 3
}
