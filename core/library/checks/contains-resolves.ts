import type { Material } from '../material.ts'
import type { CheckContext, Finding } from './check.ts'

const why = 'The strength of a mixture turns its grams and millilitres into moles of that compound.'

/** What a mixture contains, and is made up with, is in the library; the compound is a pure one, at exactly one strength. */
export function containsResolves(material: Material, { library, meantMaterial, refusedIds }: CheckContext): readonly Finding[] {
  const { contains } = material
  if (contains === undefined) return []
  const findings: Finding[] = []
  const find = (key: string, what: string, cure: string) =>
    findings.push({ severity: 'error', code: 'contains-resolves', field: ['contains', key], what, why, cure })

  const inside = library.materials.get(contains.compound)
  if (inside === undefined) {
    if (!refusedIds.has(contains.compound))
      find(
        'compound',
        `There is no material "${contains.compound}".`,
        `${meantMaterial(contains.compound)}Correct the id or add the material.`,
      )
  } else if (inside.kind !== 'compound' && inside.kind !== 'polymer')
    find('compound', `"${contains.compound}" is a ${inside.kind}.`, 'Name the pure compound that counts.')

  if (contains.rest !== undefined && !library.materials.has(contains.rest) && !refusedIds.has(contains.rest))
    find(
      'rest',
      `There is no material "${contains.rest}".`,
      `${meantMaterial(contains.rest)}Correct the id, or leave it out where it is water.`,
    )
  if ((contains.massFraction === undefined) === (contains.molPerL === undefined))
    find(
      'massFraction',
      contains.molPerL === undefined ? 'No strength is given.' : 'Two strengths are given.',
      'Give either "massFraction" (0 to 1) or "molPerL".',
    )
  return findings
}
