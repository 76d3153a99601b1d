import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { answer } from '../support/page.ts'
import { type Served, served } from '../support/served.ts'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
let browser: Browser
let server: Served
beforeAll(async () => {
  browser = await launchBrowser()
  server = await served(':memory:')
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
})

interface AxeResult {
  readonly violations: readonly { readonly id: string; readonly impact: string; readonly nodes: readonly { readonly html: string }[] }[]
}

/** What axe finds by WCAG 2.2 AA, as short lines. Its script is evaluated, since the page's own policy stops foreign script tags. */
async function findings(page: Page): Promise<string[]> {
  await page.evaluate(axe)
  const { violations } = await page.evaluate(
    () =>
      (window as unknown as { axe: { run(o: object): Promise<unknown> } }).axe.run({
        runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] },
      }) as Promise<AxeResult>,
  )
  return violations.map(
    v =>
      `${v.impact} ${v.id}: ${v.nodes
        .slice(0, 3)
        .map(n => n.html.slice(0, 160))
        .join(' | ')}`,
  )
}

const sizes = [
  ['a wide screen', 1440, 900, 'light'],
  ['a wide screen in the dark', 1440, 900, 'dark'],
  ['a phone', 390, 844, 'light'],
] as const

describe.each(sizes)('on %s', (_name, width, height, colorScheme) => {
  it('nothing is found by the accessibility checker, on the first page and in every question', async () => {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme })
    await page.goto(server.url)
    await page.getByLabel('I have').waitFor()
    expect(await findings(page)).toEqual([])
    await page.getByText('Benzoin downstream').first().click()
    await page.locator('summary').nth(6).waitFor()
    await expect.poll(async () => page.locator('body').innerText(), { timeout: 30_000 }).toMatch(/€/)
    for (let at = 0; at < 7; at++) {
      const summary = page.locator('details:not(details details) > summary').nth(at)
      await summary.click()
      await page.waitForTimeout(150)
      expect(await findings(page), `question ${at + 1}`).toEqual([])
    }
    await page.close()
  })

  it('nothing is wider than the page', async () => {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme })
    await page.goto(server.url)
    await page.getByText('Benzoin downstream').first().click()
    await expect.poll(async () => page.locator('body').innerText(), { timeout: 30_000 }).toMatch(/€/)
    for (let at = 0; at < 7; at++) {
      await page.locator('details:not(details details) > summary').nth(at).click()
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
      expect(over, `question ${at + 1}`).toBeLessThanOrEqual(0)
    }
    await page.close()
  })
})

describe('without a mouse', () => {
  it('the whole job is done from the keyboard', async () => {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
    await page.goto(server.url)
    await page.getByLabel('I have').waitFor()
    const tabTo = async (matches: (label: string) => boolean, most = 120): Promise<void> => {
      for (let i = 0; i < most; i++) {
        const label = await page.evaluate(() => {
          const at = document.activeElement as HTMLElement | null
          const labelled =
            at?.getAttribute('aria-label') ?? (at as HTMLInputElement | null)?.labels?.[0]?.textContent ?? at?.textContent ?? ''
          return `${at?.tagName.toLowerCase()} ${labelled}`
        })
        if (matches(label)) return
        await page.keyboard.press('Tab')
      }
      throw new Error('not reached by Tab')
    }
    await tabTo(label => /input.*I have/.test(label))
    await page.keyboard.type('24 g benzoin')
    // The name is whole, so Enter goes on, whether or not the list has come.
    await page.keyboard.press('Enter')
    await page.locator('summary', { hasText: 'What can it become' }).waitFor()
    await expect.poll(async () => page.locator('body').innerText(), { timeout: 20_000 }).toMatch(/lophine/)
    await tabTo(label => /^input.*lophine/.test(label.replaceAll('\u00ad', '')), 300)
    await page.keyboard.press('Space')
    await expect.poll(() => answer(page, /How much/), { timeout: 20_000 }).toMatch(/\d g/)
    await tabTo(label => /summary.*How much/.test(label), 300)
    await page.keyboard.press('Enter')
    await tabTo(label => /button/.test(label) && /\d/.test(label), 300)
    await page.keyboard.press('Enter')
    await expect.poll(async () => page.locator('body').innerText()).toMatch(/[÷×=]/)
    await page.keyboard.press('Escape')
    const focus = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement
      const style = getComputedStyle(at)
      return { tag: at.tagName, outline: style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2 }
    })
    expect(focus).toEqual({ tag: 'BUTTON', outline: true })
    await page.close()
  })
})
