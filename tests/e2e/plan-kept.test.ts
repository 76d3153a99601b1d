import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { libraryFileOf, printLibraryFile } from '../../core/library/print.ts'
import { bundled } from '../../server/library/bundled.ts'
import { launchBrowser } from '../support/browser.ts'
import { answer, opened, question, settled, words } from '../support/page.ts'
import { type Served, served } from '../support/served.ts'

let browser: Browser
let folder: string
let server: Served
beforeAll(async () => {
  browser = await launchBrowser()
})
afterAll(async () => {
  await browser?.close()
})
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waybench-e2e-'))
})
afterEach(async () => {
  await server?.close()
  rmSync(folder, { recursive: true, force: true })
})

describe('a plan that is kept', () => {
  it('comes back in another browser after a restart, with how its routes were looked for', async () => {
    server = await served(folder)
    const page = await opened(browser, server.url)
    await page.getByText('Benzoin downstream').first().click()
    const way = await question(page, /Which way/)
    await way.getByLabel('Ranked by').selectOption('hazard')
    await way.getByLabel('a hazard statement to avoid').selectOption('H350')
    await way.getByLabel('a material to avoid, in any role').fill('benzene')
    await way
      .getByRole('option', { name: /^benzene\b/ })
      .first()
      .click()
    await expect.poll(() => words(way)).toMatch(/benzene allow.*anything with H350 allow/)
    await expect.poll(() => answer(page, /What do I need/)).toMatch(/€/)
    const amounts = await answer(page, /How much/)
    await settled(page)
    const { pathname, search } = new URL(page.url())
    await page.close()
    await server.close()

    server = await served(folder)
    const again = await opened(browser, `${server.url}${pathname}${search}`)
    await expect.poll(() => answer(again, /How much/)).toBe(amounts)
    const wayAgain = await question(again, /Which way/)
    await expect.poll(() => words(wayAgain)).toMatch(/benzene allow.*anything with H350 allow/)
    expect(await wayAgain.getByLabel('Ranked by').inputValue()).toBe('hazard')
    expect(again.faults).toEqual([])
    await again.close()
  })

  it('can be deleted, but not by one press', async () => {
    server = await served(folder)
    const page = await opened(browser, server.url)
    await page.getByText('Copper scrap round its salts').first().click()
    await expect.poll(() => answer(page, /How much/)).toMatch(/\d g/)
    await settled(page)
    await page.getByRole('link', { name: 'Waybench' }).click()
    const kept = page.getByRole('region', { name: 'Plans kept here' })
    await kept.getByRole('button', { name: /^delete/ }).click()
    await expect.poll(() => words(kept)).toMatch(/no way back/)
    await kept.getByRole('button', { name: /^Delete/ }).click()
    await kept.waitFor({ state: 'detached' })
    expect((await fetch(`${server.url}/api/v1/plans`).then(reply => reply.json())).plans).toEqual([])
    await page.close()
  })

  it('says what changed in the library, reckons with the new, or goes on with the old', async () => {
    const own = join(folder, 'own.json')
    const { library } = bundled()
    const write = (typical: number): void => {
      const transformations = new Map(library.transformations)
      const lophine = transformations.get('lophine')!
      transformations.set('lophine', { ...lophine, yieldPercent: { low: typical - 10, typical, high: typical + 5 } })
      writeFileSync(own, printLibraryFile(libraryFileOf({ ...library, transformations })))
    }
    write(90)
    server = await served(folder, [own])
    const page = await opened(browser, server.url)
    await page.getByLabel('I have').fill('24 g benzoin')
    await page.getByLabel('I want').fill('lophine')
    await page.getByRole('button', { name: 'See what it can become' }).click()
    await expect.poll(() => answer(page, /How much/)).toMatch(/\d g/)
    const old = await answer(page, /How much/)
    await settled(page)
    const { search } = new URL(page.url())
    await page.close()
    await server.close()

    write(60)
    server = await served(folder, [own])
    const again = await opened(browser, `${server.url}/${search}`)
    await expect.poll(() => words(again.locator('body'))).toMatch(/The library here differs from what this plan was saved with/)
    expect(await words(again.locator('.trouble'))).toMatch(
      /one transformation.*Until you choose, this page reckons with the new.*Lophine .* changed since.*yield: 80–95.%, typically 90.* → 50–65.%, typically 60/,
    )
    await expect.poll(() => answer(again, /How much/)).toMatch(/\d g/)
    expect(await answer(again, /How much/)).not.toBe(old)
    await again.getByRole('button', { name: 'Keep the old' }).click()
    await expect.poll(() => answer(again, /How much/)).toBe(old)
    expect(await again.locator('.trouble').count()).toBe(0)
    // Remembered with the plan: it is not asked again, what differs is still told, and there is a way back.
    await settled(again)
    await again.reload()
    await expect.poll(() => words(again.locator('.records-kept'))).toMatch(/keeps the records.*one transformation/)
    await expect.poll(() => answer(again, /How much/)).toBe(old)
    expect(await again.locator('.trouble').count()).toBe(0)
    // So too where only this browser has the plan: the server hands out the changed records, and not what was saved.
    await again.route('**/api/v1/plans/**', route => route.abort())
    await again.reload()
    await expect.poll(() => answer(again, /How much/)).toBe(old)
    await again.unroute('**/api/v1/plans/**')
    await again.reload()
    await expect.poll(() => answer(again, /How much/)).toBe(old)
    again.faults.length = 0
    await again.locator('.records-kept summary').click()
    await again.getByRole('button', { name: 'Reckon with the new' }).click()
    await expect.poll(() => answer(again, /How much/)).not.toBe(old)
    expect(again.faults).toEqual([])

    // A run of a step whose record is nowhere any more: the plan cannot be written, which is said, and loses nothing.
    await settled(again)
    await again.evaluate(() => {
      const key = Object.keys(localStorage).find(one => one.startsWith('waybench-draft plan'))!
      const draft = JSON.parse(localStorage.getItem(key)!)
      const run = { id: 'r1', step: 'a-step-that-is-gone', date: '2026-12-03', batch: 1, chargedG: 2, weighedG: 1, dampPercent: 0 }
      draft.state.plan.log = [{ ...run, purity: null, failed: false, note: '', replaces: null }]
      localStorage.setItem(key, JSON.stringify({ ...draft, clean: false }))
    })
    await again.reload()
    await expect.poll(() => answer(again, /How much/)).toMatch(/\d g/)
    await again.getByRole('button', { name: 'the plan', exact: true }).click()
    await expect
      .poll(() => words(again.locator('body')))
      .toMatch(/uses "a-step-that-is-gone".*stay as they are here.*bring it in from a file that holds it/)
    for (const name of ['a table', 'plain text']) {
      const file = again.waitForEvent('download')
      await again.getByRole('button', { name, exact: true }).click()
      expect((await file).suggestedFilename()).toMatch(/\.(csv|txt)$/)
    }
    const draft = await again.evaluate(() => JSON.stringify({ ...localStorage }))
    expect(draft).toContain('a-step-that-is-gone')
    expect(again.faults).toEqual([])
    await again.close()
  })
})
