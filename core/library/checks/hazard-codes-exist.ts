import { didYouMean } from '../../problem/nearest.ts'
import type { Material } from '../material.ts'
import type { CheckContext, Finding } from './check.ts'

const why = 'Labels, ranking by hazard and the assessment are made from the codes: one that means nothing would be a danger left out.'

/** Hazard codes are in the table of statements, none stands twice, and a signal word goes with codes only. */
export function hazardCodesExist({ hazards }: Material, { tables }: CheckContext): readonly Finding[] {
  if (hazards === undefined) return []
  const findings: Finding[] = []
  const find = (field: readonly string[], what: string, cure: string) =>
    findings.push({ severity: 'error', code: 'hazard-codes-exist', field: ['hazards', ...field], what, why, cure })

  const known = tables.hazardCodes
  for (const [index, code] of hazards.codes.entries()) {
    if (hazards.codes.indexOf(code) < index) find(['codes', String(index)], `${code} stands twice.`, 'Keep it once.')
    else if (known !== undefined && !known.has(code))
      find(
        ['codes', String(index)],
        `"${code}" is not a hazard code of the table.`,
        `${didYouMean(code, known)}Write it as in the table, such as H302 or EUH066.`,
      )
  }
  if (hazards.codes.length === 0 && hazards.signalWord !== 'none')
    find(['signalWord'], `Signal word "${hazards.signalWord}" without a code.`, 'Add the codes, or give "none".')
  return findings
}
