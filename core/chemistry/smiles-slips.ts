import type { Problem } from '../problem/problem.ts'

/** Laying a structure out takes the square of its atoms and more: a thousand characters are a second, four thousand a quarter of a minute. */
const longestSmiles = 1000

/** Enough of the text to know it by. */
export const clip = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}...` : text)

/** A problem with a SMILES, but for where it was written. */
export const smilesProblem = (code: string, what: string, cure: string): Omit<Problem, 'where'> => ({
  code,
  what,
  why: 'Formula, drawing, hazards by family and legal screening follow from the structure.',
  cure,
})

/** What is wrong with the text itself, before the library sees it. */
export function slipOf(smiles: string): Omit<Problem, 'where'> | null {
  const text = smiles.trim()
  if (text === '') return smilesProblem('smiles-empty', 'The SMILES is empty.', 'Write one, for example CCO for ethanol.')
  if (text.length > longestSmiles)
    return smilesProblem('smiles-unreadable', `"${clip(text)}" is too long for a SMILES.`, 'Give one structure.')
  const stranger = /[^A-Za-z0-9@+\-[\]()=#$:/\\%.*~]/u.exec(text)?.[0]
  if (stranger !== undefined)
    return smilesProblem(
      'smiles-unreadable',
      `"${clip(text)}" is not a SMILES: "${stranger}" has no place in one.`,
      'Remove it, or give the compound by name.',
    )
  let depth = 0
  let inside = false
  for (const mark of text) {
    if (mark === '[' || mark === ']') {
      if (inside === (mark === '['))
        return smilesProblem('smiles-bracket', `In "${clip(text)}" a square bracket has no partner.`, 'Pair every bracket.')
      inside = mark === '['
    } else if (mark === '(') depth++
    else if (mark === ')' && --depth < 0) break
  }
  if (depth !== 0 || inside) return smilesProblem('smiles-bracket', `In "${clip(text)}" a bracket has no partner.`, 'Pair every bracket.')
  if (/\(\)|^\.|\.$|\.\.|^[(]/.test(text))
    return smilesProblem(
      'smiles-unreadable',
      `"${clip(text)}" is not a SMILES: a branch or a part of it is empty.`,
      'Remove the empty part.',
    )
  if (/\[\d*HH/.test(text))
    return smilesProblem(
      'smiles-unreadable',
      `In "${clip(text)}" a hydrogen is said to hold another.`,
      'Write the molecule of hydrogen as [H][H], with a bracket each.',
    )
  return null
}
