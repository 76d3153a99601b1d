import type { Reading } from './api.ts'

/** A remark, which the reader passes over, above what has no amount yet. */
export const overArrow = '# over the arrow: give each its amount'

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim()

/**
 * The charges with what stands over the arrow of a reaction SMILES written among them, so that nothing of it goes with the equation when
 * another is put in its place.
 */
export function withOverArrow(equation: string, body: string, { lines, unread }: Pick<Reading, 'lines' | 'unread'>): string {
  if (!/^[^>]*>[^>\s]+>/.test(equation)) return body
  const said = plain(body)
  const open = lines.filter(line => line.amountMol === null).map(line => line.text)
  const beside = new Set([...open, ...unread].filter(text => !said.includes(plain(text))))
  return beside.size === 0 ? body : [...(said === '' ? [] : [body.trimEnd()]), overArrow, ...beside].join('\n')
}
