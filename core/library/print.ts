import type { Library, LibraryFile } from './library.ts'

/** The library as one file, records in order of id: what `waybench library` prints. */
export const libraryFileOf = ({ title, materials, transformations }: Library): LibraryFile => ({
  format: 'waybench-library',
  version: 1,
  title,
  materials: [...materials.values()],
  transformations: [...transformations.values()],
})

/** Widest line of a printed library file that still holds a whole list or object. */
const lineWidth = 120

/**
 * A library file as text in its one canonical layout: two spaces, one record a block, short lists and objects on one line, a blank line
 * nowhere. Keys and records keep the order they came in, so that a change to one record is a change to its lines alone.
 */
export function printLibraryFile(file: LibraryFile): string {
  const head = [`"format": "${file.format}"`, `"version": ${file.version}`, `"title": ${JSON.stringify(file.title)}`]
  const lists = (['materials', 'transformations'] as const).map(key => `"${key}": ${printRecords(file[key])}`)
  return `{\n  ${[...head, ...lists].join(',\n  ')}\n}\n`
}

function printRecords(records: readonly object[]): string {
  if (records.length === 0) return '[]'
  return `[\n    ${records.map(record => printBroken(record, 4)).join(',\n    ')}\n  ]`
}

/** A value whose first line starts at `indent`, on one line where it fits, `reserved` characters being taken by its key. */
function printValue(value: unknown, indent: number, reserved: number): string {
  const flat = printFlat(value)
  if (typeof value !== 'object' || value === null || indent + reserved + flat.length < lineWidth) return flat
  return printBroken(value, indent)
}

function printBroken(value: object, indent: number): string {
  const inner = indent + 2
  const between = `,\n${' '.repeat(inner)}`
  const parts = Array.isArray(value)
    ? value.map(item => printValue(item, inner, 0))
    : Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${printValue(item, inner, key.length + 4)}`)
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}']
  return `${open}\n${' '.repeat(inner)}${parts.join(between)}\n${' '.repeat(indent)}${close}`
}

function printFlat(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? '[]' : `[${value.map(printFlat).join(', ')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const entries = Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${printFlat(item)}`)
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`
}
