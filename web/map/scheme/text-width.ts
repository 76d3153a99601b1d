import { faceWidths, measuredCharacters } from './text-widths.generated.ts'
import type { Item, Run } from './types.ts'

const column = new Map([...measuredCharacters].map((char, i) => [char, i]))
const widthOf = new Map<string, number>()

// Spaces the face lacks; the shaper gives them these widths. Soft hyphens and zero-width spaces take none unless a line breaks there.
const blank: Readonly<Record<string, number>> = { '\u2003': 1000, '\u2002': 500, '\u00ad': 0, '\u200b': 0 }
// What stands in for a character that no table knows: an em is the widest that a fallback face usually gives.
const strange = 1000
const subscriptSize = 9.5

function faceOf(wght: number, italic: boolean): string {
  if (italic) return '460i'
  return String(wght) in faceWidths ? String(wght) : '460'
}

/** Width of a text without markup, px. */
export function textWidth(text: string, size: number, wght = 460, italic = false): number {
  const face = faceOf(wght, italic)
  const key = `${face} ${text}`
  let thousandths = widthOf.get(key)
  if (thousandths === undefined) {
    const table = faceWidths[face]!
    thousandths = 0
    let last = ''
    for (const char of text) {
      const known = table.advances[column.get(char) ?? -1] ?? -1
      thousandths += blank[char] ?? (known >= 0 ? known : strange)
      thousandths += table.kern[last + char] ?? 0
      last = char
    }
    widthOf.set(key, thousandths)
  }
  return (thousandths * size) / 1000
}

/** Size in which a run stands, when its line has the given one. */
export const runSize = (run: Run, size: number): number => (run.sub ? subscriptSize : size)

/** Weight in which a run stands. */
export const runWeight = (run: Run, wght: number): number => (run.b ? 680 : wght)

/** Width of a line of runs, px. */
export function itemWidth(item: Item, size: number, wght = 460): number {
  let sum = 0
  for (const run of item) sum += textWidth(run.t, runSize(run, size), runWeight(run, wght), run.i ?? false)
  return sum
}
