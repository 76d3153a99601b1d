import { describe, expect, it } from 'vitest'
import { labelOf, pictogramsOf } from '../../../../core/hazards/labels.ts'
import { protectionFor } from '../../../../core/hazards/protection.ts'
import { bundledTables, materialWith } from '../../../support/hazards.ts'

const tables = bundledTables()
const label = (
  codes: string[],
  signalWord: 'Danger' | 'Warning' | 'none',
  form: 'solid' | 'gas' = 'solid',
  as: 'charged' | 'gas' = 'charged',
) => labelOf(tables, materialWith({ id: 'thing', form, hazards: { codes, signalWord, from: 'EU Annex VI' } }), [as])

// UN GHS (Rev. 9) 1.4.10.5.3.1, order of precedence for symbols; regulation (EC) 1272/2008, article 26, says the same.
describe('precedence of pictograms', () => {
  it('a skull leaves no exclamation mark', () => {
    expect(pictogramsOf(tables, ['H301', 'H315', 'H317', 'H335'], 'Danger')).toEqual(['GHS06'])
  })
  it('corrosion leaves none for irritation of skin and eyes', () => {
    expect(pictogramsOf(tables, ['H314', 'H315', 'H319'], 'Danger')).toEqual(['GHS05'])
  })
  it('corrosion leaves it where something else asks for it', () => {
    expect(pictogramsOf(tables, ['H314', 'H335'], 'Danger')).toEqual(['GHS05', 'GHS07'])
    expect(pictogramsOf(tables, ['H314', 'H302'], 'Danger')).toEqual(['GHS05', 'GHS07'])
  })
  it('a respiratory sensitiser leaves none for skin sensitisation or irritation', () => {
    expect(pictogramsOf(tables, ['H334', 'H317', 'H315', 'H319'], 'Danger')).toEqual(['GHS08'])
    expect(pictogramsOf(tables, ['H334', 'H317', 'H302'], 'Danger')).toEqual(['GHS07', 'GHS08'])
  })
  it('another health hazard does not', () => {
    expect(pictogramsOf(tables, ['H350', 'H317'], 'Danger')).toEqual(['GHS07', 'GHS08'])
  })
})

// UN GHS (Rev. 9) 1.4.10.5.3.3: statements that say the same need not be repeated.
describe('statements', () => {
  it('leave out serious eye damage beside burns, and acute beside chronic aquatic harm', () => {
    expect(label(['H314', 'H318', 'H400', 'H410'], 'Danger').codes.map(one => one.code)).toEqual(['H314', 'H410'])
  })
  it('stand gravest first, then Danger, then Warning', () => {
    expect(label(['H319', 'H225', 'H350'], 'Danger').codes.map(one => one.code)).toEqual(['H350', 'H225', 'H319'])
  })
  it('carry the words of the standard', () => {
    expect(label(['H225'], 'Danger').codes[0]?.statement).toBe('Highly flammable liquid and vapour')
  })
  it('show a code that is in no table, rather than leave it out', () => {
    expect(label(['H999'], 'Warning').codes[0]?.statement).toMatch(/read the data sheet/)
  })
})

describe('signal word', () => {
  it('is the stated one', () => {
    expect(label(['H272'], 'Warning').signalWord).toBe('Warning')
  })
  it('falls with the codes of the cylinder', () => {
    expect(label(['H280'], 'Warning', 'gas', 'gas')).toMatchObject({ signalWord: 'none', pictograms: [], codes: [] })
    expect(label(['H220', 'H280'], 'Danger', 'gas', 'gas')).toMatchObject({ signalWord: 'Danger', pictograms: ['GHS02'] })
  })
  it('is not known where nothing is', () => {
    expect(labelOf(tables, materialWith({ id: 'thing' })).signalWord).toBeNull()
  })
})

describe('precautions', () => {
  it('come in the order prevention, response, storage, disposal, none twice', () => {
    const codes = label(['H225', 'H319'], 'Danger').precautions.map(one => one.code)
    expect(codes).toEqual([...new Set(codes)].sort())
    expect(codes).toContain('P210')
    expect(codes).not.toContain('P264') // stands inside P264+P265
  })
})

describe('protection', () => {
  it('never names a glove material', () => {
    const all = Object.keys(tables.statements).flatMap(code => protectionFor([code], 'seen'))
    expect(all.length).toBeGreaterThan(40)
    for (const { do: what } of all) expect(what).not.toMatch(/nitrile|neoprene|butyl|latex|vinyl|viton/i)
  })
  it('asks for goggles where codes are grave and glasses where they are not, never for both', () => {
    expect(protectionFor(['H314', 'H319'], 'seen').filter(one => one.what === 'eyes')).toHaveLength(1)
    expect(protectionFor(['H319'], 'seen')[0]?.do).toMatch(/glasses/)
  })
  it('treats what is not known as harmful', () => {
    expect(protectionFor([], 'unknown').map(one => one.what)).toEqual(['eyes', 'hands', 'air'])
    expect(protectionFor([], 'seen')).toEqual([])
  })
})
