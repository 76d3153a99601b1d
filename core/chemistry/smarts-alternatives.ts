/** [A,B]rest as [A]rest and [B]rest for the last bracketed list; a recursive alternative $(...) at the end of the pattern stands as itself. */
export function writtenOut(smarts: string): readonly string[] | null {
  for (let at = smarts.length - 1; at >= 0; at--) {
    if (smarts[at] !== '[') continue
    const end = closingOf(smarts, at)
    const list = splitTop(smarts.slice(at + 1, end))
    if (list.length < 2 || smarts.slice(at + 1, end).includes(';')) continue
    // A bracket inside a recursive pattern belongs to its list, which comes later in this walk.
    if (insideRecursion(smarts, at)) continue
    const [before, after] = [smarts.slice(0, at), smarts.slice(end + 1)]
    return list.map(one => {
      const inner = /^\$\((.*)\)$/s.exec(one)?.[1]
      return inner !== undefined && (after === '' || after.startsWith(')')) ? before + inner + after : `${before}[${one}]${after}`
    })
  }
  return null
}

function closingOf(text: string, open: number): number {
  let depth = 0
  for (let at = open; at < text.length; at++) {
    if (text[at] === '[') depth++
    if (text[at] === ']' && --depth === 0) return at
  }
  return text.length
}

function splitTop(list: string): readonly string[] {
  const parts: string[] = ['']
  let depth = 0
  for (const mark of list) {
    if ('([{'.includes(mark)) depth++
    if (')]}'.includes(mark)) depth--
    if (mark === ',' && depth === 0) parts.push('')
    else parts[parts.length - 1] += mark
  }
  return parts
}

function insideRecursion(text: string, at: number): boolean {
  let depth = 0
  for (let before = 0; before < at; before++) {
    if (text[before] === '[') depth++
    if (text[before] === ']') depth--
  }
  return depth > 0
}
