import type { Problem } from '../problem/problem.ts'

/**
 * Materials are told by name, with what is typed to mean just that one in braces.
 *
 * @param pure  of a solid whose share is near the whole: the line to write if that is its purity; null for anything else
 */
export function noSuchStrength(
  phrase: string,
  compound: Called,
  held: readonly Called[],
  pure: string | null,
  where: readonly string[],
): Problem {
  const [first] = held
  const other = first === undefined ? null : `write in place of "${phrase}" the one that was charged, such as {${first.id}}, or`
  const own = `add ${pure === null ? 'the solution' : 'that grade'} of ${braced(compound)} as a material of your own.`
  const steps = [pure === null ? null : `if that is its purity, write what is pure of it, "${pure}"; else`, other, own]
  const cure = steps.filter(step => step !== null).join(' ')
  return {
    code: 'strength-not-held',
    where,
    what: `The library holds no "${phrase}"${held.length > 0 ? `, only ${held.map(braced).join('; ')}` : ''}.`,
    why: 'The nearest strength is never taken: the amount would be wrong without a word.',
    cure: `${cure.slice(0, 1).toUpperCase()}${cure.slice(1)}`,
  }
}

/** Something of the library as it is called, and its id. */
type Called = { readonly id: string; readonly name: string }

const braced = ({ id, name }: Called): string => `${name} {${id}}`

export function nameless(text: string, where: readonly string[]): Problem {
  return {
    code: 'name-missing',
    where,
    what: `"${text}" gives an amount and names no material.`,
    why: 'What is charged is bought, weighed and labelled by its name.',
    cure: 'Write what it is of, such as "17.5 g benzoin"; what came out of the step is written as "isolated 17.5 g".',
  }
}

export function otherStrength(text: string, strength: string, bottle: string, where: readonly string[]): Problem {
  return {
    code: 'strength-contradicts-bottle',
    where,
    what: `"${text}" says ${strength}, and the bottle chosen for it is ${bottle}.`,
    why: 'The same volume of another strength is another amount: many times as much, at worst.',
    cure: `Take the strength out of the line and write how much of ${bottle} is charged, or choose another bottle.`,
  }
}

export function contradictory(text: string, where: readonly string[]): Problem {
  return {
    code: 'amounts-contradict',
    where,
    what: `${text}.`,
    why: 'One of the two is a slip, and the charge would be wrong by as much.',
    cure: 'Correct the one that is wrong, or leave only the one that was weighed or measured.',
  }
}

/** The product of the step stands where charges stand: it came out, or it seeds. */
export function productCharged(text: string, name: string): Problem {
  return {
    code: 'product-charged',
    where: ['charges', text],
    what: `"${text}" stands among the charges, and ${name} is what the equation makes.`,
    why: 'What came out is no charge; counted as one it would be bought.',
    cure: `If it came out, write "isolated ${text}"; if it goes in, say what for, such as "seed with ${text}".`,
  }
}

export function nothing(text: string, where: readonly string[]): Problem {
  return {
    code: 'quantity-zero',
    where,
    what: `"${text}" charges nothing.`,
    why: 'A line of the charge has an amount above zero, or none where the source gives none.',
    cure: 'Correct the amount, or leave it out.',
  }
}

export function minusOrMark(text: string, where: readonly string[]): Problem {
  const without = text.replace(/^[-–—−\s]+/, '')
  return {
    code: 'dash-before-amount',
    where,
    what: `"${text}" begins with a dash right before its number: the mark of a list, or a minus.`,
    why: 'Nothing can be charged by less than nothing, and a slip of the pen is not to become an amount.',
    cure: `If it is the mark of a list, write "- ${without}"; else correct the amount.`,
  }
}
