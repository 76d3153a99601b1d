import type { Depiction } from '../../core/chemistry/drawing.ts'
import type { Beneath } from '../../core/library/beneath.ts'
import type { Library } from '../../core/library/library.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { Answer, Reach } from '../../core/report/answers.ts'
import type { ComparedWay } from '../../core/report/way-hazards.ts'

/** What a pack is printed from. */
export interface PackProps {
  readonly library: Library
  readonly plan: Plan
  readonly evaluation: Evaluation
  /** How materials are drawn, by id. */
  readonly depictions: ReadonlyMap<string, Depiction>
  /** ISO date of printing. */
  readonly today: string
  /** Of the saved plan; absent where it was never saved. */
  readonly version?: number
  /** What changed since the version last printed; the plan's own edition where absent. */
  readonly changed?: { readonly since: number; readonly what: readonly string[] }
  /** What became of the library since the plan was saved. */
  readonly libraryChanges?: readonly Problem[]
  /** What own records of the bench stand in place of; absent where that is not known. */
  readonly beneath?: Beneath
  /** How the ways taken stand among those that were looked for, as sentences; absent where nobody looked. */
  readonly choice?: readonly string[]
  /** That the plan uses what was asked to be kept clear of, as a sentence; null or absent where it does not. */
  readonly breach?: string | null
  /** The ways that were compared with what can hurt on each, the one taken among them; page 1 sets them side by side. */
  readonly ways?: readonly ComparedWay[]
  /** What else the start can become, where that was asked. */
  readonly reach?: Reach
  /** The sheet's own headings, where there is a sheet: page 1 then prints exactly these. */
  readonly answers?: readonly Answer[]
}
