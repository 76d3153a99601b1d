import { type Library, materialOf } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import { outcomeAsked } from './outcome-asked.ts'
import type { OutcomeRead, Range } from './outcome-line.ts'

/** An outcome in moles or as a volume, with what that weighs; asked about where the product does not tell. */
export function weighed(
  outcome: OutcomeRead,
  main: string | null,
  library: Library,
  notes: string[],
): { readonly outcome: OutcomeRead | null; readonly problem: Problem | null } {
  const { text, amountMol, volumeMl } = outcome
  const given = amountMol ?? volumeMl
  if (given === undefined) return { outcome, problem: null }
  const material = main === null ? undefined : materialOf(library, main)
  const called = material?.name ?? 'the product'
  const isLiquid = material?.form === 'liquid'
  const gramsPer =
    amountMol !== undefined ? (main === null ? undefined : library.molarMass.get(main)) : isLiquid ? material.densityGPerMl : undefined
  if (gramsPer === undefined) {
    const why =
      amountMol !== undefined
        ? `the molar mass of ${called} is not known`
        : `a volume is no mass, and ${material === undefined || isLiquid ? `the library holds no density of ${called}` : `${called} is no liquid`}`
    return { outcome: null, problem: outcomeAsked(text, `${why}.`, 'Write what it weighs, such as "isolated 5.2 g", or "yield 74 %".') }
  }
  const inG = ({ low, high }: Range): Range => ({ low: low * gramsPer, high: high * gramsPer })
  const { low, high } = inG(given)
  const isolatedG = (low + high) / 2
  const by = amountMol === undefined ? `${gramsPer} g/mL` : `${gramsPer.toFixed(2)} g/mol`
  notes.push(`"${text}" is counted as ${Number(isolatedG.toPrecision(4))} g of ${called}, ${by}`)
  return { outcome: { ...outcome, isolatedG, isolatedRangeG: low === high ? null : { low, high } }, problem: null }
}
