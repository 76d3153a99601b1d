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

it('a forbidden hazard or a smaller budget changes routes and basket on the sheet and says why; a bad table keeps its lines', async () => {
  const page = await opened(browser, server.url)
  await page
    .getByRole('button', { name: /Benzoin downstream/ })
    .first()
    .click()
  await expect.poll(() => answer(page, /What do I need/)).toMatch(/€ \d/)
  const need = await question(page, /What do I need/)
  await need.getByText('The cheapest way to all goals').click()
  await need.getByRole('button', { name: 'Find and take it' }).click()
  await expect.poll(() => words(need)).toMatch(/The cheapest of \d+ ways: € 70\.40 and 1 unknown, proven/)
  await expect.poll(() => answer(page, /What do I need/)).toMatch(/€ 70\.40/)

  // Nitrogen dioxide is H330, fatal if inhaled: Regulation (EC) 1272/2008, Annex VI, index number 007-002-00-0.
  const toBuy = need.locator('table.shop')
  expect(await words(toBuy)).toMatch(/nitric acid/)
  await need.getByLabel(/budget/).fill('500')
  const way = await question(page, /Which way/)
  await way.getByLabel('a hazard statement to avoid').selectOption('H330')
  await expect.poll(() => answer(page, /Which way/)).toMatch(/Three ways without H330; the plan still uses .*nitrogen dioxide/)
  expect(await words(way)).not.toMatch(/HNO3/)
  // One question stands open at a time; the limits written in this one are as they were.
  await question(page, /What do I need/)
  expect(await need.getByLabel(/budget/).inputValue()).toBe('500')
  await need.getByRole('button', { name: 'Find and take it' }).click()
  await expect
    .poll(() => words(need))
    .toMatch(
      /The limits change the way\. Making benzil by [^.]*ammonium nitrate” rather than by [^.]*concentrated nitric acid”.*spares nitrogen dioxide/,
    )
  await expect.poll(() => answer(page, /What do I need/)).toMatch(/€ 68\.40/)
  await expect.poll(() => words(toBuy)).toMatch(/ammonium nitrate/)
  expect(await words(toBuy)).not.toMatch(/nitric acid/)
  expect(await answer(page, /What can hurt/)).not.toMatch(/[Nn]itric acid|nitrogen dioxide/)
  await question(page, /Which way/)
  await way.getByRole('button', { name: 'allow anything with H330' }).click()
  await question(page, /What do I need/)

  await need.getByLabel(/budget/).fill('70')
  await need.getByRole('button', { name: 'Find and take it' }).click()
  await expect.poll(() => words(need)).toMatch(/The limits change the way\. Making benzil by .*saves € 2\.00/)
  await expect.poll(() => answer(page, /What do I need/)).toMatch(/€ 68\.40/)
  await need.getByLabel(/budget/).fill('60')
  await need.getByRole('button', { name: 'Find and take it' }).click()
  await expect.poll(() => words(need)).toMatch(/€ 8\.40 more than the budget of € 60\.00/)

  // What an hour of hands must save decides whether a solvent is worth distilling off.
  await need.getByText('Left over, other baskets, solvents').click()
  await need.getByText('When a solvent is worth distilling off').click()
  await expect.poll(() => words(need)).toMatch(/got back/)
  expect(await words(need)).toMatch(/less than 100 mL would come back/)
  for (const label of [/Not worth it below/, /An hour must save/]) {
    await need.getByLabel(label).fill('0')
    await need.getByLabel(label).blur()
  }
  await expect.poll(() => words(need)).toMatch(/Worth it: it saves what the hours ask for/)

  const have = await question(page, /What have I got/)
  const give = (text: string) =>
    have.locator('.table-file input[type=file]').setInputFiles({ name: 'shelf.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
  // A heading that is none: nothing is taken, the whole table stays.
  const wrong = 'material;ammount\nacetone;0,5 L\n'
  await give(wrong)
  const kept = have.getByLabel('Not taken; correct it here')
  await expect.poll(() => words(have)).toMatch(/no bottles? taken from shelf\.csv/i)
  expect(await words(have)).toMatch(/"ammount"/)
  expect(await kept.inputValue()).toBe(wrong)

  // One good line among four bad ones: each is answered by its number, and none is lost though another question is opened meanwhile.
  const bad = ['ethanoll;1 L', 'toluene;plenty', 'acetone;0,5 L', 'toluene;1 L;of Tuesday']
  await give(`material;amount\nacetone;0,5 L\n${bad.join('\n')}\n`)
  await expect.poll(() => words(have)).toMatch(/one bottle taken from shelf\.csv/)
  const told = await words(have)
  expect(told).toMatch(/no material "ethanoll"/)
  for (const line of [3, 4, 5, 6]) expect(told).toContain(`line ${line}`)
  await question(page, /What do I need/)
  await question(page, /What have I got/)
  expect(await kept.inputValue()).toBe(['material;amount', ...bad].join('\n'))
  expect(await words(have)).toMatch(/no material "ethanoll"/)
  await kept.fill('material;amount\nethanol;1 L')
  await have.getByRole('button', { name: 'Read it again' }).click()
  await expect.poll(() => kept.count()).toBe(0)

  // Prices say where they were got: those of the demo that they are invented, one that is put down what its keeper states.
  await question(page, /What do I need/)
  expect(await words(need)).toMatch(/All prices: i invented: made up for the demonstration/)
  await need.getByText('I know a price').click()
  await need.getByLabel('supplier').fill('Harbour Street')
  await need.getByLabel('size of the pack').fill('25 g')
  await need.getByLabel('size of the pack').blur()
  await need.getByLabel(/^price, EUR/).fill('18.50')
  await need.getByLabel('where it is from').fill('list of November, page 4')
  await need.getByLabel('how sure').selectOption('seen')
  await need.getByLabel('on', { exact: true }).fill('2026-11-03')
  await need.getByRole('button', { name: 'Put it down' }).click()
  await expect.poll(() => words(need)).toMatch(/s seen in a source: list of November, page 4, 2026-11-03/)
  await need.getByRole('img', { name: 'seen in a source' }).first().waitFor()
  // A known price is written over, tells what it stands in place of, and goes back.
  await need.getByLabel(/^material/).selectOption({ label: 'ammonium acetate' })
  await need
    .getByRole('button', { name: /^another price/ })
    .first()
    .click()
  await need.getByLabel(/^price, EUR/).fill('1.25')
  await need.getByLabel('how sure').selectOption('own bench')
  await need.getByRole('button', { name: /^Put it in place of € \d/ }).click()
  await expect.poll(() => words(need)).toMatch(/Own price of \d+ g from [^,]+, in place of € \d+\.\d\d/)
  await need.getByRole('button', { name: /^back to € \d/ }).click()
  await expect.poll(() => words(need)).not.toMatch(/in place of €/)
  expect(page.faults.filter(fault => !/422/.test(fault))).toEqual([])
  await page.close()
})

it('a basket that takes long is stopped on the sheet, and one is taken at once with how much could be saved', async () => {
  const page = await opened(browser, server.url)
  await page
    .getByRole('button', { name: /Benzoin downstream/ })
    .first()
    .click()
  await expect.poll(() => new URL(page.url()).searchParams.get('plan')).not.toBeNull()
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
    minimumOrderMinor: 6000 + ((s * 337) % 1500),
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
  await need.getByRole('button', { name: 'Stop, take one at once' }).click()
  await expect
    .poll(() => words(need))
    .toMatch(
      /The search for the cheapest basket was stopped\. This basket is the best found\. None costs less than € [\d.]+: at most € [\d.]+/,
    )
  expect(again.faults).toEqual([])
  await again.close()
})
