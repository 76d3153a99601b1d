import { describe, expect, it } from 'vitest'
import { frame, pictogramNames, pictogramSvg, symbolOf } from '../../../../web/parts/pictogram-shapes.ts'
import { bundledTables } from '../../../support/hazards.ts'

const codes = Object.keys(pictogramNames)

describe('pictograms', () => {
  it('are the nine of the standard, under its names', () => {
    expect(pictogramNames).toEqual(bundledTables().pictograms)
  })
  it('have each a symbol of their own in black', () => {
    const drawn = codes.map(code =>
      symbolOf(code)
        .map(shape => shape.d)
        .join(),
    )
    expect(new Set(drawn).size).toBe(9)
    for (const code of codes)
      expect(
        symbolOf(code).some(shape => shape.fill !== 'white'),
        code,
      ).toBe(true)
  })
  it('print with a red frame over a white ground, whatever the page is, and with a name', () => {
    for (const code of codes) {
      const svg = pictogramSvg(code, '8mm')
      expect(svg).toContain('width="8mm"')
      expect(svg).toContain(`aria-label="${pictogramNames[code]}"`)
      expect(svg.indexOf('fill="#fff"')).toBeLessThan(svg.indexOf(symbolOf(code)[0]!.d))
      expect(svg.indexOf(`stroke="${frame.red}"`)).toBeGreaterThan(svg.indexOf(symbolOf(code).at(-1)!.d))
    }
  })
  it('draw nothing for a code that is none', () => {
    expect(pictogramSvg('GHS10', '8mm')).toBe('')
    expect(symbolOf('GHS10')).toEqual([])
  })
})
