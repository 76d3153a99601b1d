import { expect, it, vi } from 'vitest'
import { stepFigures } from '../../../../core/library/figure-trust.ts'
import { transformationSchema } from '../../../../core/library/transformation.ts'
import type { Reading } from '../../../../web/entry/api.ts'
import { emptyWriting, textOf, type Writing } from '../../../../web/entry/draft.ts'
import { prepared } from '../../../support/reader.ts'

vi.stubGlobal('location', { search: '', href: 'http://localhost/' })
vi.stubGlobal('addEventListener', () => {})
const { drafted } = await import('../../../../web/entry/record.ts')

const entered: Writing = {
  ...emptyWriting,
  equation: '2 benzaldehyde -> benzoin',
  body: 'benzaldehyde 60 mL\n9.2 g thiamine hydrochloride\n3 M NaOH, 20 mL',
  outcome: '45-48 g',
  low: '72',
  high: '77',
  hours: '30',
  exotherm: 'none',
  hood: 'yes',
  source: 'a page',
  holdPoint: 'weeks',
}

it('how long a product may wait stands by the word of whoever entered it, never by common practice', () => {
  const holdPoint = (known: Writing['known']) => {
    const writing = { ...entered, known }
    const reading: Reading = { ...prepared(...textOf(writing).split('\n')), materials: {} }
    const { record, lacking } = drafted(writing, reading, '2026-12-03', () => false)
    expect(lacking).toEqual([])
    return stepFigures(transformationSchema.parse(record)).find(one => one.figure === 'hold point')
  }
  expect(holdPoint('memory')).toMatchObject({ mark: 'remembered', source: expect.not.stringMatching(/common practice/) })
  expect(holdPoint('checked')).toMatchObject({ mark: 'seen', source: expect.stringContaining('a page') })
  expect(holdPoint('own')).toMatchObject({ mark: 'own bench' })
})
