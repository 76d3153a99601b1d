import { h } from 'preact'
import renderToString from 'preact-render-to-string'
import { expect, it } from 'vitest'
import { LibraryChanged } from '../../../web/library-changed.tsx'
import { changedSince } from '../../../web/state/records-saved-with.ts'
import { emptyState } from '../../../web/state/sheet-state.ts'
import { show } from '../../../web/state/store.ts'

it('says by which records the page reckons until somebody chooses, and nothing once that is settled', () => {
  show(emptyState(1))
  expect(renderToString(h(LibraryChanged, {}))).toBe('')
  changedSince.value = [{ code: 'record-changed', where: ['transformations', 'lophine'], what: 'Lophine changed.', why: '', cure: '' }]
  const asked = renderToString(h(LibraryChanged, {}))
  expect(asked).toContain('Keep the old')
  expect(asked).toContain('Until you choose, this page reckons with the new.')
  const { plan, choosing } = emptyState(1)
  show({ plan: { ...plan, keepsRecords: true }, choosing })
  expect(renderToString(h(LibraryChanged, {}))).not.toContain('Until you choose')
})
