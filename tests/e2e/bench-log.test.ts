import { mkdtempSync, rmSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { molarMassOf } from '../../core/chemistry/formula.ts'
import { evaluate } from '../../core/plan/evaluate.ts'
import { planFromFile } from '../../core/plan/file.ts'
import { massText } from '../../core/quantity/print.ts'
import { demoParts } from '../../server/library/demo.ts'
import { openWorkshop } from '../../server/library/workshop.ts'
import { printed } from '../../server/planning/printed.ts'
import { launchBrowser } from '../support/browser.ts'
import { answer, clean, opened, packWords, paper, question, settled, words } from '../support/page.ts'
import { type Served, served } from '../support/served.ts'
import { waybenchJson } from '../support/terminal.ts'

const folder = mkdtempSync(join(tmpdir(), 'waybench-log-'))
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

/** The rows of the comparison on the first page, as the print layout holds them. */
const compared = (sheet: Page): Promise<string[]> =>
  sheet.evaluate(() => {
    dispatchEvent(new Event('beforeprint'))
    const rows = [...document.querySelectorAll('section.ways tr')].map(row => row.textContent ?? '')
    dispatchEvent(new Event('afterprint'))
    return rows
  })

/** The same of a kept plan as the command line prints it. */
async function comparedByTerminal(id: string): Promise<string[]> {
  const kept = await fetch(`${server.url}/api/v1/plans/${id}`).then(reply => reply.json())
  const opened = planFromFile('plan', kept.plan)
  if (!opened.ok) throw new Error(opened.problems.map(one => one.what).join())
  const { plan } = opened.value
  const workshop = await openWorkshop([])
  const evaluation = evaluate({ library: workshop.library, tables: workshop.tables, traits: workshop.traits(), plan, solver: null })
  if ('stopped' in evaluation) throw new Error('stopped')
  const sheet = await browser.newPage()
  await sheet.setContent(await printed('pack.html', workshop, plan, evaluation, '2026-12-01'))
  const rows = await compared(sheet)
  await sheet.close()
  return rows
}

it('a poor run moves goal, shopping and dates, and shows four ways on', async () => {
  const page = await opened(browser, server.url)
  await page.getByText('Benzoin downstream').first().click()
  await expect.poll(() => answer(page, /What do I need/)).toMatch(/€.*done \d/)
  const before = { amount: await answer(page, /How much/), need: await answer(page, /What do I need/) }

  // On paper once, so that the next print can tell what changed.
  await settled(page)
  const first = await packWords(page)
  expect(first).toMatch(/version \d+ /)
  expect(first).not.toMatch(/changed since version/)

  // The ways side by side are those that the command line prints of the same plan.
  const byTerminal = await comparedByTerminal(new URL(page.url()).searchParams.get('plan')!)
  expect(byTerminal.length).toBeGreaterThan(3)
  await expect.poll(() => compared(page)).toEqual(byTerminal)

  const log = await question(page, /What happened/)
  await log.getByLabel(/^Weighed/).fill('18.0 g')
  await log.getByRole('button', { name: 'Log this run' }).click()
  for (const way of ['Scale down', 'Top up', 'Repeat the step', 'Change route']) await expect.poll(() => words(log)).toContain(way)
  // 24 g benzoin give at most 24 / M(benzoin) x M(benzil) = 23.77 g of benzil; 18.0 g are 76 %.
  expect(Math.round((18 / ((24 / molarMassOf('C14H12O2')) * molarMassOf('C14H10O2'))) * 100)).toBe(76)
  expect(await answer(page, /What happened/)).toMatch(/18\.0 g, 76 % of theory/)

  await expect.poll(() => answer(page, /How much/)).not.toBe(before.amount)
  await expect.poll(() => answer(page, /What do I need/)).not.toBe(before.need)
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

  // The print says which version it is and what changed since the one on the shelf.
  await settled(page)
  expect(clean((await paper(page)).map(one => one.text).join(' '))).toMatch(
    /Version \d+; changed since version \d+: Logged: benzil, 18\.0 g weighed\./,
  )
  expect(page.faults).toEqual([])
  await page.close()
})

it('a correction stands beside what it corrects, and is there again after a restart', async () => {
  const page = await opened(browser, server.url)
  await page.getByText('Benzoin downstream').first().click()
  await expect.poll(() => answer(page, /How much/)).toMatch(/\d g/)
  const log = await question(page, /What happened/)
  await log.getByLabel(/^Weighed/).fill('18.0 g')
  await log.getByRole('button', { name: 'Log this run' }).click()
  await expect.poll(() => answer(page, /What happened/)).toMatch(/18\.0 g, 76 % of theory/)

  // Damp and with all that was noted: the first entry stays and is marked.
  for (const [label, text] of [
    [/^Weighed/, '20.0 g'],
    [/^Still to lose/, '5'],
    [/^Assay/, '98'],
    [/^Melting/, '93–95'],
    [/^Remark/, 'dried again'],
  ] as const)
    await log.getByLabel(label).fill(text)
  await log.getByLabel('Corrects').selectOption({ index: 1 })
  await log.getByRole('button', { name: 'Log this run' }).click()
  await expect.poll(() => words(log)).toMatch(/Corrected below[\s\S]*damp, 5 % to lose, assay 98\.0 %, m\.p\. 93–95 °C, dried again/)
  const [file] = await Promise.all([page.waitForEvent('download'), log.getByRole('button', { name: /the log, corrections/ }).click()])
  const rows = (await readFile(await file.path(), 'utf8')).trim().split('\r\n')
  expect(rows.map(row => row.split(',')[0])).toEqual(['run', 'run-1', 'run-2'])

  // From the server alone: what the page held is gone with it.
  await settled(page)
  const { pathname, search } = new URL(page.url())
  expect(page.faults).toEqual([])
  await page.close()
  await server.close()
  server = await served(folder)
  const again = await opened(browser, `${server.url}${pathname}${search}`)
  await expect.poll(() => answer(again, /What happened/)).toMatch(/18\.6 g, 78 % of theory/)
  await again.close()
})

/** The workshop with whole days, so that a step of eight hours has its day. */
const wholeDays = { ...demoParts().settings, windows: [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: '08:00', hours: 11 })) }

it.each([
  ['an isolation', ['--from', 'cinnamon-bark', '--to', 'cinnamyl-alcohol', '--have', '200 g'], /1\.4 g per 100 g/],
  ['a polymer', ['--from', 'castor-oil', '--to', 'nylon-6-10', '--have', '50 g'], /per repeat unit/],
  ['a two-product step', ['--from', 'corn-cobs', '--to', 'furfuryl-alcohol', '--have', '300 g'], /2-furoic acid/],
])('a route with %s says on the sheet and on paper what the command line says, and a poor run moves it', async (_, way, own) => {
  const files = new Map([['bench.json', JSON.stringify(wholeDays)]])
  const options = ['--settings', 'bench.json', '--packs', 'demo', '--shelf', 'demo', '--save', 'plan.json']
  const { json } = await waybenchJson(['plan', ...way, ...options], files)
  const page = await opened(browser, server.url)
  const upload = { name: 'plan.json', mimeType: 'application/json', buffer: Buffer.from(files.get('plan.json')!) }
  await page.getByLabel('Open a plan file').setInputFiles(upload)
  const goal = json.goals[0]
  await expect.poll(() => answer(page, /How much/)).toContain(clean(massText(goal.medianG)))
  const amount = await question(page, /How much/)
  const told = await words(amount)
  expect(told).toContain(`${massText(goal.p10G).split(/\s/)[0]}–${massText(goal.p90G).split(/\s/)[0]}`)
  expect(told).toContain(`first attempts ${clean(massText(goal.otherHandG))}`)
  expect(told).toMatch(own)
  await amount.locator('summary', { hasText: 'Mass metrics' }).click()
  for (const name of ['E-factor', 'EcoScale', 'Atom economy']) expect((await words(amount)).toLowerCase()).toContain(name.toLowerCase())
  await expect.poll(() => answer(page, /What do I need/)).toMatch(/done \d/)
  const before = { amount: await answer(page, /How much/), need: await answer(page, /What do I need/) }

  const log = await question(page, /What happened/)
  const first = json.steps[0]
  for (let batch = 0; batch < first.batches; batch++) {
    await log.getByLabel(/^Weighed/).fill(`${(first.expectedG / first.batches / 2).toFixed(2)} g`)
    await log.getByRole('button', { name: 'Log this run' }).click()
    await expect.poll(() => log.locator('tbody tr th').count()).toBe(batch + 1)
  }
  await expect.poll(() => answer(page, /How much/)).not.toBe(before.amount)
  await expect.poll(() => answer(page, /What do I need/)).not.toBe(before.need)
  await expect.poll(() => words(log)).toMatch(/Scale down[\s\S]*Top up[\s\S]*Repeat the step[\s\S]*Change route/)
  const printedText = clean((await paper(page)).map(one => one.text).join(' '))
  for (const step of json.steps) expect(printedText).toContain(`Step ${step.number}`)
  expect(printedText).toMatch(own)
  expect(page.faults).toEqual([])
  await page.close()
})
