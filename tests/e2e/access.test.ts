import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { answer } from '../support/page.ts'
import { type Served, served } from '../support/served.ts'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
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

interface AxeResult {
  readonly violations: readonly { readonly id: string; readonly impact: string; readonly nodes: readonly { readonly html: string }[] }[]
}

/** What axe finds by WCAG 2.2 AA, as short lines. Its script is evaluated, since the page's own policy stops foreign script tags. */
async function findings(page: Page): Promise<string[]> {
  await page.evaluate(axe)
  const { violations } = await page.evaluate(
    () =>
      (window as unknown as { axe: { run(o: object): Promise<unknown> } }).axe.run({
        runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] },
      }) as Promise<AxeResult>,
  )
  return violations.map(
    v =>
      `${v.impact} ${v.id}: ${v.nodes
        .slice(0, 3)
        .map(n => n.html.slice(0, 160))
        .join(' | ')}`,
  )
}

const sizes = [
  ['a wide screen', 1440, 900, 'light'],
  ['a wide screen in the dark', 1440, 900, 'dark'],
  ['a phone', 390, 844, 'light'],
] as const

describe.each(sizes)('on %s', (_name, width, height, colorScheme) => {
  it('nothing is found by the accessibility checker, on the first page and in every question', async () => {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme })
    await page.goto(server.url)
    await page.getByLabel('I have').waitFor()
    expect(await findings(page)).toEqual([])
    await page.getByText('Benzoin downstream').first().click()
    await page.locator('summary').nth(6).waitFor()
    await expect.poll(async () => page.locator('body').innerText()).toMatch(/€/)
    for (let at = 0; at < 7; at++) {
      const summary = page.locator('details:not(details details) > summary').nth(at)
      await summary.click()
      await page.waitForTimeout(150)
      expect(await findings(page), `question ${at + 1}`).toEqual([])
    }
    await page.close()
  })

  it('nothing is found on the entry pages', async () => {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme })
    const at = async (place: string, until: RegExp): Promise<void> => {
      await page.goto(`${server.url}/?entry=${place}`)
      await expect.poll(async () => page.locator('main').innerText()).toMatch(until)
    }
    await at('write', /Write a preparation/)
    await page.getByRole('button', { name: 'A name that is asked about' }).click()
    await page.getByText('Which bottle').waitFor()
    expect(await findings(page), 'what is asked').toEqual([])
    await page.getByRole('button', { name: 'A condensation, by volume: benzoin' }).click()
    await page.getByRole('button', { name: /^Propose tasks/ }).click()
    await page.getByText('Ready to be saved').waitFor()
    expect(await findings(page), 'a preparation').toEqual([])
    await at('material', /Enter a material/)
    await page.getByLabel('SMILES').fill('CCCCCCOC(=O)CCC')
    await page.getByRole('button', { name: 'Draw it instead' }).click()
    await page.getByText('Ready to be saved').waitFor()
    expect(await findings(page), 'a material').toEqual([])
    await at('file', /Your own library as a file/)
    const reactions = Buffer.from('CCO.CC(=O)O>>CCOC(C)=O.O an ester\nC(>>CC a bad one\n')
    await page.locator('.entry input[type=file]').setInputFiles({ name: 'two.smi', mimeType: 'text/plain', buffer: reactions })
    await page.getByText('things still to be said').waitFor()
    expect(await findings(page), 'a file').toEqual([])
    await page.getByRole('button', { name: 'an ester', exact: true }).click()
    await page.getByText('Not ready to be saved').waitFor()
    expect(await findings(page), 'a reaction of a file').toEqual([])
    await at('library', /\d transformations/)
    await page.getByRole('button', { name: 'sources, own yield' }).first().click()
    expect(await findings(page), 'steps').toEqual([])
    await page.getByLabel('Show').selectOption('materials')
    await page.getByLabel('How sure').selectOption('unknown')
    await page.getByText(/\d+ materials/).waitFor()
    expect(await findings(page), 'materials').toEqual([])
    await at('weak', /Never run here/)
    expect(await findings(page), 'weak spots').toEqual([])
    await page.close()
  })

  it('nothing is wider than the page', async () => {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme })
    await page.goto(server.url)
    await page.getByText('Benzoin downstream').first().click()
    await expect.poll(async () => page.locator('body').innerText()).toMatch(/€/)
    for (let at = 0; at < 7; at++) {
      await page.locator('details:not(details details) > summary').nth(at).click()
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
      expect(over, `question ${at + 1}`).toBeLessThanOrEqual(0)
    }
    await page.close()
  })
})

/** Presses Tab until what has the focus is called so. */
const tabbing =
  (page: Page) =>
  async (matches: (label: string) => boolean, most = 120): Promise<void> => {
    for (let i = 0; i < most; i++) {
      const label = await page.evaluate(() => {
        const at = document.activeElement as HTMLElement | null
        const labelled =
          at?.getAttribute('aria-label') ?? (at as HTMLInputElement | null)?.labels?.[0]?.textContent ?? at?.textContent ?? ''
        return `${at?.tagName.toLowerCase()} ${labelled}`
      })
      if (matches(label)) return
      await page.keyboard.press('Tab')
    }
    throw new Error('not reached by Tab')
  }

describe('without a mouse', () => {
  it('the whole job is done from the keyboard', async () => {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
    await page.goto(server.url)
    await page.getByLabel('I have').waitFor()
    const tabTo = tabbing(page)
    await tabTo(label => /input.*I have/.test(label))
    await page.keyboard.type('24 g benzoin')
    // The name is whole, so Enter goes on, whether or not the list has come.
    await page.keyboard.press('Enter')
    await page.locator('summary', { hasText: 'What can it become' }).waitFor()
    await expect.poll(async () => page.locator('body').innerText()).toMatch(/lophine/)
    await tabTo(label => /^input.*lophine/.test(label.replaceAll('\u00ad', '')), 300)
    await page.keyboard.press('Space')
    await expect.poll(() => answer(page, /How much/)).toMatch(/\d g/)
    await tabTo(label => /summary.*How much/.test(label), 300)
    await page.keyboard.press('Enter')
    await tabTo(label => /button/.test(label) && /\d/.test(label), 300)
    await page.keyboard.press('Enter')
    await expect.poll(async () => page.locator('body').innerText()).toMatch(/[÷×=]/)
    await page.keyboard.press('Escape')
    const focus = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement
      const style = getComputedStyle(at)
      return { tag: at.tagName, outline: style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2 }
    })
    expect(focus).toEqual({ tag: 'BUTTON', outline: true })
    await page.close()
  })

  it('a whole preparation is entered and saved from the keyboard', async () => {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
    await page.goto(`${server.url}/?entry=write`)
    await page.getByRole('textbox', { name: 'Equation' }).waitFor()
    const tabTo = tabbing(page)
    const write = async (field: RegExp, text: string): Promise<void> => {
      await tabTo(label => field.test(label))
      await page.keyboard.type(text)
    }
    /** A list answers to the first letters of what it offers. */
    const choose = (field: RegExp, letters: string): Promise<void> => write(new RegExp(`^select ${field.source}`), letters)
    await write(/^textarea Equation/, 'benzoin + acetic anhydride -> benzoin acetate + acetic acid')
    await write(/^textarea Charges/, '21.2 g benzoin\n20 mL acetic anhydride\n1 mL conc. sulfuric acid\nheat 20 min at 90 C')
    await page.getByText('It balances.').waitFor()
    await write(/^input What came out/, '22.5 g')
    await write(/^input On a bad day/, '70')
    await write(/^input On a good day/, '95')
    await tabTo(label => /^button Propose tasks/.test(label))
    await page.keyboard.press('Enter')
    await page.getByText('Task 3').waitFor()
    await choose(/Gets warm/, 'a li')
    await choose(/Needs a hood/, 'y')
    await choose(/The figures are/, 'of')
    const save = page.getByRole('button', { name: 'Save to the own library' })
    await expect.poll(() => save.isEnabled()).toBe(true)
    await tabTo(label => /^button Save to the own library/.test(label), 200)
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Write the next step' }).waitFor()
    const { transformations } = await fetch(`${server.url}/api/v1/own-library`).then(reply => reply.json())
    expect(transformations).toHaveLength(1)
    const [step] = transformations
    expect(step).toMatchObject({
      mainProduct: 'benzoin-acetate',
      limiting: 'benzoin',
      needsHood: true,
      exotherm: 'mild',
      timesBasis: 'estimate',
    })
    // 22.5 g of 21.2 / 212.25 x 254.28 = 25.4 g is 88.6 %.
    expect(step.yieldPercent.typical).toBeCloseTo(88.6, 0)
    expect(step.tasks.map((task: { kind: string }) => task.kind)).toContain('watch')
    // And taken back, with the keyboard too.
    await tabTo(label => /^button Take it back/.test(label), 200)
    await page.keyboard.press('Enter')
    await expect.poll(async () => (await fetch(`${server.url}/api/v1/own-library`).then(reply => reply.json())).transformations).toEqual([])
    await page.close()
  })
})
