import { type Composition, molarMass, parseFormula } from '../chemistry/formula.ts'
import { casCheckDigit } from '../library/checks/cas-digits.ts'
import type { Problem } from '../problem/problem.ts'
import type { Beside } from './bottle.ts'
import type { Found, Meant, NameIndex } from './names.ts'
import { repeatUnitIn } from './repeat-unit.ts'

/** A name that means several materials: which, and why it matters; or a structure of which the library holds other stereo forms alone. */
export function askedAbout(
  text: string,
  { candidates, why, none }: Pick<Extract<Found, { kind: 'ambiguous' }>, 'candidates' | 'why' | 'none'>,
  where: readonly string[],
): Problem {
  if (none)
    return {
      code: 'structure-other-form',
      where,
      what: `The library does not hold "${text}" as it is written, but ${candidates.length > 1 ? 'other stereo forms' : 'another stereo form'} of it: ${candidates.join(', ')}.`,
      why: `${why.slice(0, 1).toUpperCase()}${why.slice(1)}.`,
      cure: `If one of them is meant, write it: ${candidates.join(', ')}; else enter yours as a material of its own.`,
    }
  return {
    code: 'name-ambiguous',
    where,
    what: `"${text}" can mean ${candidates.length > 1 ? candidates.join(', ') : `${candidates.join('')} or something the library does not hold`}.`,
    why: `${why.slice(0, 1).toUpperCase()}${why.slice(1)}.`,
    cure: `${candidates.length > 1 ? `Write which one: ${candidates.join(', ')}` : `If that is meant, write ${candidates.join('')}`}; else add what it is to a library of your own first.`,
  }
}

/**
 * A name that nothing in the library carries, with what was probably meant.
 *
 * @param composition  of a structure or formula that was typed: its mass is known though the library does not hold it
 */
export function unknownName(text: string, index: NameIndex, where: readonly string[], composition: Composition | null = null): Problem {
  const cas = unknownCas(text, where)
  if (cas !== null) return cas
  return {
    code: 'name-unknown',
    where,
    what: `The library holds nothing called "${text}".`,
    why:
      composition === null
        ? 'Its molar mass and hazards are not known here.'
        : `Its molar mass follows from what is typed, ${molarMass(composition).toFixed(2)} g/mol; its hazards are not known here.`,
    cure: cureOf(text, index),
  }
}

/** A name that is known, with something beside it that is not left aside: what it is, nobody but the writer knows. */
export const namesMore = (text: string, { name, words }: Beside, where: readonly string[]): Problem => ({
  code: 'name-unknown',
  where,
  what: `The library holds nothing called "${text}": beside "${name}" it says "${words}".`,
  why: 'What stands beside a name may be another material, or change how much of it goes in.',
  cure: 'Write how much goes in as one amount of each material, a line each, and take out the other words.',
})

function cureOf(text: string, index: NameIndex): string {
  const add = 'Correct the name, or add the material to a library of your own first.'
  if (repeatUnitIn(text) !== null)
    return 'Add the polymer to a library of your own first, by its repeat unit without the n: as a SMILES with an * at both open ends, such as *CCO*.'
  const glued = gluedIn(text, index)
  if (glued !== null) return glued
  // Formulas one letter apart are different substances: nothing is proposed for them.
  return `${nearName(parseFormula(text).ok ? null : index.meant(text))}${add}`
}

/** A strength or a number that is joined to a name the library knows, or stands beside it for nothing. */
function gluedIn(text: string, index: NameIndex): string | null {
  const isKnown = (name: string): boolean => index.lookUp(name).kind !== 'unknown'
  const apart = /^(\d+(?:[.,]\d+)*[.,]?)\s+(\p{L}.*)$/u.exec(text.trim())
  if (apart !== null && isKnown(`${apart[1]}-${apart[2]}`)) return `Write "${apart[1]}-${apart[2]}".`
  const [, behind, last] = /^(.*\p{L})\s+(\d+(?:[.,]\d+)*)$/u.exec(text.trim()) ?? []
  const stray = apart !== null && isKnown(apart[2]!) ? apart[1]! : behind !== undefined && isKnown(behind) ? last! : null
  if (stray !== null)
    return `"${stray}" is neither an amount, nor a coefficient, nor a part of a name that is known: correct it, or take it out.`
  const [, value, unit = '', name] = /^(\d+(?:[.,]\d+)?)\s*([MN%](?![a-z])|mol\/L)?\s*-?\s*(\p{L}.*)$/u.exec(text.trim()) ?? []
  if (value === undefined || name === undefined || !isKnown(name)) return null
  if (unit === '') return `Set the number apart: write "${value} ${name}". If it belongs to the name, correct the name.`
  const strength = `${value} ${unit}`
  return `Set the strength apart, and give one that the library holds: "${name}" is known, "${strength} ${name}" is not. In the equation leave the strength out; or add the solution to a library of your own first.`
}

const casLike = /^\d{2,7}-\d{2}-\d$/

/** A CAS number is exact: none that is near to it is the same material. */
function unknownCas(text: string, where: readonly string[]): Problem | null {
  const cas = text.trim()
  if (!casLike.test(cas)) return null
  const check = casCheckDigit(cas)
  const isRight = cas.endsWith(`-${check}`)
  return {
    code: 'name-unknown',
    where,
    what: isRight
      ? `No material of the library has the CAS number ${cas}.`
      : `"${cas}" is no CAS number: with these digits before it the last one would be ${check}.`,
    why: isRight
      ? 'Its last digit is right, so that it is probably a material that the library does not hold.'
      : 'The last digit of a CAS number checks the others: one of them is mistyped.',
    cure: isRight
      ? 'Give its name, or add the material to a library of your own first.'
      : 'Compare it with the bottle or its data sheet, or give the name.',
  }
}

/** Another compound is never proposed as a correction: only that it is another is said. */
function nearName(meant: Meant | null): string {
  if (meant === null) return ''
  if (!meant.another) return `Did you mean "${meant.name}"? `
  return `"${meant.name}", which the library holds, is another compound${meant.elsewhere ? ': its groups stand elsewhere' : ''}. `
}
