import type { Library } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { massText, numberText, percentText } from '../quantity/print.ts'
import { nameIn } from './names.ts'
import { listed } from './words.ts'

/** "nine times in ten": a chance as a person says it. */
export function oftenText(chance: number): string {
  const tenths = Math.round(chance * 10)
  const words = ['', 'once', 'twice', 'three times', 'four times', 'five times', 'six times', 'seven times', 'eight times', 'nine times']
  if (Math.abs(chance * 10 - tenths) < 1e-9 && words[tenths]) return `${words[tenths]} in ten`
  return `${numberText(chance * 100, 3, 0)} times in a hundred`
}

/**
 * What to start from, as a sentence that one can act on: "To have 5.00 g of lophine nine times in ten, start from 5.51 g of benzoin; from 4.37 g
 * it comes out 50 times in a hundred." Null without a mass goal.
 */
export function startSentence(library: Library, { startNeeded, goals, start }: Evaluation): string | null {
  if (startNeeded === null) return null
  const nameOf = nameIn(library)
  const wanted = goals.flatMap(({ target, amount }) => (amount.kind === 'mass' ? [`${massText(amount.massG)} of ${nameOf(target)}`] : []))
  const { confidence, startG, typicalG, typicalChance } = startNeeded
  const beside = `${massText(typicalG)}, enough at typical yields, does with a chance of ${percentText(typicalChance, 2)}`
  return `To have ${listed(wanted)} ${oftenText(confidence)}, start from ${massText(startG)} of ${nameOf(start.compound)}; ${beside}.`
}

/** What the two figures of an amount are, beside them wherever both are told. */
export const medianAndTypical =
  'Median: half of the outcomes are above it. At typical yields: every step gives just its usual yield; over several steps the two differ.'

/** What no P10 and no P90 covers, beside them wherever they are told. */
export const outsideSpread = 'Spilt, lost and failed runs are outside these ranges.'

/** "12 groups, 2.00 g each: every group runs the last step itself". Null where nobody divides it. */
export function groupsSentence({ groups }: Evaluation['goals'][number]): string | null {
  if (groups === undefined) return null
  const how =
    groups.as === 'runs'
      ? 'each runs the last step itself, side by side, with its own hands and vessels, from one lot of what comes before'
      : 'one lot, divided at the end'
  return `${groups.count} groups, ${massText(groups.eachG)} each at the median: ${how}.`
}
