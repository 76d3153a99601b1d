import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseJson } from '../../../../core/problem/json.ts'

const placeOf = (text: string): string => {
  const read = parseJson('a.json', text)
  return read.ok ? 'taken' : read.problems.map(problem => `${problem.code} at ${problem.where[1]}`).join('; ')
}

describe('parseJson', () => {
  // JSON.parse of the engine is the other way to read the same grammar (RFC 8259).
  it('agrees with the engine on what is JSON, on any value and on any damage to one', () => {
    fc.assert(
      fc.property(fc.json(), fc.nat(), fc.constantFrom('', ',', '"', '}', ']', ':', '\\', '\n', '0', 'x'), (json, position, slip) => {
        const at = json.length === 0 ? 0 : position % json.length
        for (const text of [json, json.slice(0, at) + slip + json.slice(at + 1)]) {
          let expected: unknown
          try {
            expected = JSON.parse(text)
          } catch {
            expect(placeOf(text), text).toMatch(/^(json-syntax|json-key-repeated)/)
            continue
          }
          const read = parseJson('a.json', text)
          if (read.ok) expect(read.value).toEqual(expected)
          else expect(new Set(read.problems.map(problem => problem.code)), text).toEqual(new Set(['json-key-repeated']))
        }
      }),
      { seed: 20261, numRuns: 2000 },
    )
  })
  it.each([
    ['{"a": 1,}', 'json-syntax at line 1, column 9'],
    ['{\n  "a": 1\n  "b": 2\n}', 'json-syntax at line 3, column 3'],
    ['{"a": tru}', 'json-syntax at line 1, column 7'],
    ['[1, 2', 'json-syntax at line 1, column 6'],
    ['{"a": 01}', 'json-syntax at line 1, column 8'],
    ["{'a': 1}", 'json-syntax at line 1, column 2'],
    ['', 'json-syntax at line 1, column 1'],
    ['{} {}', 'json-syntax at line 1, column 4'],
    ['{"a": "tab\there"}', 'json-syntax at line 1, column 7'],
    ['{"a": 1,\n "a": 2}', 'json-key-repeated at line 2, column 2'],
    ['[{"a": {"b": 1}, "b": 2}, {"a": 3}]', 'taken'],
    ['\ufeff{"a": 1}', 'taken'],
  ])('%j: %s', (text, said) => expect(placeOf(text)).toBe(said))
  it('is not brought down by depth', () => {
    expect(placeOf('['.repeat(50_000))).toMatch(/^json-syntax/)
  })
})

describe('the quick way', () => {
  /** Texts whose keys are easily miscounted: quotes and backslashes inside texts, colons inside texts, blanks before colons, odd keys. */
  it.each([
    '{"a":"b\\\\","c":"\\"","d":[{"e\\"" : ":"},{"":{"__proto__":1}}]}',
    '["a:","b\\\\\\"",{"x":null}]',
    '"one text : only"',
    '{"a" \n:\t"a","b":"a\\u0022:"}',
  ])('takes %s as the engine does', text => {
    const read = parseJson('f', text)
    expect(read.ok && read.value).toEqual(JSON.parse(text))
  })

  it.each(['{"a":1,"b":{"c":2,"c":3}}', '[{"a\\"":1,"a\\"":1}]', '{"a":1,"\\u0061":2}', '{"__proto__":1,"__proto__":2}'])(
    'still sees the key that stands twice in %s',
    text => {
      const read = parseJson('f', text)
      expect(read.ok ? [] : read.problems.map(p => p.code)).toEqual(['json-key-repeated'])
    },
  )
})
