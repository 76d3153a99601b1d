import type { Problem } from '../problem/problem.ts'
import type { EquationRead } from './equation-line.ts'
import type { NameIndex } from './names.ts'
import { otherBasis } from './outcome-asked.ts'
import type { OutcomeRead } from './outcome-line.ts'

/**
 * A percentage told to be on another reactant than the one that gives out first; null where it is that one, or a mass is there to count from.
 * "75 % from acetone" is on acetone only where acetone reacts: else it crystallised from it.
 */
export function basisAsked(outcome: OutcomeRead, equation: EquationRead, limiting: string | null, index: NameIndex): Problem | null {
  const { basis, origin, percent, isolatedG } = outcome
  if (percent === null || isolatedG !== null) return null
  const compoundOf = (name: string): string | null => {
    const found = index.lookUp(name)
    if (found.kind === 'material') return index.materials.get(found.material)?.contains?.compound ?? found.material
    return equation.reactants.find(one => one.text === name)?.compound ?? null
  }
  const reacts = (name: string): boolean => equation.reactants.some(one => one.compound !== null && one.compound === compoundOf(name))
  const on = basis ?? (origin !== undefined && reacts(origin) ? origin : undefined)
  if (on === undefined || (limiting !== null && compoundOf(on) === limiting)) return null
  return otherBasis(outcome.text, on, limiting === null ? null : (index.materials.get(limiting)?.name ?? limiting))
}
