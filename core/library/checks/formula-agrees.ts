import { type Composition, hill, parseFormula, sameComposition } from '../../chemistry/formula.ts'
import type { Material } from '../material.ts'
import type { CheckContext, Finding } from './check.ts'

const why = 'Molar mass, and every amount with it, follows from the formula.'

/**
 * The formula can be read, and the way the trade writes it and the structure say the same. The structure is looked at only where a
 * toolkit is handed in.
 */
export function formulaAgrees(material: Material, { toolkit }: CheckContext): readonly Finding[] {
  const { formula, displayFormula, smiles } = material
  if (formula === undefined) return []
  const findings: Finding[] = []
  const find = (code: string, field: string, what: string, cure: string) =>
    findings.push({ severity: 'error', code, field: [field], what, why, cure })

  const stated = parseFormula(formula)
  if (!stated.ok) {
    for (const { code, what, cure } of stated.problems) find(code, 'formula', what, cure)
    return findings
  }
  const compare = (field: string, text: string, other: Composition) => {
    if (!sameComposition(stated.value, other))
      find(
        'formula-agrees',
        field,
        `The formula is ${hill(stated.value)}, but ${text} is ${hill(other)}.`,
        'Correct the one that is wrong.',
      )
  }
  if (displayFormula !== undefined) {
    const shown = parseFormula(displayFormula)
    if (shown.ok) compare('displayFormula', `"${displayFormula}"`, shown.value)
    else for (const { code, what, cure } of shown.problems) find(code, 'displayFormula', what, cure)
  }
  if (smiles !== undefined && toolkit !== undefined) {
    const drawn = toolkit.parse(smiles)
    if (drawn.ok) compare('smiles', 'the structure', drawn.value.composition)
    else for (const { code, what, cure } of drawn.problems) find(code, 'smiles', what, cure)
  }
  return findings
}
