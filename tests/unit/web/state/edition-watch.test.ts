import { expect, it } from 'vitest'
import { EditionWatch } from '../../../../web/state/edition-watch.ts'

it('a change of the library by somebody else is told once', () => {
  const watch = new EditionWatch()
  watch.begin('one')
  expect(watch.answered(1, 'one')).toBe(false)
  expect(watch.answered(2, 'two')).toBe(true)
  expect(watch.answered(3, 'two')).toBe(false)
})

it("an answer begun before this page's own change neither uses it up nor steps the edition back", () => {
  const watch = new EditionWatch()
  watch.begin('one')
  watch.expect(4)
  expect(watch.answered(3, 'one')).toBe(false)
  expect(watch.answered(5, 'two')).toBe(false)
  expect(watch.answered(6, 'two')).toBe(false)
  expect(watch.answered(7, 'three')).toBe(true)
})

it('the first word of the edition does not replace that of a later answer', () => {
  const watch = new EditionWatch()
  expect(watch.answered(1, 'two')).toBe(false)
  watch.begin('one')
  expect(watch.answered(2, 'two')).toBe(false)
})
