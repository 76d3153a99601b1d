/**
 * Rows as text in columns, two blanks between them.
 *
 * @param right  which columns stand flush right
 */
export function table(heads: readonly string[], rows: readonly (readonly string[])[], right: readonly boolean[]): string {
  const widths = heads.map((head, i) => Math.max(head.length, ...rows.map(row => row[i]?.length ?? 0)))
  const line = (row: readonly string[]) =>
    row
      .map((cell, i) => (right[i] ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
      .join('  ')
      .trimEnd()
  return `${[line(heads), ...rows.map(line)].join('\n')}\n`
}
