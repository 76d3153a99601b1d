import Papa from 'papaparse'
import type { Library } from '../library/library.ts'
import type { Plan } from '../plan/plan.ts'
import { comparedRuns } from './compare.ts'

/** Columns of the exported bench log. Masses in g, temperatures in degrees Celsius, yields as fractions. */
export const logColumns = [
  'run',
  'date',
  'step',
  'product',
  'batch',
  'charged_g',
  'charged_as',
  'weighed_g',
  'loss_on_drying_percent',
  'purity',
  'isolated_g',
  'planned_g',
  'theory_g',
  'yield',
  'verdict',
  'melting_from_c',
  'melting_to_c',
  'replaces',
  'stands',
  'note',
] as const

/**
 * The bench log as CSV (RFC 4180, CRLF, UTF-8 with a byte order mark): every entry ever made in its order, corrected ones too (`stands` says
 * which count), beside plan and theory. A figure that was not written down stays empty; a text that a spreadsheet would read as a formula is
 * escaped with an apostrophe.
 */
export function logCsv(library: Library, plan: Plan): string {
  const data = comparedRuns(library, plan).map(({ entry, replaced, ...run }) => [
    entry.id,
    entry.date ?? '',
    entry.step,
    library.transformations.get(entry.step)?.mainProduct ?? '',
    entry.batch,
    run.chargedG ?? '',
    run.chargedG === null ? '' : entry.chargedG === null || entry.chargedAs === 'planned' ? 'planned' : 'weighed',
    entry.weighedG,
    entry.dampPercent,
    entry.purity ?? '',
    run.isolatedG,
    run.plannedG ?? '',
    run.theoryG ?? '',
    run.yieldFraction ?? '',
    run.verdict,
    entry.meltingC?.[0] ?? '',
    entry.meltingC?.[1] ?? '',
    entry.replaces ?? '',
    replaced ? 'no' : 'yes',
    entry.note,
  ])
  return `\ufeff${Papa.unparse({ fields: [...logColumns], data }, { newline: '\r\n', escapeFormulae: true })}\r\n`
}
