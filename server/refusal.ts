import { PlanRefused } from '../core/plan/goals.ts'
import { type Problem, paragraph } from '../core/problem/problem.ts'

/**
 * Why a door does not open. `bad-input` = what was asked cannot be read (exit 2, HTTP 400); `no-answer` = it was understood and there is
 * none: unreachable, infeasible, stopped for safety (exit 1, HTTP 422); `not-found` and `conflict` concern saved plans.
 */
export type RefusalKind = 'bad-input' | 'no-answer' | 'not-found' | 'conflict'

/** Thrown by whatever answers a request or a command; one place each turns it into a reply or an exit code. */
export class Refusal extends Error {
  readonly kind: RefusalKind
  readonly problems: readonly Problem[]
  constructor(kind: RefusalKind, problems: readonly Problem[]) {
    super(problems.map(paragraph).join('\n'))
    this.name = 'Refusal'
    this.kind = kind
    this.problems = problems
  }
}

/** What a thrown error refuses; null for a fault of the program. A plan that turns out too large only while it is reckoned has no answer. */
export function refusalOf(error: unknown): Refusal | null {
  if (error instanceof Refusal) return error
  return error instanceof PlanRefused ? new Refusal('no-answer', error.problems) : null
}
