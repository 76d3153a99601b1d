import { equivalentsPerMole } from '../chemistry/normality.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { numberAtStart, numberIn } from '../quantity/number.ts'

/** How strong a solution is, as the library holds it. */
export type StrengthRead = { readonly massFraction: number } | { readonly molPerL: number }

/** What a solution is of, as far as its strength needs it. */
export interface Dissolved {
  readonly name: string
  readonly formula?: string | undefined
  /** g/mol; null where it is not known. */
  readonly molarMass: number | null
}

/** Twelve figures: takes off what binary fractions add. */
const rounded = (value: number): number => Number(value.toPrecision(12))

/** Of a compound in water, mol/L: no salt, acid or base is soluble beyond it (lithium chloride and formic acid come near 30). From memory. */
const strongest = 60

const perVolume = /^(?:%\s*\(?\s*)?\(?\s*w\s*\/\s*v\s*\)?$|^%?\s*\(?m\s*\/\s*v\)?$|^g\s*(?:\/|per)\s*100\s*ml$/i
const perMass = /^%$|^%?\s*\(?\s*(?:w\s*\/\s*w|m\s*\/\s*m|wt\.?|by\s+(?:mass|weight))\s*\)?\s*%?$|^percent(?:\s+by\s+(?:mass|weight))?$/i
const molar = /^(?:m|molar|mol\s*\/\s*(?:l|dm3|dm³)|mol\s*(?:l|dm)\s*(?:\^?-[13]|⁻[¹³]))$/i
const millimolar = /^(?:mm|mmol\s*\/\s*l)$/i
const normal = /^n(?:ormal)?$/i
const gramsPerLitre = /^(?:g\s*\/\s*(?:l|dm3|dm³)|mg\s*\/\s*ml|g\s*l(?:\^?-1|⁻¹))$/i

/**
 * The strength of a solution as people write it: 37 %, 37 % w/w, 3 M, 0.5 N, 2 % w/v, 40 g/L. A comma is a decimal comma.
 *
 * Grams a litre become moles a litre over the molar mass, normality over the equivalents of the acid or base; per cent by volume would need
 * what the volumes shrink by, and is refused.
 *
 * @param of  what is dissolved
 * @returns exactly one Problem where it is no strength: strength-unreadable, strength-out-of-range, strength-needs-mass, strength-needs-equivalents
 */
export function readStrength(text: string, of: Dissolved, where: readonly string[] = []): Checked<StrengthRead> {
  const written = text.trim()
  const start = numberAtStart(written)
  if (start === null) return bad([unreadable(written, where)])
  const number = numberIn(start, where, 'decimal')
  if (!number.ok) return number
  const value = number.value
  const unit = written
    .slice(start.length)
    .replace(/\s*\(?(?:aq\.?|aqueous|in water)\)?\s*$/i, '')
    .trim()
  const outOfRange = (most: string) => bad([outside(written, most, where)])
  if (perMass.test(unit))
    return value > 0 && value <= 100 ? good({ massFraction: rounded(value / 100) }) : outOfRange('above 0 and up to 100 %')
  const inMoles = (molPerL: number): Checked<StrengthRead> =>
    molPerL > 0 && molPerL <= strongest ? good({ molPerL: rounded(molPerL) }) : outOfRange(`above 0 and up to ${strongest} mol/L`)
  if (molar.test(unit)) return inMoles(value)
  if (millimolar.test(unit)) return inMoles(value / 1000)
  if (normal.test(unit)) {
    const equivalents = equivalentsPerMole(of.formula)
    return equivalents === null ? bad([needsEquivalents(written, of.name, where)]) : inMoles(value / equivalents)
  }
  const gPerL = perVolume.test(unit) ? value * 10 : gramsPerLitre.test(unit) ? value : null
  if (gPerL === null) return bad([unreadable(written, where)])
  return of.molarMass === null ? bad([needsMass(written, of.name, where)]) : inMoles(gPerL / of.molarMass)
}

const why = 'Every amount of it is reckoned from its strength.'

const unreadable = (text: string, where: readonly string[]): Problem => ({
  code: 'strength-unreadable',
  where,
  what: `"${text}" is not read as a strength.`,
  why,
  cure: /v\s*\/\s*v/i.test(text)
    ? 'Per cent by volume is not reckoned with: write it by mass (37 %), in mol/L (3 M) or in grams a litre (40 g/L).'
    : 'Write one figure with its unit: 37 % (by mass), 3 M, 0.5 N, 2 % w/v or 40 g/L.',
})

const outside = (text: string, allowed: string, where: readonly string[]): Problem => ({
  code: 'strength-out-of-range',
  where,
  what: `A strength of ${text} cannot be.`,
  why,
  cure: `Give one ${allowed}.`,
})

const needsMass = (text: string, name: string, where: readonly string[]): Problem => ({
  code: 'strength-needs-mass',
  where,
  what: `"${text}" cannot be turned into moles: the molar mass of ${name || 'the compound'} is not known.`,
  why,
  cure: 'Choose the compound that is in it from the list, or give the strength by mass, such as 37 %.',
})

const needsEquivalents = (text: string, name: string, where: readonly string[]): Problem => ({
  code: 'strength-needs-equivalents',
  where,
  what: `How many equivalents a mole of ${name || 'the compound'} has is not known, and "${text}" hangs on it.`,
  why,
  cure: 'Give the strength in mol/L, such as 0.5 M.',
})
