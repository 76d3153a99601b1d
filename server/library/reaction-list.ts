import type { Toolkit } from '../../core/chemistry/structure.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import { balanceOf } from '../../core/reading/equation-balance.ts'
import { readEquation } from '../../core/reading/equation-line.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import { isReactionSmiles, smilesLine } from '../../core/reading/reaction-smiles.ts'
import { dataNotRead } from './data-of-reaction.ts'
import { type EquationIn, equationIn } from './reaction-files.ts'

/** One reaction of a file, as it is called there. */
export interface ReactionIn extends EquationIn {
  /** Empty where the file gives it no name. */
  readonly title: string
}

/** One reaction of a file, whether it can be read or not. */
export interface ReactionShown {
  readonly file: string
  /** In its file, from 1. */
  readonly number: number
  readonly title: string
  /** Its piece of the file, to be mended and read again. */
  readonly text: string
  /** Null where it cannot be read; why stands in the problems. */
  readonly read: EquationIn | null
  readonly balanced: boolean
  readonly problems: readonly Problem[]
}

/** More than anybody writes down as preparations at one sitting. */
const mostReactions = 500

/** Whether a text holds reactions and nothing else: MDL reaction files, an RD file, or a reaction SMILES on every line. */
export function isReactionFile(text: string): boolean {
  if (/^\s*\$(?:RXN|RDFILE)/.test(text)) return true
  const lines = linesOf(text.replace(/^\ufeff/, ''))
  return lines.length > 0 && lines.every(line => isReactionSmiles(smilesLine(line).body))
}

/**
 * Every reaction of some files, each with what is wrong with it: MDL reaction files one after the other, RD files, or reaction SMILES a line
 * each with a name behind. None is left out in silence.
 */
export function reactionsShown(
  files: readonly { readonly name: string; readonly text: string }[],
  names: NameIndex,
  toolkit: Toolkit,
): Checked<readonly ReactionShown[]> {
  const raw = files.flatMap(({ name, text }) => rawPieces(text).map((piece, at) => ({ piece, file: name, number: at + 1 })))
  if (raw.length > mostReactions) return bad([tooMany(files.map(file => file.name).join(', '), raw.length)])
  const pieces = raw.map(({ piece, file, number }) => ({ ...pieceOf(piece), file, number }))
  return good(
    pieces.map(({ file, number, title, body, text, data }) => {
      const read = equationIn(`${file}, reaction ${number}`, body, names, toolkit)
      const left = dataNotRead(data, [file, `reaction ${number}`])
      const head = { file, number, title, text }
      if (!read.ok) return { ...head, read: null, balanced: false, problems: read.problems }
      const { balanced, problem } = balanceOf(readEquation(read.value.equation, names, toolkit))
      return { ...head, read: read.value, balanced, problems: [problem, left].filter(one => one !== null) }
    }),
  )
}

/**
 * Every reaction of a file.
 *
 * @returns all of them, or every problem with the number of its reaction: none is left out in silence
 */
export function reactionsIn(name: string, text: string, names: NameIndex, toolkit: Toolkit): Checked<readonly ReactionIn[]> {
  const raw = rawPieces(text)
  if (raw.length > mostReactions) return bad([tooMany(name, raw.length)])
  const pieces = raw.map(pieceOf)
  const problems: Problem[] = []
  const found = pieces.flatMap(({ title, body }, at): ReactionIn[] => {
    const read = equationIn(pieces.length === 1 ? name : `${name}, reaction ${at + 1}`, body, names, toolkit)
    if (read.ok) return [{ ...read.value, title }]
    problems.push(...read.problems)
    return []
  })
  return problems.length > 0 ? bad(problems) : good(found)
}

const linesOf = (text: string): readonly string[] => text.split(/\r\n|\r|\n/).filter(line => line.trim() !== '' && !line.startsWith('#'))

/** The file cut into its reactions, not looked at yet: a file of millions of lines is refused by their number. */
function rawPieces(text: string): readonly string[] {
  const body = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n')
  if (/^\$RXN/m.test(body)) return body.split(/^(?=\$RXN)/m).filter(piece => piece.startsWith('$RXN'))
  const lines = linesOf(body)
  return lines.length === 0 ? [body] : lines
}

function pieceOf(raw: string): { readonly title: string; readonly body: string; readonly text: string; readonly data: string } {
  if (!raw.startsWith('$RXN')) return { ...smilesLine(raw), text: raw.trim(), data: '' }
  // Data of an RD file come after the last structure.
  const end = /^\$(?:DTYPE|DATUM|RFMT|MFMT|RIREG|REREG|MIREG|MEREG)\b/m.exec(raw)
  const body = end === null ? raw : raw.slice(0, end.index)
  return { title: (raw.split('\n')[1] ?? '').trim(), body, text: body.trimEnd(), data: raw.slice(body.length) }
}

const tooMany = (name: string, count: number): Problem => ({
  code: 'reactions-too-many',
  where: [name],
  what: `The file holds ${count} reactions; at most ${mostReactions} are read.`,
  why: 'Each becomes a preparation that somebody completes by hand.',
  cure: 'Split the file.',
})
