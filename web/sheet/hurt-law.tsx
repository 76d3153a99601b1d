import type { RegulatedHit } from '../../core/hazards/hazard-list.ts'
import { listsHold } from '../../core/report/cautions.ts'
import { capital, listed, sentence } from '../../core/report/words.ts'
import { Name } from '../parts/words.tsx'
import { nameOf } from '../state/names.ts'

const actionWord = {
  stop: 'Stop',
  licence: 'Licence or declaration needed',
  reporting: 'Suspicious transactions are reported',
  note: 'Named in a list',
} as const

export function Regulated({ hits, notScreened }: { readonly hits: readonly RegulatedHit[]; readonly notScreened: readonly string[] }) {
  return (
    <div>
      <h3>Regulated</h3>
      {hits.length > 0 && (
        <ul>
          {hits.map(hit => (
            <li class="law" key={`${hit.material} ${hit.list} ${hit.category}`}>
              <div>
                <b>
                  <Name text={capital(nameOf(hit.material))} />.
                </b>{' '}
                {actionWord[hit.action]}: {hit.list}
                {hit.category === '' ? '' : `, ${hit.category}`}. {sentence(hit.reason)}{' '}
                {hit.barred && <b>A private person may not have it.</b>} <span class="s soft">{sentence(hit.legal)}</span>
              </div>
            </li>
          ))}
        </ul>
      )}
      <p class="s soft">
        {hits.length === 0 ? 'No row of the bundled lists names anything here. ' : ''}
        {listsHold}
        {notScreened.length > 0 && ` Not screened, having neither CAS number nor structure: ${listed(notScreened.map(nameOf))}.`}
      </p>
    </div>
  )
}
