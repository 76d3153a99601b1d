import { faceWidths, measuredCharacters } from './text-widths.generated.ts'
import type { Item, Run } from './types.ts'

const column = new Map([...measuredCharacters].map((char, i) => [char, i]))
const faces = new Map(Object.entries(faceWidths).map(([name, table]) => [name, { table, known: new Map<string, number>() }]))
// Texts are few and short; a bound all the same, so that long use cannot grow without end.
const mostKnown = 20_000

// Spaces the face lacks; the shaper gives them these widths. Soft hyphens and zero-width spaces take none unless a line breaks there.
const blank: Readonly<Record<string, number>> = { '\u2003': 1000, '\u2002': 500, '\u00ad': 0, '\u200b': 0 }
// What stands in for a character that no table knows: an em is the widest that a fallback face usually gives.
const strange = 1000
const subscriptSize = 9.5
const markSize = 8.5

function faceOf(wght: number, italic: boolean) {
  return (italic ? faces.get('460i') : faces.get(String(wght))) ?? faces.get('460')!
}

/** Width of a text without markup, px. */
export function textWidth(text: string, size: number, wght = 460, italic = false): number {
  const { table, known } = faceOf(wght, italic)
  let thousandths = known.get(text)
  if (thousandths === undefined) {
    thousandths = 0
    let last = ''
    for (const char of text) {
      const advance = table.advances[column.get(char) ?? -1] ?? -1
      thousandths += blank[char] ?? (advance >= 0 ? advance : strange)
      thousandths += table.kern[last + char] ?? 0
      last = char
    }
    if (known.size > mostKnown) known.clear()
    known.set(text, thousandths)
  }
  return (thousandths * size) / 1000
}

/** Size in which a run stands, when its line has the given one. */
export const runSize = (run: Run, size: number): number => (run.mark !== undefined ? markSize : run.sub ? subscriptSize : size)

/** Weight in which a run stands. */
export const runWeight = (run: Run, wght: number): number => (run.b ? 680 : wght)

/** Width of a line of runs, px. */
export function itemWidth(item: Item, size: number, wght = 460): number {
  let sum = 0
  for (const run of item) sum += textWidth(run.t, runSize(run, size), runWeight(run, wght), run.i ?? false)
  return sum
}
