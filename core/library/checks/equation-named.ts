import { didYouMean } from '../../problem/nearest.ts'
import type { Transformation } from '../transformation.ts'
import type { Finding } from './check.ts'

/** The limiting reactant is a reactant, the main product a product, and no compound stands twice on one side. */
export function equationNamed({ reactants, products, limiting, mainProduct }: Transformation): readonly Finding[] {
  const findings: Finding[] = []
  const left = reactants.map(entry => entry.compound)
  const right = products.map(entry => entry.compound)
  const oneOf = (key: string, id: string, list: readonly string[], listName: string) => {
    if (list.includes(id)) return
    findings.push({
      severity: 'error',
      code: 'equation-named',
      field: [key],
      what: `"${id}" is not among the ${listName}.`,
      why: 'Yields are counted from the limiting reactant to the main product by the coefficients of the equation.',
      cure: `${didYouMean(id, list)}Name one of ${list.join(', ')}.`,
    })
  }
  oneOf('limiting', limiting, left, 'reactants')
  oneOf('mainProduct', mainProduct, right, 'products')
  for (const [key, list] of [
    ['reactants', left],
    ['products', right],
  ] as const)
    for (const [index, id] of list.entries())
      if (list.indexOf(id) < index)
        findings.push({
          severity: 'error',
          code: 'equation-named',
          field: [key, String(index)],
          what: `"${id}" stands twice among the ${key}.`,
          why: 'Each compound has one coefficient on each side.',
          cure: 'Add the two coefficients and keep one entry.',
        })
  return findings
}
