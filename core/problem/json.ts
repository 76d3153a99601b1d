import { bad, type Checked, good, type Problem } from './problem.ts'

const why = 'A file is taken whole or not at all, so that nothing in it is lost unseen.'

/**
 * The value of a JSON text. A syntax error is told with its line and column, the same on every engine; a key that stands twice in one
 * object is refused too, since the first of the two would be lost.
 *
 * @param name  of the file, for the problem
 */
export function parseJson(name: string, text: string): Checked<unknown> {
  const body = text.startsWith('\ufeff') ? text.slice(1) : text
  // The engine's own reader first: only where it fails, or keys were lost, is the text read again to say where.
  const value = parsed(body)
  if (value !== undefined && keysWritten(body) === keysKept(value)) return good(value)
  const { fault, repeats } = scan(body)
  if (fault !== null) {
    const { line, column } = placeOf(body, fault.at)
    return bad([
      {
        code: 'json-syntax',
        where: [name, `line ${line}, column ${column}`],
        what: `This is not JSON: ${fault.what}.`,
        why,
        cure: 'Correct the text at this place; an editor with JSON highlighting shows it.',
      },
    ])
  }
  const problems = repeats.map(({ key, at }): Problem => {
    const { line, column } = placeOf(body, at)
    return {
      code: 'json-key-repeated',
      where: [name, `line ${line}, column ${column}`],
      what: `The key "${key}" stands twice in one object.`,
      why: 'Only the last of the two would count, and the other would be lost.',
      cure: 'Keep one of them.',
    }
  })
  return problems.length > 0 ? bad(problems) : good(JSON.parse(body))
}

function parsed(body: string): unknown {
  try {
    return JSON.parse(body)
  } catch {
    return undefined
  }
}

/** How many keys stand in a text that is known to be JSON: texts with a colon behind them. */
function keysWritten(body: string): number {
  let keys = 0
  for (let open = body.indexOf('"'); open >= 0; ) {
    let close = body.indexOf('"', open + 1)
    while (isEscaped(body, close)) close = body.indexOf('"', close + 1)
    let after = close + 1
    while (isBlank(body.charCodeAt(after))) after++
    if (body.charCodeAt(after) === colon) keys++
    open = body.indexOf('"', after)
  }
  return keys
}

const colon = 58
const backslash = 92
const isBlank = (code: number): boolean => code === 32 || code === 10 || code === 13 || code === 9

/** An odd number of backslashes stands before it. */
function isEscaped(body: string, at: number): boolean {
  let before = at - 1
  while (body.charCodeAt(before) === backslash) before--
  return (at - before) % 2 === 0
}

/** How many keys a value holds, at whatever depth; of a key that stood twice one is left. */
function keysKept(value: unknown): number {
  let keys = 0
  const open: unknown[] = [value]
  while (open.length > 0) {
    const one = open.pop()
    if (typeof one !== 'object' || one === null) continue
    if (Array.isArray(one)) {
      for (const item of one) if (typeof item === 'object') open.push(item)
      continue
    }
    const record = one as Record<string, unknown>
    for (const key of Object.keys(record)) {
      keys++
      if (typeof record[key] === 'object') open.push(record[key])
    }
  }
  return keys
}

function placeOf(text: string, at: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, at).split('\n')
  return { line: before.length, column: before[before.length - 1]!.length + 1 }
}

interface Scan {
  readonly fault: { readonly what: string; readonly at: number } | null
  readonly repeats: readonly { readonly key: string; readonly at: number }[]
}

const numberPattern = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const escapePattern = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y
const blankPattern = /[ \t\n\r]*/y

/** Reads the grammar of RFC 8259 without making a value: a stack of open brackets, so that no depth of nesting can overflow it. */
function scan(text: string): Scan {
  const repeats: { key: string; at: number }[] = []
  const open: { keys: Set<string> | null }[] = []
  let at = 0
  const skipBlank = () => {
    blankPattern.lastIndex = at
    blankPattern.exec(text)
    at = blankPattern.lastIndex
  }
  const fail = (what: string): Scan => ({ fault: { what: at >= text.length ? `${what}, but the text ends here` : what, at }, repeats })
  const token = (pattern: RegExp): string | null => {
    pattern.lastIndex = at
    const found = pattern.exec(text)
    if (found === null) return null
    at = pattern.lastIndex
    return found[0]
  }
  /** A text in quotes, walked through: one pattern for the whole of it would overflow the stack of the engine on a long one. */
  const quoted = (): string | null => {
    if (text[at] !== '"') return null
    for (let end = at + 1; end < text.length; ) {
      const code = text.charCodeAt(end)
      if (code === 34) {
        const raw = text.slice(at, end + 1)
        at = end + 1
        return raw
      }
      if (code < 32) return null
      if (code === 92) {
        escapePattern.lastIndex = end
        if (!escapePattern.test(text)) return null
        end = escapePattern.lastIndex
      } else end++
    }
    return null
  }
  const readKey = (keys: Set<string>): string | null => {
    const start = at
    const raw = quoted()
    if (raw === null) return text[at] === '"' ? 'a key is not closed or holds a forbidden character' : 'a key in double quotes is expected'
    const key: string = JSON.parse(raw)
    if (keys.has(key)) repeats.push({ key, at: start })
    keys.add(key)
    skipBlank()
    if (text[at] !== ':') return 'a colon is expected after a key'
    at++
    skipBlank()
    return null
  }

  skipBlank()
  for (;;) {
    const first = text[at]
    if (first === '{' || first === '[') {
      at++
      skipBlank()
      const keys = first === '{' ? new Set<string>() : null
      if (text[at] !== (keys ? '}' : ']')) {
        open.push({ keys })
        const wrong = keys ? readKey(keys) : null
        if (wrong !== null) return fail(wrong)
        continue
      }
      at++
    } else if (first === '"') {
      if (quoted() === null) return fail('a text is not closed or holds a forbidden character')
    } else if (token(numberPattern) === null) {
      const word = ['true', 'false', 'null'].find(name => text.startsWith(name, at))
      if (word === undefined) return fail('a value is expected')
      at += word.length
    }
    // A value has ended: close what closes with it, then go on to the next one.
    for (;;) {
      skipBlank()
      const inside = open[open.length - 1]
      if (inside === undefined) return at < text.length ? fail('something stands after the end') : { fault: null, repeats }
      if (text[at] === ',') {
        at++
        skipBlank()
        const wrong = inside.keys ? readKey(inside.keys) : null
        if (wrong !== null) return fail(wrong)
        break
      }
      if (text[at] !== (inside.keys ? '}' : ']')) return fail(`a comma or ${inside.keys ? '}' : ']'} is expected`)
      at++
      open.pop()
    }
  }
}
