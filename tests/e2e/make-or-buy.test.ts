import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { covering } from '../support/networks/hard.ts'
import { libraryText } from '../support/networks/library-text.ts'
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
    .check()
  await expect.poll(() => answer(page, /Which way/)).toMatch(/Catalytic copper/)

  const amount = await question(page, /How much/)
  const working = async (): Promise<string> => {
    const figure = amount.getByRole('button', { name: /median of hexaphenylbenzene/ })
    if ((await figure.getAttribute('aria-expanded')) !== 'true') await figure.click()
    return words(amount)
  }
  await expect.poll(working).toMatch(/at typical yields 43\.259 g/)
  await page
    .getByRole('radiogroup', { name: /diphenylacetylene/ })
    .getByRole('radio', { name: /make/ })
    .click()
  await expect.poll(working).toMatch(/at typical yields 11\.147 g/)
  expect(await words(amount)).toMatch(/Overall yield on start 36\.9 %/)
  const need = await question(page, /What do I need/)
  await expect.poll(() => words(need)).toMatch(/hydrazine/)
  expect(await words(need)).not.toMatch(/\bdiphenylacetylene\b/)

  await question(page, /How much/)
  await page
    .getByRole('radiogroup', { name: /diphenylacetylene/ })
    .getByRole('radio', { name: /buy/ })
    .click()
  await expect.poll(working).toMatch(/at typical yields 43\.259 g/)
  expect(page.faults).toEqual([])
  await page.close()
})

it('the list of ways grows in front of the reader, can be stopped, and says at its end that these are all', async () => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
  // The server searches, over a line that, once held, lets a way through only when told to.
  await page.route('**/api/v1/library', route => route.abort())
  await page.addInitScript(() => {
    const { fetch } = window
    const line = Object.assign(window, { held: false, next: null as (() => void) | null })
    window.fetch = async (address, init) => {
      const reply = await fetch(address, init)
      if (!String(address).endsWith('/routes/stream') || !reply.ok) return reply
      const lines = (await reply.text()).split(/(?<=\n)/)
      const body = new ReadableStream({
        async pull(stream) {
          const told = lines.shift()
          if (told === undefined) return stream.close()
          if (line.held && 'row' in JSON.parse(told))
            await new Promise<void>(go => {
              line.next = go
            })
          stream.enqueue(new TextEncoder().encode(told))
        },
      })
      return new Response(body, { status: 200 })
    }
  })
  const hold = (held: boolean) => page.evaluate(now => void Object.assign(window, { held: now }), held)
  const letOneThrough = async () => {
    await page.waitForFunction(() => (window as unknown as { next: unknown }).next !== null)
    await page.evaluate(() => {
      const line = window as unknown as { next: (() => void) | null }
      line.next?.()
      line.next = null
    })
  }
  await page.goto(server.url)
  await page.getByLabel('I have').fill('24 g benzoin')
  await page.getByLabel('I want').fill('lophine')
  await page.getByRole('button', { name: 'See what it can become' }).click()
  const way = page.locator('details', { has: page.locator('summary', { hasText: /Which way/ }) }).first()
  await way.locator('summary').first().click()
  await way.getByText(/These are all four ways/).waitFor()
  await hold(true)
  await way.getByLabel('Ranked by').selectOption('steps')
  for (const told of ['1 way found, still looking', '2 ways found, still looking', '3 ways found, still looking']) {
    await letOneThrough()
    await expect.poll(() => words(way)).toContain(told)
    await expect.poll(() => way.getByRole('columnheader').count()).toBe(Number(told[0]) + 1)
  }
  await letOneThrough()
  await expect.poll(() => words(way)).toMatch(/Their order by steps is proven/)
  const stop = way.getByRole('button', { name: 'Stop looking' })
  await expect.poll(() => stop.count()).toBe(0)
  // Whoever has seen enough says so, and the server is told by the search's own id.
  const told = page.waitForRequest(request => request.method() === 'DELETE')
  await way.getByLabel('Ranked by').selectOption('elapsed')
  await stop.click()
  expect((await told).url()).toMatch(/routes\/stream\/[0-9a-f-]{36}$/)
  await hold(false)
  await letOneThrough()
  await way.getByText(/These are all four ways/).waitFor()
  await page.close()
})

it('the best by shared steps is not proven by the search, says how far it may be off, and is proven on request', async () => {
  // Fifteen parts from few intermediates: 1 + 15 steps and three for each intermediate, so that the number of steps is one more than a
  // multiple of three, whatever is chosen.
  const { network, start, target } = covering(15, 13, 8)
  const yields = new Float64Array(network.arcs.length).fill(0.8)
  const hours = new Float64Array(network.arcs.length).fill(2)
  const folder = mkdtempSync(join(tmpdir(), 'covering-'))
  writeFileSync(join(folder, 'covering.json'), libraryText({ network, yields, hours, ownCost: hours, name: '' } as never))
  const other = await served(':memory:', [join(folder, 'covering.json')])
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
  await page.goto(other.url)
  await page.getByLabel('I have').fill(`24 g compound ${network.compounds[start]}`)
  await page.getByLabel('I want').fill(`compound ${network.compounds[target]}`)
  await page.getByRole('button', { name: 'See what it can become' }).click()
  const way = page.locator('details', { has: page.locator('summary', { hasText: /Which way/ }) }).first()
  await way.locator('summary').first().click()
  await way.getByLabel('Ranked by').selectOption('steps')
  // Should the search come to prove it by itself, the solver is asked for nothing, and the same is said.
  await expect
    .poll(() => words(way))
    .toMatch(/by steps; it is at most \d+ % above the proven bound|proven the best by steps|order by steps is proven/)
  const steps = async (): Promise<number> => Number(/ Steps (\d+) /.exec(await words(way))?.[1])
  const found = await steps()
  await way.getByText('have the first proven the best').click()
  await expect.poll(() => words(way)).toMatch(/The first is proven the best by steps|Their order by steps is proven/)
  await expect.poll(steps).toBeLessThanOrEqual(found)
  // What HiGHS finds in Node for the same covering, and what listing all 8192 sets of intermediates finds.
  expect(await steps()).toBe(28)
  await page.close()
  await other.close()
  rmSync(folder, { recursive: true })
})
