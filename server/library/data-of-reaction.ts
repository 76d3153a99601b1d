import type { Problem } from '../../core/problem/problem.ts'

/** The code of that: told, and no fault of the file. */
export const dataLeft = 'reaction-data-not-read'

/** Fields that are told of one reaction at the most. */
const mostFields = 10
const longest = 60

/**
 * What a reaction of an RD file carries as data and nobody reads, told with what it says: an equation alone is read, and a yield among the data
 * would be missed. Null where it carries none.
 *
 * @param data  the lines behind the structures: `$DTYPE` with a name, `$DATUM` with what it says
 */
export function dataNotRead(data: string, where: readonly string[]): Problem | null {
  const fields = [...data.matchAll(/^\$DTYPE +(.*)\n\$DATUM *((?:.*\n?(?!\$))*)/gm)].flatMap(([, name = '', said = '']) =>
    // Our own are a whole record, read where it is taken over.
    name.startsWith('waybench:') ? [] : [`${short(name)}: ${short(said)}`],
  )
  if (fields.length === 0) return null
  const more = fields.length > mostFields ? ` and ${fields.length - mostFields} more` : ''
  return {
    code: dataLeft,
    where,
    what: `The file says more of this reaction, which is not read: ${fields.slice(0, mostFields).join('; ')}${more}.`,
    why: 'Every program names its data in its own way; of a reaction file the equation alone is read.',
    cure: 'Write what belongs to the preparation into it, such as its charges and "yield 75 %".',
  }
}

const short = (text: string): string => {
  const line = text.replace(/\s+/g, ' ').trim()
  return line.length > longest ? `${line.slice(0, longest)}...` : line
}
