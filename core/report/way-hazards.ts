import { isGravest, listOrder } from '../hazards/classes.ts'
import { compareCounts } from '../hazards/counts.ts'
import type { HazardCounts, HazardList, LabelledMaterial } from '../hazards/hazard-list.ts'
import type { Library } from '../library/library.ts'
import { numberText } from '../quantity/print.ts'
import { nameIn } from './names.ts'
import { actionWords } from './regulated.ts'
import { listed, lowerFirst } from './words.ts'

/** One of several ways, with everything that can hurt on it. */
export interface ComparedWay {
  /** What tells it from the others: "Benzil from benzoin by nitric acid". */
  readonly name: string
  /** The plan goes this way. */
  readonly taken: boolean
  readonly hazards: HazardList
}

/** A material that stands on this way and not on all of them. */
export interface OwnDanger {
  readonly material: LabelledMaterial
  readonly name: string
  /** Its statements, gravest first, at most `mostStatements`. */
  readonly statements: readonly string[]
  /** Statements left out. */
  readonly more: number
}

/** What one way has that another has not, ready to stand in a column. */
export interface WayHazards {
  readonly name: string
  readonly taken: boolean
  /** The buyer may have it, and no other such way is gentler, class by class, and one of them is worse. */
  readonly gentlest: boolean
  /** What the buyer may not have, by name; said before all else. */
  readonly barred: readonly string[]
  /** "Nitric acid, 70 %: licence or declaration needed". */
  readonly law: readonly string[]
  readonly signalWord: LabelledMaterial['signalWord']
  readonly counts: HazardCounts
  /** Unknown first, then worst first; what has a class only. */
  readonly own: readonly OwnDanger[]
  /** "3.2 L of nitrogen dioxide, step 1". */
  readonly gases: readonly string[]
  /** Materials of this way that nobody has data for, those of all ways too. */
  readonly unknown: readonly string[]
}

export interface HazardComparison {
  readonly ways: readonly WayHazards[]
  /** Materials with a class, or unknown, that all of these ways have: they tell none from another. */
  readonly shared: readonly string[]
}

const mostStatements = 3
/** So many ways stand side by side on a page. */
export const mostWays = 4

/**
 * What ways are called beside each other: the steps that not all of them have, each by what its name says after "A to B,".
 *
 * @param ways transformation ids of each
 */
export function wayNames(library: Library, ways: readonly (readonly string[])[]): readonly string[] {
  return ways.map(steps => {
    const own = steps.filter(id => !ways.every(other => other.includes(id)))
    return listed((own.length === 0 ? steps.slice(-1) : own).slice(0, mostTelling).map(id => shortStep(library, id)))
  })
}

/** More steps than this tell a way from another no better. */
const mostTelling = 2

function shortStep(library: Library, id: string): string {
  const name = library.transformations.get(id)?.name ?? id.replaceAll('-', ' ')
  return /^[^,]*\bto\b[^,]*, (.+)$/.exec(name)?.[1] ?? lowerFirst(name)
}

/** Ways side by side by what can hurt on them; null where there is nothing to compare. */
export function hazardComparison(library: Library, ways: readonly ComparedWay[]): HazardComparison | null {
  if (ways.length < 2) return null
  const nameOf = nameIn(library)
  const onAll = (id: string): boolean => ways.every(way => way.hazards.materials.some(one => one.material === id))
  const classed = (hazards: HazardList) => hazards.materials.filter(one => one.class !== 'none')
  const isBarred = ({ hazards }: ComparedWay): boolean => hazards.regulated.some(hit => hit.barred)
  const shared = classed(ways[0]!.hazards).filter(one => onAll(one.material))
  return {
    ways: ways.map(way => {
      const { name, taken, hazards } = way
      // A way that cannot be gone is no advice, and none is gentle beside it.
      const others = ways
        .filter(other => other !== way && !isBarred(other))
        .map(other => compareCounts(hazards.counts, other.hazards.counts))
      return {
        name,
        taken,
        gentlest: !isBarred(way) && others.every(apart => apart <= 0) && others.some(apart => apart < 0),
        barred: [...new Set(hazards.regulated.filter(hit => hit.barred).map(hit => nameOf(hit.material)))],
        law: lawOf(hazards, nameOf),
        signalWord: hazards.whole.signalWord,
        counts: hazards.counts,
        own: classed(hazards)
          .filter(one => !onAll(one.material))
          .sort((a, b) => listOrder.indexOf(a.class) - listOrder.indexOf(b.class) || statementsOf(b).length - statementsOf(a).length)
          .map(material => ({
            material,
            name: nameOf(material.material),
            statements: statementsOf(material).slice(0, mostStatements),
            more: Math.max(0, material.codes.length - mostStatements),
          })),
        gases: hazards.gas.map(gas => `${numberText(gas.litres, 2, 1)}\u00a0L of ${nameOf(gas.compound)}, step\u00a0${gas.step}`),
        unknown: hazards.unknown.map(nameOf),
      }
    }),
    shared: shared.map(one => nameOf(one.material)),
  }
}

/** What the comparison comes to: the gentlest that the buyer may have, by name, and whether the plan goes it. */
export function comparisonHeadline({ ways }: HazardComparison): string {
  const all = 'What can hurt, way by way'
  const gentlest = ways.filter(way => way.gentlest)
  if (gentlest.length !== 1) return all
  const { name, taken } = gentlest[0]!
  const mayHave = ways.some(way => way.barred.length > 0) ? ' of those that the public may have' : ''
  if (taken) return `${all}: this plan goes the gentlest${mayHave}`
  return ways.some(way => way.taken && way.barred.length > 0)
    ? `${all}: the public cannot have this plan's; ${name} is the gentlest that they may have`
    : `${all}: ${name} is gentler than this plan`
}

/** What asks for a licence or is reported, a material once under the gravest word. */
function lawOf({ regulated }: HazardList, nameOf: (id: string) => string): readonly string[] {
  const told = new Map<string, string>()
  for (const action of ['licence', 'reporting'] as const)
    for (const hit of regulated)
      if (hit.action === action && !hit.barred && !told.has(hit.material)) told.set(hit.material, actionWords[action].toLowerCase())
  return [...told].map(([id, words]) => `${nameOf(id)}: ${words}`)
}

/** Harm to the body before fire and corrosion of metal, the gravest first of all; the table's order within. */
function statementsOf({ codes }: LabelledMaterial): readonly string[] {
  const rank = (code: string): number =>
    isGravest(code) ? 0 : code.startsWith('H3') ? 1 : code.startsWith('H2') && code !== 'H290' ? 2 : 3
  return [...codes].sort((a, b) => rank(a.code) - rank(b.code)).map(({ code, statement }) => `${code}\u00a0${statement}`)
}
