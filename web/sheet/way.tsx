import { percentText } from '../../core/quantity/print.ts'
import { capital, counted, listed } from '../../core/report/words.ts'
import type { Route } from '../../core/route/route.ts'
import type { RouteRow } from '../api/replies.ts'
import { OwnStep } from '../entry/own-step.tsx'
import { Triangle } from '../parts/problem.tsx'
import { Clauses, Name, Unknown } from '../parts/words.tsx'
import { facts } from '../state/facts-here.ts'
import { sameRoute, takeWay } from '../state/goals.ts'
import { nameOf } from '../state/names.ts'
import { otherWays, standing } from '../state/reckoner.ts'
import { routesTo, unbeatenTo } from '../state/route-lists.ts'
import { keyOfRoute, keyOfSteps } from '../state/routes-of.ts'
import { plan } from '../state/store.ts'
import { goalLookedAt, lookAtGoal } from '../state/view.ts'
import { waysShown } from '../state/ways.ts'
import { Choosing } from './choosing.tsx'
import { type Column, compareRows } from './compare.ts'
import { MakeOrBuy } from './make-or-buy.tsx'
import { NoWay } from './no-way.tsx'
import { Question } from './question.tsx'
import { differing, gentler, hazardBrief, hazardText, madeOtherwise } from './way-answer.ts'
import { WayEnd } from './way-end.tsx'
import { WayLabel } from './way-label.tsx'
import { WayLaw } from './way-law.tsx'
import { wayClauses, wayText } from './way-words.ts'

/** So many ways stand side by side; more are rows. */
const mostColumns = 4

/** Question 3: routes side by side, and what they are ranked by. */
export function Way() {
  const goal = goalLookedAt.value
  const clauses = goal === null ? [] : wayClauses(goal.target)
  return (
    <Question
      no={3}
      ask="Which way?"
      empty={clauses.length === 0}
      answer={clauses.length === 0 ? 'No goal chosen' : <Clauses of={clauses} />}
    >
      {() => <WayBody />}
    </Question>
  )
}

function WayBody() {
  const goal = goalLookedAt.value
  if (goal === null) return <p>Choose a goal in question 2; the ways to it are then compared here.</p>
  const { goals } = plan.value
  const { answer, waiting, problems } = routesTo(goal.target)
  const ways = waysShown(goal.target)
  const gentlest = waiting ? null : (answer?.gentlest ?? null)
  return (
    <>
      {goals.length > 1 && (
        <fieldset class="line">
          <legend>Ways to</legend>
          <div>
            {goals.map(one => (
              <label class="dot-choice" key={one.target}>
                <input type="radio" name="goal-looked-at" checked={one.target === goal.target} onChange={() => lookAtGoal(one.target)} />
                <Name text={nameOf(one.target)} />
              </label>
            ))}
          </div>
        </fieldset>
      )}
      {problems.length > 0 && <NoWay target={goal.target} problems={problems} />}
      <WayLaw ways={ways} chosen={goal.route} />
      {gentlest !== null && (
        <p>
          <b>The gentlest</b> within ten points of yield goes by{' '}
          {wayText(
            differing(
              gentlest.steps,
              ways.map(way => way.row.steps),
            ),
          )}
          : {hazardText(gentlest.hazard)}; {percentText(gentlest.overallYieldOnStart)} on start
          {gentlest.yieldPointsLost > 0 ? `, ${gentlest.yieldPointsLost.toFixed(1)} points less than the first` : ''}.
        </p>
      )}
      {ways.length > 0 && <Compare target={goal.target} />}
      {ways.length > 0 && !waiting && !ways.some(way => sameRoute(way.route, goal.route)) && (
        <p>
          <b>The chosen way is none of these</b>: it does not keep to what is asked for below. The plan still goes by it; choose one of
          these to leave it.
        </p>
      )}
      {answer !== null && answer.routes.length === 0 && (
        <p>
          <b>No way to {nameOf(goal.target)}</b> keeps to what is avoided and owned below. The plan still goes the way that was chosen
          before.
        </p>
      )}
      <WayEnd target={goal.target} />
      <OwnStep />
      <MakeOrBuy target={goal.target} />
      <Choosing />
    </>
  )
}

/** Ways as columns, the chosen one first; what does not fit stands below as rows. */
function Compare({ target }: { readonly target: string }) {
  const goal = plan.value.goals.find(one => one.target === target)
  if (goal === undefined) return null
  const { evaluation, fresh } = standing.value
  const ways = waysShown(target)
  const unbeaten = unbeatenKeys(target)
  const own = keyOfRoute(goal.route)
  // Columns keep their place whichever is chosen, so that a press moves nothing.
  const gentlestKey = keyOfSteps([...ways].sort((a, b) => gentler(a.row.hazard, b.row.hazard))[0]?.row.steps ?? [])
  const urgent = ways.filter(way => keyOfRoute(way.route) === own || keyOfRoute(way.route) === gentlestKey)
  const rest = ways.filter(way => !urgent.includes(way))
  const inColumns = new Set([...urgent, ...rest].slice(0, mostColumns))
  const shown = ways.filter(way => inColumns.has(way))
  const more = ways.filter(way => !inColumns.has(way))
  const columns: readonly Column[] = shown.map(({ row, route }) => ({
    key: keyOfRoute(route),
    row,
    evaluation: sameRoute(route, goal.route) ? evaluation : (otherWays.value.get(`${target} ${keyOfRoute(route)}`) ?? null),
  }))
  const rows = compareRows(facts.value.library, columns, target, unbeaten)
  const allSteps = ways.map(way => way.row.steps)
  const shownSteps = shown.map(way => way.row.steps)
  return (
    <>
      {columns.length > 3 && (
        <p class="s soft slide">{capital(counted(columns.length, 'way'))} side by side: slide the table to the left to see the last.</p>
      )}
      <section class="scroll" tabIndex={columns.length > 3 ? 0 : -1} aria-label={`Ways to ${nameOf(target)} compared`}>
        <table class="t cmp" data-stale={fresh ? undefined : ''}>
          <thead>
            <tr>
              <th>
                <span class="unseen">axis</span>
              </th>
              {shown.map(({ row, route }) => {
                const chosen = sameRoute(route, goal.route)
                return (
                  <th class={chosen ? 'on' : ''} scope="col" key={keyOfRoute(route)}>
                    <label>
                      <input type="radio" name={`way-to-${target}`} checked={chosen} onChange={() => takeWay(route)} />
                      <WayLabel steps={differing(row.steps, shownSteps)} />
                    </label>
                  </th>
                )
              })}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ label, cells }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                {cells.map((cell, at) => (
                  <td class={cell.best ? 'best' : ''} key={shown[at]?.row.steps.join(' ')}>
                    {cell.flagged && <Triangle label="to be watched" />}
                    {cell.unknown ? <Unknown>{cell.text}</Unknown> : cell.text}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="s soft">
        Heavy: best of its row. Yield on start counts what is charged in excess as lost; that of the longest chain counts each step on its
        limiting reactant. Scale-up: our batch over the largest published, flagged above 3 ×. +: at least.
      </p>
      {more.length > 0 && (
        <table class="t further">
          <thead>
            <tr>
              <th>Further ways</th>
              <th class="n">on start</th>
              <th class="n">steps</th>
              <th class="n">hazard</th>
            </tr>
          </thead>
          <tbody>
            {more.map(({ row, route }) => (
              <tr class="alt" key={keyOfRoute(route)}>
                <th scope="row" class="plain">
                  <label class="dot-choice">
                    <input type="radio" name={`way-to-${target}`} checked={false} onChange={() => takeWay(route)} />
                    <span>
                      <WayLabel steps={differing(row.steps, allSteps)} />
                      {unbeaten.has(keyOfRoute(route)) && <span class="s block">unbeaten</span>}
                      <Otherwise row={row} chosen={goal.route} />
                    </span>
                  </label>
                </th>
                <td class="n">{percentText(row.overallYieldOnStart)}</td>
                <td class="n">{row.steps.length}</td>
                <td class="n">{hazardBrief(row.hazard)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  )
}

/** Ways that no other beats on the axes that are compared at once. */
function unbeatenKeys(target: string): ReadonlySet<string> {
  return new Set((unbeatenTo(target).answer?.routes ?? []).map(row => keyOfSteps(row.steps)))
}

/** "makes diphenylacetylene, buys ...": where a further way parts from the chosen one in more than its reagents. */
function Otherwise({ row, chosen }: { readonly row: RouteRow; readonly chosen: Route }) {
  const { makes, buys } = madeOtherwise(row, { made: chosen.steps.map(step => step.makes) })
  if (makes.length + buys.length === 0) return null
  const told = [
    ...(makes.length > 0 ? [`makes ${listed(makes.map(nameOf))}`] : []),
    ...(buys.length > 0 ? [`buys ${listed(buys.map(nameOf))}`] : []),
  ]
  return (
    <span class="s block">
      <Name text={told.join('; ')} />
    </span>
  )
}
