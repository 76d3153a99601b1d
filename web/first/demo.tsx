import { numberText } from '../../core/quantity/print.ts'
import type { WayIn } from '../api/replies.ts'
import { mapName } from '../map/map-name.ts'
import { Depicted } from '../parts/depicted.tsx'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { demo, openDemo } from '../state/opening.ts'

/** Ways in to try the product with, each drawn from what is in hand to what is wanted. */
export function Demo() {
  const shown = demo.value
  if (shown === null || shown.waysIn.length === 0) return null
  const bench = (shown.settings.bench ?? '').replace(/\s*\(invented\)/, '')
  return (
    <section aria-label="Try it">
      <h2>Or try it at the {bench}, an invented evening class</h2>
      <ul class="ways-in">
        {shown.waysIn.map(way => (
          <li key={way.title}>
            <button type="button" class="do" onClick={() => void openDemo(shown, way)}>
              {way.title}
            </button>
            <Strip of={way} />
          </li>
        ))}
      </ul>
      <p class="s soft">Its shelf, suppliers, packs and prices are invented; the chemistry is not.</p>
    </section>
  )
}

/** "24 g benzoin, an arrow, lophine": drawn where there is something to draw. The button beside it says the same. */
function Strip({ of }: { readonly of: WayIn }) {
  const goals = of.goals ?? []
  const here = facts.value.library.materials
  if (!here.has(of.start.material) || !goals.every(goal => here.has(goal.target))) return null
  return (
    <div class="from-to">
      <figure>
        <Depicted id={of.start.material} />
        <figcaption>
          {of.start.massG !== null && `${numberText(of.start.massG, 3, 0)}\u00a0g `}
          {mapName(nameOf(of.start.material))}
        </figcaption>
      </figure>
      <svg class="to" viewBox="0 0 44 10" aria-label="to" role="img">
        <path d="M0 5h36" stroke="currentColor" stroke-width="1.3" />
        <path d="M44 5l-9-3.8 2 3.8-2 3.8z" fill="currentColor" />
      </svg>
      {goals.map(goal => (
        <figure key={goal.target}>
          <Depicted id={goal.target} />
          <figcaption>{mapName(nameOf(goal.target))}</figcaption>
        </figure>
      ))}
    </div>
  )
}
