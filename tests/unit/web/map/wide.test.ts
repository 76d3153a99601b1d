import { describe, expect, it } from 'vitest'
import { alongAndBeside } from '../../../../web/map/wide/bends.ts'
import { elementsOf } from '../../../../web/map/wide/elements.ts'
import { depthsOf, firstDepth, foldedAt, type WideNetwork } from '../../../../web/map/wide/network.ts'
import { place } from '../../../../web/map/wide/place.ts'
import { groupsOf } from '../../../../web/map/wide/wide-list.tsx'

const node = (id: string, steps: number | null, bestYield: number | null = 0.8, flags: readonly string[] = []) => ({
  id,
  name: id,
  steps,
  bestYield,
  flags,
})
const edge = (from: readonly string[], to: string, id = `${from.join('-')}-${to}`, sure: 'seen' | 'remembered' | 'unknown' = 'seen') => ({
  id,
  from,
  to,
  name: id,
  sure,
})

/** Benzoin downstream, cut short; the last step takes two of its compounds together, and one line leads back. */
const network: WideNetwork = {
  start: 'benzoin',
  nodes: [
    node('benzoin', 0, 1),
    node('benzil', 1, 0.96),
    node('hydrobenzoin', 1, null),
    node('lophine', 2, 0.86),
    node('dienone', 2, 0.9),
    node('acetylene', 3, 0.64),
    node('hexaphenylbenzene', 3, 0.72, ['gravest hazards']),
  ],
  edges: [
    edge(['benzoin'], 'benzil', 'copper', 'seen'),
    edge(['benzoin'], 'benzil', 'nitric', 'remembered'),
    edge(['benzoin'], 'hydrobenzoin', 'borohydride', 'unknown'),
    edge(['benzil', 'benzaldehyde'], 'lophine'),
    edge(['benzil'], 'dienone'),
    edge(['benzil'], 'acetylene'),
    edge(['acetylene', 'dienone'], 'hexaphenylbenzene'),
    edge(['hydrobenzoin'], 'benzoin', 'back'),
  ],
}

describe('the fold', () => {
  it('shows what lies within the distance and counts what is behind', () => {
    const folded = foldedAt(network, 1)
    expect(folded.nodes.map(one => one.id)).toEqual(['benzoin', 'benzil', 'hydrobenzoin'])
    expect(folded.nodes.find(one => one.id === 'benzil')?.beyond).toBe(3)
    expect(folded.edges.map(one => one.id)).toEqual(['copper', 'nitric', 'borohydride', 'back'])
  })

  it('shows a wanted compound with a way to it, however far', () => {
    const ids = foldedAt(network, 1, ['hexaphenylbenzene']).nodes.map(one => one.id)
    expect(ids).toContain('hexaphenylbenzene')
    // One of the two that go in, and so a line from what was shown.
    expect(ids.some(id => id === 'acetylene' || id === 'dienone')).toBe(true)
  })

  it('knows its distances, and opens as far as one screen reads', () => {
    expect(depthsOf(network)).toEqual([1, 2, 3])
    expect(firstDepth(network)).toBe(3)
    const large: WideNetwork = {
      start: 's',
      nodes: Array.from({ length: 60 }, (_, i) => node(`n${i}`, i < 30 ? 1 : 2)),
      edges: [],
    }
    expect(firstDepth(large)).toBe(1)
  })

  it('draws the start although the list leaves it out', () => {
    const without = { ...network, nodes: network.nodes.slice(1) }
    expect(foldedAt(without, 1).nodes.map(one => one.id)).toContain('benzoin')
  })
})

describe('its elements', () => {
  const elements = elementsOf(foldedAt(network, 3), 'benzoin', ['lophine'])

  it('two ways between the same compounds share a line, as sure as the surer', () => {
    const line = elements.links.find(link => link.source === 'benzoin' && link.target === 'benzil')
    expect(line?.ways).toEqual(['copper', 'nitric'])
    expect(line?.sure).toBe('seen')
  })

  it('two compounds of the network meet before the product; bought ones are left out', () => {
    const meeting = 'acetylene+dienone>hexaphenylbenzene'
    expect(elements.dots.find(dot => dot.id === meeting)?.kind).toBe('meeting')
    expect(elements.links.filter(link => link.target === meeting).map(link => [link.source, link.head])).toEqual([
      ['acetylene', false],
      ['dienone', false],
    ])
    expect(elements.links.find(link => link.source === 'benzil' && link.target === 'lophine')?.head).toBe(true)
    expect(elements.dots.some(dot => dot.id === 'benzaldehyde')).toBe(false)
  })

  it('no two things share an id', () => {
    const ids = [...elements.dots, ...elements.links].map(one => one.id)
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('says yields, unknown ones and flags in words', () => {
    const label = (id: string) => elements.dots.find(dot => dot.id === id)?.label
    expect(label('benzoin')).toBe('benzoin\nin hand')
    expect(label('benzil')).toBe('benzil\n96 %')
    expect(label('hydrobenzoin')).toBe('hydrobenzoin\nyield unknown')
    expect(label('hexaphenylbenzene')).toBe('hexaphenylbenzene\n72 %\ngravest hazards')
  })

  it('marks start and goal', () => {
    expect(elements.dots.find(dot => dot.id === 'benzoin')?.classes).toBe('compound start')
    expect(elements.dots.find(dot => dot.id === 'lophine')?.classes).toBe('compound goal')
  })
})

describe('its places', () => {
  const elements = elementsOf(foldedAt(network, 3), 'benzoin')
  const placed = place(elements)

  it('runs from left to right, nothing over anything else', () => {
    for (const dot of elements.dots) expect(placed.at[dot.id]).toBeDefined()
    const x = (id: string) => placed.at[id]!.x
    expect(x('benzoin')).toBeLessThan(x('benzil'))
    expect(x('benzil')).toBeLessThan(x('lophine'))
    expect(x('dienone')).toBeLessThan(x('hexaphenylbenzene'))
    const boxes = elements.dots.map(dot => ({ ...dot, ...placed.at[dot.id]! }))
    for (const [i, a] of boxes.entries()) {
      for (const b of boxes.slice(i + 1)) {
        const apart = Math.abs(a.x - b.x) >= (a.w + b.w) / 2 || Math.abs(a.y - b.y) >= (a.h + b.h) / 2
        expect(apart, `${a.id} and ${b.id}`).toBe(true)
      }
    }
  })

  it('places a compound that nothing leads to, and none at all', () => {
    const lonely = place({ dots: elements.dots.slice(0, 1), links: [] })
    expect(Object.keys(lonely.at)).toEqual(['benzoin'])
    expect(place({ dots: [], links: [] })).toEqual({ at: {}, bends: {} })
  })

  it('turns points into shares of the way and distances beside it', () => {
    // Half-way along a line of 100 px to the right, 10 px below it (y grows downwards).
    expect(alongAndBeside({ x: 0, y: 0 }, { x: 100, y: 0 }, [{ x: 50, y: 10 }])).toEqual({ weights: [0.5], distances: [10] })
  })
})

describe('its list', () => {
  it('stands by distance, best first, unknown last', () => {
    expect(groupsOf(network, 3, []).map(group => [group.title, group.nodes.map(one => one.id)])).toEqual([
      ['1 step', ['benzil', 'hydrobenzoin']],
      ['2 steps', ['dienone', 'lophine']],
      ['3 steps', ['hexaphenylbenzene', 'acetylene']],
    ])
  })
})
