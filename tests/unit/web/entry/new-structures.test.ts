import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { libraryFileSchema } from '../../../../core/library/library.ts'
import type { Material } from '../../../../core/library/material.ts'
import { trustInHazards } from '../../../../core/library/trust.ts'
import { newStructures } from '../../../../server/library/new-structures.ts'
import { openWorkshop, type Workshop } from '../../../../server/library/workshop.ts'

// The page keeps which part of it stands in the address.
vi.stubGlobal('location', { search: '', href: 'http://localhost/' })
vi.stubGlobal('addEventListener', () => {})
const { entryServer } = await import('../../../../web/entry/api.ts')
const { emptyWriting } = await import('../../../../web/entry/draft.ts')
const { queue } = await import('../../../../web/entry/reactions.ts')
const { keepNewNames, namedIn, news, sayOfStructure, takeForHeld, watchNews, withNewNames } = await import(
  '../../../../web/entry/new-structures.ts'
)

let workshop: Workshop
beforeAll(async () => {
  workshop = await openWorkshop([])
  vi.spyOn(entryServer, 'newStructures').mockImplementation(async typed => ({ materials: newStructures(workshop, typed) }))
  watchNews()
})

const item = (number: number, equation: string, unknown: readonly string[], agents: readonly string[] = []) => ({
  ...{ file: 'a.smi', number, title: '', text: '', balanced: true, problems: [], written: null, left: false },
  read: { equation, agents, unknown },
})
/** The list is asked about once its last letter is a while ago. */
const told = async () => {
  await expect.poll(() => news.value.fresh && news.value.all.length > 0).toBe(true)
  return news.value.all
}

beforeEach(async () => {
  queue.value = null
  queue.value = {
    items: [
      item(1, 'CCCCCO + acetic acid -> CC(=O)OCCCCC + water', ['CCCCCO', 'CC(=O)OCCCCC']),
      item(2, '2 OCCCCC -> CCCCCOCCCCC + water', ['OCCCCC', 'CCCCCOCCCCC', 'CCCCCO'], ['CCCCCO']),
    ],
    ...{ at: null, before: emptyWriting, saved: null },
  }
  await told()
})

describe('structures of a list of reactions that the library does not hold', () => {
  it('come once each, however they are written, and are called by what is said of them in all reactions', async () => {
    const [alcohol] = news.value.all
    // Pentan-1-ol, pentyl acetate and dipentyl ether: formulas of PubChem CID 6276, 12348, 12743 (from memory).
    expect(news.value.all.map(one => one.told.material.formula)).toEqual(['C5H12O', 'C7H14O2', 'C10H22O'])
    expect(alcohol!.told.structures).toEqual(['CCCCCO', 'OCCCCC'])
    sayOfStructure(alcohol!.told, { name: 'pentan-1-ol' })
    await expect.poll(() => news.value.all[0]!.record.name).toBe('pentan-1-ol')
    expect(queue.value!.items.map(one => withNewNames(one.read!.equation))).toEqual([
      expect.stringMatching(/^pentan-1-ol \+ acetic acid -> C7H14O2\b.* \+ water$/),
      expect.stringMatching(/^2 pentan-1-ol -> C10H22O\b.* \+ water$/),
    ])
    const materials = news.value.all.map(one => one.record)
    const file = { format: 'waybench-library', version: 1, title: 'new', materials, transformations: [] }
    expect(libraryFileSchema.safeParse(file).success).toBe(true)
  })

  it('take hazards of the tables over only once they are confirmed, and anew after another name', async () => {
    const { told: alcohol } = news.value.all[0]!
    sayOfStructure(alcohol, { name: 'pentan-1-ol' })
    await expect.poll(() => news.value.all[0]!.told.record?.name).toBe('pentan-1-ol')
    expect(news.value.all[0]!.record.hazards).toBeUndefined()
    sayOfStructure(alcohol, { hazards: 'tables' })
    // Annex VI of Regulation (EC) 1272/2008, index 603-200-00-1.
    await expect.poll(() => news.value.all[0]!.record.hazards).toMatchObject({ codes: expect.arrayContaining(['H226', 'H332']) })
    // Seen in the Regulation, not at the bench that typed the name.
    expect(trustInHazards(news.value.all[0]!.record as unknown as Material)).toBe('seen')
    sayOfStructure(alcohol, { name: 'chlorobenzene' })
    await expect.poll(() => news.value.all[0]!.told.record?.name).toBe('chlorobenzene')
    expect(news.value.all[0]!.record.hazards).toBeUndefined()
  })

  it('take the codes of a data sheet, which stay whatever it is called', async () => {
    const { told: ether } = news.value.all[2]!
    sayOfStructure(ether, { hazards: 'typed', codes: 'H226, H315', signalWord: 'Warning', codesFrom: 'a data sheet of 2025' })
    sayOfStructure(ether, { name: 'dipentyl ether' })
    await expect.poll(() => news.value.all[2]!.record.name).toBe('dipentyl ether')
    const record = news.value.all[2]!.record as unknown as Material
    expect(record.hazards).toEqual({ codes: ['H226', 'H315'], signalWord: 'Warning', from: 'a data sheet of 2025' })
    expect(trustInHazards(record)).not.toBe('remembered')
  })

  it('ask for a name of its own where two of the file would have one', async () => {
    for (const one of news.value.all.slice(0, 2)) sayOfStructure(one.told, { name: one.told.structures[0] === 'CCCCCO' ? 'Amyl' : 'amyl' })
    await expect.poll(() => news.value.all[1]!.record.name).toBe('amyl')
    expect(news.value.all.map(one => one.lacking.map(lack => lack.field))).toEqual([['form'], ['form', 'name'], ['form']])
  })

  it('are no solids before somebody says so: a structure does not tell', async () => {
    const [alcohol] = news.value.all
    expect(alcohol!.lacking.map(one => one.field)).toEqual(['form'])
    sayOfStructure(alcohol!.told, { name: 'pentan-1-ol' })
    await expect.poll(() => news.value.all[0]!.record.name).toBe('pentan-1-ol')
    expect(news.value.all[0]!.lacking.map(one => one.field)).toEqual(['form'])
    sayOfStructure(alcohol!.told, { form: 'liquid' })
    await expect.poll(() => news.value.all[0]!.lacking).toEqual([])
    expect(news.value.all[0]!.record.form).toBe('liquid')
  })

  it('go on being called by their names once the library holds them', async () => {
    sayOfStructure(news.value.all[0]!.told, { name: 'pentan-1-ol' })
    await expect.poll(() => news.value.all[0]!.record.name).toBe('pentan-1-ol')
    const before = withNewNames(queue.value!.items[1]!.read!.equation)
    keepNewNames()
    // What the server answers once they are saved: none of them is new.
    news.value = { all: [], fresh: true, problems: [] }
    expect(withNewNames(queue.value!.items[1]!.read!.equation)).toBe(before)
    expect(before).toMatch(/^2 pentan-1-ol -> /)
  })

  it('are saved where a step names them, and not where it was taken out of all', () => {
    const id = (at: number) => news.value.all[at]!.record.id
    const step = { reactants: [{ compound: id(0) }], products: [{ compound: id(2) }], note: `not ${String(id(1))}` }
    expect(namedIn([step]).map(one => one.id)).toEqual([id(0), id(2)])
    expect(namedIn([null])).toEqual([])
  })

  it('are a material that is held where a person says so: then nothing is added for them', async () => {
    takeForHeld(news.value.all[0]!.told, 'isopentyl-alcohol')
    await expect.poll(() => news.value.all).toHaveLength(2)
    expect(queue.value!.items.map(one => [one.read!.equation, one.read!.agents, one.read!.unknown])).toEqual([
      ['CCCCCO {isopentyl-alcohol} + acetic acid -> CC(=O)OCCCCC + water', [], ['CC(=O)OCCCCC']],
      ['2 OCCCCC {isopentyl-alcohol} -> CCCCCOCCCCC + water', ['CCCCCO {isopentyl-alcohol}'], ['CCCCCOCCCCC']],
    ])
  })
})
