import type { CommaRule } from '../quantity/number.ts'
import { measuresIn } from './measures.ts'

/** What is done with a mixture, told behind it: "... is stirred at 25 °C for 1 h". */
const done =
  /\s+(?:is|was|are|were)\s+(?:then\s+|now\s+)?(?:[a-z]+ly\s+)?(?:stirred|heated|warmed|refluxed|boiled|cooled|chilled|added|mixed|combined|shaken|kept|left|allowed|held|maintained|irradiated|placed|charged|introduced|poured|treated|dissolved)\b/i

/** Whether a line tells in prose what is done with what it names. */
export const isProse = (line: string): boolean => done.test(line)

/** A clause without what is told behind its materials; as it stands where amounts are told there too ("is poured into 50 mL water"). */
export function withoutProse(clause: string, comma: CommaRule): string {
  const at = done.exec(clause)?.index
  if (at === undefined || measuresIn(clause.slice(at), comma).some(one => one.kind === 'amount')) return clause
  return clause.slice(0, at)
}

/** "Dried (Na2SO4)", "washed (water, 20 mL; brine, 20 mL)": what it is done with stands in brackets. */
const bracketed = /^((?:and\s+|then\s+)*(?:dried|washed|extracted|rinsed|quenched))\s*\(([^()]+)\)\s*\.?$/i

/** "To a stirred solution of A in B was added C": two charges of one sentence. */
const addedTo =
  /^to\s+an?\s+(?:[a-z-]+\s+)*((?:solution|suspension|mixture|slurry)\s+of\s.+?)\s+(?:is|was|are|were)\s+(?:then\s+)?(?:[a-z]+ly\s+|dropwise\s+)?added\s+(.+)$/i

/**
 * The clauses that one stands for whose brackets hold what is taken, or that adds one thing to another, spelled out.
 *
 * @returns the clause itself where it is written otherwise
 */
export function spelledOut(clause: string): readonly string[] {
  const [, first, added] = addedTo.exec(clause.trim()) ?? []
  if (first !== undefined && added !== undefined) return [`a ${first}`, `add ${added}`]
  const [, verb = '', within = ''] = bracketed.exec(clause.trim()) ?? []
  if (verb === '') return [clause]
  // A list of bare names is parted at its commas; amounts behind a comma belong to the name before it.
  const pieces = within.split(/\d/.test(within) ? /\s*;\s*/ : /\s*[;,]\s+(?:and\s+)?/)
  return pieces.map(piece => `${verb} ${/dried/i.test(verb) ? 'over' : 'with'} ${piece}`)
}
