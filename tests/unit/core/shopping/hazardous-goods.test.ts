import { expect, it } from 'vitest'
import { isHazardousGood } from '../../../../core/shopping/hazardous-goods.ts'
import { material } from '../../../support/small-library.ts'

const of = (codes: readonly string[], from?: string) =>
  material({ id: 'x', hazards: { codes: [...codes], signalWord: 'none', ...(from === undefined ? {} : { from }) } })

it.each([
  ['physical', of(['H225'], 'EU Annex VI'), true],
  ['health', of(['H411', 'H302'], 'EU Annex VI'), true],
  ['reacts with water, a supplement', of(['EUH014'], 'EU Annex VI'), true],
  ['the environment alone', of(['H400', 'H410'], 'EU Annex VI'), false],
  ['none assigned, by whom is told', of([], 'EU Annex VI'), false],
  ['an empty list from memory', of([], 'memory'), true],
  ['an empty list without a source', of([]), true],
])('%s', (_, one, fee) => expect(isHazardousGood(one)).toBe(fee))

it('no data at all: unknown is not safe', () => {
  const { hazards, ...unknown } = material({ id: 'x' })
  expect(hazards).toBeDefined()
  expect(isHazardousGood(unknown)).toBe(true)
})
