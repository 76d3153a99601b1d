import { describe, expect, it } from 'vitest'
import { firstChoosing } from '../../../../core/plan/choosing.ts'
import { lawByList, lawText } from '../../../../core/report/regulated.ts'
import { comparisonHeadline, hazardComparison, wayNames } from '../../../../core/report/way-hazards.ts'
import { sentence } from '../../../../core/report/words.ts'
import { openWorkshop } from '../../../../server/library/workshop.ts'
import { choicesOf, choiceTexts } from '../../../../server/planning/choice.ts'
import { waysCompared } from '../../../../server/planning/ways-compared.ts'
import { reported } from './demo-plans.ts'

const demo = await reported('Benzoin downstream')
const workshop = await openWorkshop([])
const ways = await waysCompared(workshop, demo.plan, demo.evaluation)
const comparison = hazardComparison(demo.library, ways)!
const named = (name: RegExp) => comparison.ways.find(way => name.test(way.name))!

describe('the ways of the demo side by side', () => {
  it('are the four oxidations, each by what tells it from the others', () => {
    expect(comparison.ways.map(way => way.name).sort()).toEqual([
      'catalytic copper(II) acetate and ammonium nitrate',
      'concentrated nitric acid',
      'iron(III) chloride in acetic acid',
      'stoichiometric copper(II) acetate',
    ])
    expect(comparison.ways.filter(way => way.taken)).toHaveLength(1)
  })

  // Nitrogen dioxide: H330, H314, H270, nitric acid 70 %: H272, H314, H331. Regulation (EC) 1272/2008, Annex VI, cited from memory.
  it('show why nitric acid is not the mild one: nitrogen dioxide, fatal if inhaled, first', () => {
    const nitric = named(/nitric acid/)
    expect(nitric.counts.gravest).toBe(1)
    const gas = nitric.own.find(one => one.material.material === 'nitrogen-dioxide')!
    expect(gas.statements[0]).toMatch(/^H330\sFatal if inhaled$/)
    expect(nitric.own[0]).toBe(gas)
    expect(nitric.own.find(one => /nitric acid/.test(one.name))!.statements.join(' ')).toMatch(/H314/)
    // 24.0 g / 212.24 g/mol of benzoin and two of nitrogen dioxide each, 24.47 L/mol at 25 °C: by hand 5.53 L.
    expect(nitric.gases.join()).toMatch(/^5\.5\sL of nitrogen dioxide, step\s1$/)
    expect(nitric.gentlest).toBe(false)
  })

  it('name one gentlest, and it gives off nothing fatal', () => {
    const gentlest = comparison.ways.filter(way => way.gentlest)
    expect(gentlest).toHaveLength(1)
    expect(gentlest[0]!.counts.gravest).toBe(0)
    expect(gentlest[0]!.own.flatMap(one => one.statements).join()).not.toMatch(/H330/)
  })

  it('show unknown as unknown on every way that has it, and never drop a material between shared and own', () => {
    for (const [at, way] of comparison.ways.entries()) {
      const { materials, unknown } = ways[at]!.hazards
      expect(way.unknown).toHaveLength(unknown.length)
      const told = new Set([...comparison.shared, ...way.own.map(one => one.name)])
      for (const one of materials.filter(material => material.class !== 'none'))
        expect(told).toContain(demo.library.materials.get(one.material)!.name)
    }
  })

  it('keep to what the plan is to avoid, by its own word or by the word of who prints', async () => {
    const choosing = { ...firstChoosing, avoidStep: ['benzil-copper-acetate'], avoid: ['iron-chloride-hexahydrate'] }
    const kept = await waysCompared(workshop, { ...demo.plan, choosing }, demo.evaluation)
    const names = kept.map(way => way.name).join()
    expect(kept.length).toBeGreaterThan(1)
    expect(names).not.toMatch(/stoichiometric|iron/)
    expect((await waysCompared(workshop, demo.plan, demo.evaluation, choosing)).map(way => way.name).join()).toBe(names)
    const taken = demo.plan.goals[0]!.route.steps[0]!.transformation
    const oxidations = [...demo.library.transformations.values()].filter(one => one.mainProduct === 'benzil' && one.id !== taken)
    const alone = { ...firstChoosing, avoidStep: oxidations.map(one => one.id) }
    expect(await waysCompared(workshop, demo.plan, demo.evaluation, alone)).toEqual([])
    expect((await choicesOf(workshop, demo.plan, alone)).map(one => [one.listed, one.complete])[0]).toEqual([1, true])
    expect(choiceTexts(workshop, demo.plan, await choicesOf(workshop, demo.plan, alone))[0]).toMatch(
      /the only one there is under what is asked for\./,
    )
  })

  it('are none where there is but one', () => {
    expect(hazardComparison(demo.library, ways.slice(0, 1))).toBeNull()
    expect(wayNames(demo.library, [['benzil-nitric-acid', 'lophine']])).toHaveLength(1)
  })
})

describe('for the public in the EU', async () => {
  const plan = { ...demo.plan, settings: { ...demo.plan.settings, region: 'EU' as const, buyer: 'public' as const } }
  const { evaluation } = await reported('Benzoin downstream', { with: () => plan })
  const told = hazardComparison(demo.library, await waysCompared(workshop, plan, evaluation))!

  // Regulation (EU) 2019/1148, Annex I, cited from memory: ammonium nitrate from 16 % nitrogen, nitric acid from 3 %; copper acetate stands in no annex.
  it('what they cannot have stands at its way, and at no other', () => {
    const barred = (name: RegExp) => told.ways.find(way => name.test(way.name))!.barred.join()
    expect(barred(/nitric acid/)).toMatch(/nitric acid/)
    expect(barred(/ammonium nitrate/)).toMatch(/ammonium nitrate/)
    expect(barred(/stoichiometric copper/)).toBe('')
  })

  it('no way that they cannot have is called the gentlest, in its column or in the headline', () => {
    expect(told.ways.filter(way => way.gentlest && way.barred.length > 0)).toEqual([])
    expect(told.ways.find(way => way.taken)!.barred.join()).toMatch(/nitric acid/)
    const headline = comparisonHeadline(told)
    expect(headline).toMatch(/the public cannot have this plan's; .* is the gentlest that they may have$/)
    expect(headline).not.toMatch(/nitric|nitrate/)
    const allowed = told.ways.findIndex(way => way.barred.length === 0)
    const going = { ...told, ways: told.ways.map((way, at) => ({ ...way, taken: at === allowed })) }
    expect(comparisonHeadline(going)).not.toMatch(/nitric|nitrate/)
  })
})

it('the law by list says all that each hit says, and each list once under one action', async () => {
  const { evaluation } = await reported('Cinnamon bark to its oil and on')
  for (const { regulated } of [evaluation.hazards, ...ways.map(way => way.hazards)]) {
    const rows = lawByList(regulated)
    const text = rows
      .map(row => [row.list, row.legal, ...row.rows.flatMap(one => [one.category, one.reason, ...one.materials])].join(' '))
      .join(' ')
    for (const hit of regulated)
      for (const part of [hit.list, hit.category, sentence(hit.reason), sentence(hit.legal), hit.material]) expect(text).toContain(part)
    expect(new Set(rows.map(row => [row.action, row.list, row.barred, row.legal].join())).size).toBe(rows.length)
    expect(text.length).toBeLessThanOrEqual(regulated.map(hit => `${lawText(hit)} ${hit.material}`).join(' ').length + 1)
  }
})
