import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { layoutScheme } from '../../../../../web/map/scheme/layout.ts'
import { itemWidth, textWidth } from '../../../../../web/map/scheme/text-width.ts'
import type { TextEl } from '../../../../../web/map/scheme/types.ts'
import { launchBrowser } from '../../../../support/browser.ts'
import { cases } from '../../../../support/scheme/cases.ts'

const folder = new URL('../../../../../node_modules/@fontsource-variable/ysabeau-office/files/', import.meta.url)
const faceRule = (style: 'normal' | 'italic') => {
  const font = readFileSync(new URL(`ysabeau-office-latin-wght-${style}.woff2`, folder)).toString('base64')
  return `@font-face{font-family:Measured;font-style:${style};font-weight:1 1000;src:url(data:font/woff2;base64,${font}) format('woff2')}`
}

const texts: TextEl[] = cases.flatMap(one => layoutScheme(one.at(860)).els.filter(el => el.el === 'text'))

let browser: Awaited<ReturnType<typeof launchBrowser>>
beforeAll(async () => {
  browser = await launchBrowser()
})
afterAll(async () => {
  await browser?.close()
})

describe('widths reckoned without a browser', () => {
  it('agree with what Chromium measures', async () => {
    const page = await browser.newPage()
    await page.setContent(
      `<style>${faceRule('normal')}${faceRule('italic')} span{font-family:Measured;white-space:pre;font-feature-settings:'tnum','lnum','kern';position:absolute}</style>`,
    )
    const measured = await page.evaluate(
      async wanted => {
        await Promise.all([document.fonts.load('460 13px Measured'), document.fonts.load('italic 460 13px Measured')])
        return wanted.map(({ size, wght, runs }) => {
          const line = document.createElement('span')
          line.style.fontSize = `${size}px`
          line.style.fontWeight = String(wght)
          for (const run of runs) {
            const piece = document.createElement('span')
            piece.style.position = 'static'
            piece.textContent = run.t
            if (run.sub) piece.style.fontSize = '9.5px'
            if (run.b) piece.style.fontWeight = '680'
            if (run.i) {
              piece.style.fontStyle = 'italic'
              piece.style.fontWeight = '460'
            }
            line.append(piece)
          }
          document.body.append(line)
          const width = line.getBoundingClientRect().width
          line.remove()
          return width
        })
      },
      texts.map(({ size, wght, runs }) => ({ size, wght, runs })),
    )
    const errors = texts.map((text, i) => Math.abs(itemWidth(text.runs, text.size, text.wght) - measured[i]!)).sort((a, b) => a - b)
    expect(texts.length).toBeGreaterThan(200)
    // Advances are kept in thousandths, and kerning across two runs is not reckoned: a pixel at the very most, mostly hundredths.
    expect(errors.reduce((sum, error) => sum + error, 0) / errors.length).toBeLessThan(0.1)
    expect(errors[Math.floor(errors.length * 0.95)]).toBeLessThan(0.3)
    expect(errors.at(-1)).toBeLessThan(1.2)
  })

  it('grow with the text and the size', () => {
    expect(textWidth('benzil', 16)).toBeGreaterThan(textWidth('benzi', 16))
    expect(textWidth('benzil', 32)).toBeCloseTo(2 * textWidth('benzil', 16), 9)
    expect(textWidth('', 16)).toBe(0)
  })

  it('give a soft hyphen and a zero-width space nothing, an em space its em', () => {
    expect(textWidth('ben\u00adzil', 16)).toBeCloseTo(textWidth('benzil', 16), 0)
    expect(textWidth('\u2003', 16)).toBe(16)
    expect(textWidth('\u200b', 16)).toBe(0)
  })

  it('reckon a character that no table knows rather too wide than too narrow', () => {
    expect(textWidth('漢', 16)).toBe(16)
  })
})
