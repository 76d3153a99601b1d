import type { Transformation } from '../transformation.ts'
import type { CheckContext, Finding } from './check.ts'

const why = 'An isolation takes a compound out of a feedstock by mass; a reaction turns compounds into compounds by moles.'

/** An isolation has one feedstock on the left and one compound on the right; the equation of a reaction names compounds and polymers only. */
export function isolationShape(transformation: Transformation, { library }: CheckContext): readonly Finding[] {
  const findings: Finding[] = []
  const find = (field: readonly string[], what: string, cure: string) =>
    findings.push({ severity: 'error', code: 'isolation-shape', field, what, why, cure })
  const { kind, reactants, products } = transformation
  if (kind === 'isolation') {
    if (reactants.length !== 1) find(['reactants'], `An isolation with ${reactants.length} reactants.`, 'Name the feedstock alone.')
    if (products.length !== 1) find(['products'], `An isolation with ${products.length} products.`, 'Name the compound taken out alone.')
    if (transformation.coProducts !== undefined) find(['coProducts'], 'An isolation with a second product.', 'Make it a second isolation.')
  } else
    for (const [key, entries] of [
      ['reactants', reactants],
      ['products', products],
    ] as const)
      for (const [index, { compound }] of entries.entries()) {
        const material = library.materials.get(compound)
        if (material !== undefined && material.kind !== 'compound' && material.kind !== 'polymer')
          find(
            [key, String(index)],
            `"${compound}" is a ${material.kind}.`,
            'Name the compound that reacts; how it is bought stands in the charge.',
          )
      }
  return findings
}
