import type { CommaRule } from '../quantity/number.ts'
import { type ChargeRead, readChargeLine } from './charge-line.ts'
import { clausesOf, joined } from './clauses.ts'
import { idNamed, type NameIndex } from './names.ts'

/**
 * Everything that one line charges: "filter, wash with 50 mL water, dry" charges the water; "dissolve 5 g benzil in 20 mL ethanol" two things.
 *
 * Each has as its text just the piece of the line that it was read from.
 *
 * @returns empty where the line charges nothing
 */
export function chargesOfLine(line: string, index: NameIndex, comma: CommaRule): readonly ChargeRead[] {
  const clauses = clausesOf(line)
  const read = clauses.flatMap(clause => chargesOfClause(clause, index, comma))
  // An unknown name without an amount may be what to do; so may a word such as "ice" beside other clauses ("filter, cool in ice").
  return read.filter(
    charge =>
      charge.amount !== null ||
      charge.perGramProduct !== null ||
      (charge.found.kind !== 'unknown' && (clauses.length === 1 || charge.roleHint !== null)),
  )
}

function chargesOfClause(clause: string, index: NameIndex, comma: CommaRule): readonly ChargeRead[] {
  const whole = readChargeLine(clause, index, comma)
  if (whole === null || whole.found.kind !== 'unknown') return whole === null ? [] : [whole]
  const pieces = idNamed(clause) === null ? clause.split(joined) : [clause]
  if (pieces.length === 1) return [whole]
  const parts = pieces.map(piece => readChargeLine(piece.trim(), index, comma))
  // Taken apart only where every piece is a charge by itself; else the whole is asked about.
  return parts.every(part => part !== null && part.amount !== null && part.found.kind !== 'unknown')
    ? parts.map(part => ({ ...part!, roleHint: part!.roleHint ?? whole.roleHint }))
    : [whole]
}
