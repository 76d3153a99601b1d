import type { Item, Run } from './types.ts'

/**
 * Text with formulas in braces to runs, digits after an element, a bracket or a brace set as subscripts.
 *
 * Only what stands in braces is read as a formula, so that "24 g" and "Step 2" keep their digits; a `*...*` is italic. A bare n is a
 * subscript only after a square bracket: "Sn" and "Zn" are elements.
 *
 * @example braceText('{Cu(OAc)2} 1 %') // Cu(OAc), 2 as subscript, " 1 %"
 * @example braceText('*o*-phenylenediamine')
 */
export function braceText(text: string, style: Omit<Run, 't' | 'sub'> = {}): Item {
  const runs: Run[] = []
  for (const part of text.split(/(\{[^}]*\}|\*[^*]+\*)/)) {
    if (part.startsWith('{')) runs.push(...formulaRuns(part.slice(1, -1), style))
    else if (part.length > 2 && part.startsWith('*')) runs.push({ ...style, t: part.slice(1, -1), i: true })
    else if (part !== '') runs.push({ ...style, t: part })
  }
  return runs
}

/** A whole formula to runs: formulaRuns('CuSO4·5H2O'), formulaRuns('[NH(CH2)6NHCO(CH2)8CO]n'). */
export function formulaRuns(formula: string, style: Omit<Run, 't' | 'sub'> = {}): Item {
  const runs: Run[] = []
  let last = 0
  for (const match of formula.matchAll(/(?<=[A-Za-z)\]])\d+|(?<=\])n\b/g)) {
    if (match.index > last) runs.push({ ...style, t: formula.slice(last, match.index) })
    runs.push({ ...style, t: match[0], sub: true })
    last = match.index + match[0].length
  }
  if (last < formula.length) runs.push({ ...style, t: formula.slice(last) })
  return runs
}

/** One style, whole text. */
export const plain = (t: string, style: Omit<Run, 't'> = {}): Item => [{ ...style, t }]

/** What a screen reader says: runs without markup or soft hyphens, em space as a space. */
export const spoken = (item: Item): string =>
  item
    .map(run => (run.mark === undefined ? run.t : `, ${run.mark}`))
    .join('')
    .replaceAll('\u00ad', '')
    .replaceAll(/[\u2003\u00a0\u202f]/g, ' ')
    .trim()
