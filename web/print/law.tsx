import { listsHold } from '../../core/report/cautions.ts'
import { nameIn } from '../../core/report/names.ts'
import { lawText } from '../../core/report/regulated.ts'
import { capital, listed } from '../../core/report/words.ts'
import { Name } from '../parts/words.tsx'
import type { PackProps } from './pack-props.ts'

/** What the law asks for, at the list it concerns: § in the margin of its rows. */
export function Law({ library, evaluation }: PackProps) {
  const { regulated, notScreened } = evaluation.hazards
  const nameOf = nameIn(library)
  return (
    <section>
      <h2>§ Regulated</h2>
      {regulated.map(hit => (
        <p class="law" key={hit.material + hit.list + hit.category}>
          <b>
            <Name text={capital(nameOf(hit.material))} />.
          </b>{' '}
          {lawText(hit)}
        </p>
      ))}
      {regulated.length === 0 && <p>No row of the bundled lists names anything here.</p>}
      <p class="s">
        {listsHold}
        {notScreened.length > 0 && ` Not screened, having neither CAS number nor structure: ${listed(notScreened.map(nameOf))}.`}
      </p>
    </section>
  )
}
