import { effect } from '@preact/signals'
import { planChanges } from '../core/plan/changes.ts'
import type { Evaluation } from '../core/plan/evaluation.ts'
import type { Goal } from '../core/plan/plan.ts'
import { answersOf } from '../core/report/answers.ts'
import { breachSentence } from '../core/report/breach-text.ts'
import { type ComparedWay, mostWays, wayNames } from '../core/report/way-hazards.ts'
import type { PackProps } from './print/pack.tsx'
import { choicesTold } from './sheet/choice-told.ts'
import { wayClauses } from './sheet/way-words.ts'
import { breachOfPlan } from './state/breach.ts'
import { beneathFor } from './state/facts.ts'
import { facts } from './state/facts-here.ts'
import { sameRoute } from './state/goals.ts'
import { keepPrinted, lastPrinted } from './state/last-printed.ts'
import { reach } from './state/questions.ts'
import { otherWays, standing } from './state/reckoner.ts'
import { changedSince } from './state/records-saved-with.ts'
import { keyOfRoute } from './state/routes-of.ts'
import { save, saved, savingState } from './state/saving.ts'
import { goalLookedAt } from './state/view.ts'
import { waysTo } from './state/ways.ts'

/** What would be printed now; null where nothing is planned. */
function packNow(): PackProps | null {
  const { evaluation, plan } = standing.peek()
  if (evaluation === null || plan === null) return null
  const { library, depictions } = facts.peek()
  const found = reach.peek().answer?.reach ?? []
  // A number stands for what is saved under it, and for nothing that was changed since.
  const version = savingState.peek() === 'clean' ? saved.peek()?.version : undefined
  const id = saved.peek()?.id
  const before = id === undefined ? null : lastPrinted(id)
  const reachTold = found.length === 0 ? undefined : { compounds: found.length, steps: Math.max(...found.map(row => row.steps ?? 0)) }
  const looked = goalLookedAt.peek()
  const way = looked === null ? [] : wayClauses(looked.target)
  const answers = answersOf(library, plan, evaluation, reachTold).map(answer =>
    answer.no === 3 && way.length > 0 ? { ...answer, clauses: way } : answer,
  )
  return {
    library,
    plan,
    evaluation,
    depictions,
    today: localDate(new Date()),
    ...(version === undefined ? {} : { version }),
    ...(before === null || version === before.version
      ? {}
      : { changed: { since: before.version, what: planChanges(library, before.plan, plan) } }),
    ...(reachTold === undefined ? {} : { reach: reachTold }),
    answers,
    choice: choicesTold(),
    ways: looked === null ? [] : waysBeside(evaluation, looked),
    breach: breachSentence(breachOfPlan()),
    libraryChanges: changedSince.peek(),
    beneath: beneathFor(facts.peek()),
  }
}

/** The ways to the goal that is looked at, as far as they were reckoned for the sheet's own comparison; the way taken first. */
function waysBeside(evaluation: Evaluation, { target, route }: Goal): readonly ComparedWay[] {
  const { library } = facts.peek()
  const others = waysTo(target)
    .filter(way => !sameRoute(way.route, route))
    .flatMap(way => {
      const other = otherWays.peek().get(`${target} ${keyOfRoute(way.route)}`)
      return other === undefined ? [] : [{ route: way.route, evaluation: other }]
    })
    .slice(0, mostWays - 1)
  const ways = [{ route, evaluation }, ...others]
  const names = wayNames(
    library,
    ways.map(way => way.route.steps.map(step => step.transformation)),
  )
  return ways.map((way, at) => ({ name: names[at] ?? '', taken: at === 0, hazards: way.evaluation.hazards }))
}

const localDate = (at: Date): string =>
  `${at.getFullYear()}-${String(at.getMonth() + 1).padStart(2, '0')}-${String(at.getDate()).padStart(2, '0')}`

let ready: Promise<void> | null = null

/** The print layout, fetched once there is something to print, so that the first page stays light. */
function bringPrint(): Promise<void> {
  ready ??= Promise.all([import('./print/on-print.tsx'), import('./print/print.css')]).then(([{ printsPack }]) => {
    printsPack(packNow)
  })
  return ready
}

/** Makes the browser's own print command print the pack too; called once. */
export function watchPrinting(): void {
  addEventListener('afterprint', () => {
    const now = saved.peek()
    const { plan } = standing.peek()
    if (now !== null && plan !== null && savingState.peek() === 'clean') keepPrinted(now.id, { version: now.version, plan })
  })
  effect(() => {
    if (standing.value.evaluation !== null) bringPrint().catch(() => (ready = null))
  })
}

/** Prints the pack: the browser's own dialog over the print layout. */
export async function printPack(): Promise<void> {
  await bringPrint()
  if (savingState.peek() === 'kept') await save()
  await document.fonts.ready
  window.print()
}
