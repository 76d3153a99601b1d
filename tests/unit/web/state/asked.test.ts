import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Told } from '../../../../core/choose/in-turns.ts'
import type { RouteRow } from '../../../../core/choose/route-row.ts'
import { Refused } from '../../../../web/api/client.ts'
import { Asking } from '../../../../web/state/asked.ts'
import type { Finding } from '../../../../web/state/searcher.ts'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

/** A search that the test drives by hand. */
function search() {
  let tell: (event: Told) => void = () => {}
  let resolve: (answer: string) => void = () => {}
  let reject: (fault: unknown) => void = () => {}
  const calls: string[] = []
  const answer = new Promise<string>((yes, no) => {
    resolve = yes
    reject = no
  })
  const begin = (onTold: (event: Told) => void): Finding<string> => {
    tell = onTold
    calls.push('begun')
    return { answer, stop: () => calls.push('stopped'), leave: () => calls.push('left') }
  }
  return {
    begin,
    calls,
    tell: (event: Told) => tell(event),
    resolve: (text: string) => resolve(text),
    reject: (fault: unknown) => reject(fault),
  }
}
const row = (place: number): Told => ({ kind: 'row', place, row: { steps: [`s${place}`] } as unknown as RouteRow })
const settled = () => vi.advanceTimersByTimeAsync(0)

describe('a question', () => {
  it('shows nothing of a search that is over at once, and the old answer until then', async () => {
    const asking = new Asking<string>()
    const [one, two] = [search(), search()]
    asking.ask('a', one.begin)
    one.resolve('first')
    await settled()
    expect(asking.state.value).toEqual({ answer: 'first', waiting: false, problems: [] })
    asking.ask('b', two.begin)
    two.tell(row(1))
    expect(asking.state.value).toEqual({ answer: 'first', waiting: true, problems: [] })
    two.resolve('second')
    await settled()
    vi.advanceTimersByTime(1000)
    expect(asking.state.value).toEqual({ answer: 'second', waiting: false, problems: [] })
  })

  it('tells rows as they are found once a moment has passed, and how far the search is', async () => {
    const asking = new Asking<string>()
    const one = search()
    asking.ask('a', one.begin)
    one.tell(row(1))
    vi.advanceTimersByTime(300)
    expect(asking.state.value.looking).toMatchObject({ found: 1, stopping: false })
    one.tell(row(2))
    one.tell({ kind: 'progress', found: 2, work: 500, bound: 1.5 })
    vi.advanceTimersByTime(300)
    expect(asking.state.value.looking?.rows.map(told => told.steps)).toEqual([['s1'], ['s2']])
    expect(asking.state.value.looking?.bound).toBe(1.5)
    one.resolve('done')
    await settled()
    expect(asking.state.value.looking).toBeUndefined()
  })

  it('is stopped once, at once to be seen, and its answer says so', async () => {
    const asking = new Asking<string>()
    const one = search()
    asking.ask('a', one.begin)
    vi.advanceTimersByTime(300)
    asking.stop()
    asking.stop()
    expect(one.calls).toEqual(['begun', 'stopped'])
    expect(asking.state.value.looking?.stopping).toBe(true)
    one.resolve('what there is')
    await settled()
    expect(asking.state.value).toEqual({ answer: 'what there is', waiting: false, problems: [], stopped: true })
  })

  it('leaves a search that nobody waits for any more, and takes nothing from it', async () => {
    const asking = new Asking<string>()
    const [one, two] = [search(), search()]
    asking.ask('a', one.begin)
    asking.ask('b', two.begin)
    expect(one.calls).toEqual(['begun', 'left'])
    one.tell(row(9))
    one.resolve('late')
    await settled()
    expect(asking.state.value.answer).toBeNull()
    two.reject(new Refused([{ code: 'x', where: [], what: 'No.', why: 'w', cure: 'c' }], 422))
    await settled()
    expect(asking.state.value.problems[0]?.what).toBe('No.')
  })

  it('keeps nothing: asked again what was asked before, it looks again', async () => {
    const asking = new Asking<string>()
    const [one, two, three] = [search(), search(), search()]
    for (const [key, asked, text] of [
      ['a', one, '1'],
      ['b', two, '2'],
      ['a', three, '3'],
    ] as const) {
      asking.ask(key, asked.begin)
      asked.resolve(text)
      await settled()
    }
    expect(three.calls).toEqual(['begun'])
    expect(asking.state.value.answer).toBe('3')
    asking.ask('a', one.begin)
    expect(one.calls).toEqual(['begun'])
    asking.forget()
    asking.ask('a', one.begin)
    expect(one.calls).toEqual(['begun', 'begun'])
  })
})
