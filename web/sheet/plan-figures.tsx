import { isWanted, type WantedMark } from '../../core/library/mark.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { type PlanFigure, planFigures } from '../../core/report/plan-figures.ts'
import { capital } from '../../core/report/words.ts'
import { MarkSign } from '../parts/mark.tsx'
import { wantedOptions } from '../parts/wanted-mark.ts'
import { Name } from '../parts/words.tsx'
import { facts } from '../state/facts-here.ts'
import { halfDone } from '../state/half-done.ts'
import { plan } from '../state/store.ts'

/** Every figure that the plan rests on, kept to what is so sure: at first to what was not seen in a source. */
export function PlanFigures({ evaluation }: { readonly evaluation: Evaluation }) {
  const [asked, setAsked] = halfDone<{ readonly open: boolean; readonly wanted: WantedMark | '' }>('figures of the plan', {
    open: false,
    wanted: 'not seen',
  })
  const figures = planFigures(facts.value.library, plan.value, evaluation)
  const seen = figures.filter(one => one.mark === 'seen').length
  const wanted = asked.wanted
  const shown = wanted === '' ? figures : figures.filter(one => isWanted(wanted, one.mark))
  const places = [...new Set(shown.map(one => one.place))]
  return (
    <details
      class="more-of"
      open={asked.open}
      onToggle={event => {
        if (event.currentTarget.open !== asked.open) setAsked({ ...asked, open: event.currentTarget.open })
      }}
    >
      <summary>
        What the figures rest on: {seen} of {figures.length} seen in a source
      </summary>
      {asked.open && (
        <>
          <label class="line">
            <span>Show</span>
            <select
              class="blank"
              value={wanted}
              onChange={event => setAsked({ ...asked, wanted: event.currentTarget.value as WantedMark | '' })}
            >
              {wantedOptions.map(([value, words]) => (
                <option value={value} key={value}>
                  {words}
                </option>
              ))}
            </select>
          </label>
          <p class="s soft" role="status">
            {shown.length === 0 ? 'No figure of this plan is so sure.' : `${shown.length} of ${figures.length} figures.`}
          </p>
          {places.map(place => (
            <Place place={place} figures={shown.filter(one => one.place === place)} key={place} />
          ))}
        </>
      )}
    </details>
  )
}

/** One row for all figures of a thing that rest on the same. */
function Place({ place, figures }: { readonly place: string; readonly figures: readonly PlanFigure[] }) {
  const rows = new Map<string, PlanFigure[]>()
  for (const one of figures) {
    const key = JSON.stringify([one.of, one.mark, one.source])
    rows.set(key, [...(rows.get(key) ?? []), one])
  }
  return (
    <table class="t rests">
      <caption>{capital(place)}</caption>
      <tbody>
        {[...rows.values()].map((of, at) => (
          <tr key={`${of[0]!.of} ${at}`}>
            <th scope="row" class="plain">
              <Name text={of[0]!.of} />
              {of[0]!.source !== null && <span class="s soft block">{of[0]!.source}</span>}
            </th>
            <td class="n">
              {of.map(one => (
                <span class="block" data-mark={one.mark} key={`${one.figure} ${one.value}`}>
                  <span class="soft s">{one.figure} </span>
                  {one.value}
                  <MarkSign of={one} />
                </span>
              ))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
