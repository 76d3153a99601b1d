import type { RecordDifference } from '../../core/library/differences.ts'
import type { Material } from '../../core/library/material.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { NameIndex } from '../../core/reading/names.ts'

/**
 * One warning a new material that would be called what another is called: from then on every text that names it is asked about.
 *
 * @param names  as they are before it is added
 */
export function namesTaken(
  rows: readonly RecordDifference[],
  materials: ReadonlyMap<string, Pick<Material, 'name'>>,
  names: NameIndex,
): readonly Problem[] {
  return rows.flatMap(({ list, id, name, change }) => {
    if (list !== 'materials' || change !== 'added') return []
    const found = names.lookUp(name)
    if (found.kind !== 'material' || found.material === id) return []
    return [
      {
        code: 'name-taken',
        where: ['materials', id, 'name'],
        what: `${materials.get(found.material)?.name ?? found.material} (${found.material}) is called “${name}” already.`,
        why: 'Every text that says so would have to be asked which of the two is meant.',
        cure: `Give it a name of its own; or, where the two are one, leave it out, or give it the id ${found.material} to stand in its place.`,
      },
    ]
  })
}
