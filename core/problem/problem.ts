import { readable } from './readable.ts'

/**
 * One thing wrong with what a person typed or loaded, as data; its words are the same on the screen, the command line and in a reply, but for
 * what can be asked or set: named by `askedAs`, it is called what each door calls it.
 * What only we can get wrong throws instead.
 */
export interface Problem {
  /** Kebab-case name of the rule, stable: tests, docs and other programs key on it. */
  readonly code: string
  /** From the outside in: file, record, field; or what was asked and the value. */
  readonly where: readonly string[]
  /** What is wrong, one sentence with the offending value. */
  readonly what: string
  /** Why it matters. */
  readonly why: string
  /** What to do about it, as an order that can be followed. */
  readonly cure: string
}

/** Either a value, perhaps with warnings, or every problem found. */
export type Checked<T> =
  | { readonly ok: true; readonly value: T; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

export const good = <T>(value: T, warnings: readonly Problem[] = []): Checked<T> => ({ ok: true, value, warnings })

export const bad = (problems: readonly Problem[]): { readonly ok: false; readonly problems: readonly Problem[] } => ({
  ok: false,
  problems,
})

/** A problem, part by part. */
export const problemOf = (code: string, where: readonly string[], what: string, why: string, cure: string): Problem => ({
  code,
  where,
  what,
  why,
  cure,
})

/** The problem as one readable paragraph; what it quotes is made visible, see {@link readable}. */
export function paragraph(problem: Problem): string {
  const where = problem.where.length > 0 ? `${problem.where.join(' > ')}: ` : ''
  return readable(`${where}${problem.what} ${problem.why} ${problem.cure}`)
}
