import { describe, expect, it } from 'vitest'
import { lineFigure } from '../../core/library/figure-trust.ts'
import type { Source } from '../../core/library/source.ts'
import type { Transformation } from '../../core/library/transformation.ts'
import { sourcesFor } from '../../core/library/trust.ts'
import { bundled } from '../../server/library/bundled.ts'

// What the records say of their amounts, held against how their lines are told; no outside source: the words are those of the records.

const { library } = bundled()
const steps = [...library.transformations.values()]
const read = steps.filter(step => step.confidence === 'checked')
const notRead = (sources: readonly Source[]) => sources.filter(source => !source.checked)
/** Of amounts that nobody read: such a text is a source of its own, that was not checked. */
const isNotRead = (from: string): boolean => /^(from memory|common practice|set here)\b/.test(from)

/** Unchecked sources that speak for the charge of a record and that none of its lines carries. */
const carriedByNone = ({ sources, charge }: Pick<Transformation, 'sources' | 'charge'>): readonly string[] =>
  notRead(sourcesFor(sources, 'charge'))
    .map(source => source.citation)
    .filter(citation => charge.every(line => line.from !== citation))

describe('of the amounts of a record that was read', () => {
  it('those that its sources do not hold are told as such, line by line', () => {
    expect(read.flatMap(step => carriedByNone(step).map(citation => `${step.id}: ${citation}`))).toEqual([])
    const gaps = read.flatMap(step => notRead(sourcesFor(step.sources, 'charge')))
    expect(gaps.length).toBeGreaterThanOrEqual(30)
    // It finds what no line carries.
    const lophine = library.transformations.get('lophine')!
    expect(carriedByNone({ ...lophine, charge: lophine.charge.map(({ from: _, ...line }) => line) })).toHaveLength(1)
  })

  it('no source that was not read names amounts and says that it speaks for something else', () => {
    const amounts = /\b(amounts?|charge|volumes?|weights?|strengths?|scale|make-up|base and time)\b/
    const elsewhere = read.flatMap(step =>
      notRead(step.sources)
        .filter(source => source.for !== undefined && source.for !== 'gas evolved' && !source.for.includes('charge'))
        .filter(source => amounts.test(`${source.citation} ${source.for}`)),
    )
    expect(elsewhere).toEqual([])
  })

  it('none is told as seen by a source that speaks for another figure alone', () => {
    const uncovered = read.filter(step => !sourcesFor(step.sources, 'charge').some(source => source.checked))
    for (const step of uncovered)
      for (const line of step.charge) expect(lineFigure(step, line).mark, `${step.id}, ${line.material}`).not.toBe('seen')
  })
})

it('what a line says of itself is a source of its record, read or not as the line says', () => {
  let lines = 0
  for (const { id, sources, charge } of steps)
    for (const { from } of charge) {
      if (from === undefined) continue
      lines++
      expect(
        sources.some(
          source => source.citation === from && source.checked === !isNotRead(from) && (source.for ?? 'charge').includes('charge'),
        ),
        `${id}: ${from}`,
      ).toBe(true)
    }
  expect(lines).toBeGreaterThanOrEqual(69)
})

it('a record whose charge was read does not pass for one that was not', () => {
  const told = /\b(whole charge|charge) (was )?(read|seen)\b/i
  const remembered = steps.filter(step => step.confidence !== 'checked')
  const passed = remembered.filter(
    ({ sources, note = '', charge }) =>
      (told.test(note) ||
        sources.some(({ citation, for: speaksFor = '', checked }) => checked && (told.test(citation) || /^charge\b/.test(speaksFor)))) &&
      charge.every(line => line.from === undefined),
  )
  expect(passed.map(step => step.id)).toEqual([])
})
