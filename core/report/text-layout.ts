/** Width of a text page, characters. */
const page = 100

/** A heading with a rule under it, as long as it is. */
export const heading = (text: string): string => `${text}\n${'-'.repeat(Math.min(page, text.length))}`

/** Words broken into lines of a page; the first begins with `lead`, the others stand under its end. No-break spaces hold. */
export function wrapped(text: string, lead: string): readonly string[] {
  const lines: string[] = []
  let line = lead
  let empty = true
  for (const word of text.split(/[ \n]+/).filter(Boolean)) {
    if (!empty && line.length + 1 + word.length > page) {
      lines.push(line)
      line = ' '.repeat(lead.length)
      empty = true
    }
    line += empty ? word : ` ${word}`
    empty = false
  }
  return empty ? lines : [...lines, line]
}

/** A table in columns: the first two words of a row at the left, figures at the right. */
export function columns(head: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  if (rows.length === 0) return []
  const all = [head, ...rows]
  const used = head.map((_, at) => all.some(row => (row[at] ?? '') !== '' && row !== head) || (head[at] ?? '') !== '')
  const widths = head.map((_, at) => Math.max(...all.map(row => (row[at] ?? '').length)))
  const isFigure = head.map((_, at) => rows.every(row => /^(|\d.*|as needed.*|0)$/.test((row[at] ?? '').trim())))
  return all.map(row =>
    row
      .map((cell, at) => (isFigure[at] ? cell.padStart(widths[at]!) : cell.padEnd(widths[at]!)))
      .filter((_, at) => used[at] && widths[at]! > 0)
      .join('  ')
      .trimEnd(),
  )
}
