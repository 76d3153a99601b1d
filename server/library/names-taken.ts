import type { RecordDifference } from '../../core/library/differences.ts'
import type { Material } from '../../core/library/material.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { nameKey } from '../../core/reading/name-key.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import { eachAgain } from './each-again.ts'

/**
 * One warning a new material that would be called what another is called: from then on every text that names it is asked about. It is held
 * against what is there, and against those that come with it.
 *
 * @param names  as they are before it is added
 */
export function namesTaken(
  rows: readonly RecordDifference[],
  materials: ReadonlyMap<string, Pick<Material, 'name'>>,
  names: NameIndex,
): readonly Problem[] {
  const added = rows.filter(({ list, change }) => list === 'materials' && change === 'added')
  return [
    ...added.flatMap(({ id, name }) => {
      const found = names.lookUp(name)
      if (found.kind !== 'material' || found.material === id) return []
      return [taken(id, name, { id: found.material, name: materials.get(found.material)?.name ?? found.material })]
    }),
    ...eachAgain(added, ({ name }) => nameKey(name).toLowerCase()).map(([first, second]) => taken(second.id, second.name, first)),
  ]
}

const taken = (id: string, name: string, other: { readonly id: string; readonly name: string }): Problem => ({
  code: 'name-taken',
  where: ['materials', id, 'name'],
  what: `${other.name} (${other.id}) is called “${name}” already.`,
  why: 'Every text that says so would have to be asked which of the two is meant.',
  cure: `Give it a name of its own; or, where the two are one, leave it out, or give it the id ${other.id} to stand in its place.`,
})
