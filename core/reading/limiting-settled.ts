import type { Problem } from '../problem/problem.ts'
import { type DraftCharge, molesOf } from './draft-charge.ts'
import type { TermRead } from './equation-term.ts'
import type { NameIndex } from './names.ts'

/** Reactants that nobody charges unless a line says so. */
const free = new Set(['water', 'oxygen'])

/**
 * What has to be settled before it can be told which reactant gives out first: reactants that the library does not hold or that are asked
 * about, charge lines that may be one of the reactants, and lines of a reactant whose amount comes to no moles.
 *
 * @returns as typed, in order; empty where the limiting reactant can be told
 */
export function unsettled(reactants: readonly TermRead[], drafts: readonly DraftCharge[], index: NameIndex): readonly string[] {
  const compounds = new Set(reactants.map(term => term.compound))
  const isOpen = reactants.some(({ compound }) => compound !== null && !free.has(compound) && molesOf(compound, drafts) === null)
  const terms = reactants.filter(term => term.compound === null).map(term => term.text)
  const lines = drafts.filter(({ material, compound, amount, amountMol, read: { found, roleHint } }) => {
    // Washes and other work-up never count towards a reactant.
    if (roleHint !== null && roleHint !== 'quench') return false
    if (material !== null) return compound !== null && compounds.has(compound) && amount !== null && amountMol === null
    if (found.kind === 'unknown') return isOpen
    const may = found.kind === 'ambiguous' ? found.candidates : found.kind === 'no-such-strength' ? [found.compound] : []
    return may.some(id => compounds.has(index.materials.get(id)?.contains?.compound ?? id))
  })
  return [...terms, ...lines.map(({ read }) => read.text)]
}

/** Why no limiting reactant is named although some reactants have amounts. */
export const limitingUnsettled = (open: readonly string[]): Problem => ({
  code: 'limiting-unknown',
  where: ['charges'],
  what: `Which reactant gives out first is not told before ${open.map(text => `"${text}"`).join(', ')} ${open.length === 1 ? 'is' : 'are'} settled.`,
  why: 'Equivalents and the theoretical yield are counted on the limiting reactant; what is not yet known may be that one.',
  cure: 'Say which material is meant, or enter it as a new one; of a volume without a density, give the mass or the moles.',
})
