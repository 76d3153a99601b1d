import { beforeEach, describe, expect, it, vi } from 'vitest'
import { sliceFile, sliceOf } from '../../../../core/plan/slice.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { Refused, server } from '../../../../web/api/client.ts'
import { wayClauses } from '../../../../web/sheet/way-words.ts'
import { carried, forgetBrought } from '../../../../web/state/brought.ts'
import { grown, keeping, noFacts } from '../../../../web/state/facts.ts'
import { bringFacts, factsAsked, factsTrouble, ofPlanAlone } from '../../../../web/state/facts-asked.ts'
import { facts } from '../../../../web/state/facts-here.ts'
import { canKeepOld } from '../../../../web/state/opening.ts'
import { forgetLibrary } from '../../../../web/state/questions.ts'
import { listOf } from '../../../../web/state/route-lists.ts'
import { routeOfSteps } from '../../../../web/state/routes-of.ts'
import { save, savingProblems, savingState } from '../../../../web/state/saving.ts'
import { emptyState } from '../../../../web/state/sheet-state.ts'
import { show } from '../../../../web/state/store.ts'

const { library } = bundled()
const ids = ['benzil-nitric-acid', 'lophine']
const slice = sliceFile(sliceOf(library, ids, ['benzoin']))
const reply = { library: slice, traits: {}, drawings: {} }
const route = routeOfSteps(library, 'benzoin', ids)!
const gone = {
  code: 'id-unknown',
  where: ['transformation', ids[0]!],
  what: 'The library has no such step.',
  why: 'It was taken out.',
  cure: 'Choose another.',
}
const withoutFirst = { ...reply, library: sliceFile(sliceOf(library, ['lophine'], ['benzoin'])), problems: [gone] }

/** A plan made on the page: nothing was opened, nothing carried. */
beforeEach(() => {
  vi.restoreAllMocks()
  carried.value = null
  facts.value = grown(noFacts, reply)
  factsAsked.value = { answer: true, waiting: false, problems: [] }
  const { plan, choosing } = emptyState(1)
  show({
    plan: { ...plan, start: { material: 'benzoin', massG: 24 }, goals: [{ target: 'lophine', amount: { kind: 'rest' as const }, route }] },
    choosing,
  })
})

describe('a plan made on the page, under which the library changes', () => {
  it('carries the records of its routes on, and has the server lay them under what it holds', async () => {
    forgetLibrary()
    expect(carried.value?.transformations.map(step => step.id)).toEqual(expect.arrayContaining(ids))
    expect(canKeepOld(ids)).toBe(true)
    const asked = vi.spyOn(server, 'slice').mockResolvedValue(reply)
    await bringFacts([ids], ['benzoin'])
    expect(asked.mock.calls[0]?.[2]?.transformations.map(step => step.id)).toEqual(expect.arrayContaining(ids))
  })

  it('is not saved while a record of its routes is missing, and says which', async () => {
    forgetLibrary()
    vi.spyOn(server, 'slice').mockResolvedValue(withoutFirst)
    const written = vi.spyOn(server, 'savePlan').mockRejectedValue(new Refused([], 500))
    await save()
    expect(written).not.toHaveBeenCalled()
    expect(savingState.value).toBe('failed')
    expect(savingProblems.value).toMatchObject([{ code: 'step-missing', where: ['transformation', ids[0]] }])
    expect(factsTrouble.value).toEqual([gone])
  })

  it('offers what the library lacks, and goes on offering it while the plan keeps its own records', async () => {
    vi.spyOn(server, 'slice').mockResolvedValue({ ...reply, brought: ['lophine'], broughtMaterials: ['lophine'] })
    await bringFacts([ids], ['benzoin', 'lophine'])
    const offered = { steps: ['lophine'], materials: ['lophine'] }
    expect(ofPlanAlone.value).toEqual(offered)
    facts.value = keeping(facts.value, slice)
    expect(ofPlanAlone.value).toEqual(offered)
    forgetBrought()
    expect(ofPlanAlone.value).toEqual({ steps: [], materials: [] })
  })

  it('brings what is missing before it saves', async () => {
    forgetLibrary()
    vi.spyOn(server, 'slice').mockResolvedValue(reply)
    const written = vi.spyOn(server, 'savePlan').mockRejectedValue(new Refused([], 500))
    await save()
    const file = written.mock.calls[0]?.[0] as { slice: { transformations: { id: string }[] } }
    expect(file.slice.transformations.map(step => step.id).sort()).toEqual([...ids].sort())
  })
})

it('a list whose ways are not to be had does not claim to be looking still', async () => {
  const row = { steps: ['nowhere'] } as never
  listOf('lophine').routes.ask('a test', () => ({
    answer: Promise.resolve({ routes: [row] } as never),
    stop: () => {},
    leave: () => {},
  }))
  await expect.poll(() => wayClauses('lophine').at(-1)).toBe('others could not be looked for')
})
