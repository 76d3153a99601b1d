import { expect, it } from 'vitest'
import { meltsBelowC } from '../../../../core/plan/melts-low.ts'
import { lowMelts } from '../../../../core/report/low-melts.ts'
import { openWorkshop } from '../../../../server/library/workshop.ts'
import { benzoinPlan, logEntry } from '../../../support/benzoin-plans.ts'

const { library } = await openWorkshop([])

// Benzil melts at 94 to 95 C (from memory; the library's own figure is compared with its source elsewhere).
it.each([
  ['low and wide', { meltingC: [88, 93] as const }, true],
  ['sharp', { meltingC: [94, 95] as const }, false],
  ['within two thermometers', { meltingC: [93, 95] as const }, false],
  ['low, but with an assay', { meltingC: [88, 93] as const, purity: 0.95 }, false],
  ['not taken', {}, false],
])('a melting range of benzil that is %s', (_, own, low) => {
  const known = meltsBelowC(library, logEntry(own))
  if (low) expect([94, 95]).toContain(Math.round(known!))
  else expect(known).toBeNull()
})

it('is remarked of the runs that stand, with what to do', () => {
  const low = logEntry({ id: 'a', meltingC: [88, 93] })
  const [remark, ...others] = lowMelts(library, benzoinPlan([], { log: [low] }))
  expect(others).toEqual([])
  expect(remark!.what).toMatch(/Benzil.*88–93.°C, below the known 9[45]/)
  expect(lowMelts(library, benzoinPlan([], { log: [low, logEntry({ id: 'b', replaces: 'a', purity: 0.95 })] }))).toEqual([])
})
