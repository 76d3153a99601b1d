import { expect, it } from 'vitest'
import type { LabelledMaterial } from '../../../../core/hazards/hazard-list.ts'
import { knownOf } from '../../../../core/hazards/known.ts'
import { labelledMaterialOf } from '../../../../core/hazards/mixture.ts'
import { knownText } from '../../../../core/report/hazard-sheet.ts'
import { materialsLine, trustOfStep } from '../../../../core/report/trust-words.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const sheet = { signalWord: 'Danger' as const, from: 'data sheet of the supplier' }
const { hazards: _unknown, ...sideways } = material({ id: 'sideways' })
const library = smallLibrary(
  [
    material({ id: 'a', hazards: { ...sheet, codes: ['H315'] } }),
    material({ id: 'b', hazards: { ...sheet, codes: ['H319'] } }),
    // EU Annex VI to Regulation (EC) 1272/2008, 011-002-00-6: sodium hydroxide is Skin Corr. 1A, H314; so is its 40 % solution.
    material({ id: 'hydroxide', formula: 'NaOH', hazards: { codes: ['H314'], signalWord: 'Danger', from: 'EU Annex VI' } }),
    material({ id: 'water', form: 'liquid', densityGPerMl: 0.998, hazards: { codes: [], signalWord: 'none', from: 'data sheet' } }),
    (({ hazards: _none, ...lye }) => lye)(
      material({
        id: 'lye',
        kind: 'mixture',
        form: 'solution',
        densityGPerMl: 1.43,
        contains: { compound: 'hydroxide', massFraction: 0.4, rest: 'water' },
      }),
    ),
    sideways,
  ],
  [
    transformation({
      id: 'one',
      products: [
        { compound: 'b', coefficient: 1 },
        { compound: 'sideways', coefficient: 1 },
      ],
    }),
  ],
)

it('the line of a step names the unknown hazards that the hazard list names, and no label that it reckons', () => {
  const charges = [chargedLine({ material: 'a' }), chargedLine({ material: 'lye' })]
  const step = chargedStep({ transformation: 'one', number: '1', makes: 'b', charges })
  const { materials } = trustOfStep(library, { settings: { yields: {} } as never, log: [] }, step)
  const told = /Hazards unknown: (.*?)\./.exec(materialsLine(library, materials))?.[1]
  const inStep = ['a', 'lye', 'b', 'sideways']
  const unknown = inStep.filter(id => knownOf(labelledMaterialOf(library, id)) === 'unknown')
  expect(unknown).toEqual(['sideways'])
  expect(told?.split('; ')).toEqual(unknown)
  // Reckoned out of labels that were seen: said so.
  const lye = labelledMaterialOf(library, 'lye')
  expect(lye.hazards?.codes).toContain('H314')
  const known = knownOf(lye)
  expect(knownText({ known, from: lye.hazards?.from ?? null } as LabelledMaterial)).toBe('Reckoned')
})
