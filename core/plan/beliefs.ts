import { type Library, transformationOf } from '../library/library.ts'
import type { Step } from '../route/route.ts'
import { type Belief, beliefOf, firstTimeRange, type YieldRange } from '../yields/belief.ts'
import { updated } from '../yields/update.ts'
import type { Settings } from './settings.ts'

const fractions = (range: YieldRange): YieldRange => ({ low: range.low / 100, typical: range.typical / 100, high: range.high / 100 })

/**
 * What is believed about the yield of a step under a hand: own figures first, else the literature's as they stand (practised) or what people
 * report at a first attempt; moved by own runs, whichever hand.
 *
 * @param runs yields of own logged runs, fractions
 */
export function beliefAbout(library: Library, transformation: string, settings: Settings, runs: readonly number[] = []): Belief {
  const t = transformationOf(library, transformation)
  const isolation = t.kind === 'isolation'
  const own = settings.yields[transformation]
  if (own) return updated(beliefOf(fractions(own), isolation, settings.benchShare, 'own'), runs)
  const stated = fractions(t.yieldPercent)
  if (settings.hand === 'practised') return updated(beliefOf(stated, isolation, settings.benchShare, 'library'), runs)
  const { range, origin } = firstTimeRange(
    stated,
    isolation,
    (t.reports ?? []).map(r => r.percent / 100),
  )
  return updated(beliefOf(range, isolation, settings.benchShare, origin), runs)
}

/** Beliefs about every step, by transformation. */
export function beliefsAbout(
  library: Library,
  steps: readonly Step[],
  settings: Settings,
  runs: ReadonlyMap<string, readonly number[]> = new Map(),
): ReadonlyMap<string, Belief> {
  return new Map(steps.map(s => [s.transformation, beliefAbout(library, s.transformation, settings, runs.get(s.transformation))]))
}
