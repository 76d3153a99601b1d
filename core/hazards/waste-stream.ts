import { type Library, materialOf } from '../library/library.ts'
import type { ChargedLine } from '../route/charged.ts'
import { traitsFor } from './regulated.ts'
import { massFractionIn } from './strength.ts'
import type { Traits } from './traits.ts'

/** The strictest first: the container of a mixture is that of its strictest constituent. Common practice, no source. */
export const strictestFirst = [
  'cyanide',
  'reactive-quench-first',
  'oxidiser',
  'heavy-metal',
  'halogenated-organic',
  'non-halogenated-organic',
  'aqueous-acid',
  'aqueous-base',
  'solid',
  'drain-if-local-rules-allow',
] as const

/** Where a residue goes, and what has to be done before: what a bottle forbids, it is not given. */
export interface StreamChosen {
  readonly stream: string
  /** Sentences; empty where it goes in as it is. */
  readonly first: readonly string[]
}

// Numbers of the reactivity groups (EPA-600/2-80-076).
const acids = [1, 2, 3]
const bases = [10]
const oxidants = [2, 104]
const reducers = [105]
const organics = [3, 4, 5, 6, 7, 8, 9, 12, 13, 14, 16, 17, 18, 19, 20, 26, 27, 28, 29, 30, 31, 32, 34, 101, 103]
const waterReactive = 107
const water = 106

const rank = (stream: string): number => (strictestFirst as readonly string[]).indexOf(stream)

/**
 * Stream of a residue: that of its strictest constituent, but
 * - a water-reactive one that stands in water is quenched and no longer counts;
 * - an oxidizer beside anything organic or reducing does not go to the oxidizers, whose bottle takes nothing organic: it is destroyed first;
 * - what is water for the most part (half of the known mass; common practice, no source) and holds acid or base goes to the aqueous streams,
 *   never into the can for flammable organics; both together are made neutral first;
 * - a solid that is dissolved goes where its solvent would go.
 *
 * @param lines  with their masses, for the share of water; by-products have none
 */
export function streamFor(
  library: Library,
  traits: ReadonlyMap<string, Traits>,
  materials: readonly string[],
  lines: readonly ChargedLine[],
): StreamChosen {
  const groups = (id: string) => traitsFor(traits, id).groups
  const streamOf = (id: string): string => materialOf(library, id).wasteStream ?? 'unknown'
  const having = (which: readonly number[]) => (id: string) => groups(id).some(group => which.includes(group))
  const wet = materials.some(having([water]))
  const oxidising = materials.filter(id => streamOf(id) === 'oxidiser' || having(oxidants)(id))
  const burns = materials.some(
    id => !oxidising.includes(id) && (having([...organics, ...reducers])(id) || streamOf(id).endsWith('halogenated-organic')),
  )
  const counted = materials.filter(id => !(wet && groups(id).includes(waterReactive)) && !(burns && streamOf(id) === 'oxidiser'))
  const streams = counted.map(streamOf).filter(stream => stream !== 'gas-vent-or-scrub')
  if (streams.length === 0) return { stream: 'unknown', first: [] }
  const strictest = streams.reduce((one, stream) => (rank(stream) < rank(one) ? stream : one))
  const acid = materials.filter(having(acids))
  const base = materials.filter(id => having(bases)(id) || streamOf(id) === 'aqueous-base')
  const stream = settled(library, strictest, materials, lines, acid, base)
  const names = (ids: readonly string[]): string => ids.map(id => materialOf(library, id).name).join(', ')
  const first: string[] = []
  if (burns && oxidising.length > 0)
    first.push(
      `It holds an oxidizer (${names(oxidising)}) beside organic material: destroy the oxidizer in the vessel and test. Where nothing is known to destroy it, a vented bottle of its own, marked with all that is in it, and nothing else into it.`,
    )
  else if (stream === 'heavy-metal' && oxidising.length > 0)
    first.push(`Destroy the oxidizer (${names(oxidising)}) in the vessel and test before it goes to the metals.`)
  if (stream === 'reactive-quench-first') first.push('Quench it in the vessel; what comes of that goes to the matching stream.')
  if (stream === 'cyanide' && acid.length > 0)
    first.push(`No acid (${names(acid)}) may be left: bring it above pH 11, in the hood, before anything else.`)
  if (stream.startsWith('aqueous-') && acid.length > 0 && base.length > 0)
    first.push('Acid and base went in together: measure the pH, bring it to 6 to 9 slowly and cold, then into this bottle.')
  if (stream === 'halogenated-organic' && base.length > 0)
    first.push(
      wet
        ? 'Part the layers: only the organic one goes in; the water layer with the base goes to the aqueous bases.'
        : `Wash out or neutralize the base (${names(base)}): it does not stay with halogenated solvents.`,
    )
  return { stream, first }
}

/** The strictest stream, put right for what is water for the most part and for solids that are dissolved. */
function settled(
  library: Library,
  strictest: string,
  materials: readonly string[],
  lines: readonly ChargedLine[],
  acid: readonly string[],
  base: readonly string[],
): string {
  const aqueous = waterShare(library, lines) >= 0.5
  const mol = (ids: readonly string[]): number =>
    lines.reduce((sum, line) => sum + (ids.includes(line.material) ? (line.amountMol ?? 0) : 0), 0)
  const byPh = base.length > 0 && (acid.length === 0 || mol(base) > mol(acid)) ? 'aqueous-base' : 'aqueous-acid'
  if (aqueous && acid.length + base.length > 0 && rank(strictest) >= rank('non-halogenated-organic')) return byPh
  const pair = acid.length > 0 && base.length > 0
  if (pair && strictest.startsWith('aqueous-')) return byPh
  const dissolved = strictest === 'solid' && materials.some(id => ['liquid', 'solution'].includes(materialOf(library, id).form))
  return dissolved ? 'non-halogenated-organic' : strictest
}

/** Share of water in what is known of the mass. */
function waterShare(library: Library, lines: readonly ChargedLine[]): number {
  let all = 0
  let ofWater = 0
  for (const { material: id, massG } of lines) {
    if (massG === null) continue
    const material = materialOf(library, id)
    all += massG
    if (id === 'water') ofWater += massG
    else if (material.form === 'solution' && material.contains && (material.contains.rest ?? 'water') === 'water')
      ofWater += massG * (1 - (massFractionIn(library, material) ?? 1))
  }
  return all === 0 ? 0 : ofWater / all
}
