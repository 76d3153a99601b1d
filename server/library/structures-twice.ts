import type { Structure, Toolkit } from '../../core/chemistry/structure.ts'
import type { RecordDifference } from '../../core/library/differences.ts'
import type { Material } from '../../core/library/material.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import { eachAgain } from './each-again.ts'

/**
 * One warning a compound, new or drawn anew, of the very structure that another has: one that is there, or one that comes with it.
 *
 * @param records  those that are taken over
 * @param names    as they are before
 */
export function structuresTwice(
  rows: readonly RecordDifference[],
  records: readonly Material[],
  names: NameIndex,
  toolkit: Toolkit,
): readonly Problem[] {
  const redrawn = ({ change, fields }: RecordDifference): boolean => change === 'added' || fields.some(({ key }) => key === 'smiles')
  const added = new Set(rows.filter(row => row.list === 'materials' && redrawn(row)).map(({ id }) => id))
  const fresh = records.flatMap((material): readonly Fresh[] => {
    if (!added.has(material.id) || material.kind !== 'compound' || material.smiles === undefined) return []
    const read = toolkit.parse(material.smiles)
    return read.ok ? [{ material, structure: read.value }] : []
  })
  const held = fresh.flatMap(({ material, structure }) => {
    const other = [...names.ofStructure(structure), ...names.writtenOtherwise(structure)]
      .flatMap(id => names.materials.get(id) ?? [])
      .find(one => one.id !== material.id)
    return other === undefined ? [] : [twice(material, other, 'is there already')]
  })
  // Canonising is the dear part: nothing is canonised whose formula comes once.
  const several = new Set(eachAgain(fresh, one => one.structure.formula).map(([first]) => first.structure.formula))
  const keyOf = ({ structure }: Fresh) => (several.has(structure.formula) ? structure.identityKey : null)
  return [...held, ...eachAgain(fresh, keyOf).map(([first, again]) => twice(again.material, first.material, 'comes with it'))]
}

interface Fresh {
  readonly material: Material
  readonly structure: Structure
}

const twice = (material: Material, other: Material, where: string): Problem => ({
  code: 'structure-twice',
  where: ['materials', material.id, 'smiles'],
  what: `${material.name} (${material.id}) has the structure of ${other.name} (${other.id}), which ${where}.`,
  why: 'As two compounds, what is made of the one is not found by a step that takes the other.',
  cure: `Where they are one, keep one of them and give it the other's name as a synonym; where they are not, correct the structure of ${material.id} or of ${other.id}.`,
})
