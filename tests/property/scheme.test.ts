import { describe, expect, it } from 'vitest'
import { layoutScheme } from '../../web/map/scheme/layout.ts'
import type { SchemeOut } from '../../web/map/scheme/types.ts'
import { cases } from '../support/scheme/cases.ts'
import { findings } from './scheme-checker.ts'
import { flipped, wildPlan } from './scheme-plans.ts'

// Full pitch, short arrows, print (182 mm), the sheet's pane, a phone.
const panes = [860, 720, 688, 536, 358]
const count = Number(process.env.SCHEME_PLANS ?? 100)
const seeds = Array.from({ length: count }, (_, i) => i)

/** Where each structure stands; one that is written as a formula is a text. */
const places = (out: SchemeOut) =>
  new Map(
    out.els.flatMap(el => (el.el === 'mol' || (el.el === 'text' && el.cls === 'formula') ? [[el.id, `${el.x},${el.y}`] as const] : [])),
  )

describe('wild plans', () => {
  // The ten properties: no overlap, no line through text or structure, nothing outside, no loose end, every step there, no crossing,
  // nothing below 12 px, the same twice, a change of way moves nothing, never throws.
  it.each(panes)(`lay out without a finding at %i px, ${count} plans`, pane => {
    const wrong = seeds.flatMap(seed => {
      const plan = wildPlan(seed, pane)
      return findings(plan, layoutScheme(plan)).map(finding => `seed ${seed}: ${finding}`)
    })
    expect(wrong).toEqual([])
  })

  it.each([Number.NaN, -32, 0, 40])('end also where the room is no room, %f px', pane => {
    for (const one of [wildPlan(1, pane), cases[0]!.at(pane)]) {
      const out = layoutScheme(one)
      expect(out.els.length).toBeGreaterThan(0)
      expect(Number.isFinite(out.w)).toBe(true)
    }
  })

  it.each(panes)('the same input gives the same output at %i px', pane => {
    for (const seed of seeds.slice(0, 15)) expect(layoutScheme(wildPlan(seed, pane))).toEqual(layoutScheme(wildPlan(seed, pane)))
  })

  it.each(panes)('another way chosen moves no structure at %i px', pane => {
    let flips = 0
    for (const seed of seeds.slice(0, 25)) {
      const plan = wildPlan(seed, pane)
      const before = places(layoutScheme(plan))
      plan.steps.forEach((step, i) => {
        if (step.alts.length === 0) return
        const to = (seed + i) % step.alts.length
        const after = places(layoutScheme(flipped(plan, i, to)))
        expect([...after], `seed ${seed}, step ${i}, way ${to}`).toEqual([...before])
        flips++
      })
    }
    expect(flips).toBeGreaterThan(30)
  })
})

describe.each(cases)('$name', one => {
  it.each(panes)('has no finding at %i px', pane => {
    const input = one.at(pane)
    const out = layoutScheme(input)
    expect(findings(input, out)).toEqual([])
    expect(out.notes).toEqual([])
  })

  it('buy instead of make moves no structure', () => {
    const input = one.at(860)
    const before = layoutScheme(input)
    for (const [id, cell] of Object.entries(input.cells)) {
      if (!cell.pick || cell.pick === 'make only') continue
      const other = { ...cell, pick: cell.pick === 'buy' ? ('make' as const) : ('buy' as const) }
      const after = layoutScheme({ ...input, cells: { ...input.cells, [id]: other }, keep: before.keep })
      expect([...places(after)]).toEqual([...places(before)])
    }
  })
})

describe('what is kept', () => {
  const demo = cases[0]!
  const input = demo.at(860)
  const first = layoutScheme(input)

  it('handed back, the drawing stays as it is', () => {
    expect(layoutScheme({ ...input, keep: first.keep }).els).toEqual(first.els)
  })

  it('a goal dropped moves what stays by less than a row', () => {
    const without = { ...input, steps: input.steps.filter(step => step.to !== 'quinoxaline'), keep: first.keep }
    const before = new Map(first.els.flatMap(el => (el.el === 'mol' ? [[el.id, el] as const] : [])))
    const moves = layoutScheme(without).els.flatMap(el => {
      const old = before.get(el.id)
      return el.el === 'mol' && old ? [Math.hypot(el.x - old.x, el.y - old.y)] : []
    })
    expect(moves.length).toBeGreaterThan(5)
    expect(Math.max(...moves)).toBeLessThan(140)
  })

  it('a co-reactant bought that was made leaves the start, benzil and the dienone where they are', () => {
    const made = cases[1]!.at(860)
    const before = layoutScheme(made)
    const steps = made.steps
      .filter(step => step.to !== 'dihydrazone' && step.to !== 'acetylene')
      .map(step => (step.to === 'hexaphenylbenzene' ? { ...step, made: [], co: ['acetylene'] } : step))
    const acetylene = { ...made.cells.acetylene!, role: 'co' as const, pick: 'buy' as const }
    const bought = { ...made, steps, cells: { ...made.cells, acetylene } }
    const where = places(layoutScheme({ ...bought, keep: before.keep }))
    for (const id of ['benzoin', 'benzil', 'dienone']) expect(where.get(id), id).toBe(places(before).get(id))
    expect(findings(bought, layoutScheme({ ...bought, keep: before.keep }))).toEqual([])
  })

  it('is forgotten when the pane changes width', () => {
    const other = demo.at(536)
    expect(layoutScheme({ ...other, keep: first.keep })).toEqual(layoutScheme(other))
  })
})

describe('the checker itself', () => {
  const input = cases[0]!.at(860)
  const out = layoutScheme(input)
  const shifted = (id: string, dx: number, dy: number): SchemeOut => ({
    ...out,
    els: out.els.map(el => (el.id === id && 'x' in el ? { ...el, x: el.x + dx, y: el.y + dy } : el)),
  })
  it.each([
    ['overlap', shifted('lophine/name0', 0, 20)],
    ['line through', shifted('benzil', -60, 0)],
    ['outside', shifted('quinoxaline/note', 400, 0)],
    ['loose end', { ...out, els: out.els.filter(el => el.id !== 'dienone') }],
    ['step not drawn', { ...out, els: out.els.filter(el => el.id !== 'lophine/arrow') }],
    ['too small', { ...out, els: out.els.map(el => (el.el === 'text' && el.id === 'benzil/amount' ? { ...el, size: 9 } : el)) }],
    [
      'crossing',
      {
        ...out,
        els: out.els.map(el =>
          el.el === 'path' && el.id === 'quinoxaline/arrow'
            ? {
                ...el,
                pts: [
                  [400, 183],
                  [585, 420],
                ] as const,
              }
            : el,
        ),
      },
    ],
  ] as const)('sees a planted fault: %s', (kind, broken) => {
    expect(findings(input, broken as SchemeOut).some(finding => finding.startsWith(kind))).toBe(true)
  })
})
