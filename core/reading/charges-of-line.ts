import type { CommaRule } from '../quantity/number.ts'
import { type ChargeRead, readChargeLine } from './charge-line.ts'
import { clausesOf, joined } from './clauses.ts'
import { idNamed, type NameIndex } from './names.ts'
import { spelledOut, withoutProse } from './prose.ts'
import { saidBeside } from './said-beside.ts'

/**
 * Everything that one line charges: "filter, wash with 50 mL water, dry" charges the water; "dissolve 5 g benzil in 20 mL ethanol" two things.
 *
 * Each has as its text just the piece of the line that it was read from.
 *
 * @returns empty where the line charges nothing
 */
export function chargesOfLine(line: string, index: NameIndex, comma: CommaRule): readonly ChargeRead[] {
  const clauses = clausesOf(line)
  const read = clauses.flatMap(clause => chargesBesideWords(clause, index, comma))
  // An unknown name without an amount may be what to do; so may a word such as "ice" beside other clauses ("filter, cool in ice").
  return read.filter(
    charge =>
      charge.amount !== null ||
      charge.perGramProduct !== null ||
      charge.unclear !== undefined ||
      ((charge.found.kind !== 'unknown' || charge.found.beside !== undefined) && (clauses.length === 1 || charge.roleHint !== null)),
  )
}

/** The charges of a clause, each with what the clause says of its source and its purpose. */
function chargesBesideWords(clause: string, index: NameIndex, comma: CommaRule): readonly ChargeRead[] {
  const { rest, from, role } = saidBeside(withoutProse(clause, comma))
  const pieces = spelledOut(rest)
  const read = pieces.flatMap(piece => chargesOfClause(piece, index, comma))
  if (rest === clause && pieces[0] === clause) return read
  return read.map(one => ({
    ...one,
    text: read.length === 1 ? clause : one.text,
    roleHint: one.roleHint ?? role ?? null,
    ...(from === undefined ? {} : { from }),
  }))
}

function chargesOfClause(clause: string, index: NameIndex, comma: CommaRule): readonly ChargeRead[] {
  const listed = listedIn(clause)
  if (listed.length > 1) {
    const parts = listed.map(piece => readChargeLine(piece, index, comma))
    // "Ethanol 20 mL, water 5 mL": each with an amount and a name of its own, known or not. "NaOH, 4 g, 0.1 mol" is one.
    if (parts.every(part => part !== null && (part.amount !== null || part.perGramProduct !== null) && /\p{L}{2}/u.test(part.phrase)))
      return listed.flatMap(piece =>
        chargesOfClause(piece, index, comma).map(one => ({ ...one, roleHint: one.roleHint ?? parts[0]!.roleHint })),
      )
  }
  const whole = readChargeLine(clause, index, comma)
  if (whole === null) return []
  const body = clause.replace(solutionOf, '')
  const isMixture = body !== clause
  if ((whole.found.kind !== 'unknown' && !isMixture) || idNamed(clause) !== null) return [whole]
  // Taken apart only where every piece is a charge by itself; else the whole is asked about.
  for (const boundary of [joined, joining]) {
    const pieces = body.split(boundary)
    if (pieces.length === 1) continue
    const parts = pieces.map(piece => readChargeLine(piece.trim(), index, comma))
    // A name of "a mixture of" that is not known is asked about by itself, where each piece has its name and its amount.
    if (
      parts.every(
        part => part !== null && part.amount !== null && (part.found.kind !== 'unknown' || (isMixture && /\p{L}{3}/u.test(part.phrase))),
      )
    )
      return parts.map(part => ({ ...part!, roleHint: part!.roleHint ?? whole.roleHint }))
  }
  return [whole]
}

/** "A solution of 4 g sodium hydroxide in 40 mL water" charges the two. */
const solutionOf =
  /^(?:(?:then\s+)?(?:add(?:ed)?|pour(?:ed)?(?:\s+in)?|treat(?:ed)?\s+with|prepared?|make|made|use|take)\s+)?(?:an?\s+|the\s+)?(?:(?:hot|warm|cold|cool|cooled|ice-cold|boiling|clear)\s+)?(?:solution|suspension|mixture)\s+of\s+/i
/** "Potassium hydroxide (5 g) in ethanol (20 mL)". */
const joining = /\s+(?:in|and|with)\s+/

/** The pieces of a list: parted at commas and semicolons outside brackets that stand before a blank. */
function listedIn(clause: string): readonly string[] {
  const pieces: string[] = []
  let [from, depth] = [0, 0]
  for (let at = 0; at < clause.length; at++) {
    const mark = clause[at]!
    if (mark === '(' || mark === '[') depth++
    else if (mark === ')' || mark === ']') depth--
    else if ((mark === ',' || mark === ';') && depth <= 0 && /\s/.test(clause[at + 1] ?? '')) {
      pieces.push(clause.slice(from, at).trim())
      from = at + 1
    }
  }
  pieces.push(clause.slice(from).trim())
  return pieces
}
