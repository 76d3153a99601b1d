import { describe, expect, it } from 'vitest'
import { loadHazardTables, readTableRows } from '../../../../core/hazards/tables.ts'
import { tableTexts } from '../../../support/hazards.ts'

const proof = { confidence: 'memory', sources: [{ citation: 'a test', checked: false }] }
const file = (rows: readonly object[], name = 'mine.json') => ({
  name,
  text: JSON.stringify({
    format: 'waybench-table',
    version: 1,
    title: 'Mine',
    about: 'A test.',
    rows: rows.map(row => ({ ...row, ...proof })),
  }),
})
const codes = (rows: readonly object[]) => {
  const loaded = loadHazardTables([file(rows)])
  return loaded.ok ? [] : loaded.problems.map(problem => problem.code)
}
const list = { kind: 'regulatedList', name: 'Town list', fullName: 'Rules of the town', regions: ['EU'], coversGivenOff: false }
const entry = {
  kind: 'regulatedEntry',
  list: 'Town list',
  category: 'A',
  name: 'thing',
  cas: '50-00-0',
  action: 'stop',
  legal: 'forbidden in town',
}
const group = (number: number) => ({ kind: 'reactivityGroup', number, name: `group ${number}`, smartsAny: [], smartsNone: [], members: [] })
const code = { kind: 'reactivityConsequence', code: 'H', meaning: 'heat generation' }
const cabinet = (id: string) => ({ kind: 'storageGroup', id, name: id, prudentLetter: 'A', containment: 'shelf', examples: [] })
const pair = (a: string, b: string) => ({ kind: 'storagePair', a, b, share: 'same-cabinet' })
const rule = (member: object) => ({
  kind: 'incidentRule',
  id: 'r',
  title: 'r',
  trigger: { allOf: [[member]], conditions: [] },
  applies: ['flask'],
  severity: 'note',
  consequence: 'c',
  do: 'd',
})

describe('table files', () => {
  it('are joined: rows of any kind in any file', () => {
    const loaded = loadHazardTables([file([list], 'a.json'), file([entry], 'b.json')])
    expect(loaded.ok && loaded.value.regulated.entries.map(one => one.name)).toEqual(['thing'])
  })
  it('let the keeper of a library add a list of their own to the bundled ones', () => {
    const loaded = loadHazardTables([...tableTexts(/^regulated/), file([list, entry])])
    expect(loaded.ok && loaded.value.regulated.lists.map(one => one.name)).toContain('Town list')
  })
  it('tell every fault at once, with file, row and key', () => {
    const read = readTableRows([
      { name: 'broken.json', text: '{' },
      file([{ kind: 'regulatedEntrie' }, { ...entry, actoin: 'stop' }], 'typos.json'),
      { name: 'other.json', text: '{"format":"waybench-shelf"}' },
    ])
    const problems = read.ok ? [] : read.problems
    expect(problems.map(problem => problem.code)).toEqual(
      expect.arrayContaining(['json-syntax', 'table-kind', 'schema-unknown-key', 'schema-value']),
    )
    expect(problems.find(problem => problem.code === 'table-kind')?.cure).toMatch(/regulatedEntry/)
    expect(problems.find(problem => problem.code === 'schema-unknown-key')?.where).toEqual(['typos.json', 'thing', 'actoin'])
  })
})

describe('what rows owe each other', () => {
  it.each([
    ['a list that nobody describes', [entry], ['table-dangling']],
    ['a list described', [list, entry], []],
    ['the same key twice', [list, list, entry], ['table-repeated']],
    [
      'a matrix with a pair told one way only',
      [code, group(1), group(2), { kind: 'reactivityRow', group: 1, with: { 2: ['H'] } }],
      ['table-cell-missing'],
    ],
    [
      'a matrix that says one thing one way and another the other',
      [
        code,
        group(1),
        group(2),
        { kind: 'reactivityRow', group: 1, with: { 2: ['H'] } },
        { kind: 'reactivityRow', group: 2, with: { 1: [] } },
      ],
      ['table-asymmetric'],
    ],
    [
      'a matrix whole and symmetric',
      [
        code,
        group(1),
        group(2),
        { kind: 'reactivityRow', group: 1, with: { 2: ['H'] } },
        { kind: 'reactivityRow', group: 2, with: { 1: ['H'] } },
      ],
      [],
    ],
    [
      'a consequence that is not explained',
      [
        group(1),
        group(2),
        { kind: 'reactivityRow', group: 1, with: { 2: ['Z'] } },
        { kind: 'reactivityRow', group: 2, with: { 1: ['Z'] } },
      ],
      ['table-dangling'],
    ],
    ['a pair of cabinets that nobody decided', [cabinet('a'), cabinet('b'), pair('a', 'a'), pair('b', 'b')], ['table-pair-missing']],
    ['pairs all decided', [cabinet('a'), cabinet('b'), pair('a', 'a'), pair('b', 'b'), pair('b', 'a')], []],
    ['a rule about a group that is not there', [rule({ group: 3 })], ['table-dangling']],
    ['a rule about nothing', [rule({})], ['table-trigger-empty']],
    [
      'a precaution that is not there',
      [{ kind: 'benchPrecautions', code: 'H225', precautionary: ['P999'] }],
      ['table-dangling', 'table-dangling'],
    ],
  ])('%s', (_, rows, expected) => {
    expect(codes(rows)).toEqual(expected)
  })
})
