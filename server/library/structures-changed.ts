import type { Toolkit } from '../../core/chemistry/structure.ts'
import type { RecordDifference } from '../../core/library/differences.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { formWords } from '../../core/reading/stereo-forms.ts'

/**
 * One warning a record that gives a material another structure than it has, its hands and double bonds among it: every step that takes or gives
 * the material would speak of another compound. The same structure written in another way is none.
 */
export const structuresChanged = (rows: readonly RecordDifference[], toolkit: Toolkit): readonly Problem[] =>
  rows.flatMap((row): Problem[] => {
    const field = row.list === 'materials' ? row.fields.find(({ key }) => key === 'smiles') : undefined
    if (typeof field?.before !== 'string') return []
    const how = typeof field.now === 'string' ? other(field.before, field.now, toolkit) : 'it has none any more'
    if (how === null) return []
    return [
      {
        code: 'structure-changed',
        where: ['materials', row.id, 'smiles'],
        what: `${row.name} (${row.id}) would have another structure than before: ${how}.`,
        why: 'Every step that takes or gives it would speak of another compound, under the name and the CAS number of this one.',
        cure: 'Where it is another compound, give it an id and a name of its own; where the structure before was wrong, mind its name, CAS number and figures too.',
      },
    ]
  })

/** What the new structure is beside the old one, in words; null where they are one, or where one of them cannot be read. */
function other(before: string, now: string, toolkit: Toolkit): string | null {
  const [was, is] = [toolkit.parse(before), toolkit.parse(now)]
  if (!was.ok || !is.ok) return null
  const relation = toolkit.stereoBetween(was.value, is.value)
  if (relation === 'same') return null
  if (relation === null) return was.value.formula === is.value.formula ? 'other bonds between the same atoms' : 'other atoms'
  return `the new one ${formWords[relation].replace('here', 'in the old one')}`
}
