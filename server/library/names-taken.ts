import type { RecordDifference } from '../../core/library/differences.ts'
import type { Material } from '../../core/library/material.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { nameKey } from '../../core/reading/name-key.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import { eachAgain } from './each-again.ts'

/** A name that a material gets: one that it had before is nothing new. */
interface Given {
  readonly id: string
  readonly name: string
  readonly key: 'name' | 'synonyms'
}

/**
 * One warning a name or other name that a material would get and that another is called by: from then on every text that says it is asked
 * about, or means the other. It is held against what is there, and against those that come with it.
 *
 * @param records    those that are taken over
 * @param materials  as they are before
 * @param names      as they are before
 */
export function namesTaken(
  rows: readonly RecordDifference[],
  records: readonly Material[],
  materials: ReadonlyMap<string, Material>,
  names: NameIndex,
): readonly Problem[] {
  const touched = new Set(rows.filter(({ list, change }) => list === 'materials' && !/same|removed/.test(change)).map(({ id }) => id))
  const given = records.filter(({ id }) => touched.has(id)).flatMap(record => namesGiven(record, materials.get(record.id)))
  return [
    ...given.flatMap(one => {
      const found = names.lookUp(one.name)
      if (found.kind !== 'material' || found.material === one.id) return []
      return [taken(one, { id: found.material, name: materials.get(found.material)?.name ?? found.material })]
    }),
    ...eachAgain(given, ({ name }) => nameKey(name).toLowerCase()).flatMap(([first, again]) =>
      first.id === again.id ? [] : [taken(again, first)],
    ),
  ]
}

function namesGiven({ id, name, synonyms = [] }: Material, before: Material | undefined): readonly Given[] {
  const had = new Set([before?.name, ...(before?.synonyms ?? [])].flatMap(one => (one === undefined ? [] : [nameKey(one)])))
  const all: readonly Given[] = [{ id, name, key: 'name' }, ...synonyms.map(synonym => ({ id, name: synonym, key: 'synonyms' as const }))]
  return all.filter(one => !had.has(nameKey(one.name)))
}

const taken = ({ id, name, key }: Given, other: { readonly id: string; readonly name: string }): Problem => ({
  code: 'name-taken',
  where: ['materials', id, key],
  what: `${other.name} (${other.id}) is called “${name}” already.`,
  why: 'Every text that says so would have to be asked which of the two is meant.',
  cure:
    key === 'name'
      ? `Give it a name of its own; or, where the two are one, leave it out, or give it the id ${other.id} to stand in its place.`
      : `Take “${name}” out of the other names of ${id}; or, where the two are one, leave it out, or give it the id ${other.id} to stand in its place.`,
})
