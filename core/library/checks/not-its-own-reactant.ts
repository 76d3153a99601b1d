import type { Transformation } from '../transformation.ts'
import type { Finding } from './check.ts'

/** What a step makes to keep is nothing that it consumes: else no yield could be told, and a route would run in a circle. */
export function notItsOwnReactant({ mainProduct, reactants, coProducts = [] }: Transformation): readonly Finding[] {
  const find = (compound: string, field: readonly string[]): Finding => ({
    severity: 'error',
    code: 'own-reactant',
    field,
    what: `"${compound}" is a reactant of this step and what it makes.`,
    why: 'A yield counts what is new; a step that gives back what it takes leads nowhere, and a route through it would run in a circle.',
    cure: 'Take it off both sides of the equation; what is only needed to set it going is charged as a catalyst. Or name another main product.',
  })
  const consumed = new Set(reactants.map(one => one.compound))
  return [
    ...(consumed.has(mainProduct) ? [find(mainProduct, ['mainProduct'])] : []),
    ...coProducts.flatMap(({ compound }, at) => (consumed.has(compound) ? [find(compound, ['coProducts', String(at), 'compound'])] : [])),
  ]
}
