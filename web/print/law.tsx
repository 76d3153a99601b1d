import { listsHold } from '../../core/report/cautions.ts'
import { nameIn } from '../../core/report/names.ts'
import { lawByList } from '../../core/report/regulated.ts'
import { capital, listed } from '../../core/report/words.ts'
import { MarkSign } from '../parts/mark.tsx'
import { Name } from '../parts/words.tsx'
import type { PackProps } from './pack-props.ts'

/** What the law asks for, each list named once with all that it concerns; § in the margin of its rows. Other pages refer to it. */
export function Law({ library, evaluation }: PackProps) {
  const { regulated, notScreened } = evaluation.hazards
  const nameOf = nameIn(library)
  return (
    <section>
      <h2>§ Regulated</h2>
      {lawByList(regulated).map(({ list, action, barred, rows, legal, sure }) => (
        <p class="row-p" key={list + action + barred + legal} data-mark={sure.mark}>
          <b>
            {action}: {list}.
          </b>{' '}
          {rows.map(({ materials, category, reason }, at) => (
            <span key={category + reason}>
              {at > 0 && ' '}
              <b>
                <Name text={capital(listed(materials.map(nameOf)))} />
              </b>
              {category === '' ? '' : ` (${category})`}: {reason}
            </span>
          ))}
          {barred && <b> A private person may not have {rows.flatMap(row => row.materials).length > 1 ? 'them' : 'it'}.</b>} {legal}
          <MarkSign of={sure} />
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

/** Where the law is told, for a page whose rows bear its mark. */
export const LawElsewhere = ({ evaluation }: PackProps) => {
  const asks = evaluation.hazards.regulated.some(hit => hit.action !== 'note')
  return asks ? <p>§ A licence, a declaration or a report belongs to it: told under “Regulated” on the page of hazards.</p> : null
}
