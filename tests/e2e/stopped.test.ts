import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { planFileOf } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { defaultSettings } from '../../core/plan/settings.ts'
import { openLibrary } from '../../server/library/open.ts'
import { launchBrowser } from '../support/browser.ts'
import { answer, opened, question, words } from '../support/page.ts'
import { type Served, served } from '../support/served.ts'

/**
 * No bundled material ends a plan, so a library of two records does. Phosgene stands in the Chemical Weapons Convention, Annex on Chemicals,
 * Schedule 3A(1), CAS 75-44-5; its destruction by water is all that is said of it here.
 */
const sources = [{ citation: 'invented for a test', checked: false }]
const listed = {
  format: 'waybench-library',
  version: 1,
  title: 'A listed substance',
  materials: [
    {
      id: 'phosgene',
      name: 'phosgene',
      kind: 'compound',
      formula: 'CCl2O',
      cas: '75-44-5',
      smiles: 'O=C(Cl)Cl',
      form: 'gas',
      buyable: false,
      sources,
    },
  ],
  transformations: [
    {
      id: 'phosgene-with-water',
      name: 'Phosgene destroyed by water',
      kind: 'reaction',
      reactants: [
        { compound: 'phosgene', coefficient: 1 },
        { compound: 'water', coefficient: 1 },
      ],
      products: [
        { compound: 'hydrogen-chloride', coefficient: 2 },
        { compound: 'carbon-dioxide', coefficient: 1 },
      ],
      mainProduct: 'hydrogen-chloride',
      limiting: 'phosgene',
      charge: [
        { material: 'phosgene', role: 'substrate', amount: 1, unit: 'g' },
        { material: 'water', role: 'reagent', amount: 100, unit: 'g' },
      ],
      yieldPercent: { low: 90, typical: 95, high: 99 },
      elapsedHours: 1,
      operations: ['stir'],
      equipment: ['gas washing bottle'],
      atmosphere: 'air',
      needsHood: true,
      exotherm: 'mild',
      gasEvolved: [],
      hazardNotes: [],
      confidence: 'memory',
      sources,
    },
  ],
}

const folder = mkdtempSync(join(tmpdir(), 'waybench-stop-'))
const file = join(folder, 'listed.json')
let browser: Browser
let server: Served
beforeAll(async () => {
  writeFileSync(file, JSON.stringify(listed))
  browser = await launchBrowser()
  server = await served(folder, ['bundled', file])
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
  rmSync(folder, { recursive: true, force: true })
})

const told = /Stop.*phosgene.*Chemical Weapons Convention, 1993, Annex on Chemicals/

it('a listed start ends planning on the page, with the full name of the list and no way round', async () => {
  const page = await opened(browser, server.url)
  await page.getByLabel('I have').fill('5 g phosgene')
  await page.getByRole('button', { name: 'See what it can become' }).click()
  await expect.poll(() => words(page.getByRole('alert').first())).toMatch(told)
  expect(await page.getByRole('alert').first().getByRole('button').count()).toBe(0)
  await page.close()
})

it('a plan file that holds one is opened and stopped: nothing is reckoned, nothing is printed', async () => {
  const loaded = openLibrary(['bundled', file])
  if (!loaded.ok) throw new Error(loaded.problems.map(p => `${p.where.join('/')}: ${p.what}`).join('\n'))
  const plan: Plan = {
    title: 'Listed',
    start: { material: 'phosgene', massG: 5 },
    goals: [
      {
        target: 'hydrogen-chloride',
        amount: { kind: 'rest' },
        route: {
          start: 'phosgene',
          target: 'hydrogen-chloride',
          steps: [{ transformation: 'phosgene-with-water', makes: 'hydrogen-chloride' }],
        },
      },
    ],
    shelf: [],
    packs: null,
    settings: defaultSettings,
    log: [],
    seed: 1,
  }
  const path = join(folder, 'plan.json')
  writeFileSync(path, JSON.stringify(planFileOf(loaded.value, plan)))
  const page = await opened(browser, server.url)
  await page.getByLabel('Open a plan file').setInputFiles(path)
  await expect.poll(() => words(page.getByRole('alert').first())).toMatch(told)
  expect(await answer(page, /How much/)).toMatch(/Stopped: nothing is reckoned/)
  const amount = await question(page, /How much/)
  expect(await words(amount)).toMatch(told)
  expect(await words(amount)).not.toMatch(/\d g\b/)
  expect(await page.locator('.map').getByText('phosgene').count()).toBeGreaterThan(0)
  await page.close()
})
