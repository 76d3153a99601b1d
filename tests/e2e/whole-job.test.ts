import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bundled } from '../../server/library/bundled.ts'
import { launchBrowser } from '../support/browser.ts'
import { clean, opened, paper, question, words } from '../support/page.ts'
import { type Served, served } from '../support/served.ts'
import { unmarkedFigures } from '../support/unmarked-figures.ts'

const folder = mkdtempSync(join(tmpdir(), 'waybench-e2e-'))
let browser: Browser
let server: Served
beforeAll(async () => {
  browser = await launchBrowser()
  server = await served(folder)
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
  rmSync(folder, { recursive: true, force: true })
})

describe('a newcomer with 24 g of benzoin', () => {
  it('gets from what they have to a printed pack, and finds the plan again after a restart', async () => {
    const page = await opened(browser, server.url)
    // What have I got?
    await page.getByLabel('I have').fill('24 g benzoin')
    await page.getByRole('button', { name: 'See what it can become' }).click()
    // What can it become?
    const become = await question(page, /What can it become/)
    await become.getByText('benzil', { exact: true }).first().waitFor()
    expect(await words(become)).toMatch(/hexaphenylbenzene/)
    await become.getByRole('checkbox', { name: /^lophine/ }).check()
    // Which way?
    const way = await question(page, /Which way/)
    // Yields on start: 0.9588 x 0.90 by nitric acid, 0.91 x 0.90 by ammonium nitrate.
    await expect.poll(async () => words(way)).toMatch(/Yield on start 86.3 % 81.9 %/)
    // How much? 24 g / 212.25 g/mol x 0.9588 x 0.90 x 296.37 g/mol = 28.9 g with nitric acid, at typical yields.
    const amount = await question(page, /How much/)
    await expect.poll(async () => words(amount)).toMatch(/2[6-9]\.\d g/)
    // Each amount says how sure it is: what the record of lophine has from memory no less than what was typed or read.
    const tables = amount.locator('.step')
    const markAt = (material: RegExp) =>
      tables.locator('tr:not(.in)', { has: page.getByRole('rowheader', { name: material }) }).locator('td [data-mark]')
    for (const [material, mark] of [
      [/^benzoin/, 'typed'],
      [/^nitric acid/, 'seen'],
      [/^benzaldehyde/, 'seen'],
      [/^ammonium acetate/, 'remembered'],
      [/^acetic acid/, 'remembered'],
      [/^ammonia, 25/, 'derived'],
    ] as const)
      expect(await markAt(material).first().getAttribute('data-mark'), String(material)).toBe(mark)
    const names = [...bundled().library.materials.values()].map(one => one.name)
    const drawn = (await tables.evaluateAll(all => all.map(one => one.outerHTML))).join('')
    expect(unmarkedFigures(drawn, names)).toEqual([])
    expect(unmarkedFigures(drawn.replaceAll('data-mark=', 'data-other='), names).length).toBeGreaterThan(20)
    const letters = new Set([...drawn.matchAll(/data-letter="(.)"/g)].map(([, letter]) => letter))
    expect(await amount.locator('.mk-key').allTextContents()).toEqual(expect.arrayContaining([...letters]))
    // What do I need?
    const need = await question(page, /What do I need/)
    await expect.poll(async () => words(need)).toMatch(/ammonium acetate/)
    expect(await words(need)).toMatch(/price unknown/)
    // What can hurt?
    const hurt = await question(page, /What can hurt/)
    const hurts = await words(hurt)
    expect(hurts).toMatch(/no hazard data: read its safety data sheet/i)
    expect(hurts).not.toMatch(/no hazards/i)
    // The pack.
    const pages = await paper(page)
    expect(pages.length).toBeGreaterThan(3)
    const text = clean(pages.map(p => p.text).join(' '))
    for (const said of ['benzoin', 'benzil', 'lophine', 'ammonium acetate', 'benzaldehyde']) expect(text).toContain(said)
    expect(text).toMatch(/do not work alone/i)
    // Saved by itself, and there again after the server was restarted.
    await expect.poll(async () => (await fetch(`${server.url}/api/v1/plans`).then(reply => reply.json())).plans.length).toBe(1)
    // The page learns its address from the reply, a moment after the server has the plan.
    await expect.poll(() => page.url()).toMatch(/[?&]plan=/)
    expect(page.faults).toEqual([])
    const address = new URL(page.url())
    await server.close()
    server = await served(folder)
    const again = await opened(browser, server.url)
    await again.goto(`${server.url}${address.pathname}${address.search}${address.hash}`)
    await again.locator('summary', { hasText: 'How much' }).waitFor()
    const amountAgain = await question(again, /How much/)
    await expect.poll(async () => words(amountAgain)).toMatch(/2[6-9]\.\d g/)
    await page.close()
    await again.close()
  })
})

describe('the demo', () => {
  it('recomputes when the amount moves, opens its workings and flips a co-reactant to made', async () => {
    const page = await opened(browser, server.url)
    await page.getByText('Benzoin downstream').first().click()
    const amount = await question(page, /How much/)
    await expect.poll(async () => words(amount)).toMatch(/benzoin/)
    const before = await words(amount.locator('summary').first())
    const slider = page.getByRole('slider').first()
    await slider.focus()
    for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowLeft')
    await expect.poll(async () => words(amount.locator('summary').first())).not.toBe(before)
    // A figure opens its working in place.
    const figure = amount.getByRole('button', { name: /\d/ }).first()
    await figure.click()
    await expect.poll(async () => words(amount)).toMatch(/[÷×=]/)
    // Buy or make.
    const make = page.getByRole('radio', { name: /make/ }).first()
    await make.click()
    await expect.poll(async () => words(page.locator('body'))).toMatch(/benzyl alcohol|toluene|cinnamaldehyde|benzaldehyde/)
    // An entry page stands before the plan and goes again: the map is there as it was.
    await question(page, /Which way/)
    await page.getByRole('button', { name: 'Write a preparation of your own' }).first().click()
    await page.getByRole('button', { name: 'Back to the plan' }).click()
    await expect.poll(() => words(page.locator('.scheme-room'))).toMatch(/lophine/)
    expect(page.faults).toEqual([])
    await page.close()
  })

  it.each(['Benzoin downstream', 'Castor oil to a nylon', 'Copper scrap round its salts', 'Cinnamon bark to its oil and on'])(
    'prints %s on A4 and Letter with nothing cut and the cautions on each page',
    async title => {
      const page = await opened(browser, server.url)
      await page.getByText(title).first().click()
      await expect.poll(async () => words(await question(page, /How much/))).toMatch(/\d g/)
      for (const format of ['A4', 'Letter'] as const) {
        const pages = await paper(page, format)
        expect(pages.length).toBeGreaterThan(3)
        for (const [at, one] of pages.entries()) {
          expect(clean(one.text), `page ${at + 1}`).toMatch(/safety data sheet/i)
          expect(one.right, `right edge of page ${at + 1}`).toBeLessThan(one.width - 14)
          expect(one.bottom, `foot of page ${at + 1}`).toBeGreaterThan(10)
        }
        const text = clean(pages.map(p => p.text).join(' '))
        expect(text).not.toMatch(/\bno hazards\b/i)
        expect(text).toMatch(/Lantern Street Workshop/)
      }
      expect(page.faults).toEqual([])
      await page.close()
    },
  )
})

describe('trouble', () => {
  it('is told in words with a way on: nothing of that name, no amount, an amount nobody weighs', async () => {
    const page = await opened(browser, server.url)
    await page.getByLabel('I have').fill('24 parsecs benzoin')
    await page.getByRole('button', { name: 'See what it can become' }).click()
    await expect.poll(async () => words(page.locator('main'))).toMatch(/parsecs/)
    await page.getByLabel('I have').fill('24 g benzion')
    await page.getByRole('button', { name: 'See what it can become' }).click()
    await expect.poll(async () => words(page.locator('main'))).toMatch(/benzion[\s\S]*benz/)
    expect(page.faults).toEqual([])
    await page.close()
  })

  it('of a silent server leaves the plan and its arithmetic', async () => {
    const page = await opened(browser, server.url)
    await page.getByText('Benzoin downstream').first().click()
    const amount = await question(page, /How much/)
    await expect.poll(async () => words(amount)).toMatch(/\d g/)
    await page.route('**/api/**', route => route.abort())
    const before = await words(amount.locator('summary').first())
    const slider = page.getByRole('slider').first()
    await slider.focus()
    for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowLeft')
    await expect.poll(async () => words(amount.locator('summary').first())).not.toBe(before)
    await page.close()
  })
})
