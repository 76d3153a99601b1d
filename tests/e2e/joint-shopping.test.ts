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

it('a smaller budget changes routes and basket on the sheet and says why; a bad table keeps its lines', async () => {
  const page = await opened(browser, server.url)
  await page
    .getByRole('button', { name: /Benzoin downstream/ })
    .first()
    .click()
  await expect.poll(() => answer(page, /What do I need/), { timeout: 60_000 }).toMatch(/€ \d/)
  const need = await question(page, /What do I need/)
  await need.getByText('The cheapest way to all goals').click()
  await need.getByRole('button', { name: 'Find and take it' }).click()
  await expect.poll(() => words(need), { timeout: 60_000 }).toMatch(/The cheapest of \d+ ways: € 70\.40 and 1 unknown, proven/)
  await expect.poll(() => answer(page, /What do I need/), { timeout: 60_000 }).toMatch(/€ 70\.40/)

  await need.getByLabel(/budget/).fill('70')
  await need.getByRole('button', { name: 'Find and take it' }).click()
  await expect.poll(() => words(need), { timeout: 60_000 }).toMatch(/The limits change the way\. Making benzil by .*saves € 2\.00/)
  await expect.poll(() => answer(page, /What do I need/), { timeout: 60_000 }).toMatch(/€ 68\.40/)
  await need.getByLabel(/budget/).fill('60')
  await need.getByRole('button', { name: 'Find and take it' }).click()
  await expect.poll(() => words(need), { timeout: 60_000 }).toMatch(/€ 8\.40 more than the budget of € 60\.00/)

  // What an hour of hands must save decides whether a solvent is worth distilling off.
  await need.getByText('Left over, other baskets, solvents').click()
  await need.getByText('When a solvent is worth distilling off').click()
  await expect.poll(() => words(need)).toMatch(/got back/)
  expect(await words(need)).toMatch(/less than 100 mL would come back/)
  for (const label of [/Not worth it below/, /An hour must save/]) {
    await need.getByLabel(label).fill('0')
    await need.getByLabel(label).blur()
  }
  await expect.poll(() => words(need), { timeout: 20_000 }).toMatch(/Worth it: it saves what the hours ask for/)

  const have = await question(page, /What have I got/)
  const table = 'material;amount\nacetone;0,5 L\nethanoll;1 L\n'
  await have.locator('.table-file input[type=file]').setInputFiles({ name: 'shelf.csv', mimeType: 'text/csv', buffer: Buffer.from(table) })
  await expect.poll(() => words(have), { timeout: 20_000 }).toMatch(/one bottle taken from shelf\.csv/)
  expect(await words(have)).toMatch(/no material "ethanoll"/)
  const kept = have.getByLabel('Not taken; correct it here')
  expect(await kept.inputValue()).toBe('material;amount\nethanoll;1 L')
  await kept.fill('material;amount\nethanol;1 L')
  await have.getByRole('button', { name: 'Read it again' }).click()
  await expect.poll(() => kept.count(), { timeout: 20_000 }).toBe(0)
  expect(page.faults.filter(fault => !/422/.test(fault))).toEqual([])
  await page.close()
}, 180_000)

it('a basket that takes long is stopped on the sheet, and one is taken at once with how much could be saved', async () => {
  const page = await opened(browser, server.url)
  await page
    .getByRole('button', { name: /Benzoin downstream/ })
    .first()
    .click()
  await expect.poll(() => new URL(page.url()).searchParams.get('plan'), { timeout: 30_000 }).not.toBeNull()
  const address = `${server.url}/api/v1/plans/${new URL(page.url()).searchParams.get('plan')}`
  const { plan, version } = await (await fetch(address)).json()
  const url = page.url()
  await page.close()
  // Twelve suppliers whose minimum orders bind: far beyond what is solved while one waits.
  const materials: string[] = [...new Set<string>(plan.packs.packs.map((pack: { material: string }) => pack.material))]
  const suppliers = Array.from({ length: 12 }, (_, s) => ({
    id: `s${s}`,
    name: `Invented ${s}`,
    carriageMinor: 400 + 97 * s,
    hazardousFeeMinor: 300 + ((s * 211) % 700),
    minimumOrderMinor: 3000 + ((s * 337) % 1500),
  }))
  const packs = materials.flatMap((material, m) =>
    suppliers.flatMap(({ id }, s) =>
      [7, 18, 41].map((amount, p) => ({
        supplier: id,
        material,
        amount,
        unit: plan.packs.packs
          .find((pack: { material: string }) => pack.material === material)
          .unit.replace(/^k|^L$/, (u: string) => (u === 'L' ? 'mL' : '')),
        priceMinor: 120 + ((m * 131 + s * 77 + p * 53) % 97) + [90, 200, 390][p]!,
      })),
    ),
  )
  const put = await fetch(address, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ onVersion: version, plan: { ...plan, packs: { ...plan.packs, suppliers, packs } } }),
  })
  expect(put.status, await put.text()).toBe(200)
  const again = await opened(browser, url)
  const need = await question(again, /What do I need/)
  await need.getByRole('button', { name: 'Stop, take one at once' }).click({ timeout: 30_000 })
  await expect
    .poll(() => words(need), { timeout: 20_000 })
    .toMatch(
      /The search for the cheapest basket was stopped\. This basket is the best found\. None costs less than € [\d.]+: at most € [\d.]+/,
    )
  expect(again.faults).toEqual([])
  await again.close()
}, 90_000)
