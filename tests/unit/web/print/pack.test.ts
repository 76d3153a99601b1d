import { describe, expect, it } from 'vitest'
import { benchSheetOf } from '../../../../core/report/bench-sheet.ts'
import { cautions, noHazardData } from '../../../../core/report/cautions.ts'
import { packHtml } from '../../../../server/print/pack.ts'
import { unmarkedFigures } from '../../../support/unmarked-figures.ts'
import type { Reported } from '../../core/report/demo-plans.ts'
import { allReported, reported } from '../../core/report/demo-plans.ts'

const plans = await allReported()

const packOf = ({ library, plan, evaluation, drawings }: Reported, title = plan.title): string =>
  packHtml({ library, plan: { ...plan, title }, evaluation, drawings, today: '2026-12-01' })

const entities: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" }

/** What a reader sees of a piece of HTML: tags and soft hyphens away, white space as one space. */
const seen = (html: string): string =>
  html
    .replace(/<(style|title)[\s\S]*?<\/\1>/g, ' ')
    .replace(/<\/?(b|i|sub|span)(?=[\s>])[^>]*>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&(amp|lt|gt|quot|#39);/g, entity => entities[entity]!)
    .replaceAll('\u00ad', '')
    .replace(/\s+/g, ' ')

/** The leaf whose title matches, as HTML. */
const leaf = (html: string, title: RegExp): string =>
  html.split('<section class="leaf').find(one => title.test(seen(one.slice(0, 600)))) ?? ''

describe.each(plans)('the pack of $title', one => {
  const { library, evaluation } = one
  const html = packOf(one)
  const text = seen(html)
  const nameOf = (id: string): string => library.materials.get(id)!.name.replace(/\s+/g, ' ')

  it('needs nothing but itself', () => {
    // The only addresses are the names of XML's own vocabularies.
    const addresses = [...html.matchAll(/(?:src|href)\s*=\s*"([^"]*)"|url\(([^)]*)\)|@import/g)].map(
      match => match[1] ?? match[2] ?? match[0],
    )
    expect(addresses.length).toBeGreaterThanOrEqual(6)
    expect(addresses.filter(address => !/^data:font\/woff2;base64,/.test(address))).toEqual([])
    expect(html).not.toContain('<script')
  })

  it('holds every material of the shopping list, in its list', () => {
    const shopping = seen(leaf(html, /Buy |Nothing to buy/))
    expect(shopping.length).toBeGreaterThan(200)
    const wanted = evaluation.shopping.filter(line => line.buy.amount === null || line.buy.amount > 0 || (line.shelf.amount ?? 0) > 0)
    expect(wanted.filter(line => !shopping.includes(nameOf(line.material))).map(line => line.material)).toEqual([])
  })

  it('holds every hazard in full, the unknown first', () => {
    const page = leaf(html, /^[^>]*>? ?Hazards:/)
    const hazards = seen(page)
    expect(hazards).toContain('Hazards:')
    for (const material of evaluation.hazards.materials) {
      expect(hazards, material.material).toContain(nameOf(material.material))
      for (const { code, statement } of material.codes)
        expect(hazards.replaceAll(' ', '')).toContain(`${code}${statement}`.replaceAll(' ', ''))
    }
    if (evaluation.hazards.unknown.length > 0) {
      expect(page.indexOf('hz unknown')).toBeGreaterThan(0)
      expect(page.indexOf('hz unknown')).toBeLessThan(page.search(/hz (seen|remembered)/))
      expect(hazards).toContain(noHazardData)
    }
  })

  it('never says "no hazards", and a class "none assigned" only of what has a source', () => {
    expect(text).not.toMatch(/\bno hazards\b/i)
    for (const article of html.match(/<article class="hz (small )?(unknown|remembered)[\s\S]*?<\/article>/g) ?? [])
      expect(article).not.toContain('No hazard class assigned')
  })

  it('has a bench sheet a step, with the amounts of the evaluation', () => {
    const sheets = html.split('<section class="leaf').filter(part => part.startsWith(' leaf-step'))
    expect(sheets.length).toBe(evaluation.steps.length)
    for (const step of evaluation.steps) {
      const sheet = seen(sheets.find(part => seen(part).includes(`Step ${step.number}:`)) ?? '')
      for (const line of step.charges) if (line.supply !== 'free') expect(sheet, step.number).toContain(nameOf(line.material))
      for (const row of benchSheetOf(library, evaluation, step).charge) expect(sheet).toContain(row.amount.replace(/\s/g, ' '))
      expect(sheet).toContain('weighed')
      expect(sheet).toContain(`What can hurt in step ${step.number}`)
    }
  })

  it('carries head and foot into the margin of every page', () => {
    const rules = [...html.matchAll(/<style>([\s\S]*?)<\/style>/g)].map(match => match[1]!).join('\n')
    expect(rules).toContain('counter(page) " of " counter(pages)')
    for (const words of cautions) expect(rules).toContain(words)
    expect(rules).toContain('Who may do this')
    expect(rules).toContain('not alone, with')
    expect(rules).toContain(one.plan.title)
  })

  it('marks every figure with how sure it is, and tells on its page what each letter means', () => {
    const names = [...library.materials.values()].map(material => material.name)
    expect(unmarkedFigures(html, names)).toEqual([])
    const body = html.slice(html.indexOf('<body>'))
    // It finds what is not marked: without any of its marks each kind of page has some.
    expect(unmarkedFigures(body.replaceAll('data-mark=', 'data-other='), names).length).toBeGreaterThan(100)
    let letters = 0
    for (const page of body.split('<section class="leaf').slice(1)) {
      const told = new Set([...page.matchAll(/class="mk-key">(.)</g)].map(match => match[1]))
      for (const [, letter] of page.matchAll(/<sup class="mk[^>]*data-letter="(.)"/g)) {
        expect(told.has(letter), `${letter} on ${seen(page).slice(0, 60)}`).toBe(true)
        letters++
      }
    }
    expect(letters).toBeGreaterThan(30)
  })

  it('marks each line of a charge as its record has it', () => {
    const sheets = html.split('<section class="leaf').filter(part => part.startsWith(' leaf-step'))
    for (const step of evaluation.steps) {
      const sheet = sheets.find(part => seen(part).includes(`Step ${step.number}:`))!
      const table = sheet.slice(sheet.indexOf('<table class="t charge'), sheet.indexOf('</table>'))
      const printed = [...table.matchAll(/<span data-mark="([^"]+)"/g)].map(match => match[1])
      const record = library.transformations.get(step.transformation)!
      const whole = record.sources.some(source => source.checked) && record.confidence === 'checked' ? 'seen' : 'remembered'
      const ofLine = (material: string, role: string): string => {
        const { from } = record.charge.find(line => line.material === material && line.role === role) ?? {}
        return from === undefined ? whole : from.startsWith('from memory') ? 'remembered' : from.startsWith('set here') ? 'derived' : 'seen'
      }
      const expected = benchSheetOf(library, evaluation, step).charge.map(({ basis, sure, material, role }) =>
        basis === 'source'
          ? sure.mark === 'typed'
            ? 'typed'
            : ofLine(material, role)
          : { derived: 'derived', 'at-least': 'at least', about: 'about', planned: 'planned', open: 'unknown' }[basis],
      )
      expect(printed).toEqual(expected)
    }
  })

  it('says of every price where it was got', () => {
    const page = leaf(html, /Buy |Nothing to buy/)
    const bought = evaluation.shopping.flatMap(line => line.packs)
    expect((page.match(/data-letter="i"/g) ?? []).length).toBeGreaterThanOrEqual(
      evaluation.shopping.filter(line => line.packs.length > 0).length,
    )
    if (bought.length > 0) expect(seen(page)).toContain('invented: made up for the demonstration')
  })

  it('is in every tag what it opens: well-formed', () => {
    const body = html.slice(html.indexOf('<body>'), html.indexOf('</html>'))
    const open: string[] = []
    for (const [, closing, name = '', rest = ''] of body.matchAll(/<(\/?)([a-zA-Z0-9]+)((?:"[^"]*"|[^">])*)>/g)) {
      if (closing) expect(open.pop()).toBe(name)
      else if (!rest.endsWith('/') && !['col', 'br', 'meta'].includes(name)) open.push(name)
    }
    expect(open).toEqual([])
  })

  it('signs the risk assessment and leaves it open', () => {
    const page = seen(leaf(html, /Risk assessment/))
    for (const words of ['assessed by', 'checked by', 'review on', 'supervised by', 'age and training']) expect(page).toContain(words)
  })

  it('labels every compound made with its name, its formula and a blank for the date', () => {
    const page = leaf(html, /Bottle labels/)
    for (const step of evaluation.steps) expect(seen(page)).toContain(nameOf(step.makes))
    expect((page.match(/class="label /g) ?? []).length).toBe(
      evaluation.steps.length + evaluation.coProducts.length + evaluation.hazards.waste.length,
    )
    expect(seen(page)).toContain('keep until')
  })
})

describe('the pack', () => {
  it('says price unknown before the first supplier', () => {
    const benzoin = plans[0]!
    const page = seen(leaf(packOf(benzoin), /Buy /))
    const supplier = benzoin.evaluation.basket!.orders[0]!.name.replace(' (invented)', '')
    expect(page.indexOf('Price unknown')).toBeGreaterThan(0)
    expect(page.indexOf('Price unknown')).toBeLessThan(page.indexOf(supplier))
  })

  it('lets no title break out of the style sheet or the page', () => {
    const hostile = '"} </style><script>alert(1)</script> \\'
    const html = packOf(plans[0]!, hostile)
    expect(html).not.toContain('<script')
    expect(html.match(/<style>/g)?.length).toBe(html.match(/<\/style>/g)?.length)
  })

  it('stands without a basket and without dates', async () => {
    const bare = await reported('Copper scrap round its salts', {
      solved: false,
      with: plan => ({ ...plan, packs: null, settings: { ...plan.settings, startDate: null, windows: [], vessels: [] } }),
    })
    const text = seen(packOf(bare))
    expect(text).toContain('To buy, supplier open')
    expect(text).not.toMatch(/undefined|NaN|\[object/)
  })

  it('prints no word that only a program would say', () => {
    for (const one of plans) expect(seen(packOf(one))).not.toMatch(/undefined|NaN|\[object|null\b/)
  })
})
