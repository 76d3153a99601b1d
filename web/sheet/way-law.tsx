import { capital, listed } from '../../core/report/words.ts'
import type { Route } from '../../core/route/route.ts'
import type { RouteRow } from '../api/replies.ts'
import { Name } from '../parts/words.tsx'
import { sameRoute, takeWay } from '../state/goals.ts'
import { nameOf } from '../state/names.ts'
import { keyOfRoute, keyOfSteps } from '../state/routes-of.ts'
import { differing } from './way-answer.ts'
import { isBarred } from './way-barred.ts'
import { wayText } from './way-words.ts'

interface WayLawProps {
  readonly ways: readonly { readonly row: RouteRow; readonly route: Route }[]
  readonly chosen: Route
}

/** What the law asks of these ways before one is chosen: first what the buyer cannot have, with the next way that they can; then the chosen way's own. */
export function WayLaw({ ways, chosen }: WayLawProps) {
  const rows = ways.map(way => way.row)
  const barred = rows.filter(isBarred)
  const next = ways.find(way => !isBarred(way.row))
  const materials = [
    ...new Set(barred.flatMap(row => row.flags.flatMap(flag => (flag.kind === 'barred' && flag.material !== null ? [flag.material] : [])))),
  ]
  const all = rows.map(row => row.steps)
  const own = rows.find(row => keyOfSteps(row.steps) === keyOfRoute(chosen))
  const asked = (own?.flags ?? []).filter(flag => flag.kind === 'licence' || flag.kind === 'reporting' || flag.kind === 'barred')
  if (barred.length === 0 && asked.length === 0) return null
  return (
    <ul>
      {barred.length > 0 && (
        <li class="law">
          <div>
            <b>
              The public cannot have <Name text={listed(materials.map(nameOf))} />
            </b>
            : no way by {listed(barred.map(row => wayText(differing(row.steps, all))))}.{' '}
            {next === undefined ? (
              'No way that was found is free of this.'
            ) : (
              <>
                The first way that they can have goes by <b>{wayText(differing(next.row.steps, all))}</b>.{' '}
                {!sameRoute(next.route, chosen) && (
                  <button type="button" class="do s" onClick={() => takeWay(next.route)}>
                    go this way
                  </button>
                )}
              </>
            )}
          </div>
        </li>
      )}
      {asked.map(flag => (
        <li class="law" key={flag.text}>
          <div>The chosen way: {capital(flag.text)}</div>
        </li>
      ))}
    </ul>
  )
}
