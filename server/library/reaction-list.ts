import type { Toolkit } from '../../core/chemistry/structure.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import { type EquationIn, equationIn, smilesLine } from './reaction-files.ts'

/** One reaction of a file, as it is called there. */
export interface ReactionIn extends EquationIn {
  /** Empty where the file gives it no name. */
  readonly title: string
}

/** More than anybody writes down as preparations at one sitting. */
const mostReactions = 500

/**
 * Every reaction of a file: MDL reaction files one after the other, an RD file, or reaction SMILES a line each with a name behind.
 *
 * @returns all of them, or every problem with the number of its reaction: none is left out in silence
 */
export function reactionsIn(name: string, text: string, names: NameIndex, toolkit: Toolkit): Checked<readonly ReactionIn[]> {
  const pieces = piecesOf(text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n'))
  if (pieces.length > mostReactions) return bad([tooMany(name, pieces.length)])
  const problems: Problem[] = []
  const found = pieces.flatMap(({ title, body }, at): ReactionIn[] => {
    const read = equationIn(pieces.length === 1 ? name : `${name}, reaction ${at + 1}`, body, names, toolkit)
    if (read.ok) return [{ ...read.value, title }]
    problems.push(...read.problems)
    return []
  })
  return problems.length > 0 ? bad(problems) : good(found)
}

function piecesOf(text: string): readonly { readonly title: string; readonly body: string }[] {
  if (!/^\$RXN/m.test(text)) {
    const lines = text.split('\n').filter(line => line.trim() !== '' && !line.startsWith('#'))
    if (lines.length === 0) return [{ title: '', body: text }]
    return lines.map(smilesLine)
  }
  return text
    .split(/^(?=\$RXN)/m)
    .filter(piece => piece.startsWith('$RXN'))
    .map(piece => {
      // Data of an RD file come after the last structure.
      const end = /^\$(?:DTYPE|DATUM|RFMT|MFMT|RIREG|REREG|MIREG|MEREG)\b/m.exec(piece)
      return { title: (piece.split('\n')[1] ?? '').trim(), body: end === null ? piece : piece.slice(0, end.index) }
    })
}

const tooMany = (name: string, count: number): Problem => ({
  code: 'reactions-too-many',
  where: [name],
  what: `The file holds ${count} reactions; at most ${mostReactions} are read.`,
  why: 'Each becomes a preparation that somebody completes by hand.',
  cure: 'Split the file.',
})
