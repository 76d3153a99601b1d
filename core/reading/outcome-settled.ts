import type { Library } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import type { EquationRead } from './equation-line.ts'
import type { NameIndex } from './names.ts'
import { basisAsked } from './outcome-basis.ts'
import type { OutcomeRead } from './outcome-line.ts'
import { weighed } from './outcome-mass.ts'
import { asTheProduct, isolatedOther, mainProduct } from './outcome-yield.ts'

/** What came out, held against the equation and its limiting reactant. */
export interface OutcomeSettled {
  /** Null where there is none, or the text's cannot be used: then a problem says why, and its line is unread. */
  readonly outcome: OutcomeRead | null
  readonly main: string | null
  readonly problems: readonly Problem[]
  readonly notes: readonly string[]
}

export function settledOutcome(
  read: OutcomeRead | null,
  equation: EquationRead,
  limiting: string | null,
  index: NameIndex,
  library: Library,
): OutcomeSettled {
  const notes: string[] = []
  const main = mainProduct(equation, read, index)
  if (read === null) return { outcome: null, main, problems: [], notes }
  const problem = isolatedOther(equation, read, index) ?? basisAsked(read, equation, limiting, index)
  if (problem !== null) return { outcome: null, main: mainProduct(equation, null, index), problems: [problem], notes }
  // A name that is not the product's is no reason to ask, "needles from ethanol" being one, but what it is counted as is told.
  const isNamed =
    read.name === '' ||
    (main !== null && index.lookUp(read.name).kind === 'material') ||
    equation.products.some(one => one.text === read.name)
  if (!isNamed && main !== null)
    notes.push(`"${read.name}" in "${read.text}" is passed over: what came out is counted as ${index.materials.get(main)?.name ?? main}`)
  const whole = weighed(read, main, library, notes)
  if (whole.problem !== null || whole.outcome === null)
    return { outcome: null, main, problems: whole.problem === null ? [] : [whole.problem], notes }
  return { outcome: asTheProduct(equation, whole.outcome, index, notes), main, problems: [], notes }
}
