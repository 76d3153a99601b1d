import { describe, expect, it } from 'vitest'
import { evaluate } from '../../core/plan/evaluate.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { checkedPlan } from '../../core/plan/goals.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { hurtAnswer, questions } from '../../core/report/answers.ts'
import { planCsv } from '../../core/report/csv.ts'
import { planText } from '../../core/report/text.ts'
import { bundled } from '../../server/library/bundled.ts'
import { hazardText } from '../../web/sheet/way-answer.ts'
import { bundledWorkshop } from '../support/app.ts'
import { benzoinPlan, rest } from '../support/benzoin-plans.ts'

/** What holds for each bundled transformation, reckoned as a plan of its own. */
const { library } = bundled()
const workshop = await bundledWorkshop()
const all: readonly { readonly id: string; readonly plan: Plan; readonly evaluation: Evaluation }[] = [
  ...library.transformations.values(),
].flatMap(({ id, limiting, mainProduct }) => {
  const route = { start: limiting, target: mainProduct, steps: [{ transformation: id, makes: mainProduct }] }
  const goals = [{ target: mainProduct, amount: rest, route }]
  const plan = benzoinPlan(goals, { start: { material: limiting, massG: 5 }, settings: { region: 'EU' } })
  if (!checkedPlan(library, plan).ok) return []
  const evaluation = evaluate({ library, tables: workshop.tables, traits: workshop.traits(), plan, solver: null })
  return 'stopped' in evaluation ? [] : [{ id, plan, evaluation }]
})
const soothing = /no hazards|none known|none assigned|no hazard class assigned to anything|nothing above a warning/i

describe('unknown is not safe', () => {
  it('nearly every transformation is a plan of its own, and many hold something unknown', () => {
    expect(all.length).toBeGreaterThan(370)
    expect(all.filter(({ evaluation }) => evaluation.hazards.unknown.length > 0).length).toBeGreaterThan(50)
  })
  it('no text, table or answer says that nothing is dangerous while anything is unknown', () => {
    expect(questions.length).toBe(7)
    for (const { id, plan, evaluation } of all) {
      const { hazards } = evaluation
      if (hazards.unknown.length === 0) continue
      const told = [
        hurtAnswer(hazards, one => one).join(' '),
        hazardText(hazards.counts),
        planText(library, plan, evaluation),
        planCsv(library, plan, evaluation),
        JSON.stringify(hazards),
      ]
      for (const text of told) expect(text, id).not.toMatch(soothing)
      expect(hurtAnswer(hazards, one => one).join(' '), id).toMatch(/without hazard data/i)
      expect(hazards.counts.unknown, id).toBeGreaterThan(0)
    }
  })
})

describe('waste', () => {
  /** By formula and label, not by the groups that the streams are chosen with. GHS: H270 to H272 are the oxidizers' statements. */
  const isOrganic = (id: string): boolean => {
    const { formula } = library.materials.get(id)!
    return formula !== undefined && /C(?![a-z])/.test(formula) && /H(?![a-z])/.test(formula) && !/[NKa]HCO3|CHNaO3|CHKO3/.test(formula)
  }
  const acid = /^(sulfuric|hydrochloric|nitric|acetic|formic|phosphoric) acid/
  const base = /^(sodium|potassium) hydroxide/
  it('no residue goes into a container that forbids something in it, or it is said what to do first', () => {
    let settled = 0
    for (const { id, evaluation } of all) {
      for (const { stream, neverWith, from } of evaluation.hazards.waste) {
        for (const { materials, first = [] } of from) {
          const named = (which: RegExp): boolean => materials.some(one => which.test(library.materials.get(one)!.name))
          const holds =
            (neverWith.includes('any organic') && materials.some(isOrganic)) ||
            (neverWith.includes('bases') && named(base)) ||
            (neverWith.includes('acids') && named(acid)) ||
            (neverWith.includes('acid of any kind') && named(acid)) ||
            (neverWith.some(one => /oxidizers/.test(one)) &&
              stream !== 'solid' &&
              materials.some(one => library.materials.get(one)!.wasteStream === 'oxidiser'))
          if (!holds) continue
          settled++
          expect(first, `${id}: ${stream} with ${materials.join(', ')}`).not.toEqual([])
          // The bottle for oxidizers takes nothing organic at all: not even after something was done.
          if (stream === 'oxidiser') expect(materials.filter(isOrganic), id).toEqual([])
        }
      }
    }
    expect(settled).toBeGreaterThan(40)
  })
  it('the oxidation in acetic acid does not go to the oxidizers, nor the ammonia liquor into the can for flammables', () => {
    const streamOf = (id: string) =>
      all.find(one => one.id === id)!.evaluation.hazards.waste.find(line => line.from.some(part => part.what === 'liquor'))!.stream
    expect(streamOf('benzil-copper-ammonium-nitrate')).toBe('heavy-metal')
    expect(streamOf('lophine')).toBe('aqueous-base')
  })
})
