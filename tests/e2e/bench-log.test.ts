import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { molarMassOf } from '../../core/chemistry/formula.ts'
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

it('a poor run moves goal, shopping and dates, and shows four ways on', async () => {
  const page = await opened(browser, server.url)
  await page.getByText('Benzoin downstream').first().click()
  await expect.poll(() => answer(page, /What do I need/), { timeout: 30_000 }).toMatch(/€.*done \d/)
  const before = { amount: await answer(page, /How much/), need: await answer(page, /What do I need/) }

  const log = await question(page, /What happened/)
  await log.getByLabel(/^Weighed/).fill('18.0 g')
  await log.getByRole('button', { name: 'Log this run' }).click()
  for (const way of ['Scale down', 'Top up', 'Repeat the step', 'Change route'])
    await expect.poll(() => words(log), { timeout: 30_000 }).toContain(way)
  // 24 g benzoin give at most 24 / M(benzoin) x M(benzil) = 23.77 g of benzil; 18.0 g are 76 %.
  expect(Math.round((18 / ((24 / molarMassOf('C14H12O2')) * molarMassOf('C14H10O2'))) * 100)).toBe(76)
  expect(await answer(page, /What happened/)).toMatch(/18\.0 g, 76 % of theory/)

  await expect.poll(() => answer(page, /How much/), { timeout: 20_000 }).not.toBe(before.amount)
  await expect.poll(() => answer(page, /What do I need/), { timeout: 20_000 }).not.toBe(before.need)
  const price = (text: string) => Number(/€ ([\d.]+)/.exec(text)?.[1])
  const after = await answer(page, /What do I need/)
  expect(price(after)).toBeLessThan(price(before.need))
  expect(/done .*/.exec(after)?.[0]).not.toBe(/done .*/.exec(before.need)?.[0])

  // The 5 g goals take their benzil first (yields 0.90 and 0.75); the dienone gets the rest at 0.936.
  const molar = { benzil: molarMassOf('C14H10O2'), lophine: molarMassOf('C21H16N2'), quinoxaline: molarMassOf('C20H14N2') }
  const rest = 18 - ((5 / 0.9) * molar.benzil) / molar.lophine - ((5 / 0.75) * molar.benzil) / molar.quinoxaline
  const dienone = (rest / molar.benzil) * 0.936 * molarMassOf('C29H20O')
  const amount = await question(page, /How much/)
  await amount.getByRole('button', { name: /median of tetraphenylcyclopentadienone/ }).click()
  await expect.poll(() => words(amount)).toMatch(/at typical yields \d/)
  const told = Number(/at typical yields (\d+\.\d+) g/.exec(await words(amount))?.[1])
  expect(told).toBeCloseTo(dienone, 2)
  expect(page.faults).toEqual([])
  await page.close()
})
