import type { Evaluation, GoalResult } from '../plan/evaluation.ts'
import { massText } from '../quantity/print.ts'
import { oftenText } from './start-sentence.ts'
import { listed } from './words.ts'

/** What {@link Evaluation.notes} calls a goal that gets less than it asks, or nothing. */
const shortCodes: ReadonlySet<string> = new Set(['start-short', 'nothing-left'])

/** The notes that say by how much something does not reach, which goal to cut and what there is allows. */
export const shortNotes = ({ notes }: Evaluation): Evaluation['notes'] => notes.filter(note => shortCodes.has(note.code))

/** Goals of which something comes out, in their order: one that gets nothing is no part of what the plan makes. */
export const madeGoals = ({ goals }: Evaluation): readonly GoalResult[] => {
  const made = goals.filter(goal => goal.medianG > 0 || goal.expectedG > 0)
  return made.length === 0 ? goals : made
}

/**
 * Where what is in hand does not suffice: what it is enough for, and what the masses take. "Enough for lophine only;", "9.88 g of benzoin needed,
 * 13.1 g to be nine times in ten sure:". Empty where every goal gets what it asks.
 */
export function shortClauses(evaluation: Evaluation, nameOf: (id: string) => string): readonly string[] {
  const cut = new Set(shortNotes(evaluation).map(note => note.where[1]))
  if (cut.size === 0) return []
  const full = evaluation.goals.filter(goal => !cut.has(goal.target)).map(goal => nameOf(goal.target))
  const none = evaluation.goals.length === 1 ? nameOf(evaluation.goals[0]!.target) : 'any goal'
  const first = full.length === 0 ? `Not enough for ${none}` : `Enough for ${listed(full)} only`
  const { start, startNeeded } = evaluation
  if (startNeeded === null || start.haveG === null || start.haveG - start.keptBackG >= startNeeded.typicalG) return [`${first}:`]
  const all = (massG: number): string => massText(massG + start.keptBackG)
  return [
    `${first};`,
    `${all(startNeeded.typicalG)} of ${nameOf(start.compound)} needed, ${all(startNeeded.startG)} to be ${oftenText(startNeeded.confidence)} sure:`,
  ]
}

/** "1.39 g of the 5.00 g " of a goal that is cut, "5.00 g " of any other: its median. */
export function goalAmountText(evaluation: Evaluation, { target, medianG, amount }: GoalResult): string {
  const isCut = shortNotes(evaluation).some(note => note.where[1] === target)
  return isCut && amount.kind === 'mass' ? `${massText(medianG)} of the ${massText(amount.massG)}` : massText(medianG)
}
