import { isWanted, type WantedMark } from '../../core/library/mark.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { type PlanFigure, planFigures } from '../../core/report/plan-figures.ts'
import { MarkSign } from '../parts/mark.tsx'
import { wantedOptions } from '../parts/wanted-mark.ts'
import { Name } from '../parts/words.tsx'
import { halfDone } from '../state/half-done.ts'
import { facts } from '../state/questions.ts'
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

const Place = ({ place, figures }: { readonly place: string; readonly figures: readonly PlanFigure[] }) => (
  <table class="t rests">
    <caption>{place.charAt(0).toUpperCase() + place.slice(1)}</caption>
    <tbody>
      {figures.map((one, at) => (
        <tr key={`${one.of} ${one.figure} ${at}`}>
          <th scope="row" class="plain">
            <Name text={one.of} />
            <span class="soft">, {one.figure}</span>
            {one.source !== null && <span class="s soft block">{one.source}</span>}
          </th>
          <td class="n">
            <span data-mark={one.mark}>
              {one.value}
              <MarkSign of={one} />
            </span>
          </td>
        </tr>
      ))}
    </tbody>
  </table>
)
