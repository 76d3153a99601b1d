import type { RegulatedHit } from '../../core/hazards/hazard-list.ts'
import { sentence } from '../../core/report/words.ts'
import { Problems } from '../parts/problem.tsx'
import { nameOf } from '../state/names.ts'
import type { Reckoned } from '../state/reckoning.ts'

/** Planning ends with this substance: ink ground, the list in full, and no button that leads round it. */
export const Stop = ({ hits }: { readonly hits: readonly RegulatedHit[] }) => (
  <div class="stop" role="alert">
    <b>Stop</b>
    <div>
      {hits.map(hit => (
        <p key={`${hit.material} ${hit.list}`}>
          <b>Planning ends with {nameOf(hit.material)}.</b> {hit.list}
          {hit.category === '' ? '' : `, ${hit.category}`}. {sentence(hit.reason)} It may not be start, reactant, reagent, target or
          by-product of a plan here.
        </p>
      ))}
      <p class="s">Screened against the bundled lists; the schedules of controlled drugs are not in them.</p>
    </div>
  </div>
)

/** What came back instead of a reckoned plan. */
export const Refusal = ({ of }: { readonly of: Exclude<Reckoned, { ok: 'reckoned' }> }) =>
  of.ok === 'stopped' ? <Stop hits={of.stopped} /> : <Problems of={of.problems} />
