import type { Transformation } from '../transformation.ts'
import type { CheckContext, Finding } from './check.ts'

/** A second product worth isolating is a product of the equation, not the main one; its yield is taken from a transformation that makes it. */
export function coProductsNamed(transformation: Transformation, { library, refusedIds }: CheckContext): readonly Finding[] {
  const findings: Finding[] = []
  const find = (field: readonly string[], what: string, cure: string) =>
    findings.push({
      severity: 'error',
      code: 'co-products-named',
      field: ['coProducts', ...field],
      what,
      why: 'A second product is reckoned from the same run, on the limiting reactant.',
      cure,
    })
  for (const [index, { compound, from }] of (transformation.coProducts ?? []).entries()) {
    const place = String(index)
    if (compound === transformation.mainProduct) find([place], `"${compound}" is the main product.`, 'Leave it out here.')
    else if (!transformation.products.some(entry => entry.compound === compound))
      find([place], `"${compound}" is not a product of the equation.`, 'Add it to the products, or leave it out here.')
    if (from === undefined || refusedIds.has(from)) continue
    const other = library.transformations.get(from)
    if (other === undefined) find([place, 'from'], `There is no transformation "${from}".`, 'Correct the id, or leave "from" out.')
    else if (other.mainProduct !== compound)
      find(
        [place, 'from'],
        `"${from}" makes ${other.mainProduct}, not ${compound}.`,
        `Name a transformation whose main product is ${compound}.`,
      )
  }
  return findings
}
