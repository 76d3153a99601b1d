import type { z } from 'zod'
import { didYouMean } from './nearest.ts'
import type { Problem } from './problem.ts'

const why = 'What a file says is taken as it stands or refused: nothing is guessed and nothing left out in silence.'

/** More faults than anybody mends one by one: the file is of another kind, or something wrote it wrongly. */
const mostIssues = 1000

/** One problem for all that are not listed; none where none is left out. */
export const further = (count: number, where: readonly string[]): readonly Problem[] =>
  count <= 0
    ? []
    : [
        {
          code: 'problems-further',
          where,
          what: `${count} further problems are not listed.`,
          why: 'So many have one cause more often than many.',
          cure: 'Mend the first ones and check the file again.',
        },
      ]

/**
 * The issues that a zod schema found, as problems in the words that the rest of the program uses. A key that the schema does not know
 * comes with the key that was probably meant.
 *
 * @param error   of a failed `safeParse`
 * @param schema  the schema that failed, asked for the keys it knows
 * @param value   what was parsed, so that the offending value can be quoted
 * @param where   of the value: file, record
 */
export function schemaProblems(error: z.ZodError, schema: z.ZodType, value: unknown, where: readonly string[]): Problem[] {
  const problems = error.issues.slice(0, mostIssues).flatMap(issue => problemsOf(issue, schema, value, where))
  return problems.concat(further(error.issues.length - mostIssues, where))
}

function problemsOf(issue: z.core.$ZodIssue, schema: z.ZodType, value: unknown, where: readonly string[]): Problem[] {
  const path = issue.path.map(String)
  const place = [...where, ...path]
  const found = at(value, issue.path)
  const named = path.length > 0 ? `"${path[path.length - 1]}"` : 'The record'
  if (issue.code === 'unrecognized_keys') {
    const known = keysAt(schema, issue.path)
    return issue.keys.map(key => ({
      code: 'schema-unknown-key',
      where: [...place, key],
      what: `The key "${key}" is not one of this format.`,
      why: 'A mistyped key would lose what it holds.',
      cure: `${didYouMean(key, known)}Correct or remove it; known here are ${known.join(', ')}.`,
    }))
  }
  const isShape = issue.code === 'invalid_type' || issue.code === 'invalid_value'
  if (isShape && found === undefined)
    return [{ code: 'schema-missing-key', where: place, what: `${named} is missing.`, why, cure: `Add it: ${wanted(issue)}.` }]
  const meant = issue.code === 'invalid_value' && typeof found === 'string' ? didYouMean(found, issue.values.map(String)) : ''
  const code = issue.code === 'invalid_type' ? 'schema-type' : 'schema-value'
  return [{ code, where: place, what: `${named} is ${quoted(found)}.`, why, cure: `${meant}Give ${wanted(issue)}.` }]
}

const typeNames: Readonly<Record<string, string>> = {
  string: 'a text in double quotes',
  number: 'a number without quotes',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list in [ ]',
  object: 'an object in { }',
  tuple: 'a list in [ ]',
}

/** What would have been right. */
function wanted(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_type') return typeNames[issue.expected] ?? issue.expected
  if (issue.code === 'invalid_value') return alternatives(issue.values.map(value => JSON.stringify(value)))
  if (issue.code === 'too_small') {
    if (issue.origin === 'string') return 'a text that is not empty'
    if (issue.origin === 'array') return `a list of at least ${issue.minimum}`
    return `a number ${issue.inclusive ? 'not below' : 'above'} ${issue.minimum}`
  }
  if (issue.code === 'too_big') {
    if (issue.origin === 'array') return `a list of at most ${issue.maximum}`
    return `a number ${issue.inclusive ? 'not above' : 'below'} ${issue.maximum}`
  }
  if (issue.code === 'invalid_format') {
    const pattern = 'pattern' in issue && typeof issue.pattern === 'string' ? issue.pattern : ''
    if (pattern.includes('[a-z0-9]+(-[a-z0-9]+)*'))
      return 'an id: small letters and digits in groups joined by single hyphens, such as benzil-dioxime'
    return pattern === '' ? `a text in the form "${issue.format}"` : `a text of the form ${pattern}`
  }
  // The rules that no plain schema can state say themselves what they want.
  if (issue.code === 'custom') return issue.message
  return `another value (${issue.message})`
}

const alternatives = (values: readonly string[]): string => (values.length === 1 ? values[0]! : `one of ${values.join(', ')}`)

function quoted(value: unknown): string {
  if (value === undefined) return 'not there'
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'an object'
  if (typeof value === 'number' && !Number.isFinite(value)) return 'a number beyond all bounds'
  const text = JSON.stringify(value)
  return text.length > 60 ? `${text.slice(0, 60)}..."` : text
}

function at(value: unknown, path: readonly PropertyKey[]): unknown {
  let inner = value
  for (const key of path) inner = typeof inner === 'object' && inner !== null ? (inner as Record<PropertyKey, unknown>)[key] : undefined
  return inner
}

/** Keys that the object schema at this path knows, in their order there; none where the path leads to no object. */
function keysAt(schema: z.ZodType, path: readonly PropertyKey[]): string[] {
  let inner = unwrapped(schema)
  for (const key of path) {
    const def = inner.def as { shape?: Record<string, z.ZodType>; element?: z.ZodType; items?: z.ZodType[]; valueType?: z.ZodType }
    const next = def.shape?.[String(key)] ?? def.items?.[Number(key)] ?? def.element ?? def.valueType
    if (next === undefined) return []
    inner = unwrapped(next)
  }
  return Object.keys((inner.def as { shape?: Record<string, z.ZodType> }).shape ?? {})
}

/** The schema inside optional, nullable and default. */
function unwrapped(schema: z.ZodType): z.ZodType {
  const inner = (schema.def as { innerType?: z.ZodType }).innerType
  return inner === undefined ? schema : unwrapped(inner)
}
