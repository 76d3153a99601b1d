import { stopsAmong } from '../../core/hazards/regulated.ts'
import type { PreparationRead } from '../../core/reading/preparation.ts'
import { stopProblems } from '../../core/report/stops.ts'
import type { Workshop } from '../library/workshop.ts'
import { Refusal } from '../refusal.ts'

/**
 * A preparation that names what a list ends planning with, in the equation or in a charge, is not reckoned.
 *
 * @throws Refusal with the full names of the lists
 */
export function refuseListed({ library, traits }: Workshop, { reactants, products, lines }: PreparationRead): void {
  const terms = [...reactants, ...products].map(term => term.compound)
  const named = new Set([...terms, ...lines.map(line => line.material)].filter(id => id !== null))
  const known = traits()
  const stops = stopsAmong(
    known,
    [...named].filter(id => known.has(id)),
  )
  if (stops.length > 0) throw new Refusal('no-answer', stopProblems(library, stops))
}
