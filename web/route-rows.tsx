import type { ComponentChildren } from 'preact'
import type { HazardCounts } from '../core/hazards/hazard-list.ts'
import type { GoalResult } from '../core/plan/evaluation.ts'
import { durationText, massText, numberText } from '../core/quantity/print.ts'
import type { Route } from '../core/route/route.ts'
import { mapName } from './map/map-name.ts'
import { StaircaseAxis, YieldStaircase } from './map/staircase.tsx'
import { Name, Unknown } from './parts/words.tsx'
import { differing, hazardBrief } from './sheet/way-answer.ts'
import { WayLabel } from './sheet/way-label.tsx'
import { facts } from './state/facts-here.ts'
import { takeWay } from './state/goals.ts'
import { nameOf } from './state/names.ts'
import { stairWidth } from './state/pane.ts'
import { otherWays, standing } from './state/reckoner.ts'
import { keyOfRoute } from './state/routes-of.ts'
import { plan } from './state/store.ts'
import { goalLookedAt } from './state/view.ts'
import { waysTo } from './state/ways.ts'

/** Grey rows under the chosen ones; the rest stands in question 3. */
const mostOthers = 4

/** Routes as rows with the yield staircase: the goals of the plan in ink, other ways to the goal that is looked at in grey. */
export function RouteRows() {
  const { evaluation, fresh } = standing.value
  if (evaluation === null) return null
  const looked = goalLookedAt.value
  const ways = looked === null ? [] : waysTo(looked.target)
  const others = ways.filter(way => looked !== null && keyOfRoute(way.route) !== keyOfRoute(looked.route)).slice(0, mostOthers)
  const startG = evaluation.start.massG
  const chosenSteps = looked === null ? [] : looked.route.steps.map(step => step.transformation)
  return (
    <section class="routes" aria-label="Routes" data-stale={fresh ? undefined : ''}>
      <div class="row ruled">
        <span>What survives of {massText(startG)} at typical yields</span>
        <StaircaseAxis width={stairWidth.value} />
        <span class="n">P10 / median / P90, g</span>
        <span class="n">steps</span>
        <span class="n">elapsed</span>
        <span class="n">hazard</span>
      </div>
      {plan.value.goals.map(goal => {
        const result = evaluation.goals.find(one => one.target === goal.target)
        const hazard = hazardOf(goal.route)
        return result === undefined ? null : (
          <Row key={goal.target} route={goal.route} result={result} hazard={hazard}>
            <b>
              <Name text={mapName(nameOf(goal.target))} />
            </b>
            <span class="s soft block">
              step{result.steps.length > 1 ? 's' : ''} {result.steps.join(', ')}
            </span>
          </Row>
        )
      })}
      {others.map(({ row, route }) => {
        const result = otherWays.value.get(`${route.target} ${keyOfRoute(route)}`)?.goals.find(one => one.target === route.target)
        if (result === undefined) return null
        return (
          <Row key={keyOfRoute(route)} route={route} result={result} hazard={row.hazard} grey>
            <button type="button" class="row-choice" onClick={() => takeWay(route)}>
              <b>
                <Name text={mapName(nameOf(route.target))} />
              </b>
              <span class="s alt block">
                not chosen; <WayLabel steps={differing(row.steps, [chosenSteps])} />
              </span>
            </button>
          </Row>
        )
      })}
    </section>
  )
}

interface RowProps {
  readonly route: Route
  readonly result: GoalResult
  readonly hazard: HazardCounts | null
  readonly grey?: boolean
  readonly children: ComponentChildren
}

function Row({ route, result, hazard, grey = false, children }: RowProps) {
  const hours = elapsedOf(route)
  const figures = (massG: number): string => numberText(massG, 3, result.p90G >= 10 ? 1 : 2)
  return (
    <div class={`row ${grey ? 'alt' : ''}`}>
      <div class="who">{children}</div>
      <YieldStaircase
        stairs={result.stairs.map(stair => ({ ...stair, name: mapName(nameOf(stair.compound)) }))}
        chosen={!grey}
        width={stairWidth.value}
      />
      <div class="n" data-label="P10 / median / P90">
        {figures(result.p10G)} / <b>{figures(result.medianG)}</b> / {figures(result.p90G)}
      </div>
      <div class="n" data-label="steps">
        {route.steps.length}
      </div>
      <div class="n" data-label="elapsed">
        {hours === null ? <Unknown /> : durationText(hours)}
      </div>
      <div class="n hazard" data-label="hazard">
        {hazard === null ? 'not compared' : hazardBrief(hazard)}
      </div>
    </div>
  )
}

/** Hazards of ways that the search has listed, by the way: a chosen one keeps its own where it is no longer asked for. */
const hazardsSeen = new Map<string, HazardCounts>()

/** Null where the search has not listed this way: it is then not known how it compares, which is no word about its hazards. */
function hazardOf(route: Route): HazardCounts | null {
  for (const way of waysTo(route.target)) hazardsSeen.set(keyOfRoute(way.route), way.row.hazard)
  return hazardsSeen.get(keyOfRoute(route)) ?? null
}

/** Elapsed hours of all steps of a route, one after the other. */
function elapsedOf(route: Route): number | null {
  const { library } = facts.value
  let sum = 0
  for (const step of route.steps) {
    const transformation = library.transformations.get(step.transformation)
    if (transformation === undefined) return null
    sum += transformation.elapsedHours
  }
  return sum
}
