import type { Library } from '../../core/library/library.ts'
import { type Transformation, transformationSchema } from '../../core/library/transformation.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import { rxnOf } from './reaction-files.ts'

const keys = Object.keys(transformationSchema.shape)
/** What the data fields of a record are called, so that no other program's field is taken for one. */
const prefix = 'waybench:'
/** Columns of a line of data; one that goes on has a plus behind them. Source: CTfile formats, RDfiles (from memory). */
const width = 80

/**
 * Transformations as an RD file: each drawn as a reaction where it can be, with every key of its record as a data field, so that nothing is
 * lost.
 */
export function rdfOf(library: Library, steps: readonly Transformation[]): string {
  const records = steps.map(step => {
    const fields = keys.flatMap(key => {
      const value = step[key as keyof Transformation]
      return value === undefined ? [] : [`$DTYPE ${prefix}${key}\n${datum(JSON.stringify(value))}\n`]
    })
    return `$RFMT\n${rxnOf(library, step) ?? undrawn}${fields.join('')}`
  })
  return `$RDFILE 1\n$DATM\n${records.join('')}`
}

/** A reaction without molecules, for an equation that cannot be drawn. */
const undrawn = '$RXN\n\n\n\n  0  0\n'

/** By signs and not by halves of them, so that each line is a text. */
function datum(text: string): string {
  const signs = [...`$DATUM ${text}`]
  const lines: string[] = []
  for (let at = 0; at < signs.length; at += width) lines.push(signs.slice(at, at + width).join(''))
  return lines.map((line, at) => (at < lines.length - 1 ? `${line}+` : line)).join('\n')
}

/** Whether a file is an RD file whose reactions carry their records as data. */
export const hasRecords = (text: string): boolean => /^\s*\$RDFILE/.test(text) && text.includes(`$DTYPE ${prefix}`)

/** Raw records out of such a file; the data fields decide, the drawing is for other programs. */
export function recordsInRdf(name: string, text: string): Checked<readonly Record<string, unknown>[]> {
  const records: Record<string, unknown>[] = []
  const problems: Problem[] = []
  let key: string | null = null
  for (const line of wholeLines(text)) {
    if (/^\$RFMT/.test(line)) records.push({})
    else if (/^\$DTYPE /.test(line)) key = line.slice(7).trim()
    else if (/^\$DATUM /.test(line) && key?.startsWith(prefix)) {
      const at = key.slice(prefix.length)
      const where = [name, `reaction ${records.length}`, at]
      try {
        const value: unknown = JSON.parse(line.slice(7))
        if (records.length === 0) records.push({})
        Object.defineProperty(records[records.length - 1]!, at, { value, enumerable: true, configurable: true, writable: true })
      } catch {
        problems.push({
          code: 'rdf-datum',
          where,
          what: `The data of "${at}" cannot be read.`,
          why: 'A record is taken whole or not at all.',
          cure: 'Save the file again, or take the data fields out of it: then its equations alone are read.',
        })
      }
      key = null
    }
  }
  const empty = records.findIndex(record => Object.keys(record).length === 0)
  if (empty >= 0) problems.push(withoutData(name, empty + 1))
  return problems.length > 0 ? bad(problems) : good(records)
}

/** Lines of the file, those that go on joined. */
function wholeLines(text: string): readonly string[] {
  const lines: string[] = []
  let goesOn = false
  for (const raw of text
    .replace(/^\ufeff/, '')
    .replace(/\r\n?/g, '\n')
    .split('\n')) {
    const signs = [...raw]
    const continues: boolean = signs.length === width + 1 && signs[width] === '+' && (goesOn || raw.startsWith('$DATUM '))
    const line = continues ? signs.slice(0, width).join('') : raw
    if (goesOn) lines[lines.length - 1] += line
    else lines.push(line)
    goesOn = continues
  }
  return lines
}

const withoutData = (name: string, number: number): Problem => ({
  code: 'rdf-without-data',
  where: [name, `reaction ${number}`],
  what: `Reaction ${number} has no data of a record, others of the file have.`,
  why: 'An equation alone becomes a preparation that is completed by hand; a record is taken over as it is.',
  cure: 'Put it into a file of its own.',
})
