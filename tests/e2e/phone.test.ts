import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { answer, opened, words } from '../support/page.ts'
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

it('the whole job fits a phone: start, goal, way, amounts, shopping, hazards, log by the thumb index', async () => {
  const page = await opened(browser, server.url, { width: 390, height: 844 })
  const fits = async (where: string): Promise<void> => {
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect(over, `too wide: ${where}`).toBeLessThanOrEqual(0)
  }
  await fits('first page')
  await page.getByLabel('I have').fill('24 g benzoin')
  // The list under a blank covers neither the other blank nor the button: a press that something covers would time out.
  await page.getByLabel('I want').click()
  await page.getByLabel('I want').fill('lo')
  await page.getByRole('option').first().waitFor()
  await page.getByLabel('I want').fill('lophine')
  await page.getByRole('option', { name: /^lophine/ }).waitFor()
  await page.getByRole('button', { name: 'See what it can become' }).click()
  await expect.poll(() => answer(page, /How much/)).toMatch(/\d g/)
  const thumbs = page.getByRole('navigation', { name: 'Questions' }).getByRole('button')
  expect(await thumbs.count()).toBe(7)
  for (let at = 0; at < 7; at++) {
    const { height } = (await thumbs.nth(at).boundingBox())!
    expect(height).toBeGreaterThanOrEqual(44)
    await thumbs.nth(at).click()
    await expect.poll(() => page.locator(`#q${at + 1}`).getAttribute('open')).not.toBeNull()
    await page.waitForTimeout(300)
    await fits(`question ${at + 1}`)
  }
  // Nothing under 12 px, subscripts and charges apart (the look, 2).
  await thumbs.nth(3).click()
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('body *')]
      .filter(node => [...node.childNodes].some(child => child.nodeType === Node.TEXT_NODE && (child.textContent ?? '').trim() !== ''))
      .filter(node => node.getClientRects().length > 0 && !node.closest('sub, sup, .unseen, option, svg'))
      .filter(node => Number.parseFloat(getComputedStyle(node).fontSize) < 12)
      .map(node => `${node.tagName} ${node.className} ${node.textContent?.slice(0, 30)}`),
  )
  expect(small).toEqual([])
  expect(await words(page.locator('.map'))).toMatch(/benzil/)
  expect(page.faults).toEqual([])
  await page.close()
})

it('the ready examples fit a phone: many steps with their amounts, long notes under the shopping list', async () => {
  const page = await opened(browser, server.url, { width: 375, height: 812 })
  for (const [example, questions] of [
    ['Benzoin downstream', [3, 4]],
    ['Castor oil to a nylon', [4, 5]],
  ] as const) {
    await page.getByRole('button', { name: example }).first().click()
    await expect.poll(() => answer(page, /What do I need/)).toMatch(/\d\d/)
    for (const at of questions) {
      await page
        .getByRole('navigation', { name: 'Questions' })
        .getByRole('button')
        .nth(at - 1)
        .click()
      await expect.poll(() => page.locator(`#q${at}`).getAttribute('open')).not.toBeNull()
      await page.waitForTimeout(300)
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
      expect(over, `${example}, question ${at}`).toBeLessThanOrEqual(0)
      // A way that stands off the screen is told.
      if (at === 3) expect(await words(page.locator('.slide'))).toMatch(/slide the table/)
    }
    await page.goto(server.url)
  }
  await page.close()
})
