import type { RecordDifference } from '../../core/library/differences.ts'

const changeWords: Readonly<Record<RecordDifference['change'], string>> = {
  added: 'added',
  overrides: 'in place of the one beneath',
  changed: 'changed',
  same: 'the same',
  removed: 'taken out',
}

/** What becomes of one record, in a line. */
export const changeLine = ({ change, name, id, fields }: RecordDifference): string =>
  `${changeWords[change]}: ${name} (${id})${fields.length === 0 ? '' : `: ${fields.map(({ text }) => text).join('. ')}`}\n`
