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
  /\b(?:quench\w*|drown|drowned|filter|filtered|decant|pour|poured|wash|washed|rinse|extract|extracted|separate|separated|distil|distilled|evaporate|concentrate|collect|dry|dried|recrystalli\w*|crystalli\w*|neutrali\w*|acidif\w*|basif\w*|cool|cooled|chill|chilled)\b/i
const drying = /\b(?:dry|dried|drying|desiccat\w*)\b/i

/**
 * Tasks that a preparation's own lines suggest, in its order: set up, what the lines give times for, between and after these what they give no
 * times for, dry. No line is left out.
 *
 * Hours that a line names are the text's; who must be there while they pass is told from its verb, and is a guess like all else.
 *
 * @param operations  lines of the text that tell what to do, in its order
 * @returns in working order; empty where neither the text nor the typed hours say anything of time
 */
export function tasksProposed(operations: readonly string[], known: TimesKnown, comma: CommaRule): readonly TaskProposed[] {
  const timed: TaskProposed[] = []
  /** Lines without times, by how many timed ones stand before them. */
  const untimed: string[][] = [[]]
  let worksUp = false
  for (const line of operations) {
    worksUp ||= workUp.test(line)
    const { hours: named, uncounted } = conditionsIn(line, comma)
    const night = uncounted.some(one => /night/i.test(one)) ? nightH : 0
    const hours = named.reduce((sum, one) => sum + one, night)
    if (hours === 0) {
      untimed.at(-1)!.push(line)
      continue
    }
    const kind = unattended.test(line) ? 'stand' : 'watch'
    timed.push({
      task: { do: line, kind, hours: rounded(hours), waitUpToH: 0, ...(worksUp ? {} : { reaction: true }) },
      guessed: uncounted.length === 0 ? ['kind'] : ['kind', 'hours'],
    })
    untimed.push([])
  }
  if (timed.length === 0 && known.elapsedHours === null) return []
  const hands = known.handsOnHours
  const setUp = hands === null ? setUpH : hands * setUpShare
  const after = hands === null ? workUpH : hands - setUp
  // Where nothing reacts for a stated time, working up begins among the first lines.
  const [first = [], ...others] = untimed
  const begins = timed[0]?.task.reaction === true ? -1 : first.findIndex(line => workUp.test(line))
  const [charging, leading] = begins < 0 ? [first, []] : [first.slice(0, begins), first.slice(begins)]
  const byHand = handTasks([leading, ...others], timed, after)
  const list = [
    guess(['set up and charge', ...charging].join('; '), 'hands', setUp),
    ...byHand[0]!,
    ...timed.flatMap((one, at) => [one, ...byHand[at + 1]!]),
  ]
  const sum = list.reduce((hours, one) => hours + one.task.hours, 0)
  const left = known.elapsedHours === null ? null : known.elapsedHours - sum
  const driesAlready = timed.some(one => one.task.reaction !== true && drying.test(one.task.do))
  // What the typed hours leave over is drying, or standing; without typed hours a solid dries for a night.
  const rest = left ?? (known.solid && !driesAlready ? nightH : 0)
  return rest > leastH ? [...list, guess(known.solid && !driesAlready ? 'dry' : 'let stand', 'stand', rest)] : list
}

/**
 * Work by hand at each place between the timed tasks: the lines there, their hours a share by their number.
 *
 * @param lines  by how many timed tasks stand before them
 * @param hours  of all of them together, working up among them, told of or not
 */
function handTasks(
  lines: readonly (readonly string[])[],
  timed: readonly TaskProposed[],
  hours: number,
): readonly (readonly TaskProposed[])[] {
  // Nothing is told of what follows the reaction: that it is worked up goes without saying.
  const reacting = timed.filter(one => one.task.reaction === true).length
  const told = lines.some((here, place) => here.length > 0 && place >= reacting)
  const all = told ? lines : lines.map((here, place) => (place === reacting ? [...here, 'work up'] : here))
  const count = all.reduce((sum, one) => sum + one.length, 0)
  let done = 0
  let given = 0
  return all.map(here => {
    if (here.length === 0) return []
    done += here.length
    // Each ends where its share of all lines ends, so that rounding adds nothing.
    const until = rounded((hours * done) / count)
    const task = guess(here.join('; '), 'hands', until - given)
    given = until
    return [task]
  })
}

/** Less is what rounding leaves, h. */
const leastH = 0.02

const guess = (what: string, kind: Task['kind'], hours: number): TaskProposed => ({
  task: { do: what, kind, hours: rounded(hours), waitUpToH: 0 },
  guessed: ['task', 'kind', 'hours'],
})

/** Hundredths of an hour, as the library gives them. */
const rounded = (hours: number): number => Math.round(hours * 100) / 100
