import { afterEach, expect, it } from 'vitest'
import { wayItems, wayText } from '../../../../web/sheet/way-words.ts'
import { noFacts } from '../../../../web/state/facts.ts'
import { facts } from '../../../../web/state/facts-here.ts'
import { library } from '../../../support/reader.ts'

afterEach(() => {
  facts.value = noFacts
})

it('a step entered here is told from the one of the library with the same reagents', () => {
  const bundled = [...library.transformations.values()].find(one => one.mainProduct === 'chalcone')!
  const own = {
    ...bundled,
    id: 'chalcone-of-ours',
    name: 'chalcone, the evening way',
    yieldPercent: { ...bundled.yieldPercent, from: 'as entered' },
  }
  facts.value = { ...noFacts, library: { ...library, transformations: new Map([...library.transformations, [own.id, own]]) } }
  expect(wayText([own.id])).toBe('chalcone, the evening way (yours)')
  expect(wayText([bundled.id])).not.toContain('yours')
  const label = (id: string) =>
    wayItems([id])
      .flat()
      .map(run => run.t)
      .join('')
  expect(label(own.id)).toBe(`${label(bundled.id)} (yours)`)
})
