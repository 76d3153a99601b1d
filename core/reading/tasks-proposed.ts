import type { Task } from '../library/transformation.ts'
import type { CommaRule } from '../quantity/number.ts'
import { conditionsIn } from './conditions.ts'

/** A task that the text suggests; what it does not say is a guess, named so, and stands only where a person takes it. */
export interface TaskProposed {
  readonly task: Task
  readonly guessed: readonly ('kind' | 'hours' | 'task')[]
}

/** What is known of the times besides the text: as typed, h; null = not said. */
export interface TimesKnown {
  readonly elapsedHours: number | null
  readonly handsOnHours: number | null
  /** The product is a solid, which has to dry. */
  readonly solid: boolean
}

/** Hands for setting up and for working up, and a night for drying, h. Common practice, no source. */
const setUpH = 0.5
const workUpH = 1
const nightH = 16
/** Of typed hands-on hours so much goes into setting up. Common practice, no source. */
const setUpShare = setUpH / (setUpH + workUpH)

const unattended = /\b(?:stand|stands|left|leave|leaving|keep|kept|overnight|dry|dried|drying|desiccat\w*|fridge|refrigerat\w*)\b/i
const workUp =
  /\b(?:filter|filtered|decant|pour|poured|wash|washed|rinse|extract|extracted|separate|separated|distil|distilled|evaporate|concentrate|collect|dry|dried|recrystalli\w*|crystalli\w*|neutrali\w*|acidif\w*|basif\w*|cool|cooled|chill|chilled)\b/i
const drying = /\b(?:dry|dried|drying|desiccat\w*)\b/i

/**
 * Tasks that a preparation's own lines suggest: set up, what the lines give times for, work up, dry.
 *
 * Hours that a line names are the text's; who must be there while they pass is told from its verb, and is a guess like all else.
 *
 * @param operations  lines of the text that tell what to do, in its order
 * @returns in working order; empty where neither the text nor the typed hours say anything of time
 */
export function tasksProposed(operations: readonly string[], known: TimesKnown, comma: CommaRule): readonly TaskProposed[] {
  const timed: TaskProposed[] = []
  const untimed: string[] = []
  let worksUp = false
  for (const line of operations) {
    worksUp ||= workUp.test(line)
    const named = conditionsIn(line, comma).hours.reduce((sum, one) => sum + one, 0)
    const hours = named > 0 ? named : /\bovernight\b/i.test(line) ? nightH : 0
    if (hours === 0) {
      untimed.push(line)
      continue
    }
    const kind = unattended.test(line) ? 'stand' : 'watch'
    timed.push({
      task: { do: line, kind, hours: rounded(hours), waitUpToH: 0, ...(worksUp ? {} : { reaction: true }) },
      guessed: named > 0 ? ['kind'] : ['kind', 'hours'],
    })
  }
  if (timed.length === 0 && known.elapsedHours === null) return []
  const hands = known.handsOnHours
  const setUp = hands === null ? setUpH : hands * setUpShare
  const after = hands === null ? workUpH : hands - setUp
  const firstWorkUp = timed.findIndex(one => one.task.reaction !== true)
  const before = firstWorkUp < 0 ? timed : timed.slice(0, firstWorkUp)
  const later = firstWorkUp < 0 ? [] : timed.slice(firstWorkUp)
  const list = [
    guess('set up and charge', 'hands', setUp),
    ...before,
    guess(untimed.filter(line => workUp.test(line)).join('; ') || 'work up', 'hands', after),
    ...later,
  ]
  const sum = list.reduce((hours, one) => hours + one.task.hours, 0)
  const left = known.elapsedHours === null ? null : known.elapsedHours - sum
  const driesAlready = later.some(one => drying.test(one.task.do))
  // What the typed hours leave over is drying, or standing; without typed hours a solid dries for a night.
  const rest = left ?? (known.solid && !driesAlready ? nightH : 0)
  return rest > leastH ? [...list, guess(known.solid && !driesAlready ? 'dry' : 'let stand', 'stand', rest)] : list
}

/** Less is what rounding leaves, h. */
const leastH = 0.02

const guess = (what: string, kind: Task['kind'], hours: number): TaskProposed => ({
  task: { do: what, kind, hours: rounded(hours), waitUpToH: 0 },
  guessed: ['task', 'kind', 'hours'],
})

/** Hundredths of an hour, as the library gives them. */
const rounded = (hours: number): number => Math.round(hours * 100) / 100
