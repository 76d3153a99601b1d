import type { Problem } from '../problem/problem.ts'
import { moneyText } from '../quantity/money.ts'
import { type Found, hasFewestUnknown, JointSearch } from './joint-search.ts'
import { nearestOut, type WayLimits } from './limits.ts'
import type { Search } from './searching.ts'
import { stopReasons } from './stop-reasons.ts'
import { compareWays, type ReckonedWay } from './way-figures.ts'

/** Why there is no way: nothing leads there, the limits, or a compound that cannot be both. */
export function* whyNone(search: JointSearch, { ways, reckoned }: Found): Search<readonly Problem[]> {
  const { options, limits, goals, plan } = search.input
  const where = ['goals', ...goals.map(g => g.target)]
  if (ways.length > 0) {
    const nearest = [...reckoned].sort((a, b) => a.figures.over.length - b.figures.over.length || compareWays(a, b))[0]
    const out =
      nearest === undefined
        ? nearestOut(ways.filter(hasFewestUnknown(ways)), limits, plan.packs?.currency ?? 'XXX')
        : nearest.figures.over.join('; ')
    return [
      {
        code: 'none-within-limits',
        where,
        what: `None of the ${ways.length === 1 ? 'one way' : `${ways.length} ways`} to these goals keeps within the limits: ${out}.`,
        why: nearest === undefined ? 'Their bounds say so already.' : `The nearest goes by ${nearest.way.steps.join(', ')}.`,
        cure: (yield* withoutAGoal(search, limits)) ?? 'Loosen the limit, lower a goal, or leave one out.',
      },
    ]
  }
  const free = (yield* search.ways({})).ways.length
  if (free > 0 && Object.values(options).some(value => (Array.isArray(value) ? value.length > 0 : value !== undefined && value !== false)))
    return [
      {
        code: 'none-left',
        where,
        what: 'What is forbidden leaves no way to these goals.',
        why: `Without it there ${free === 1 ? 'is one way' : `are ${free} ways`}.`,
        cure: 'Allow one of the things forbidden, or leave a goal out.',
      },
    ]
  if (free === 0) {
    const listed = (yield* search.ways({}, true)).ways.flatMap(way => way.steps)
    const stops = stopReasons(search.input, [...new Set(listed)], where)
    if (stops.length > 0) return stops
  }
  return [
    {
      code: 'goals-apart',
      where,
      what: 'No one plan holds these goals together.',
      why: 'In one plan each compound is made in one way, from the start in hand; or a goal cannot be made from it at all.',
      cure: 'Plan some of the goals apart; asked for one by one, each tells whether a route leads there.',
    },
  ]
}

/** Which goal to leave out so that the others keep within the limits; null where leaving out one is not enough. */
function* withoutAGoal(search: JointSearch, limits: WayLimits): Search<string | null> {
  const { goals, library, options } = search.input
  if (goals.length < 2) return null
  const cures: { target: string; total: ReckonedWay['evaluation']['basket'] }[] = []
  for (const [at, goal] of goals.entries()) {
    const others = <T>(of: readonly T[]) => of.filter((_, i) => i !== at)
    const fewer = new JointSearch({ ...search.input, goals: others(goals) }, search.start, others(search.targets))
    const { best } = yield* fewer.best(options, limits)
    if (best !== null) cures.push({ target: goal.target, total: best.evaluation.basket })
  }
  if (cures.length === 0) return null
  const sentences = cures.map(({ target, total }) => {
    const name = library.materials.get(target)?.name ?? target
    return total === null || total.totalMinor === null
      ? name
      : `${name} (the others then cost ${moneyText(total.totalMinor, total.currency)})`
  })
  return `Leave out ${sentences.join(', or ')}; or loosen the limit, or lower a goal.`
}
