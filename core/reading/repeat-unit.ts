/**
 * The repeat unit in a polymer's formula: "(C8H8)n", "[CH2CHPh]n", "-(C2H4O)-n". The number of units is no count of atoms: a polymer is
 * weighed and balanced per unit.
 *
 * @returns the formula within the brackets; null where the text is none
 */
export function repeatUnitIn(text: string): string | null {
  const match = /^\s*[-–—]?\s*(?:\((.+)\)|\[(.+)\]|\{(.+)\})\s*[-–—]?\s*[nₙ]\s*$/u.exec(text)
  return match === null ? null : (match[1] ?? match[2] ?? match[3]!).replace(/^[-–—]+|[-–—]+$/g, '').trim()
}
