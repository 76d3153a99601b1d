import type { Library } from '../library/library.ts'
import { standing } from '../plan/logged.ts'
import { meltsBelowC } from '../plan/melts-low.ts'
import type { LogEntry, Plan } from '../plan/plan.ts'
import type { Problem } from '../problem/problem.ts'
import { noBreakSpace } from '../quantity/print.ts'
import { nameIn } from './names.ts'
import { sureInBrackets } from './physical-words.ts'
import { capital } from './words.ts'

/** The remark that goes with a run whose product melts below its known melting point, yet counts as pure; null for any other. */
export function lowMelt(library: Library, entry: LogEntry): Problem | null {
  const knownC = meltsBelowC(library, entry)
  const product = library.transformations.get(entry.step)?.mainProduct
  if (knownC === null || product === undefined || entry.meltingC === undefined) return null
  const [from, to] = entry.meltingC
  return {
    code: 'melts-low',
    where: ['log', entry.id],
    what: `${capital(nameIn(library)(product))}, run ${entry.id}, melts at ${from}–${to}${noBreakSpace}°C, below the known ${knownC}${noBreakSpace}°C${sureInBrackets(library, product, 'melting point')}.`,
    why: 'It is not pure or not dry, yet it counts as pure.',
    cure: 'Dry or recrystallise it, or log a correction with an assay.',
  }
}

/** The same for every run that stands. */
export const lowMelts = (library: Library, { log }: Plan): readonly Problem[] =>
  standing(log).flatMap(entry => lowMelt(library, entry) ?? [])
