import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { answer, opened, question, words } from '../support/page.ts'
import { type Served, served } from '../support/served.ts'

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

// Hand values, 24 g of benzoin by the copper oxidation, at typical yields (yields 0.91, 0.936, 0.84; 0.86 and 0.82 by the dihydrazone):
// bought 43.259 g, made from the same benzil 11.147 g. Reckoned on paper from conventional atomic weights (IUPAC 2021).
it('diphenylacetylene for hexaphenylbenzene is bought, made from the same benzil, and bought again', async () => {
  const page = await opened(browser, server.url)
  await page.getByLabel('I have').fill('24 g benzoin')
  await page.getByLabel('I want').fill('hexaphenylbenzene')
  await page.getByRole('button', { name: 'See what it can become' }).click()
  const way = await question(page, /Which way/)
  await way
    .getByRole('radio', { name: /NH4NO3/ })
    .first()
    .check({ timeout: 30_000 })
  await expect.poll(() => answer(page, /Which way/)).toMatch(/Catalytic copper/)

  const amount = await question(page, /How much/)
  const working = async (): Promise<string> => {
    const figure = amount.getByRole('button', { name: /median of hexaphenylbenzene/ })
    if ((await figure.getAttribute('aria-expanded')) !== 'true') await figure.click()
    return words(amount)
  }
  await expect.poll(working, { timeout: 20_000 }).toMatch(/at typical yields 43\.259 g/)
  await page
    .getByRole('radiogroup', { name: /diphenylacetylene/ })
    .getByRole('radio', { name: /make/ })
    .click()
  await expect.poll(working, { timeout: 20_000 }).toMatch(/at typical yields 11\.147 g/)
  expect(await words(amount)).toMatch(/Overall yield on start 36\.9 %/)
  const need = await question(page, /What do I need/)
  await expect.poll(() => words(need)).toMatch(/hydrazine/)
  expect(await words(need)).not.toMatch(/\bdiphenylacetylene\b/)

  await question(page, /How much/)
  await page
    .getByRole('radiogroup', { name: /diphenylacetylene/ })
    .getByRole('radio', { name: /buy/ })
    .click()
  await expect.poll(working, { timeout: 20_000 }).toMatch(/at typical yields 43\.259 g/)
  expect(page.faults).toEqual([])
  await page.close()
})
