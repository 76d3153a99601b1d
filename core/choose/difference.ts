import type { Library } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { moneyText } from '../quantity/money.ts'
import { massText, numberText } from '../quantity/print.ts'

/** A compound that two ways have otherwise: by which transformation, or null for bought. */
export interface Choice {
  readonly compound: string
  readonly own: string | null
  readonly other: string | null
}

interface Sides {
  readonly evaluation: Evaluation
}

/** Hours and money that differ by less are not worth a word. */
const leastHours = 0.05

/**
 * What one way has over another, in one sentence: "Buying diphenylacetylene rather than making it saves € 41.00, but takes 6.0 h more of
 * hands and brings mercury."
 *
 * @param choices what they make otherwise
 */
export function differenceOf(library: Library, choices: readonly Choice[], own: Sides, other: Sides): string {
  const { gains, losses } = compared(library, own.evaluation, other.evaluation)
  const head = capital(listed(choices.map(choice => headOf(library, choice))))
  const verb = choices.length > 1 ? 'together ' : ''
  if (gains.length === 0 && losses.length === 0) return `${head} ${verb}comes to the same in money, hours and amounts.`
  if (gains.length === 0) return `${head} ${verb}${listed(losses)}.`
  return losses.length === 0 ? `${head} ${verb}${listed(gains)}.` : `${head} ${verb}${listed(gains)}, but ${listed(losses)}.`
}

function headOf(library: Library, { compound, own, other }: Choice): string {
  const name = (id: string) => library.materials.get(id)?.name ?? id
  const step = (id: string) => library.transformations.get(id)?.name ?? id
  if (own === null) return `buying ${name(compound)} rather than making it`
  if (other === null) return `making ${name(compound)} rather than buying it`
  return `making ${name(compound)} by “${step(own)}” rather than by “${step(other)}”`
}

function compared(
  library: Library,
  own: Evaluation,
  other: Evaluation,
): { readonly gains: readonly string[]; readonly losses: readonly string[] } {
  const gains: string[] = []
  const losses: string[] = []
  const say = (better: boolean, gain: string, loss: string) => void (better ? gains.push(gain) : losses.push(loss))
  own.goals.forEach((goal, at) => {
    const there = other.goals[at]
    if (there === undefined || there.target !== goal.target) return
    const moreG = goal.expectedG - there.expectedG
    if (Math.abs(moreG) < Math.max(0.01, 0.002 * there.expectedG)) return
    const name = library.materials.get(goal.target)?.name ?? goal.target
    say(moreG > 0, `gives ${massText(moreG)} more ${name}`, `gives ${massText(-moreG)} less ${name}`)
  })
  const [a, b] = [own.basket, other.basket]
  if (a !== null && b !== null) {
    const fewer = b.priceUnknown.length - a.priceUnknown.length
    if (fewer !== 0) say(fewer > 0, `leaves ${counted(fewer)} fewer unknown`, `leaves ${counted(-fewer)} more unknown`)
    const saved = (b.totalMinor ?? 0) - (a.totalMinor ?? 0)
    if (a.totalMinor !== null && b.totalMinor !== null && saved !== 0)
      say(saved > 0, `saves ${moneyText(saved, a.currency)}`, `costs ${moneyText(-saved, a.currency)} more`)
  }
  const [mine, theirs] = [own.days.handsOnH, other.days.handsOnH]
  if (mine !== null && theirs !== null && Math.abs(mine - theirs) >= leastHours)
    say(mine < theirs, `spares ${hours(theirs - mine)} h of hands`, `takes ${hours(mine - theirs)} h more of hands`)
  const [end, theirEnd] = [own.days.finishDate, other.days.finishDate]
  if (end !== null && theirEnd !== null && end !== theirEnd)
    say(end < theirEnd, `is done on ${end} instead of ${theirEnd}`, `is done on ${end} instead of ${theirEnd}`)
  const spared = harshIn(other, own)
  const brought = harshIn(own, other)
  if (spared.length > 0) gains.push(`spares ${named(library, spared)}`)
  if (brought.length > 0) losses.push(`brings ${named(library, brought)}`)
  return { gains, losses }
}

/** Materials of the gravest class, or without hazard data, in one plan and not in the other. */
function harshIn(one: Evaluation, other: Evaluation): readonly string[] {
  const there = new Set(other.hazards.materials.map(m => m.material))
  return one.hazards.materials
    .filter(m => (m.class === 'gravest' || m.class === 'unknown') && !there.has(m.material))
    .map(m => (m.class === 'unknown' ? `${m.material}?` : m.material))
}

function named(library: Library, ids: readonly string[]): string {
  const names = ids.map(id => {
    const bare = id.replace(/\?$/, '')
    const name = library.materials.get(bare)?.name ?? bare
    return id.endsWith('?') ? `${name} (no hazard data)` : name
  })
  return names.length <= 3 ? listed(names) : `${names.slice(0, 2).join(', ')} and ${names.length - 2} more of the gravest or unknown`
}

const hours = (h: number): string => numberText(h, 3, 1)
const counted = (n: number): string => (n === 1 ? 'one price' : `${n} prices`)
const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
