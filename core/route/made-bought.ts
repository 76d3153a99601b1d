import { type Library, materialOf, transformationOf } from '../library/library.ts'
import type { Transformation } from '../library/transformation.ts'
import { reactantLines } from './reactant-lines.ts'
import type { Route } from './route.ts'
import { byId } from './working-order.ts'

/** Compounds the route makes, the target among them, in working order. */
export const madeBy = (_library: Library, route: Route): readonly string[] => route.steps.map(s => s.makes)

/**
 * Materials the route buys, as charged, each once, in order of id: every line that supplies neither a made compound nor the start, and
 * what solutions of made compounds are made up with. Water and oxygen that no line lists are not bought.
 */
export function boughtBy(library: Library, route: Route): readonly string[] {
  const supplied = new Set([route.start, ...route.steps.map(s => s.makes)])
  const bought = new Set<string>()
  for (const step of route.steps) {
    for (const id of boughtForStep(library, transformationOf(library, step.transformation), supplied, route.start)) bought.add(id)
  }
  return [...bought].sort(byId)
}

function boughtForStep(library: Library, transformation: Transformation, supplied: ReadonlySet<string>, start: string): string[] {
  const bought: string[] = []
  const linesSupplied = new Set<number>()
  for (const reactant of reactantLines(library, transformation)) {
    if (supplied.has(reactant.compound)) {
      for (const line of reactant.lines) {
        linesSupplied.add(line)
        const material = materialOf(library, transformation.charge[line]!.material)
        if (reactant.compound !== start && material.form === 'solution' && material.contains) bought.push(material.contains.rest ?? 'water')
      }
    } else if (reactant.lines.length === 0 && !reactant.free) bought.push(reactant.compound)
  }
  transformation.charge.forEach((line, index) => {
    if (!linesSupplied.has(index)) bought.push(line.material)
  })
  return bought
}
