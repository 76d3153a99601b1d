/**
 * What parts the cells of a table: the sign that stands most often in its line of headings. The rows are not asked: what stands in a cell may
 * hold any sign more often.
 *
 * @returns a comma where the headings hold none of them
 */
export function delimiterOf(table: string): ',' | ';' | '\t' {
  const heading = table.split(/\r\n|\r|\n/, 1)[0] ?? ''
  const count = (sign: string): number => heading.split(sign).length - 1
  return ([',', ';', '\t'] as const).reduce((best, sign) => (count(sign) > count(best) ? sign : best))
}
