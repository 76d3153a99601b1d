import { describe, expect, it } from 'vitest'
import { rdfOf } from '../../../../server/library/rd-file.ts'
import { notDrawn, rxnOf } from '../../../../server/library/reaction-files.ts'
import { reactionsShown } from '../../../../server/library/reaction-list.ts'
import { index, library, toolkit } from '../../../support/reader.ts'

const several = [...library.transformations.values()].filter(step => notDrawn(library, step, true) === null).slice(0, 5)

describe('reactions of files', () => {
  it('of several files come with file and number, and one that cannot be read hides none', () => {
    const files = several.map((step, at) => ({ name: `${at}.rxn`, text: rxnOf(library, step)! }))
    // A molecule is missing: the counts of the file tell, and no other takes its place.
    const bad = { name: 'bad.rxn', text: files[0]!.text.replace(/^\$MOL\n/m, '') }
    const shown = reactionsShown([files[0]!, bad, ...files.slice(1), { name: 'all.rdf', text: rdfOf(library, several) }], index, toolkit)
    const list = shown.ok ? shown.value : []
    expect(list.map(one => [one.file, one.number])).toEqual([
      ['0.rxn', 1],
      ['bad.rxn', 1],
      ...several.slice(1).map((_, at) => [`${at + 1}.rxn`, 1]),
      ...several.map((_, at) => ['all.rdf', at + 1]),
    ])
    expect(list.filter(one => one.read === null).map(one => [one.file, one.problems.length > 0])).toEqual([['bad.rxn', true]])
    expect(list.filter(one => one.read !== null).every(one => one.balanced && one.problems.length === 0)).toBe(true)
    // What is shown of each can be read again by itself: that is how one is mended.
    const again = list.flatMap(one => (one.read === null ? [] : [reactionsShown([{ name: one.file, text: one.text }], index, toolkit)]))
    expect(again.map(one => one.ok && one.value[0]!.read?.equation)).toEqual(list.flatMap(one => one.read?.equation ?? []))
  })
})
