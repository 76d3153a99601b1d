import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { draftOf, dropDraft, keepDraft, unsavedDrafts } from '../../../../web/state/draft.ts'
import { emptyState, type SheetState } from '../../../../web/state/sheet-state.ts'

/** As much of a browser's storage as is used; `full` refuses every write, as a browser without room does. */
class Storage {
  readonly #items = new Map<string, string>()
  full = false
  get length(): number {
    return this.#items.size
  }
  key = (at: number): string | null => [...this.#items.keys()][at] ?? null
  getItem = (key: string): string | null => this.#items.get(key) ?? null
  setItem = (key: string, text: string): void => {
    if (this.full) throw new Error('QuotaExceededError')
    this.#items.set(key, text)
  }
  removeItem = (key: string): void => void this.#items.delete(key)
}

const titled = (title: string, seed: number): SheetState => {
  const state = emptyState(seed)
  return { ...state, plan: { ...state.plan, title } }
}
let storage: Storage

beforeEach(() => {
  storage = new Storage()
  vi.stubGlobal('localStorage', storage)
})
afterEach(() => {
  vi.unstubAllGlobals()
})

describe('drafts', () => {
  it('keeps several plans that never reached the server beside each other', () => {
    keepDraft({ state: titled('b', 1), saved: null, clean: false })
    keepDraft({ state: titled('a', 2), saved: null, clean: false })
    expect(unsavedDrafts().map(draft => draft.state.plan.title)).toEqual(['a', 'b'])
  })

  it('goes by its id once it is saved, and is unsaved no longer', () => {
    keepDraft({ state: titled('a', 1), saved: null, clean: false })
    keepDraft({ state: titled('a', 1), saved: { id: 'p1', version: 1, savedAt: '' }, clean: true })
    expect(unsavedDrafts()).toEqual([])
    expect(draftOf('p1')?.state.plan.title).toBe('a')
    dropDraft('p1')
    expect(draftOf('p1')).toBeNull()
  })

  it('says so where the browser keeps nothing', () => {
    storage.full = true
    expect(keepDraft({ state: titled('a', 1), saved: null, clean: false })).toBe(false)
  })

  it('fills in a setting that has come since the draft was kept', () => {
    const { scale: _since, ...older } = emptyState(1).plan.settings
    const state = { ...emptyState(1), plan: { ...emptyState(1).plan, settings: { ...older, reserve: 0.2 } } }
    storage.setItem('waybench-draft p1', JSON.stringify({ state, saved: null, clean: false }))
    expect(draftOf('p1')?.state.plan.settings).toMatchObject({ scale: {}, reserve: 0.2 })
  })

  it('takes what is no draft for none', () => {
    storage.setItem('waybench-draft p1', '{"state":')
    storage.setItem('waybench-draft p2', '{}')
    expect([draftOf('p1'), draftOf('p2'), draftOf('p3')]).toEqual([null, null, null])
  })

  it('holds the records that its plan goes by, or where there is no room for them at least the plan', () => {
    const records = { format: 'waybench-library', version: 1, title: 'old', materials: [], transformations: [] } as const
    const draft = { state: titled('a', 2), saved: null, clean: false, records: { ...records, materials: [], transformations: [] } }
    keepDraft(draft)
    expect(unsavedDrafts()[0]!.records).toEqual(records)
    const { setItem } = storage
    storage.setItem = (key, text) => {
      if (text.includes('waybench-library')) throw new Error('QuotaExceededError')
      setItem(key, text)
    }
    expect(keepDraft({ ...draft, state: titled('b', 2) })).toBe(true)
    expect(unsavedDrafts().map(one => [one.state.plan.title, one.records])).toEqual([['b', null]])
  })
})
