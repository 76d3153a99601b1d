import { parseJson } from '../core/problem/json.ts'
import type { Problem } from '../core/problem/problem.ts'
import { Refusal } from './refusal.ts'

/** Deeper than anything that is described; what lies deeper is refused by its shape. */
const mostDepth = 200

/**
 * The value of a request's JSON. The framework's own reader calls a forbidden key a syntax error; here each fault is told as what it is.
 *
 * @throws Refusal with line and column of a syntax error, or with the place of a key "__proto__": copied into an object it would change how
 *   that object behaves
 */
export function jsonBody(text: string): unknown {
  let value: unknown
  try {
    value = JSON.parse(text.startsWith('\ufeff') ? text.slice(1) : text)
  } catch {
    const read = parseJson('request', text)
    throw new Refusal('bad-input', read.ok ? [notJson] : read.problems)
  }
  // Written plainly or in escapes, else the text is not looked through.
  if (!/__proto__|\\u00/i.test(text)) return value
  const places = forbiddenIn(value, ['request'])
  if (places.length > 0) throw new Refusal('bad-input', places.map(forbidden))
  return value
}

function forbiddenIn(value: unknown, where: readonly string[]): readonly (readonly string[])[] {
  if (typeof value !== 'object' || value === null || where.length > mostDepth) return []
  return Object.keys(value).flatMap(key =>
    key === '__proto__' ? [[...where, key]] : forbiddenIn((value as Record<string, unknown>)[key], [...where, key]),
  )
}

const forbidden = (where: readonly string[]): Problem => ({
  code: 'json-key-forbidden',
  where,
  what: 'A key "__proto__" is not taken.',
  why: 'No format of this program has such a key, and in an object it would change how the object behaves instead of being kept.',
  cure: 'Remove the key, or give it the name that was meant.',
})

const notJson: Problem = {
  code: 'json-syntax',
  where: ['request'],
  what: 'The request is not JSON.',
  why: 'The request could not be read.',
  cure: 'Compare with /api/v1/openapi.json.',
}
