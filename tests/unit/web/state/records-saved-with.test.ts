import { expect, it } from 'vitest'
import { isOwnWord } from '../../../../core/library/own-word.ts'
import { changesSince, planFromFile } from '../../../../core/plan/file.ts'
import { sliceFile, sliceOf } from '../../../../core/plan/slice.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { planRecords } from '../../../../server/library/plan-records.ts'
import { grown, libraryOf, noFacts } from '../../../../web/state/facts.ts'
import { facts } from '../../../../web/state/facts-here.ts'
import { before, changedSince, fileAsSaved, noLongerChanged, ownChanged } from '../../../../web/state/records-saved-with.ts'
import { routeOfSteps } from '../../../../web/state/routes-of.ts'
import { emptyState } from '../../../../web/state/sheet-state.ts'
import { show } from '../../../../web/state/store.ts'

const { library } = bundled()
const here = sliceFile(sliceOf(library, ['lophine'], ['benzil']))
const ownBench = { citation: 'own bench, page 3', for: 'yield', checked: true }
/** The same records as another bench has them: its own yield over the bundled step, and a density that is not of its bench. */
const there = {
  ...here,
  materials: here.materials.map(one => (one.id === 'benzaldehyde' ? { ...one, densityGPerMl: 1.1 } : one)),
  transformations: here.transformations.map(one =>
    one.id === 'lophine'
      ? { ...one, yieldPercent: { low: 10, typical: 20, high: 30, from: 'own bench' }, sources: [ownBench, ...one.sources] }
      : one,
  ),
}

it('a plan of another bench offers its own yield over a bundled step, and no other record that differs', () => {
  const { plan, choosing } = emptyState(1)
  const route = routeOfSteps(library, 'benzil', ['lophine'])!
  show({
    plan: { ...plan, start: { material: 'benzil', massG: 5 }, goals: [{ target: 'lophine', amount: { kind: 'rest' as const }, route }] },
    choosing,
  })
  facts.value = grown(noFacts, { library: here, traits: {}, drawings: {} })
  before.value = there
  const opened = planFromFile('plan', fileAsSaved())
  if (!opened.ok) throw new Error(opened.problems[0]!.what)
  changedSince.value = changesSince(library, opened.value)
  expect(changedSince.value.map(one => one.where[1]).sort()).toEqual(['benzaldehyde', 'lophine'])
  expect(ownChanged.value.map(one => one.where[1])).toEqual(['lophine'])
  // The file holds them as they were saved, though the page reckons with what the library says.
  const taken = planRecords('plan', fileAsSaved(), library)
  expect(taken.ok && taken.value).toMatchObject({ materials: [], transformations: [{ id: 'lophine', yieldPercent: { typical: 20 } }] })
  expect(facts.value.library.transformations.get('lophine')?.yieldPercent).toEqual(library.transformations.get('lophine')!.yieldPercent)
  // Taken over, it is no difference any more, and nothing is left to take.
  noLongerChanged([{ list: 'transformations', id: 'lophine' }])
  expect(ownChanged.value).toEqual([])
  const after = planRecords('plan', fileAsSaved(), libraryOf(there))
  expect(after.ok && after.value.transformations).toEqual([])
})

it('a material that was put right in the plan is offered over the bundled one, and told as such', () => {
  const source = { citation: 'label of the bottle', for: 'density, melting point', checked: true }
  const mended = here.materials.map(one =>
    one.id === 'benzaldehyde' ? { ...one, densityGPerMl: 1.1, sources: [source, ...one.sources] } : one,
  )
  const { plan, choosing } = emptyState(1)
  const route = routeOfSteps(library, 'benzil', ['lophine'])!
  show({
    plan: { ...plan, start: { material: 'benzil', massG: 5 }, goals: [{ target: 'lophine', amount: { kind: 'rest' as const }, route }] },
    choosing,
  })
  facts.value = grown(noFacts, { library: here, traits: {}, drawings: {} })
  before.value = { ...here, materials: mended }
  const opened = planFromFile('plan', fileAsSaved())
  if (!opened.ok) throw new Error(opened.problems[0]!.what)
  changedSince.value = changesSince(library, opened.value)
  expect(ownChanged.value).toMatchObject([{ where: ['materials', 'benzaldehyde'], what: expect.stringContaining('put right in the plan') }])
  const taken = planRecords('plan', fileAsSaved(), library)
  expect(taken.ok && taken.value).toMatchObject({ materials: [{ id: 'benzaldehyde', densityGPerMl: 1.1 }], transformations: [] })
  // No record of the bundled library takes itself for put right.
  expect([...library.materials.values(), ...library.transformations.values()].filter(isOwnWord)).toEqual([])
})

it('a step and a material of one id are two records: what is taken of the one settles nothing of the other', () => {
  const step = library.transformations.get('chalcone')!
  const made = library.materials.get('chalcone')!
  before.value = {
    ...here,
    materials: [made],
    transformations: [{ ...step, sources: [ownBench, ...step.sources] }],
  }
  const changed = (list: string) => ({ code: 'record-changed', where: [list, 'chalcone'], what: '', why: '', cure: '' })
  changedSince.value = [changed('materials'), changed('transformations')]
  expect(ownChanged.value.map(one => one.where[0])).toEqual(['transformations'])
  noLongerChanged([{ list: 'transformations', id: 'chalcone' }])
  expect(changedSince.value.map(one => one.where[0])).toEqual(['materials'])
})
