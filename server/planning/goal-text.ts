import type { GoalAmount, Groups } from '../../core/plan/plan.ts'
import { badOption, type Given } from '../commands/command.ts'
import type { Workshop } from '../library/workshop.ts'
import { goalAmountOf } from './amounts.ts'

/** A goal as it stands on the command line. */
export interface GoalAsked {
  readonly target: string
  readonly amount: GoalAmount
  readonly groups?: Groups
}

/**
 * "5 g", "50%", "rest" or, for so many groups, "12 x 2 g": the amount of all together and who divides it. A target that the library does not
 * know is told by the search with a proposal; its amount cannot be read before.
 *
 * @param option which one the text came with, for what is wrong
 */
export function goalFrom(workshop: Workshop, given: Given, target: string, text: string, option: string): GoalAsked {
  if (!workshop.library.materials.has(target)) return { target, amount: { kind: 'mass', massG: 1 } }
  const where = ['command line', option, ...(option === '--goal' ? [target] : [])]
  const [, times, each] = /^\s*(\d{1,4})\s*[x×]\s*(.+)$/i.exec(text) ?? []
  const as = groupsOption(given)
  if (times === undefined || each === undefined) return { target, amount: goalAmountOf(workshop.library, target, text, where) }
  const count = Number(times)
  const amount = goalAmountOf(workshop.library, target, each, where)
  if (amount.kind !== 'mass' || count < 1)
    throw badOption(option, `is "${text}".`, 'A multiple is so many times a mass.', 'Write "12 x 2 g".', 'multiple')
  const all = { target, amount: { kind: 'mass', massG: amount.massG * count } } as const
  if (count === 1) return all
  if (as === null)
    throw badOption(
      '--groups',
      'is missing.',
      `${count} times an amount is ${count} runs, or one lot to divide: charges and losses differ.`,
      'Add --groups runs or --groups lot.',
      'groups',
    )
  return { ...all, groups: { count, as } }
}

/** Whether groups run it themselves or divide one lot; never guessed. */
function groupsOption(given: Given): Groups['as'] | null {
  const as = given.text('groups')
  if (as === undefined) return null
  if (as === 'runs' || as === 'lot') return as
  throw badOption(
    '--groups',
    `is "${as}".`,
    'Groups run the last step themselves, or divide one lot.',
    'Write --groups runs or --groups lot.',
    'groups',
  )
}

/** `--goal ID=5g`, read. */
export function goalOfPair(workshop: Workshop, given: Given, text: string): GoalAsked {
  const at = text.indexOf('=')
  if (at < 1)
    throw badOption(
      '--goal',
      `is "${text}".`,
      'A goal names a target and its amount.',
      'Write --goal ID=5g, --goal ID=50% or --goal ID=rest.',
      'goal-unreadable',
    )
  return goalFrom(workshop, given, text.slice(0, at).trim(), text.slice(at + 1), '--goal')
}
