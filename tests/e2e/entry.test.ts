import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { answer, clean, opened, paper, question, words } from '../support/page.ts'
import { type Served, served } from '../support/served.ts'

const folder = mkdtempSync(join(tmpdir(), 'waybench-entry-'))
const other = mkdtempSync(join(tmpdir(), 'waybench-other-'))
let browser: Browser
let server: Served
beforeAll(async () => {
  browser = await launchBrowser()
  server = await served(folder)
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
  for (const one of [folder, other]) rmSync(one, { recursive: true, force: true })
})

/** A material that the writing names and nobody knows: its structure is given, and the page leads back. */
async function enterMaterial(page: Page, smiles: string, form: string): Promise<void> {
  await page.getByRole('button', { name: 'Enter it as a new material' }).first().click()
  await page.getByLabel('SMILES').fill(smiles)
  await page.getByLabel('At the bench it is').selectOption(form)
  if (form === 'liquid') {
    await page.getByLabel('Density, g/mL').fill('1.02')
    await page.getByLabel('The figures are').selectOption('own')
  }
  await page.getByRole('button', { name: 'Save, and back to the preparation' }).click()
  await page.getByRole('textbox', { name: 'Equation' }).waitFor()
}

interface Typed {
  readonly equation: string
  readonly body: string
  readonly outcome: string
  readonly unknown: readonly (readonly [smiles: string, form: string])[]
}

async function typeStep(page: Page, { equation, body, outcome, unknown }: Typed): Promise<void> {
  await page.getByRole('textbox', { name: 'Equation' }).fill(equation)
  await page.getByLabel('Charges, and what is done').fill(body)
  for (const [smiles, form] of unknown) await enterMaterial(page, smiles, form)
  await page.getByText('It balances.').waitFor()
  await page.getByLabel('What came out').fill(outcome)
  await page.getByLabel('On a bad day, %').fill('55')
  await page.getByLabel('On a good day, %').fill('95')
  await page.getByLabel('Takes in all, h').fill('6')
  await page.getByLabel('Gets warm by itself').selectOption('none')
  await page.getByLabel('Needs a hood').selectOption('yes')
  await page.getByLabel('The figures are').selectOption('own')
  const save = page.getByRole('button', { name: 'Save to the own library' })
  await expect.poll(() => save.isEnabled()).toBe(true)
  await save.focus()
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'Saved', exact: true }).waitFor()
  // The message has the focus, and there is nothing left to save a second time.
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Saved')
  expect(await save.isDisabled()).toBe(true)
  await page.getByRole('button', { name: 'Write the next step' }).waitFor()
}

/** Benzil of the bundled library: a hazard more by a data sheet, and one fewer, told before it is saved; then taken back. */
async function putRight(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'the library', exact: true }).click()
  await page.getByLabel('Show').selectOption('materials')
  await page.getByLabel('Look for').fill('benzil')
  const open = page.getByRole('button', { name: /^put right ?: benzil$/ })
  const row = page.locator('.entry .rows > li', { has: open })
  const before = await words(row)
  await open.click()
  await expect.poll(() => page.getByLabel('Name', { exact: true }).inputValue()).toBe('benzil')
  await page.getByText('Nothing differs from the record yet').waitFor()
  await page.getByLabel('enter them from its safety data sheet').check()
  const codes = page.getByLabel('H codes')
  const known = await codes.inputValue()
  const [first] = known.split(', ')
  await page.getByLabel('Who assigned them').fill('data sheet of the maker, 2026')
  const save = page.locator('.entry-save')
  // A known one goes: said before anything is saved.
  await codes.fill(`${known.replace(first!, '')}, H302`)
  await expect.poll(() => words(save)).toContain(`Fewer hazards than the record it stands in place of: ${first} is gone`)
  await codes.fill(`${known}, H302`)
  await expect.poll(() => words(save)).toContain(`→ ${known}, H302, Warning (data sheet of the maker, 2026)`)
  expect(await words(save)).not.toMatch(/Fewer hazards/)
  await page.getByRole('button', { name: 'Put it right in the own library' }).click()
  await page.getByRole('heading', { name: 'Saved', exact: true }).waitFor()
  await page.getByRole('button', { name: 'the library', exact: true }).click()
  await page.getByLabel('Show').selectOption('materials')
  await page.getByLabel('Look for').fill('benzil')
  await expect.poll(() => words(row)).toMatch(/yours[\s\S]*own record, in place of the bundled one: .*H302/)
  await page.getByRole('button', { name: 'Take back “benzil put right”' }).click()
  await expect.poll(() => words(row)).toBe(before)
  await open.click()
}

describe('a newcomer with a preparation of three steps', () => {
  it('types it from scratch and gets a plan, a print and a file that opens on another machine', async () => {
    const page = await opened(browser, server.url)
    await page.getByRole('button', { name: 'Write a preparation of your own' }).click()
    await typeStep(page, {
      equation: '2 4-methylbenzaldehyde -> 4,4’-dimethylbenzoin',
      body: '12.0 g 4-methylbenzaldehyde\n1.5 g thiamine hydrochloride\n20 mL ethanol 95 %\n3 M NaOH, 5 mL\nstir at 60 C for 2 h',
      outcome: '9.0 g',
      unknown: [
        ['Cc1ccc(C=O)cc1', 'liquid'],
        ['Cc1ccc(cc1)C(=O)C(O)c1ccc(C)cc1', 'solid'],
      ],
    })
    // Theory by hand: 12.0 g / 120.15 g/mol / 2 x 240.30 g/mol = 12.0 g; 9.0 g is 75 %.
    expect(await words(page.locator('main'))).toMatch(/12\.00 g of 4,4’-dimethylbenzoin[\s\S]*75\.0 % of theory/)
    await page.getByRole('button', { name: 'Write the next step' }).click()
    await typeStep(page, {
      equation: '2 4,4’-dimethylbenzoin + O2 -> 2 4,4’-dimethylbenzil + 2 H2O',
      body: '9.0 g 4,4’-dimethylbenzoin\n40 mL acetic acid, glacial',
      outcome: '8.0 g',
      unknown: [['Cc1ccc(cc1)C(=O)C(=O)c1ccc(C)cc1', 'solid']],
    })
    await page.getByRole('button', { name: 'Write the next step' }).click()
    await typeStep(page, {
      equation: '4,4’-dimethylbenzil + o-phenylenediamine -> 2,3-di-p-tolylquinoxaline + 2 H2O',
      body: '2.38 g 4,4’-dimethylbenzil\n1.1 g o-phenylenediamine\n20 mL ethanol 95 %',
      outcome: '85 %',
      unknown: [['Cc1ccc(cc1)-c1nc2ccccc2nc1-c1ccc(C)cc1', 'solid']],
    })
    // The plan.
    await page.getByRole('button', { name: 'Back to the first page' }).click()
    await page.getByLabel('I have').fill('12 g 4-methylbenzaldehyde')
    await page.getByLabel('I want').fill('2,3-di-p-tolylquinoxaline')
    await page.getByRole('button', { name: 'See what it can become' }).click()
    const amount = await question(page, /How much/)
    // At typical yields 12.0/120.15/2 x 0.75 x 0.896 x 0.85 x 310.40 = 8.9 g; the heading tells the median.
    await expect.poll(async () => words(amount)).toMatch(/[789]\.\d\d? g/)
    expect(await words(await question(page, /What can hurt/))).toMatch(/no hazard data: read its safety data sheet/i)
    // The print.
    const text = clean((await paper(page)).map(one => one.text).join(' '))
    for (const said of ['4-methylbenzaldehyde', 'tolylquinoxaline', 'o-phenylenediamine']) expect(text).toContain(said)
    expect(page.faults).toEqual([])
    // The file, on a machine that knows none of it.
    const plansOf = async (): Promise<{ id: string }[]> => (await fetch(`${server.url}/api/v1/plans`).then(reply => reply.json())).plans
    await expect.poll(async () => (await plansOf()).length).toBe(1)
    const planOf = async () => (await fetch(`${server.url}/api/v1/plans/${(await plansOf())[0]!.id}`).then(reply => reply.json())).plan
    await expect.poll(async () => (await planOf()).goals.length).toBe(1)
    const file = join(other, 'three-steps.json')
    writeFileSync(file, JSON.stringify(await planOf()))
    const stranger = await served(join(other, 'data'))
    try {
      expect((await fetch(`${stranger.url}/api/v1/own-library`).then(reply => reply.json())).version).toBe(0)
      const there = await opened(browser, stranger.url)
      await there.locator('input[type=file]').first().setInputFiles(file)
      const same = await question(there, /How much/)
      await expect.poll(async () => words(same)).toMatch(/[789]\.\d\d? g/)
      // What it can become, and which way, is searched with the records of the plan; nothing is said to be gone that never was here.
      await expect.poll(() => answer(there, /What can it become/)).toMatch(/compounds? within/)
      await expect.poll(() => answer(there, /Which way/)).toMatch(/steps to 2,3-di-p-tolylquinoxaline/)
      const note = there.locator('.trouble')
      expect(await words(note)).toMatch(/Your library does not hold three steps and four materials of this plan; the plan brings them/)
      // Taken into the library there, after a look; and back again.
      const held = async () => (await fetch(`${stranger.url}/api/v1/own-library`).then(reply => reply.json())).transformations.length
      await note.getByRole('button', { name: 'Take these records into your library' }).click()
      await expect.poll(() => words(note)).toMatch(/7 records would be taken into your library, all or none[\s\S]*would be added/)
      await note.getByRole('button', { name: 'Take all of them over' }).click()
      await expect.poll(() => words(note)).toMatch(/Saved: 7 records in your library/)
      expect(await held()).toBe(3)
      await note.getByRole('button', { name: 'Take it back' }).click()
      await expect.poll(held).toBe(0)
      expect(there.faults).toEqual([])
      await there.close()
    } finally {
      await stranger.close()
    }
    await page.close()
  })

  it('asks about what may mean several bottles, takes the answer and gives it back', async () => {
    const page = await opened(browser, server.url)
    await page.goto(`${server.url}/?entry=write`)
    await page.getByRole('button', { name: 'A name that is asked about' }).click()
    await page.getByText('Which bottle is “25 mL HCl”?').waitFor()
    await page.getByRole('button', { name: 'hydrochloric acid, 37 %' }).click()
    const body = page.getByLabel('Charges, and what is done')
    expect(await body.inputValue()).toContain('25 mL HCl {hydrochloric-acid-conc}')
    await expect.poll(async () => words(page.locator('.lines-read'))).toMatch(/hydrochloric acid, 37 %/)
    // Taken back, letter for letter; and what was written before the example too.
    await page.getByRole('button', { name: 'Undo' }).click()
    expect(await body.inputValue()).toMatch(/25 mL HCl$/)
    await page.reload()
    expect(await page.getByLabel('Charges, and what is done').inputValue()).toMatch(/25 mL HCl$/)
    // A structure that states no hand is neither the acid of one hand nor the racemate before somebody says so.
    const equation = page.getByRole('textbox', { name: 'Equation' })
    await equation.fill('OC(=O)C(O)C(O)C(O)=O + 2 ethanol -> diethyl L-tartrate + 2 water')
    await page.getByText('The library does not hold "OC(=O)C(O)C(O)C(O)=O" as it is written').waitFor()
    await page.getByRole('button', { name: 'tartaric acid', exact: true }).click()
    await expect.poll(() => equation.inputValue()).toContain('{tartaric-acid} + 2 ethanol')
    expect(page.faults).toEqual([])
    await page.close()
  })

  it('loses nothing that is typed before the equation, and leads from every refusal to what mends it', async () => {
    const page = await opened(browser, server.url)
    await page.goto(`${server.url}/?entry=write`)
    await page.getByRole('button', { name: 'Empty the page' }).click()
    const body = page.getByLabel('Charges, and what is done')
    await body.fill('10 g benzaldehyde\n3 x 100 mL water\n0.2 M NaOH, 20 mL')
    // 10 g / 106.124 g/mol; three times 100 mL.
    await expect.poll(async () => words(page.locator('.lines-read'))).toMatch(/benzaldehyde[\s\S]*10\.00 g[\s\S]*94\.23[\s\S]*300\.0 mL/)
    const outcome = page.getByLabel('What came out')
    await outcome.fill('75')
    await page.getByText('grams, or percent of theory?').waitFor()
    await page.getByRole('button', { name: '75 %', exact: true }).click()
    expect(await outcome.inputValue()).toBe('75 %')
    await page.getByLabel('Takes in all, h').fill('1h30')
    await page.getByText('“1h30” is no number of hours').waitFor()
    // What is still to be said leads to where it is said.
    await page.getByRole('button', { name: 'hours as a number' }).click()
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('1h30')
    // A strength that no bottle has.
    await page.getByRole('button', { name: 'Enter the solution of 0.2 M' }).click()
    const strength = page.getByLabel('Strength')
    expect(await strength.inputValue()).toBe('0.2 M')
    expect(await page.getByLabel('A solution of').inputValue()).toBe('sodium hydroxide')
    await page.getByLabel('The figures are').selectOption('own')
    const back = page.getByRole('button', { name: 'Save, and back to the preparation' })
    await strength.fill('weak')
    await page.getByText('"weak" is not read as a strength').waitFor()
    expect(await back.isDisabled()).toBe(true)
    // 8 g/L / 39.997 g/mol = 0.2000 mol/L.
    await strength.fill('8 g/L')
    await expect.poll(async () => words(page.locator('.told'))).toMatch(/0\.2000 mol\/L/)
    await expect.poll(() => back.isEnabled()).toBe(true)
    await back.click()
    await expect.poll(async () => words(page.locator('.lines-read'))).toMatch(/sodium hydroxide, 0\.2 M[\s\S]*4\.000/)
    // A second acetone is taken for the first, or called otherwise.
    await page.goto(`${server.url}/?entry=material`)
    await page.getByLabel('Name', { exact: true }).fill('acetone')
    await page.getByLabel('SMILES').fill('CC(C)=O')
    await page.getByText('acetone is called so already').waitFor()
    expect(await page.getByRole('button', { name: 'Save to the own library' }).isDisabled()).toBe(true)
    await putRight(page)
    // What was typed of the new one before stands there still.
    await page.getByRole('button', { name: 'Enter a new material instead' }).click()
    expect(await page.getByLabel('SMILES').inputValue()).toBe('CC(C)=O')
    await page.getByRole('button', { name: 'Empty the page' }).click()
    await page.getByRole('button', { name: 'Bring it back' }).click()
    expect(await page.getByLabel('SMILES').inputValue()).toBe('CC(C)=O')
    await page.getByRole('button', { name: 'Empty the page' }).click()
    expect(page.faults).toEqual([])
    await page.close()
  })

  it('mends an equation by a proposal, with the keyboard alone', async () => {
    const page = await opened(browser, server.url)
    await page.goto(`${server.url}/?entry=write`)
    await page.getByRole('textbox', { name: 'Equation' }).fill('isoamyl alcohol + acetic acid -> isoamyl acetate')
    const proposal = page.getByRole('button', { name: /^Add 1 H2O \(water\) on the right/ })
    await proposal.waitFor()
    await proposal.focus()
    await page.keyboard.press('Enter')
    await page.getByText('It balances.').waitFor()
    expect(await page.getByRole('textbox', { name: 'Equation' }).inputValue()).toBe(
      'isoamyl alcohol + acetic acid -> isoamyl acetate + water',
    )
    await page.close()
  })

  it('draws a structure: the SMILES follows the drawing, and the drawing the SMILES', async () => {
    const page = await opened(browser, server.url)
    await page.goto(`${server.url}/?entry=material`)
    const smiles = page.getByLabel('SMILES')
    await page.getByRole('button', { name: 'Draw it instead' }).click()
    const board = page.locator('.board > div')
    await board.waitFor()
    await board.scrollIntoViewIfNeeded()
    const { x, y } = (await board.boundingBox())!
    // The board takes a press for one only where it lasts, as under a hand.
    const press = async (right: number, down: number): Promise<void> => {
      await page.mouse.move(x + right, y + down)
      await page.waitForTimeout(100)
      await page.mouse.down()
      await page.waitForTimeout(80)
      await page.mouse.up()
    }
    const benzene = [34, 203] as const
    await press(...benzene)
    await press(260, 120)
    await expect.poll(() => smiles.inputValue()).toBe('c1ccccc1')
    // CIAAW 2021: 6 x 12.011 + 6 x 1.008.
    await expect.poll(async () => words(page.locator('.told'))).toMatch(/C6H6[\s\S]*78\.114 g\/mol/)
    // Written over: the board shows that instead, so that what is drawn now stands beside it.
    await smiles.fill('CCO')
    await page.waitForTimeout(600)
    await press(...benzene)
    await press(450, 330)
    await expect.poll(async () => (await smiles.inputValue()).split('.').sort()).toEqual(['CCO', 'c1ccccc1'])
    expect(page.faults).toEqual([])
    await page.close()
  })

  it('is stopped before a listed substance is entered', async () => {
    const page = await opened(browser, server.url)
    await page.goto(`${server.url}/?entry=material`)
    // Convention on the Prohibition of Chemical Weapons (1993), Schedule 1, A(4).
    await page.getByLabel('SMILES').fill('ClCCSCCCl')
    await page.getByRole('alert').waitFor()
    expect(await words(page.getByRole('alert'))).toMatch(/Chemical Weapons Convention/)
    await expect.poll(() => page.getByRole('button', { name: 'Save to the own library' }).isDisabled()).toBe(true)
    await page.close()
  })

  it('takes a file over after seeing what it would change, and takes it back', async () => {
    const page = await opened(browser, server.url)
    await page.goto(`${server.url}/?entry=file`)
    const table = 'name;SMILES;state;density;CAS;source\nhexyl butanoate;CCCCCCOC(=O)CCC;liquid;0,851;;catalogue\n'
    const choose = (body: string) =>
      page.locator('.entry input[type=file]').setInputFiles({ name: 'mine.csv', mimeType: 'text/csv', buffer: Buffer.from(body) })
    // What is no number is told, not guessed; the comma of such a table is a decimal comma.
    await choose(table.replace('0,851', 'light'))
    await expect.poll(async () => words(page.locator('main'))).toMatch(/"light" is not a number.*where mine.csv, line 2, density/)
    await choose(table)
    await page.getByText('1 record would be taken over').waitFor()
    await page.getByRole('button', { name: 'Take it over' }).click()
    await page.getByRole('button', { name: 'Take it back' }).click()
    await expect
      .poll(async () => (await fetch(`${server.url}/api/v1/materials?q=hexyl%20butanoate`).then(reply => reply.json())).materials)
      .toEqual([])
    expect(page.faults).toEqual([])
    await page.close()
  })

  it('takes a reaction file over with what stands over its arrow, and gives charges away as a table', async () => {
    const page = await opened(browser, server.url)
    await page.goto(`${server.url}/?entry=file`)
    const smiles = 'O=Cc1ccccc1.O=Cc1ccccc1>CCO>OC(C(=O)c1ccccc1)c1ccccc1'
    await page.locator('.entry input[type=file]').setInputFiles({ name: 'one.smi', mimeType: 'text/plain', buffer: Buffer.from(smiles) })
    const body = page.getByLabel('Charges, and what is done')
    await body.waitFor()
    expect(await page.getByRole('textbox', { name: 'Equation' }).inputValue()).toBe('2 benzaldehyde -> benzoin')
    expect(await body.inputValue()).toBe('# over the arrow in the file: give each its amount\nethanol {ethanol}')
    await page.getByText('It balances.').waitFor()
    expect(await words(page.locator('.lines-read'))).toMatch(/ethanol/)
    await page.getByRole('button', { name: 'Undo' }).click()
    await page.goto(`${server.url}/?entry=library`)
    await page.getByLabel('Look for').fill('benzoin thiamine')
    // The list is asked for anew while one types: the row is waited for.
    const row = page.locator('.rows.steps > li', { hasText: /thiamine/i }).first()
    await row.getByRole('button', { name: 'sources, own yield' }).click()
    // What the record states stands line by line with how sure it is.
    await row.locator('.charges-told [data-mark=seen]').first().waitFor()
    const href = await page.getByRole('link', { name: 'charges as CSV' }).first().getAttribute('href')
    expect(await fetch(new URL(href!, `${server.url}/`)).then(reply => reply.text())).toMatch(
      /^step,id,material,amount,unit,per gram of product,role,at,derived,from\r\n/,
    )
    // How sure, as a filter: every material told then has a figure that is just so sure.
    await page.getByLabel('Look for').fill('')
    await page.getByLabel('Show').selectOption('materials')
    await page.getByLabel('How sure').selectOption('unknown')
    await page.getByText(/\d+ materials; the first/).waitFor()
    const rows = await page.locator('.entry .rows > li', { has: page.locator('.marked') }).allInnerTexts()
    expect(rows.length).toBeGreaterThan(10)
    for (const row of rows) expect(row).toMatch(/unknown/)
    // Kept to what was not seen in a source, a material shows just those figures, each with its value.
    await page.getByLabel('Look for').fill('benzaldehyde')
    await page.getByLabel('How sure').selectOption('not seen')
    await page.getByLabel('Which figure').selectOption('boiling point')
    await page
      .locator('.entry .rows > li', { hasText: /^benzaldehyde/ })
      .getByText(/boiling point 1\d\d/)
      .waitFor()
    for (const row of await page.locator('.entry .rows > li .marked').allInnerTexts()) expect(row).toMatch(/boiling point .* remembered/)
    expect(page.faults).toEqual([])
    await page.close()
  })

  it('goes through the reactions of a file, refuses while one is bad, takes them over together and back', async () => {
    const page = await opened(browser, server.url)
    const records = async () =>
      (await fetch(`${server.url}/api/v1/own-library`).then(reply => reply.json())) as {
        materials: { id: string; hazards?: { codes: string[] } }[]
        transformations: { id: string; charge: object[] }[]
      }
    const before = (await records()).transformations.length
    const materialsBefore = (await records()).materials.length
    await page.goto(`${server.url}/?entry=write`)
    const body = page.getByLabel('Charges, and what is done')
    await body.fill('what was being written')
    await page.goto(`${server.url}/?entry=file`)
    const lines = [
      'CCCCCO.CC(=O)O>>CC(=O)OCCCCC.O an ester',
      'CCO.CC(=O)O>>CCOC(C=O.O a bad one',
      '[Na+].[Cl-].O>>O.[Na+].[Cl-] |f:0.1,4.5| salt',
    ]
    await page
      .locator('.entry input[type=file]')
      .setInputFiles({ name: 'three.smi', mimeType: 'text/plain', buffer: Buffer.from(lines.join('\n')) })
    await page.getByText('3 reactions; refused while number 2 cannot be read').waitFor()
    const take = page.getByRole('button', { name: /^Take .* over$/ })
    expect(await take.isDisabled()).toBe(true)
    const piece = page.getByLabel('Reaction 2 as it stands in three.smi')
    await piece.fill((await piece.inputValue()).replace('C(C=O', 'C(C)=O'))
    await page.getByRole('button', { name: 'Read it again' }).click()
    await page.getByText('3 reactions: 0 of 3 ready').waitFor()
    await page.getByRole('button', { name: 'leave out: salt' }).click()
    // What the library does not hold comes with it, once it is named; hazards of the tables wait for a yes.
    await page.getByText('2 new materials will be added with them').waitFor()
    await page.getByLabel('Name (C5H12O)').fill('pentan-1-ol')
    await page.getByLabel('Name (C7H14O2)').fill('pentyl acetate')
    for (const form of await page.getByRole('region', { name: 'New materials' }).getByLabel('At the bench it is').all()) {
      expect(await form.inputValue()).toBe('')
      await form.selectOption('liquid')
    }
    await page.getByLabel(/^confirm H226/).check()
    await page.getByText('pentan-1-ol + acetic acid, glacial → pentyl acetate + water').waitFor()
    await page.setViewportSize({ width: 390, height: 844 })
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    await page.setViewportSize({ width: 1440, height: 900 })
    const say = async (charges: string): Promise<void> => {
      await body.fill(charges)
      for (const [label, figure] of [
        ['On a bad day, %', '55'],
        ['Usually, %', '80'],
        ['On a good day, %', '95'],
        ['Takes in all, h', '6'],
      ] as const)
        await page.getByLabel(label).fill(figure)
    }
    await page.getByRole('button', { name: 'an ester', exact: true }).click()
    await say('')
    await page.getByLabel('Gets warm by itself').selectOption('none')
    await page.getByLabel('Needs a hood').selectOption('yes')
    await page.getByLabel('The figures are').selectOption('own')
    // A table of charges as it is copied out of a spreadsheet, with what only a table says.
    const table =
      'id\tmaterial\tamount\tunit\trole\tat\tderived\npentan-1-ol\tx\t10\tg\tsubstrate\t\tyes\nacetic-acid\tx\t20\tmL\treagent\tquench\t\n'
    await body.evaluate((field, text) => {
      const data = new DataTransfer()
      data.setData('text/plain', text)
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
    }, table)
    await page.getByText('Ready to be taken over with the others').waitFor()
    await page.getByRole('button', { name: 'On to the next one' }).click()
    await page.getByRole('button', { name: 'Source and conditions as in the one before' }).click()
    await say('ethanol {ethanol} 10 mL\nacetic acid {acetic-acid} 20 mL')
    await page.getByRole('button', { name: 'All of them: take them over together' }).click()
    await page.getByText('3 reactions: 2 of 2 ready').waitFor()
    expect((await records()).transformations).toHaveLength(before)
    await take.click()
    await page.getByText('2 reactions are taken over').waitFor()
    await page.getByText('pentan-1-ol + acetic acid, glacial → pentyl acetate + water').waitFor()
    const { transformations, materials } = await records()
    expect(transformations).toHaveLength(before + 2)
    expect(materials).toHaveLength(materialsBefore + 2)
    // Pentan-1-ol, index 603-200-00-1 of Annex VI of Regulation (EC) 1272/2008.
    expect(materials.find(one => one.id === 'pentan-1-ol')?.hazards?.codes).toEqual(expect.arrayContaining(['H226', 'H332']))
    expect(transformations.find(one => one.id.startsWith('pentyl-acetate'))?.charge).toEqual([
      { material: 'pentan-1-ol', role: 'substrate', amount: 10, unit: 'g', derived: true },
      { material: 'acetic-acid', role: 'reagent', amount: 20, unit: 'mL', at: 'quench' },
    ])
    await page.getByRole('button', { name: 'Take them back' }).click()
    await expect.poll(async () => (await records()).transformations.length).toBe(before)
    expect((await records()).materials).toHaveLength(materialsBefore)
    await page.getByRole('button', { name: 'Put this file away' }).click()
    await page.getByRole('button', { name: 'a preparation', exact: true }).click()
    expect(await body.inputValue()).toBe('what was being written')
    expect(page.faults).toEqual([])
    await page.close()
  })

  it('stands within a phone, with nothing that a screen reader would miss', async () => {
    const page = await opened(browser, server.url)
    await page.setViewportSize({ width: 390, height: 844 })
    for (const place of ['write', 'material', 'file', 'library', 'weak']) {
      await page.goto(`${server.url}/?entry=${place}`)
      await page.locator('.entry h1').waitFor()
      await page.waitForTimeout(500)
      expect(await page.evaluate(() => document.documentElement.scrollWidth), place).toBeLessThanOrEqual(390)
      const nameless = await page
        .locator('.entry input, .entry select, .entry textarea')
        .evaluateAll(
          fields =>
            (fields as HTMLInputElement[]).filter(field => (field.labels?.length ?? 0) === 0 && !field.getAttribute('aria-label')).length,
        )
      expect(nameless, place).toBe(0)
    }
    await page.close()
  })
})
