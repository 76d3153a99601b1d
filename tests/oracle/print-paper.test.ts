import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { packHtml } from '../../server/print/pack.ts'
import { launchBrowser } from '../support/browser.ts'
import { pdfPages } from '../support/pdf-text.ts'
import { allReported } from '../unit/core/report/demo-plans.ts'

// ISO 216: A4 is 210 mm x 297 mm. ANSI/ASME Y14.1: Letter is 8.5 in x 11 in. 72 points to the inch.
const papers = [
  { format: 'A4', widthPt: (210 / 25.4) * 72, heightPt: (297 / 25.4) * 72 },
  { format: 'Letter', widthPt: 8.5 * 72, heightPt: 11 * 72 },
] as const
/** The field that A4 and Letter share, and the margin beside it on A4. */
const fieldMm = 182
const pt = (mm: number): number => (mm / 25.4) * 72

const plans = await allReported()
const flat = (text: string): string => text.replace(/\s+/g, ' ')

let browser: Browser
beforeAll(async () => {
  browser = await launchBrowser()
})
afterAll(() => browser?.close())

describe.each(plans)('$title on paper', one => {
  const { library, plan, evaluation, drawings } = one
  const html = packHtml({ library, plan, evaluation, drawings, today: '2026-12-01' })

  it('lets nothing stand out of its field', async () => {
    const page = await browser.newPage({ viewport: { width: 688, height: 960 } })
    await page.emulateMedia({ media: 'print' })
    await page.setContent(html)
    await page.evaluate(() => document.fonts.ready)
    const { widthMm, outside } = await page.evaluate(() => {
      const field = document.querySelector('.pack')!.getBoundingClientRect()
      const out = [...document.querySelectorAll('.pack *')].filter(element => {
        const box = element.getBoundingClientRect()
        return box.right > field.right + 1 || box.left < field.left - 1
      })
      return {
        widthMm: (field.width / 96) * 25.4,
        outside: out.map(element => `${element.className} ${element.textContent?.slice(0, 40)}`),
      }
    })
    await page.close()
    expect(widthMm).toBeCloseTo(fieldMm, 0)
    expect(outside).toEqual([])
  })

  it.each(papers)(
    'prints on $format with head, foot and number on every page, nothing in the margin',
    async ({ format, widthPt, heightPt }) => {
      const page = await browser.newPage()
      await page.setContent(html)
      await page.evaluate(() => document.fonts.ready)
      const pages = await pdfPages(await page.pdf({ format, printBackground: true }))
      await page.close()
      // Page 1, a sheet a step at least, shopping, hazards, risk assessment, labels.
      expect(pages.length).toBeGreaterThanOrEqual(5 + evaluation.steps.length)
      for (const [at, { text, width, height, right }] of pages.entries()) {
        const read = flat(text)
        expect(width).toBeCloseTo(widthPt, -1)
        expect(height).toBeCloseTo(heightPt, -1)
        expect(read).toContain(`page ${at + 1} of ${pages.length}`)
        expect(read).toContain('Quantities are estimates.')
        expect(read).toContain('Do not work alone.')
        expect(read).toContain(plan.title)
        // Content is centred: what is right of the field is margin.
        expect(right).toBeLessThanOrEqual((width + pt(fieldMm)) / 2 + 2)
      }
      const whole = flat(pages.map(one => one.text).join(' ')).replaceAll('\u00ad', '')
      for (const step of evaluation.steps) expect(whole).toContain(`What can hurt in step ${step.number}`)
    },
  )
})
