import { describe, expect, it } from 'vitest'
import { readPreparation } from '../../../../core/reading/preparation.ts'
import { overArrow, withOverArrow } from '../../../../web/entry/over-arrow.ts'
import { index, library, toolkit } from '../../../support/reader.ts'

const smiles = 'O=Cc1ccccc1.O=Cc1ccccc1.CC(C)=O>CCO.[OH-].[Na+]>O=C(/C=C/c1ccccc1)/C=C/c1ccccc1'
const read = (equation: string, body: string) => readPreparation(`${equation}\n${body}`, library, index, toolkit)

describe('when a proposal takes the place of a reaction SMILES', () => {
  it('what stood over its arrow stands among the charges, and is read there as before', () => {
    const body = 'acetone  2.9 g\nstir 30 min'
    const before = read(smiles, body)
    const after = withOverArrow(smiles, body, before as never)
    expect(after).toBe(`${body}\n${overArrow}\nethanol {ethanol}\nsodium hydroxide`)
    const materials = (of: typeof before) => of.lines.map(line => line.text).filter(text => !text.startsWith('acetone'))
    expect(materials(read(before.proposals[0]!.equation, after))).toEqual(materials(before))
  })

  it('what is among the charges already is not written again, and an equation in words brings nothing', () => {
    const body = 'acetone 2.9 g\nethanol {ethanol}\nsodium hydroxide'
    expect(withOverArrow(smiles, body, read(smiles, body) as never)).toBe(body)
    const words = '2 benzaldehyde + acetone -> dibenzalacetone'
    expect(withOverArrow(words, 'ethanol', read(words, 'ethanol') as never)).toBe('ethanol')
  })
})
