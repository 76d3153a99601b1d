import type { Structure, Toolkit } from '../chemistry/structure.ts'

/** A SMARTS with what it cannot match without: counts by element symbols, `F,Cl,Br,I` being any of these and `#` a triple bond. */
export interface Pattern {
  readonly smarts: string
  readonly needs?: Readonly<Record<string, number>> | undefined
}

/** Whether a structure shows a pattern. Most are told apart by what they are made of, which costs nothing. */
export function shows(toolkit: Toolkit, structure: Structure, { smarts, needs = {} }: Pattern): boolean {
  for (const [what, least] of Object.entries(needs)) if (countOf(structure, what) < least) return false
  return toolkit.matches(structure, smarts)
}

const countOf = (structure: Structure, what: string): number =>
  what === '#'
    ? structure.smiles.split('#').length - 1
    : what.split(',').reduce((sum, symbol) => sum + (structure.composition.counts.get(symbol) ?? 0), 0)
