import { describe, expect, it } from 'vitest'
import type { Library } from '../../../../core/library/library.ts'
import type { Material } from '../../../../core/library/material.ts'
import { firstChoosing } from '../../../../core/plan/choosing.ts'
import { changesSince, libraryHash, planFileOf, planFromFile, readPlanFile } from '../../../../core/plan/file.ts'
import { reckoned } from '../../../../core/plan/reckoned.ts'
import { sha256 } from '../../../../core/plan/sha256.ts'
import { sliceOfPlan } from '../../../../core/plan/slice.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { benzoinGoal, benzoinPlan, logEntry, mass, rest } from '../../../support/benzoin-plans.ts'

const { library } = bundled()
const plan = benzoinPlan([benzoinGoal(library, 'lophine', mass(5)), benzoinGoal(library, 'hexaphenylbenzene', rest)], {
  log: [logEntry({ weighedG: 18 })],
  settings: { confidence: 0.8 },
})
const text = (): string => JSON.stringify(planFileOf(library, plan))
const opened = (json: string) => {
  const read = readPlanFile('plan.json', json)
  if (!read.ok) throw new Error(read.problems.map(p => p.what).join())
  return read.value
}

describe('SHA-256', () => {
  // FIPS 180-4 example values (NIST, "SHA256.pdf"): "abc" and the two-block message; the empty text from memory.
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ])('of "%s"', (message, hash) => {
    expect(sha256(message)).toBe(hash)
  })
})

describe('a plan file', () => {
  it('carries the steps that it was compared with, with all that they charge', () => {
    const used = new Set(plan.goals.flatMap(goal => goal.route.steps.map(step => step.transformation)))
    const other = [...library.transformations.values()].find(one => one.mainProduct === 'benzil' && !used.has(one.id))!
    expect(opened(text()).slice.transformations.has(other.id)).toBe(false)
    const { slice, plan: back } = opened(JSON.stringify(planFileOf(library, plan, [other.id])))
    expect(slice.transformations.get(other.id)).toEqual(other)
    for (const line of other.charge) expect(slice.materials.has(line.material)).toBe(true)
    expect(back).toEqual(plan)
  })

  it('comes back as it went, and reckons the same with nothing but its own slice', () => {
    const { plan: back, slice } = opened(text())
    expect(back).toEqual(plan)
    const [there, here] = [reckoned(slice, back), reckoned(library, plan)]
    expect(there.goals).toEqual(here.goals)
    expect(there.steps).toEqual(here.steps)
    expect(there.metrics).toEqual(here.metrics)
  })

  it('keeps how its routes were looked for, opens without, and refuses an axis that there is none of', () => {
    const choosing = { ...firstChoosing, by: 'hazard' as const, avoid: ['benzene'], avoidCode: ['H350'] }
    const file = planFileOf(library, { ...plan, choosing })
    expect(opened(JSON.stringify(file)).plan.choosing).toEqual(choosing)
    expect(opened(text()).plan.choosing).toBeUndefined()
    const wrong = readPlanFile('plan.json', JSON.stringify({ ...file, choosing: { ...choosing, by: 'luck' } }))
    expect(wrong.ok ? [] : wrong.problems.map(p => p.where.join('/'))).toEqual(['plan.json/choosing/by'])
  })

  it('carries only what the plan uses', () => {
    const slice = sliceOfPlan(library, plan)
    expect([...slice.transformations.keys()].sort()).toEqual(
      [...new Set(plan.goals.flatMap(g => g.route.steps.map(s => s.transformation)))].sort(),
    )
    expect(slice.materials.size).toBeLessThan(40)
  })

  it('finds nothing changed in the library it was saved with', () => {
    expect(changesSince(library, opened(text()))).toEqual([])
    expect(libraryHash(library)).toMatch(/^[0-9a-f]{64}$/)
  })

  it('says what changed since: a figure, a record gone', () => {
    const transformations = new Map(library.transformations)
    const lophine = transformations.get('lophine')!
    transformations.set('lophine', { ...lophine, elapsedHours: 99 })
    const materials = new Map(library.materials)
    materials.delete('benzaldehyde')
    const changed: Library = { ...library, transformations, materials }
    const changes = changesSince(changed, opened(text()))
    expect(changes.map(c => [c.code, ...c.where])).toEqual([
      ['record-gone', 'materials', 'benzaldehyde'],
      ['record-changed', 'transformations', 'lophine'],
    ])
    expect(changes[1]!.what).toContain(`time in all: ${lophine.elapsedHours}\u00a0h → 99\u00a0h`)
    const own = { ...lophine, sources: [{ citation: 'own bench, 2026-11-20', checked: true }] }
    const elsewhere = opened(text())
    const [told] = changesSince(library, {
      ...elsewhere,
      slice: { ...elsewhere.slice, transformations: new Map([['lophine', own]]) },
      library: { title: 'another', hash: '0'.repeat(64) },
    })
    expect(told!.what).toMatch(/^Lophine .*, in the plan by its own bench, here not: /)
    // Whether it was ever held here, no file can tell.
    expect(changes[0]!.what).toBe('The library here does not hold benzaldehyde; the plan brings it.')
  })

  it('says beside it that known hazards are unknown now, or fewer', () => {
    const whatOf = (hazards: Material['hazards']): string => {
      const { hazards: known, ...bare } = library.materials.get('benzaldehyde')!
      expect(known!.codes).toContain('H302')
      const materials = new Map(library.materials).set(bare.id, hazards === undefined ? bare : { ...bare, hazards })
      return changesSince({ ...library, materials }, opened(text()))[0]!.what
    }
    // A list without a code that is only remembered is no word that there is none.
    for (const gone of [undefined, { codes: [], signalWord: 'none' as const, from: 'memory' }])
      expect(whatOf(gone)).toMatch(/ Its hazards are unknown now, which is not safe\.$/)
    expect(whatOf({ codes: ['H302'], signalWord: 'Warning', from: 'a label' })).toMatch(
      / Fewer hazards than the plan was saved with: .*H332.* gone\.$/,
    )
  })

  it('is silent about records that the plan does not use', () => {
    const materials = new Map(library.materials)
    materials.delete('cholesterol')
    materials.delete('vanillin')
    expect(changesSince({ ...library, materials }, opened(text()))).toEqual([])
  })

  it('keeps its hash whatever the order of records and keys', () => {
    const turned: Library = {
      ...library,
      materials: new Map(
        [...library.materials].reverse().map(([id, m]) => [id, Object.fromEntries(Object.entries(m).reverse()) as unknown as typeof m]),
      ),
    }
    expect(libraryHash(turned)).toBe(libraryHash(library))
  })

  it('tells every fault with its place', () => {
    const file = JSON.parse(text())
    file.goals[0].amount.massG = -5
    file.seeed = 3
    file.log[0].dampPercent = 'wet'
    const read = planFromFile('plan.json', file)
    const found = (read.ok ? [] : read.problems).map(p => `${p.code} ${p.where.join('.')}`)
    expect(found).toHaveLength(3)
    expect(found.some(f => f.includes('goals.0.amount.massG'))).toBe(true)
    expect(found.some(f => f.startsWith('schema-unknown-key') && f.includes('seeed'))).toBe(true)
    expect(found.some(f => f.includes('log.0.dampPercent'))).toBe(true)
  })

  it('refuses a log with two entries of one name', () => {
    const file = JSON.parse(text())
    file.log.push(file.log[0])
    const read = planFromFile('plan.json', file)
    expect(read.ok ? [] : read.problems.map(p => p.code)).toEqual(['log-id-twice'])
  })

  it('refuses what is no JSON', () => {
    expect(readPlanFile('plan.json', '{"format":').ok).toBe(false)
  })
})
