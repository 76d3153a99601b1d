import { expect, it } from 'vitest'
import type { Evaluation } from '../../../../core/plan/evaluation.ts'
import { noticesOf } from '../../../../core/report/notices.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

// A notice says what stands in the vessel now: who finds it running must not take a vessel of dry ether for one with water in it.
it('what is poured in to quench is not told to be in the vessel that stands overnight before it', () => {
  const library = smallLibrary(
    ['a', 'b', 'ether', 'water', 'brine'].map(id => material({ id })),
    [transformation({ id: 'one', tasks: [{ do: 'stir overnight', kind: 'stand', hours: 16, waitUpToH: 0, reaction: true }] })],
  )
  const charges = [
    chargedLine({ material: 'a', at: 'vessel' }),
    chargedLine({ material: 'ether', at: 'vessel' }),
    chargedLine({ material: 'water', at: 'quench' }),
    chargedLine({ material: 'brine', at: 'workup' }),
  ]
  const steps = [chargedStep({ transformation: 'one', number: '1', makes: 'b', charges })]
  const evaluation = { steps, days: { booked: [], unattended: [] }, hazards: { gas: [] } } as unknown as Evaluation
  expect(noticesOf(library, evaluation).map(notice => notice.holds)).toEqual(['a and ether'])
})
