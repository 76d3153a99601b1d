import type { Library } from '../library/library.ts'
import { massText, percentText } from '../quantity/print.ts'
import { canonical } from './canonical.ts'
import type { Goal, GoalAmount, Plan } from './plan.ts'
import type { Settings } from './settings.ts'
import { nameOf } from './working-row.ts'

/**
 * What a reader of an earlier print must know of the later plan: start, goals, ways, shelf, prices, settings and bench log, a sentence each.
 *
 * @returns nothing where the two reckon alike
 */
export function planChanges(library: Library, before: Plan, after: Plan): readonly string[] {
  return [
    ...startChanges(library, before, after),
    ...goalChanges(library, before.goals, after.goals),
    ...lengthChange('on the shelf', before.shelf, after.shelf),
    ...(same(before.packs, after.packs) ? [] : ['Suppliers or prices changed.']),
    ...settingChanges(before.settings, after.settings),
    ...logChanges(library, before, after),
    ...added('topped up', before.topUps, after.topUps, up => `${massText(up.massG)} of ${nameOf(library, up.compound)}`),
    ...added('to be repeated', before.repeats, after.repeats, again => library.transformations.get(again.step)?.name ?? again.step),
    ...((before.keepsRecords ?? false) === (after.keepsRecords ?? false)
      ? []
      : [after.keepsRecords ? 'The plan keeps the records it was saved with.' : 'The plan goes by the library again.']),
    ...(before.seed === after.seed ? [] : ['The draws start from another seed.']),
  ]
}

const same = (a: unknown, b: unknown): boolean => canonical(a ?? null) === canonical(b ?? null)

function startChanges(library: Library, { start: before }: Plan, { start: after }: Plan): readonly string[] {
  if (before.material !== after.material)
    return [`The start is ${nameOf(library, after.material)}, no longer ${nameOf(library, before.material)}.`]
  if (before.massG === after.massG) return []
  const told = (massG: number | null): string => (massG === null ? 'reckoned backwards' : massText(massG))
  return [`${nameOf(library, after.material)} in hand: ${told(after.massG)}, was ${told(before.massG)}.`]
}

const amountText = (amount: GoalAmount): string =>
  amount.kind === 'mass' ? massText(amount.massG) : amount.kind === 'share' ? percentText(amount.fraction) : 'the rest'

function goalChanges(library: Library, before: readonly Goal[], after: readonly Goal[]): readonly string[] {
  const changes: string[] = []
  for (const goal of after) {
    const name = nameOf(library, goal.target)
    const old = before.find(one => one.target === goal.target)
    if (old === undefined) {
      changes.push(`New goal: ${name}, ${amountText(goal.amount)}.`)
      continue
    }
    if (!same(old.amount, goal.amount)) changes.push(`${name}: ${amountText(goal.amount)}, was ${amountText(old.amount)}.`)
    if (!same(old.groups, goal.groups))
      changes.push(
        goal.groups === undefined
          ? `${name}: no longer for groups.`
          : `${name}: for ${goal.groups.count} groups, ${goal.groups.as === 'runs' ? 'each runs it' : 'one lot to divide'}.`,
      )
    const own = goal.route.steps.filter(step => !old.route.steps.some(one => one.transformation === step.transformation))
    const stepName = (id: string): string => library.transformations.get(id)?.name ?? id
    if (own.length > 0) changes.push(`${name} goes another way: ${own.map(step => stepName(step.transformation)).join('; ')}.`)
    else if (old.route.steps.length !== goal.route.steps.length) changes.push(`${name} goes another way, with fewer steps.`)
  }
  for (const goal of before)
    if (!after.some(one => one.target === goal.target)) changes.push(`No longer a goal: ${nameOf(library, goal.target)}.`)
  return changes
}

const lengthChange = (where: string, before: readonly unknown[], after: readonly unknown[]): readonly string[] =>
  same(before, after)
    ? []
    : [`What stands ${where} changed${before.length === after.length ? '' : `: ${after.length} items, were ${before.length}`}.`]

/** How each setting is called; one that is not listed here goes by its key. */
const settingNames: Partial<Record<keyof Settings, string>> = {
  bench: 'the bench',
  hand: 'whose hand',
  startDate: 'the first day',
  windows: 'the bench windows',
  daysOff: 'the days off',
  deliveryDays: 'the days for delivery',
  vessels: 'the vessels',
  heatSources: 'the heat sources',
  hood: 'the hood',
  inertGas: 'the inert gas',
  keptBack: 'what is kept back',
  roomVolumeM3: 'the room',
  region: 'the region',
  buyer: 'who buys',
  reserve: 'the reserve',
  repeatRiskiest: 'the repeat of the riskiest step',
  retainedSampleG: 'the retained sample',
  confidence: 'the confidence',
  batches: 'the batches asked for',
  scale: 'when a scale is flagged',
  benchShare: "the bench's share of the variance",
  yields: 'own yields',
}

function settingChanges(before: Settings, after: Settings): readonly string[] {
  const keys = Object.keys(after) as (keyof Settings)[]
  const changed = keys.filter(key => !same(before[key], after[key]))
  return changed.length === 0 ? [] : [`Changed in the settings: ${changed.map(key => settingNames[key] ?? key).join(', ')}.`]
}

function logChanges(library: Library, before: Plan, after: Plan): readonly string[] {
  const known = new Set(before.log.map(entry => entry.id))
  return after.log
    .filter(entry => !known.has(entry.id))
    .map(entry => {
      const product = library.transformations.get(entry.step)?.mainProduct ?? entry.step
      const what = entry.failed ? 'a run failed' : `${massText(entry.weighedG)} weighed`
      return `Logged: ${nameOf(library, product)}, ${what}${entry.replaces === null ? '' : `, in place of ${entry.replaces}`}.`
    })
}

function added<T>(how: string, before: readonly T[] = [], after: readonly T[] = [], told: (one: T) => string): readonly string[] {
  return same(before, after)
    ? []
    : after.length === 0
      ? [`Nothing is ${how} any more.`]
      : [`To be noted as ${how}: ${after.map(told).join(', ')}.`]
}
