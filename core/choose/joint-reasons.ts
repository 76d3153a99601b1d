import { type Library, transformationOf } from '../library/library.ts'
import { stepsApart } from './apart.ts'
import { type Choice, differenceOf } from './difference.ts'
import type { Found, JointSearch } from './joint-search.ts'
import type { Search } from './searching.ts'
import type { Way } from './way.ts'
import type { ReckonedWay } from './way-figures.ts'

/** Choices that reasons are given for; each costs one more plan to reckon. */
const mostReasons = 6

/** One sentence for each choice that the best way makes and another way makes otherwise. */
export function* reasonsOf(search: JointSearch, found: Found, best: ReckonedWay): Search<readonly string[]> {
  const { library, limits } = search.input
  const makerIn = (steps: readonly string[]) => new Map(steps.map(id => [transformationOf(library, id).mainProduct, id]))
  const own = makerIn(best.way.steps)
  const needed = new Set(best.way.steps.flatMap(id => transformationOf(library, id).reactants.map(r => r.compound)))
  // The likest way with the other choice, so that the difference is the choice's; of equally like ones the first by its bound.
  const rivals = new Map<string, { readonly compound: string; readonly other: string | null; readonly way: Way; readonly apart: number }>()
  for (const way of found.ways) {
    const apart = stepsApart(way.steps, best.way.steps) + Math.abs(way.steps.length - best.way.steps.length) / 1000
    if (apart === 0) continue
    const theirs = makerIn(way.steps)
    const theirNeeded = new Set(way.steps.flatMap(id => transformationOf(library, id).reactants.map(r => r.compound)))
    for (const compound of new Set([...own.keys(), ...theirs.keys()])) {
      const [mine, other] = [own.get(compound) ?? null, theirs.get(compound) ?? null]
      const both = (mine !== null || needed.has(compound)) && (other !== null || theirNeeded.has(compound))
      const before = rivals.get(`${compound} ${other}`)
      if (both && mine !== other && (before === undefined || apart < before.apart))
        rivals.set(`${compound} ${other}`, { compound, other, way, apart })
    }
  }
  const likest = [...rivals.values()].sort((a, b) => a.apart - b.apart)
  const told = new Set<string>()
  const words: string[] = []
  for (const { compound, other, way } of likest) {
    const name = way.steps.join(' ')
    if (words.length >= mostReasons || told.has(name)) continue
    told.add(name)
    yield { kind: 'progress', found: found.ways.length, work: found.reckoned.length, bound: null }
    const rival = search.reckon(way, limits)
    if (rival === null) continue
    const choice = { compound, own: own.get(compound) ?? null, other }
    words.push(differenceOf(library, [choice], best, rival))
  }
  return words
}

/** What wins where nothing is forbidden, held against what wins as asked. */
export function* changedByLimits(search: JointSearch, best: ReckonedWay): Search<string | null> {
  const { options, limits, library } = search.input
  const {
    avoid: _a,
    avoidStep: _s,
    avoidCode: _c,
    avoidList: _l,
    ownedOnly: _o,
    seenOnly: _t,
    maxSteps: _m,
    mustPass: _p,
    make: _k,
    ...free
  } = options
  const isFree =
    Object.keys(limits).length === 0 &&
    [options.avoid, options.avoidStep, options.avoidCode, options.avoidList, options.mustPass, options.make].every(
      l => (l ?? []).length === 0,
    ) &&
    options.ownedOnly !== true &&
    options.seenOnly !== true &&
    options.maxSteps === undefined
  if (isFree) return null
  const { best: without } = yield* search.best(free, {})
  if (without === null || without.way.steps.join(' ') === best.way.steps.join(' ')) return null
  return differenceOf(library, choicesBetween(library, best.way.steps, without.way.steps), best, without)
}

/** What two ways make otherwise: by another transformation, or in one of them bought. */
function choicesBetween(library: Library, own: readonly string[], other: readonly string[]): readonly Choice[] {
  const makers = (steps: readonly string[]) => new Map(steps.map(id => [transformationOf(library, id).mainProduct, id]))
  const [mine, theirs] = [makers(own), makers(other)]
  return [...new Set([...mine.keys(), ...theirs.keys()])].flatMap(compound => {
    const choice = { compound, own: mine.get(compound) ?? null, other: theirs.get(compound) ?? null }
    return choice.own === choice.other ? [] : [choice]
  })
}
