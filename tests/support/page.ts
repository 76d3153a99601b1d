import type { Browser, Locator, Page } from 'playwright-core'

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
