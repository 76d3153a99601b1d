import type { Structure, Toolkit } from '../chemistry/structure.ts'
import type { Problem } from '../problem/problem.ts'
import type { TableRow } from './table-rows.ts'

const why = 'A row that cannot be compared would find nothing, and what it lists would pass for free.'

/**
 * Structures and patterns of a list that somebody loads, held against the toolkit: each that it cannot read is told. The bundled tables are
 * held to the same by their tests.
 *
 * @param name of the file
 */
export function listStructureProblems(name: string, rows: readonly TableRow[], toolkit: Toolkit): readonly Problem[] {
  const methane = toolkit.parse('C', [])
  if (!methane.ok) throw new RangeError('the toolkit cannot read methane')
  return rows.flatMap(row => {
    if (row.kind === 'regulatedEntry')
      return [
        ...(row.smiles === undefined ? [] : structureProblem(toolkit, [name, row.name, 'smiles'], row.smiles)),
        ...(row.estersSmarts === undefined
          ? []
          : patternProblem(toolkit, methane.value, [name, row.name, 'estersSmarts'], row.estersSmarts)),
      ]
    if (row.kind === 'structureAlert')
      return [
        ...patternProblem(toolkit, methane.value, [name, row.id, 'smarts'], row.smarts),
        ...(row.exemptSmiles ?? []).flatMap(smiles => structureProblem(toolkit, [name, row.id, 'exemptSmiles'], smiles)),
      ]
    return []
  })
}

function structureProblem(toolkit: Toolkit, where: readonly string[], smiles: string): readonly Problem[] {
  if (toolkit.parse(smiles, [], 'flat').ok) return []
  return [
    {
      code: 'list-structure',
      where,
      what: `"${smiles}" cannot be read as a structure.`,
      why,
      cure: 'Correct the SMILES, or leave it out and give CAS number and names.',
    },
  ]
}

function patternProblem(toolkit: Toolkit, any: Structure, where: readonly string[], smarts: string): readonly Problem[] {
  try {
    toolkit.matches(any, smarts)
    return []
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return [
      {
        code: 'list-pattern',
        where,
        what: `"${smarts}" cannot be read as a pattern.`,
        why,
        cure: 'Correct the SMARTS; a plain SMILES is a pattern too.',
      },
    ]
  }
}
