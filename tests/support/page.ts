import type { Browser, Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { pdfPages } from './pdf-text.ts'

/** A page of the browser with whatever it complained of. */
export type Watched = Page & { readonly faults: string[] }

interface Opening {
  readonly width?: number
  readonly height?: number
  readonly colorScheme?: 'light' | 'dark'
}

/** A fresh browser profile on this address: nothing is remembered from another page. Failed requests show in `faults` too. */
export async function opened(
  browser: Browser,
  url: string,
  { width = 1440, height = 900, colorScheme = 'light' }: Opening = {},
): Promise<Watched> {
  const page = await browser.newPage({ viewport: { width, height }, colorScheme })
  const faults: string[] = []
  page.on('pageerror', error => faults.push(error.message))
  page.on('console', message => {
    if (message.type() === 'error') faults.push(message.text())
  })
  page.setDefaultTimeout(90_000)
  await page.goto(url)
  return Object.assign(page, { faults })
}

/** A question of the sheet by its words, opened. */
export async function question(page: Page, words: RegExp): Promise<Locator> {
  const details = page.locator('details', { has: page.locator('summary', { hasText: words }) }).first()
  if ((await details.getAttribute('open')) === null) await details.locator('summary').first().click()
  return details
}

/** Text as it is read: soft hyphens gone, every kind of space one space. */
export const clean = (text: string): string => text.replaceAll('\u00ad', '').replace(/[\u00a0\u202f\s]+/g, ' ')
export const words = async (locator: Pick<Locator, 'innerText'>): Promise<string> => clean(await locator.innerText())

/** The heading of a question, which is its answer. */
export const answer = (page: Page, asked: RegExp): Promise<string> => words(page.locator('summary', { hasText: asked }).first())

/** Waits until all that was said is on the server, and stays so: what is still being reckoned may change the plan once more. */
export async function settled(page: Page): Promise<void> {
  let calm = 0
  const look = async () => {
    calm = /Version \d+, saved/.test(await words(page.locator('header'))) ? calm + 1 : 0
    return calm
  }
  await expect.poll(look, { interval: 200 }).toBeGreaterThan(7)
}

/** Words of the pack as the page would print it now; it counts as printed, as any print does. */
export async function packWords(page: Page): Promise<string> {
  await printable(page)
  const told = await page.evaluate(() => {
    dispatchEvent(new Event('beforeprint'))
    const text = document.getElementById('print')?.textContent ?? ''
    dispatchEvent(new Event('afterprint'))
    return text
  })
  return clean(told)
}

/** The pages that the page prints, once the layout of the pack is there. */
export async function paper(page: Page, format: 'A4' | 'Letter' = 'A4'): Promise<Awaited<ReturnType<typeof pdfPages>>> {
  await printable(page)
  return pdfPages(await page.pdf({ format }))
}

/** The layout of the pack is fetched once there is something to print. Looking whether it is there does not count as a print. */
async function printable(page: Page): Promise<void> {
  const isThere = () =>
    page.evaluate(() => {
      dispatchEvent(new Event('beforeprint'))
      const pack = document.getElementById('print')
      pack?.remove()
      return pack !== null
    })
  await expect.poll(isThere).toBe(true)
}
