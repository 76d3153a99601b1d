import type { Material } from '../material.ts'
import type { Finding } from './check.ts'

const why = 'Moles are reckoned from the formula of a compound, and for a mixture from what it contains.'

/** A compound or polymer has a formula and contains nothing else; a mixture contains a compound at one strength; a feedstock has neither. */
export function kindFits(material: Material): readonly Finding[] {
  const { kind, formula, contains } = material
  const findings: Finding[] = []
  const find = (field: string, what: string, cure: string) =>
    findings.push({ severity: 'error', code: 'kind-fits', field: [field], what, why, cure })

  const isPure = kind === 'compound' || kind === 'polymer'
  if (isPure && formula === undefined)
    find(
      'formula',
      `A ${kind} without a formula.`,
      `Add the formula${kind === 'polymer' ? ' of the repeat unit' : ''}, or call it a feedstock.`,
    )
  if (isPure && contains !== undefined)
    find('contains', `A ${kind} that contains something else.`, 'Call it a mixture, or remove "contains".')
  if (kind === 'mixture' && contains === undefined)
    find('contains', 'A mixture that does not say what it contains.', 'Add "contains" with the compound and its mass fraction or mol/L.')
  if (kind === 'mixture' && formula !== undefined)
    find('formula', 'A mixture with a formula of its own.', 'Move the formula to the compound it contains.')
  if (kind === 'feedstock' && (formula !== undefined || contains !== undefined))
    find(formula === undefined ? 'contains' : 'formula', 'A feedstock with a formula or a strength.', 'Call it a compound or a mixture.')
  return findings
}
