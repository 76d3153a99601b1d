import { fill, type Lines } from './fill.ts'
import { lastLevel, size } from './measures.ts'
import type { Cell, Item, Step, Way } from './types.ts'

/** All that the text about one arrow depends on. */
export interface ArrowIn {
  readonly step: Step
  readonly cells: Readonly<Record<string, Cell>>
  readonly touch: number
  /** Joins told in words. */
  readonly named: readonly Item[]
  /** Alternatives are told as one link under the arrow. */
  readonly link: boolean
  /** It leaves a rail or trunk: text stands at the left, not in the middle. */
  readonly rail: boolean
  /** Tightness, 0 to 4. */
  readonly level: number
}

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']
const emSpace = '\u2003'

/** "three other ways". */
export const otherWays = (count: number): string => `${counts[count] ?? count} other ${count === 1 ? 'way' : 'ways'}`

/** What stands over the arrow when a way is chosen: number, joins in words, conditions, and what no longer fits elsewhere. */
export function overItems(input: ArrowIn, way: Way): Item[] {
  const items = [...input.named, ...way.over]
  if (input.level >= lastLevel) {
    for (const leaver of input.step.leaves) {
      const cell = leaver.cell ? input.cells[leaver.cell] : undefined
      items.push(cell ? [{ t: `gives off ${cell.name.replaceAll('\u00ad', '')}` }] : [{ t: 'gives off ' }, ...(leaver.text ?? [])])
    }
  }
  if (input.step.no === '') return items
  const [first, ...rest] = items
  return [[{ t: input.step.no, b: true }, ...(first ? [{ t: emSpace }, ...first] : [])], ...rest]
}

interface Texts {
  readonly lines: number
  readonly w: number
}

/** The most lines and the widest line over all ways of the step, chosen or not: then a change of way moves nothing. */
export function most(all: readonly Lines[]): Texts {
  return { lines: Math.max(0, ...all.map(({ lines }) => lines.length)), w: Math.ceil(Math.max(0, ...all.map(({ w }) => w))) }
}

export const waysOf = (step: Step): readonly Way[] => [step, ...step.alts]

export function underLines(input: ArrowIn, way: Way): Item[] {
  if (input.level < 3) return [...way.under]
  const narrow = input.level >= lastLevel ? 50 : 62
  return way.under.flatMap(item => fill([item], narrow, size.text, true).lines)
}
