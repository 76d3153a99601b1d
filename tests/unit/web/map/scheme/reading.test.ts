import { describe, expect, it } from 'vitest'
import { layoutScheme } from '../../../../../web/map/scheme/layout.ts'
import { neighbour, readingOf } from '../../../../../web/map/scheme/reading.ts'
import { schemeText } from '../../../../../web/map/scheme/scheme-text.ts'
import { cases } from '../../../../support/scheme/cases.ts'

const demo = cases[0]!
const input = demo.at(860)
const out = layoutScheme(input)
const { parts, loose } = readingOf(input, out)
const keys = parts.map(part => part.key)

describe('reading order', () => {
  it('begins with the start, then step by step: arrow, co-reactant, its pick, other ways, product', () => {
    expect(keys.slice(0, 9)).toEqual([
      'compound benzoin',
      'step benzil',
      'way benzil benzoin-benzil-0',
      'way benzil benzoin-benzil-1',
      'way benzil benzoin-benzil-2',
      'compound benzil',
      'step lophine',
      'in lophine benzaldehyde',
      'pick lophine benzaldehyde',
    ])
  })

  it('holds every element once, and rails, dots and legend apart', () => {
    expect(parts.reduce((sum, part) => sum + part.els.length, 0) + loose.length).toBe(out.els.length)
    expect(new Set(keys).size).toBe(keys.length)
    expect(new Set(loose.map(el => el.cls))).toEqual(new Set(['rail', 'dot', 'legend']))
  })

  it('reads the same parts on a phone, with a link in place of detours', () => {
    const phone = demo.at(358)
    const small = readingOf(phone, layoutScheme(phone)).parts.map(part => part.key)
    expect(small.filter(key => key.startsWith('way '))).toEqual([])
    expect(small.filter(key => !key.startsWith('ways '))).toEqual(keys.filter(key => !key.startsWith('way ')))
    expect(small).toContain('ways benzil')
  })

  it('rows that answer a finger are 44 px high on a phone', () => {
    const phone = demo.at(358)
    const touched = readingOf(phone, layoutScheme(phone)).parts.filter(part => part.kind === 'pick' || part.kind === 'ways')
    expect(touched.length).toBeGreaterThan(1)
    for (const part of touched) expect(part.box.h, part.key).toBeGreaterThanOrEqual(44)
  })
})

describe('names for a screen reader', () => {
  const label = (key: string) => parts.find(part => part.key === key)?.label
  it.each([
    ['compound benzoin', 'benzoin, the start, 24.0 g'],
    ['compound lophine', 'lophine, a goal, 5.0 g, 3.9 g of the benzil'],
    ['step benzil', 'step 1, benzoin to benzil: NH4NO3 1.35 eq, Cu(OAc)2 1 %, AcOH, H2O, 110–118 °C; 1.5 h, 91 % (85–95); gives off N2'],
    [
      'step quinoxaline',
      'step 2b, benzil and o-phenylenediamine to 2,3-diphenylquinoxaline: EtOH, 78–80 °C; 20 min, 75 % (60–90), remembered; remembered, not seen in a source',
    ],
    ['way benzil benzoin-benzil-0', 'another way, benzoin to benzil: HNO3, 95–100 °C; 1.5 h, 96 % (80–96)'],
    ['pick lophine benzaldehyde', 'benzaldehyde: buy or make'],
  ])('%s', (key, sentence) => {
    expect(label(key)).toBe(sentence)
  })
})

describe('arrow keys', () => {
  it('go along the arrows and back', () => {
    expect(neighbour(input, parts, 'compound benzoin', 'right')).toBe('step benzil')
    expect(neighbour(input, parts, 'step benzil', 'right')).toBe('compound benzil')
    expect(neighbour(input, parts, 'compound lophine', 'left')).toBe('step lophine')
    expect(neighbour(input, parts, 'step lophine', 'left')).toBe('compound benzil')
    expect(neighbour(input, parts, 'compound benzoin', 'left')).toBeNull()
  })

  it('reach every part downwards, in reading order', () => {
    let at: string | null = keys[0]!
    const reached: string[] = []
    for (; at !== null; at = neighbour(input, parts, at, 'down')) reached.push(at)
    expect(reached).toEqual(keys)
  })
})

describe('on paper', () => {
  const print = demo.at(688)
  const text = schemeText(print, layoutScheme(print), demo.drawings, 'Scheme')

  it('is one still picture that says what it shows', () => {
    expect(text).toContain('role="img"')
    expect(text).toContain('aria-label="Scheme. benzoin, the start, 24.0 g.')
    expect(text).not.toMatch(/tabindex|role="button"|onclick/i)
  })

  it('names no colour: all come from the tokens', () => {
    expect(text).not.toMatch(/#[0-9a-f]{3,8}\b|rgb\(|hsl\(/i)
  })
})
