import { parseFormula } from '../../core/chemistry/formula.ts'
import { stopsAmong } from '../../core/hazards/regulated.ts'
import { traitsOf } from '../../core/hazards/traits.ts'
import type { Material } from '../../core/library/material.ts'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import { readEquation } from '../../core/reading/equation-line.ts'
import { stopProblems } from '../../core/report/stops.ts'
import type { ReactionShown } from '../library/reaction-list.ts'
import type { Workshop } from '../library/workshop.ts'

/**
 * A reaction of a file with what the lists say of it: one that a stop row meets, in a compound of the library or in a structure that it does
 * not hold, is as good as not read, with the full names of the lists.
 */
export function screenedReaction(workshop: Workshop, shown: ReactionShown): ReactionShown {
  if (shown.read === null) return shown
  const { library, tables, toolkit } = workshop
  const { equation, agents, unknown } = shown.read
  const names = workshop.names()
  const { reactants, products } = readEquation(equation, names, toolkit)
  const over = agents.map(agent => names.lookUp(agent)).map(found => (found.kind === 'material' ? found.material : null))
  const ids = new Set([...[...reactants, ...products].map(term => term.compound), ...over].filter(id => id !== null))
  const known = [...ids].flatMap(id => library.materials.get(id) ?? [])
  const drawn = unknown.flatMap((smiles, at) => asMaterial(smiles, at, workshop))
  const own = traitsOf(libraryOfParts({ title: '' }, drawn, []), tables, toolkit)
  const traits = new Map([
    ...own,
    ...known.flatMap(({ id }) => (workshop.traits().has(id) ? [[id, workshop.traits().get(id)!] as const] : [])),
  ])
  const stops = stopsAmong(traits, [...traits.keys()])
  if (stops.length === 0) return shown
  const problems = stopProblems(libraryOfParts({ title: '' }, [...known, ...drawn], []), stops)
  return { ...shown, read: null, balanced: false, problems: problems.map(one => ({ ...one, cure: stopCure })) }
}

const stopCure = 'It cannot be taken over; leave this reaction out.'

/** A structure that the library does not hold, for the length of a look at the lists. */
function asMaterial(smiles: string, at: number, { toolkit }: Workshop): readonly Material[] {
  const read = toolkit.parse(smiles)
  if (!read.ok || !parseFormula(read.value.formula).ok) return []
  return [{ id: `structure-${at + 1}`, name: smiles, kind: 'compound', formula: read.value.formula, smiles, form: 'solid', sources: [] }]
}
