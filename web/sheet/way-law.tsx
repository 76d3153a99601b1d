import { capital, listed } from '../../core/report/words.ts'
import type { RouteRow } from '../api/replies.ts'
import { Name } from '../parts/words.tsx'
import { nameOf } from '../state/names.ts'
import { keyOfSteps } from '../state/routes-of.ts'
import { differing } from './way-answer.ts'
import { wayText } from './way-words.ts'

const isBarred = (row: RouteRow): boolean => row.flags.some(flag => flag.kind === 'barred')

/** What the law asks of these ways, before one is chosen: first what the buyer cannot have, with the next way that they can; then the chosen way's own. */
export function WayLaw({ rows, chosen }: { readonly rows: readonly RouteRow[]; readonly chosen: readonly string[] }) {
  const barred = rows.filter(isBarred)
  const next = rows.find(row => !isBarred(row))
  const materials = [
    ...new Set(barred.flatMap(row => row.flags.flatMap(flag => (flag.kind === 'barred' && flag.material !== null ? [flag.material] : [])))),
  ]
  const all = rows.map(row => row.steps)
  const own = rows.find(row => keyOfSteps(row.steps) === keyOfSteps(chosen))
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
                The first way that they can have goes by <b>{wayText(differing(next.steps, all))}</b>.
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
