import { setImmediate as breath } from 'node:timers/promises'

/** Entries of a long list written at once. */
const entriesAtOnce = 500

/**
 * An answer as JSON, its long lists in pieces between which the server answers others: the text of the largest lists takes longer than
 * anybody should be kept waiting.
 *
 * @param answer an object
 */
export async function* jsonInPieces(answer: object): AsyncGenerator<string, void> {
  let before = '{'
  for (const [key, value] of Object.entries(answer)) {
    if (value === undefined) continue
    const head = `${before}${JSON.stringify(key)}:`
    before = ','
    if (!Array.isArray(value) || value.length <= entriesAtOnce) {
      yield head + JSON.stringify(value)
      continue
    }
    yield `${head}[`
    for (let at = 0; at < value.length; at += entriesAtOnce) {
      const piece = JSON.stringify(value.slice(at, at + entriesAtOnce)).slice(1, -1)
      yield at === 0 ? piece : `,${piece}`
      await breath()
    }
    yield ']'
  }
  yield before === '{' ? '{}' : '}'
}
