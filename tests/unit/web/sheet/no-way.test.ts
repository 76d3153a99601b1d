import { beforeEach, describe, expect, it } from 'vitest'
import type { ChoosingOptions } from '../../../../core/choose/query.ts'
import { routeRows } from '../../../../core/choose/route-rows.ts'
import { type Choosing, firstChoosing } from '../../../../core/plan/choosing.ts'
import { sliceFile, sliceOf } from '../../../../core/plan/slice.ts'
import type { Problem } from '../../../../core/problem/problem.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { Refused, silent } from '../../../../web/api/client.ts'
import { onSheet } from '../../../../web/sheet/no-way.tsx'
import { wayClauses } from '../../../../web/sheet/way-words.ts'
import { grown, noFacts } from '../../../../web/state/facts.ts'
import { facts } from '../../../../web/state/facts-here.ts'
import { listOf } from '../../../../web/state/route-lists.ts'
import { routeOfSteps } from '../../../../web/state/routes-of.ts'
import { emptyState } from '../../../../web/state/sheet-state.ts'
import { change, show } from '../../../../web/state/store.ts'
import { bundledTraits } from '../../../support/bundled-traits.ts'

const { library } = bundled()
const { traits } = bundledTraits()
const ids = ['benzil-nitric-acid', 'lophine']
const slice = sliceOf(library, ids)
const route = routeOfSteps(library, 'benzoin', ids)!

/** What the search itself says to a wish that no way keeps to. */
function refusal(options: ChoosingOptions): readonly Problem[] {
  const answer = routeRows({ library, traits, query: { from: 'benzoin', to: 'lophine', ...options } })
  if (!answer.ok || answer.value.kind !== 'none') throw new Error('there is a way, or the question is wrong')
  return answer.value.problems
}

beforeEach(() => {
  facts.value = grown(noFacts, { library: sliceFile(slice), traits: Object.fromEntries(traits), drawings: {}, makeable: [] })
  const { plan, choosing } = emptyState(1)
  const goals = [{ target: 'lophine', amount: { kind: 'rest' as const }, route }]
  show({ plan: { ...plan, start: { material: 'benzoin', massG: 24 }, goals }, choosing })
})

describe('where no way keeps to what is asked', () => {
  // Regulation (EC) 1272/2008, Annex VI: nitric acid above 20 %, ammonia and acetic acid are Skin Corr., H314.
  it.each<[string, Partial<Choosing> & ChoosingOptions, string]>([
    ['avoided', { avoidCode: ['H314'] }, 'H314'],
    ['too short', { maxSteps: 1 }, 'steps'],
    ['through', { mustPass: ['castor-oil'] }, 'drop'],
  ])('speaks of the blanks of the sheet, never of the command line: %s', (_, options, word) => {
    const asked = { ...firstChoosing, ...options }
    const told = refusal(options).map(problem => onSheet(problem, asked, 'lophine'))
    const text = JSON.stringify(told)
    expect(text).toContain(word)
    expect(text).not.toMatch(/--|[Oo]ption/)
    const undone = told.flatMap(one => one.wishes)
    expect(undone.length).toBeGreaterThan(0)
    expect(undone[0]!.patch).not.toEqual(options)
  })

  it('heads question 3 with it and with what the plan still uses', async () => {
    change({ do: 'choosing', patch: { avoidCode: ['H314'] } })
    const ask = (problems: readonly Problem[]) =>
      listOf('lophine').routes.ask(JSON.stringify(problems), () => ({
        answer: Promise.reject(new Refused(problems, 422)),
        stop: () => {},
        leave: () => {},
      }))
    ask(refusal({ avoidCode: ['H314'] }))
    expect(wayClauses('lophine')[0]).toBe('Looking for ways without H314;')
    await new Promise(resolve => setTimeout(resolve))
    expect(wayClauses('lophine').join(' ')).toMatch(/^No way without H314; the plan still uses .*(nitric|acetic) acid/)
    ask([silent])
    await new Promise(resolve => setTimeout(resolve))
    expect(wayClauses('lophine')[0]).toBe('Ways without H314 could not be looked for;')
    change({ do: 'choosing', patch: { avoidCode: [] } })
    expect(wayClauses('lophine')[1]).toBe('others could not be looked for')
  })
})
