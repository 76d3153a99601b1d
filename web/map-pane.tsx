import { computed } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Drawing } from '../core/chemistry/drawing.ts'
import { listed } from '../core/report/words.ts'
import { layoutScheme } from './map/scheme/layout.ts'
import { SchemeSvg } from './map/scheme/scheme-svg.tsx'
import type { Keep } from './map/scheme/types.ts'
import { compoundOfCell, schemeOfPlan } from './map/scheme-of-plan.ts'
import { NetworkPane } from './network-pane.tsx'
import { figureOf } from './parts/figure.tsx'
import { RouteRows } from './route-rows.tsx'
import { Refusal } from './sheet/refusal.tsx'
import { StepUnknown } from './sheet/step-unknown.tsx'
import { factsAsked, factsTrouble } from './state/facts-asked.ts'
import { facts } from './state/facts-here.ts'
import { makeOrBuy, takeMaker } from './state/goals.ts'
import { nameOf } from './state/names.ts'
import { narrow, paneWidth, phoneBelow } from './state/pane.ts'
import { standing } from './state/reckoner.ts'
import { plan } from './state/store.ts'
import { drawing, goTo, lookAtGoal, turnFigure } from './state/view.ts'
import { waysTo } from './state/ways.ts'

/** At full pitch the scheme wants so much, px; more only pulls it apart. */
const fullPitch = 860

/** Choices of the last drawing: what stays, stays where it is. */
let keep: Keep | undefined

/** What the scheme is drawn from: the figures that stand, with the plan they are of. */
const scheme = computed(() => {
  const { library, depictions, makeable, beneath, kept } = facts.value
  const drawn = plan.value
  if (
    paneWidth.value === 0 ||
    drawn.goals.length === 0 ||
    !drawn.goals.every(goal => goal.route.steps.every(step => library.transformations.has(step.transformation)))
  )
    return null
  const { evaluation, plan: reckoned } = standing.value
  const sameRoutes = reckoned !== null && routesText(reckoned) === routesText(drawn)
  const input = schemeOfPlan({
    library,
    depictions,
    plan: drawn,
    evaluation: sameRoutes ? evaluation : null,
    otherMakers: otherMakers.value,
    makeable,
    ...(kept === null ? { beneath: beneath.yields } : {}),
    pane: Math.min(paneWidth.value, fullPitch),
    form: narrow.value ? 'upright' : 'wide',
    ...(narrow.value ? { touch: 44 } : {}),
    ...(keep === undefined ? {} : { keep }),
  })
  if (input === null) return null
  const out = layoutScheme(input)
  keep = out.keep
  return { input, out }
})

const routesText = (of: typeof plan.value): string =>
  of.goals.map(goal => goal.route.steps.map(step => step.transformation).join(' ')).join('|')

/** Other transformations to a compound that some found way goes by. */
const otherMakers = computed<ReadonlyMap<string, readonly string[]>>(() => {
  const makers = new Map<string, Set<string>>()
  for (const goal of plan.value.goals)
    for (const { route } of waysTo(goal.target))
      for (const step of route.steps) makers.set(step.makes, (makers.get(step.makes) ?? new Set()).add(step.transformation))
  return new Map([...makers].map(([compound, ids]) => [compound, [...ids]]))
})

/** The map: the scheme with the routes as rows, or the network downstream while one looks at what it can become. */
export function MapPane() {
  const pane = useRef<HTMLElement>(null)
  useEffect(() => {
    const node = pane.current
    if (node === null) return
    const measure = (): void => {
      // Away from the page, behind an entry page, it has neither width nor padding.
      if (node.clientWidth === 0) return
      const style = getComputedStyle(node)
      paneWidth.value = Math.floor(node.clientWidth - Number.parseFloat(style.paddingLeft) - Number.parseFloat(style.paddingRight))
      narrow.value = innerWidth < phoneBelow
    }
    const watch = new ResizeObserver(measure)
    watch.observe(node)
    void document.fonts.ready.then(measure)
    return () => watch.disconnect()
  }, [])
  return (
    <section class="map" aria-label="Map" ref={pane}>
      {drawing.value === 'network' ? <NetworkPane /> : <Scheme />}
    </section>
  )
}

function Scheme() {
  const { refused, fresh } = standing.value
  const { waiting } = factsAsked.value
  const problems = factsTrouble.value
  const drawn = scheme.value
  if (refused?.ok === 'stopped') return <Refusal of={refused} />
  return (
    <>
      {problems.length > 0 && <StepUnknown problems={problems} />}
      {drawn === null ? (
        <p class="soft" role="status">
          {waiting ? 'The scheme comes once its structures are here.' : ''}
        </p>
      ) : (
        <div class="scheme-room" data-stale={fresh ? undefined : ''}>
          <SchemeSvg
            input={drawn.input}
            out={drawn.out}
            drawings={drawings(drawn.input.cells)}
            label={`Scheme: ${nameOf(drawn.input.start)} to ${listed(plan.value.goals.map(goal => nameOf(goal.target)))}`}
            onCompound={cell => lookAtCompound(compoundOfCell(cell))}
            onWay={(product, way) => (isChosen(way) ? lookAtStep(way) : takeMaker(product, way))}
            onOtherWays={product => {
              const goal = plan.value.goals.find(one => one.route.steps.some(step => step.makes === product))
              if (goal !== undefined) lookAtGoal(goal.target)
              goTo(3)
            }}
            onPick={(cell, value) => flip(compoundOfCell(cell), value)}
          />
        </div>
      )}
      {refused?.ok === 'wrong' && <Refusal of={refused} />}
      <RouteRows />
    </>
  )
}

const isChosen = (way: string): boolean => plan.value.goals.some(goal => goal.route.steps.some(step => step.transformation === way))

function lookAtCompound(compound: string): void {
  if (compound === plan.value.start.material) {
    goTo(1)
    return
  }
  const goal = plan.value.goals.find(one => one.target === compound)
  goTo(4)
  if (goal !== undefined) {
    lookAtGoal(goal.target)
    turnFigure(figureOf({ of: 'goal', target: compound }))
    return
  }
  const step = plan.value.goals.flatMap(one => one.route.steps).find(one => one.makes === compound)
  if (step !== undefined) turnFigure(figureOf({ of: 'product', step: step.transformation }))
}

function lookAtStep(transformation: string): void {
  goTo(4)
  turnFigure(figureOf({ of: 'product', step: transformation }))
}

/** The pick of a co-reactant belongs to the goal whose route takes it. */
function flip(compound: string, value: 'buy' | 'make'): void {
  const { library } = facts.value
  const goal = plan.value.goals.find(one =>
    one.route.steps.some(step =>
      library.transformations.get(step.transformation)?.reactants.some(reactant => reactant.compound === compound),
    ),
  )
  if (goal !== undefined) makeOrBuy(compound, value, goal.target)
}

function drawings(cells: Readonly<Record<string, unknown>>): Readonly<Record<string, Drawing>> {
  const { depictions } = facts.value
  const found: Record<string, Drawing> = {}
  for (const cell of Object.keys(cells)) {
    const depiction = depictions.get(compoundOfCell(cell))
    if (depiction?.kind === 'structure') found[cell] = depiction.drawing
  }
  return found
}
