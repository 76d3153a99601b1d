import { equivalentsPerMole } from '../chemistry/normality.ts'
import { molarityOf } from '../chemistry/solution.ts'
import type { Material } from '../library/material.ts'
import { nameKey } from './name-key.ts'
import type { Found, NameIndex } from './names.ts'
import { isWeighedOnly } from './solid-mixture.ts'

/** A strength in front of a name: 30 %, 3 M, 6 N. */
export interface StatedStrength {
  readonly value: number
  readonly unit: '%' | 'M' | 'N'
}

export type BottleFound =
  | Exclude<Found, { readonly kind: 'unknown' }>
  | { readonly kind: 'unknown'; readonly beside?: Beside }
  | { readonly kind: 'no-such-strength'; readonly compound: string; readonly held: readonly string[] }

/** A name that is known, and what stands beside it that may not be left aside: another material, or words that tell how much. */
export interface Beside {
  readonly name: string
  readonly words: string
}

/** Words that say how a material looks or where it stood, not which one it is. */
const harmless =
  /^(?:pure|purified|dry|fresh|freshly|distilled|redistilled|recrystalli[sz]ed|powdered|finely|ground|granular|granulated|crushed|chopped|cold|ice-cold|cool|warm|hot|boiling|small|additional|more|further|another|excess|\((?:(?:in|an|large|slight)\s+)*excess\)|solid|liquid)\s+|,?\s+(?:pure|powder|pellets|flakes|crystals|granules|lumps|turnings|solid|in excess|as needed|if needed)$/i
/** Words that are told when they are left aside: they may change how much of it there is. */
const told = /^(?:crude|commercial|technical)\s+/i
/** Words of something dissolved: what is left without them is another bottle. */
const dissolved = /\b(?:solution|aqueous|dilute[ds]?|saturated|(?:m?ethanolic|alcoholic|ethereal|acetonic|glacial|fuming|gaseous))\b/i
const solutionWord = /^(?:aqueous|aq\.?|diluted?|dil\.?)\s+|\s*,?\s+(?:solution|soln?\.?|aqueous|aq\.?|diluted?)$/i
const driedWord = /\b(?:dry|dried|anhydrous|absolute)\b/i
const leading =
  /^(?:of|the|an?|some|few|little|de la|de l'|de|du|des|del|d'|di|von|in|with|and|então|ca\.?|approx\.?|about|etwa|environ)\s*(?<=\s|')/i
const piece =
  /^(?:an?|one|the|a few|few|some|several)?\s*(?:crystals?|pinch(?:es)?|traces?|grains?|spatula(?:ful)?s?|pieces?|chips?|drops?|small amounts?)\s+(?:of\s+)?/i

/**
 * The bottle that a phrase of a procedure means.
 *
 * The phrase is looked up whole, then without an article, a remark after a comma or in brackets, or a word on looks. With a strength, only a
 * bottle of just that strength will do: the nearest is never taken.
 */
export function bottleOf(phrase: string, strength: StatedStrength | null, index: NameIndex): BottleFound {
  let ambiguous: Found | null = null
  let beside: Beside | null = null
  // The same few words are left aside again and again, and a look-up is dear.
  const looked = new Map<string, boolean>()
  const isName = (words: string): boolean => {
    const known = looked.get(words) ?? index.lookUp(words).kind !== 'unknown'
    looked.set(words, known)
    return known
  }
  const whole = nameKey(phrase)
  for (const { text, aside } of variantsOf(phrase)) {
    if (aside.some(one => !mayBeLeft(one, isName))) {
      if (beside === null && !aside.some(one => /\d/.test(one)) && index.lookUp(text).kind !== 'unknown')
        beside = { name: text, words: aside.join(', ') }
      continue
    }
    const found: BottleFound = strength === null ? index.lookUp(text) : withStrength(text, strength, index)
    if (found.kind === 'no-such-strength') return found
    if (found.kind === 'material') return asked(found.material, whole, text, index) ?? withAside(found, aside)
    if (found.kind === 'ambiguous') {
      // A whole phrase that is asked about is asked about; only "anhydrous" may settle which of the candidates is meant.
      ambiguous ??= found
      break
    }
  }
  if (ambiguous?.kind === 'ambiguous' && !ambiguous.none && strength === null && /\banhydrous\b/i.test(nameKey(phrase))) {
    const dry = ambiguous.candidates.filter(id => {
      const material = index.materials.get(id)
      return material?.kind === 'compound' && !/hydrate/i.test(material.name)
    })
    if (dry.length === 1) return { kind: 'material', material: dry[0]!, assumed: null }
  }
  return ambiguous ?? { kind: 'unknown', ...(beside !== null && { beside }) }
}

/** What was found once words were left out that tell one bottle from another is asked about. */
function asked(material: string, whole: string, text: string, index: NameIndex): BottleFound | null {
  const found = index.materials.get(material)
  const left = nameKey(text)
  const loses = (words: RegExp) => words.test(whole) && !words.test(left)
  if (loses(dissolved) && found?.kind === 'compound') {
    const held = [...index.materials.values()].filter(one => one.form === 'solution' && one.contains?.compound === material)
    return {
      kind: 'ambiguous',
      candidates: [...held.map(one => one.id).sort(), material],
      why: 'A solution, or another strength, is named and not which: what is in it cannot be counted.',
    }
  }
  const row = loses(driedWord) ? index.ambiguous(text) : null
  return row === null ? null : { kind: 'ambiguous', candidates: row.candidates, why: row.why }
}

/** Words that say how much, or that something else comes too: what they stand in is no mere remark. */
const counts = /[+/]|\b(?:per|each|half|quarter|plus|then|containing|total|or|times|two|three|four|five|six|seven|eight|nine|ten|dozen)\b/i
/** Words between names, some of which are symbols and abbreviations written small. */
const connecting = /^(?:from|in|of|with|and|as|by|on|at|to|no|an?|the|is|it|be|for)$/i
/** Words of the longest names that are looked for in a remark. */
const mostWords = 4

/** A remark may be left out, and is told; a figure, a share or another material in it makes the line one to ask about. */
function mayBeLeft(aside: string, isName: (words: string) => boolean): boolean {
  const remark = aside.replace(/\b(?:step|part|exp(?:eriment)?|page|p|note|fig(?:ure)?|table)s?\.?\s*\d+[a-z]?/gi, ' ')
  if (/[\d%½¼¾]/.test(remark) || counts.test(remark)) return false
  const words = remark.split(/[\s,;:&()[\]]+/).filter(word => word.length > 1)
  return words.every((word, at) =>
    Array.from({ length: mostWords }, (_, more) => words.slice(at, at + more + 1).join(' ')).every(
      name => (name === word && connecting.test(word)) || !isName(name),
    ),
  )
}

const withAside = (found: BottleFound, aside: readonly string[]): BottleFound =>
  found.kind !== 'material' || aside.length === 0
    ? found
    : { ...found, assumed: [...(found.assumed === null ? [] : [found.assumed]), `left aside: ${aside.join(', ')}`].join('; ') }

interface Variant {
  readonly text: string
  /** What was left out of it and may matter. */
  readonly aside: readonly string[]
}

/** The phrase and what is left of it step by step, each once. */
function variantsOf(phrase: string): readonly Variant[] {
  const seen: Variant[] = []
  const queue: Variant[] = [{ text: phrase, aside: [] }]
  while (queue.length > 0 && seen.length < 40) {
    const { text, aside } = queue.shift()!
    const next = text.replace(/^[\s,;:.]+(?!\d)|[\s,;:]+$/g, '').trim()
    if (next === '' || seen.some(one => one.text === next)) continue
    seen.push({ text: next, aside })
    const until = next.replace(/\s+(?:until|till|bis|jusqu'à|hasta|to pH|so that|as needed|dropwise|in portions|with stirring)\b.*$/i, '')
    const bracket = /^(.*\S)\s*\(([^()]*)\)\s*$/.exec(next)
    const remark = /^(.*\S)\s*,\s+([^,]*)$/.exec(next)
    const shorter: readonly (Variant | null)[] = [
      { text: next.replace(leading, ''), aside },
      { text: next.replace(piece, ''), aside },
      { text: until, aside },
      { text: next.replace(harmless, ''), aside },
      { text: next.replace(/^anhyd(?:rous|r|\.)*\.?\s+|\s*,?\s+anhyd(?:rous|r|\.)*\.?$/i, ''), aside },
      // "Acetic acid (glacial)" and "acetic acid, glacial" are glacial acetic acid, before the remark is left out.
      ...[bracket, remark].flatMap(match => (match === null ? [] : [{ text: `${match[2]} ${match[1]}`, aside }])),
      ...[bracket, remark].flatMap(match => (match === null ? [] : [{ text: match[1]!, aside: [...aside, match[2]!.trim()] }])),
      // What is left here is asked about, unless it is a solution itself: see `asked`.
      { text: next.replace(solutionWord, ''), aside },
      told.test(next) ? { text: next.replace(told, ''), aside: [...aside, told.exec(next)![0].trim()] } : null,
    ]
    for (const one of shorter) if (one !== null && one.text !== next) queue.push(one)
    // What leaves nothing aside goes first: "water (hot)" is hot water.
    queue.sort((one, other) => one.aside.length - other.aside.length)
  }
  return seen
}

function withStrength(name: string, strength: StatedStrength, index: NameIndex): BottleFound {
  const text = `${strength.value} ${strength.unit}`
  for (const whole of [`${text} ${name}`, `${name} ${text}`, `${name} (${text})`, `${name}, ${text}`]) {
    const found = index.lookUp(whole)
    if (found.kind !== 'unknown') return found
  }
  const base = index.lookUp(name)
  if (base.kind === 'ambiguous' && base.none) return base
  // "Conc. HCl (12 M)": a strength by which that very bottle is called contradicts nothing.
  if (base.kind === 'material' && isCalledBy(base.material, text, index)) return base
  const ids = base.kind === 'material' ? [base.material] : base.kind === 'ambiguous' ? base.candidates : []
  const compounds = new Set(ids.map(id => index.materials.get(id)?.contains?.compound ?? id))
  if (compounds.size === 0) return { kind: 'unknown' }
  const solutions = [...index.materials.values()].filter(
    material => material.form === 'solution' && material.contains !== undefined && compounds.has(material.contains.compound),
  )
  // "Palladium on carbon, 10 %": solids of one name and several strengths. A hydrate's share is no strength that anybody states.
  const solids = base.kind === 'ambiguous' ? ids.flatMap(id => index.materials.get(id) ?? []).filter(isWeighedOnly) : []
  const held = solutions.length > 0 ? solutions : solids
  // "Benzaldehyde, 98 %": of what is sold as such and in no solution, a share near the whole is its purity.
  if (held.length === 0 && base.kind === 'material' && strength.unit === '%' && strength.value >= 95 && strength.value <= 100)
    return { ...base, assumed: `${text} is taken as its purity and counted as pure` }
  const fits = held.filter(material => isOfStrength(material, strength, index))
  const inWater = fits.filter(material => material.contains!.rest === undefined)
  const chosen = inWater.length > 0 ? inWater : fits
  if (chosen.length === 1) return { kind: 'material', material: chosen[0]!.id, assumed: null }
  if (chosen.length > 1)
    return { kind: 'ambiguous', candidates: chosen.map(one => one.id).sort(), why: 'several bottles have this strength' }
  return { kind: 'no-such-strength', compound: [...compounds].sort()[0]!, held: held.map(one => one.id).sort() }
}

function isCalledBy(id: string, strength: string, index: NameIndex): boolean {
  const material = index.materials.get(id)
  const names = material === undefined || material.form !== 'solution' ? [] : [material.name, ...(material.synonyms ?? [])]
  return names.map(nameKey).some(name => name.startsWith(`${strength} `) || name.endsWith(` ${strength}`))
}

/** Does the bottle hold just this strength of what it contains? */
export function isOfStrength(material: Material, { value, unit }: StatedStrength, index: NameIndex): boolean {
  const contains = material.contains!
  if (unit === '%') return contains.massFraction !== undefined && Math.abs(contains.massFraction * 100 - value) < 0.05
  if (contains.molPerL === undefined) return false
  const perMole = unit === 'N' ? equivalentsPerMole(index.materials.get(contains.compound)?.formula) : 1
  return perMole !== null && Math.abs(contains.molPerL * perMole - value) < 0.005 * value
}

/**
 * Strength in mol/L of a bottle, from mol/L or from mass fraction and density; null where neither is known.
 *
 * @param molarMass  of the compound it contains, g/mol
 */
export function molPerLOf(material: Material, molarMass: number): number | null {
  const contains = material.contains
  if (contains?.molPerL !== undefined) return contains.molPerL
  if (contains?.massFraction === undefined || material.densityGPerMl === undefined) return null
  return molarityOf(contains.massFraction, material.densityGPerMl, molarMass)
}
