import { expect, it } from 'vitest'
import type { LabelledMaterial } from '../../../../core/hazards/hazard-list.ts'
import { materialFigures } from '../../../../core/library/figure-trust.ts'
import { labelText, stateText } from '../../../../core/report/hazard-sheet.ts'
import { material, smallLibrary } from '../../../support/small-library.ts'

// routes-data/README.md: what rests on common practice is told as remembered.
it('hazards that suppliers assign by common practice are told as remembered, not as seen; what nobody knows stays unknown', () => {
  const from = 'common practice: suppliers assign none in this form'
  const library = smallLibrary([material({ id: 'brine', form: 'solution', hazards: { codes: [], signalWord: 'none', from } })])
  const row = { material: 'brine', known: 'seen', from, codes: [], massG: 5, volumeMl: null, steps: ['1'], as: ['charge'] }
  const labelled = row as unknown as LabelledMaterial
  expect(stateText(library, labelled)).toMatch(/^Remembered: common practice: suppliers assign none in this form\. 5\.00/)
  expect(labelText(labelled)).toBe('No hazard class assigned, by common practice.')
  const sheet = { ...labelled, from: 'data sheet of the supplier' }
  expect(stateText(library, sheet)).toMatch(/^Seen: data sheet/)
  expect(labelText(sheet)).toBe('No hazard class assigned, with a source.')
  const markOf = (text: string) =>
    materialFigures(material({ id: 'x', hazards: { codes: [], signalWord: 'none', from: text } })).find(one => one.figure === 'hazards')
      ?.mark
  expect(markOf(from)).toBe('remembered')
  expect(markOf('safety data sheet')).toBe('seen')
  expect(markOf('common practice, I think')).toBe('unknown')
})
