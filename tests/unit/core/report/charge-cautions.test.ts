import { expect, it } from 'vitest'
import type { HazardList } from '../../../../core/hazards/hazard-list.ts'
import { stepCaution } from '../../../../core/report/charge-cautions.ts'

const cautionFor = (gravest: number, danger: number, unknown: number): string | null =>
  stepCaution(
    {
      materials: [],
      meetings: [],
      steps: [{ step: '1', counts: { gravest, danger, unknown, warning: 3 }, notes: [] }],
    } as unknown as HazardList,
    '1',
  )

// Design 3.14: a step that holds only warnings gets no caution; unknown is never safe.
it('counts materials in words that a reader knows', () => {
  expect(cautionFor(0, 1, 0)).toMatch(/^Holds one material labelled Danger\. /)
  expect(cautionFor(1, 2, 1)).toMatch(
    /^Holds one material of the gravest class, two materials labelled Danger and one material without hazard data, which is not safe\. /,
  )
  expect(cautionFor(0, 0, 0)).toBeNull()
})
