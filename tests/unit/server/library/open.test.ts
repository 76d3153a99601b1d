import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { bundled } from '../../../../server/library/bundled.ts'
import { openLibrary } from '../../../../server/library/open.ts'
import { fileText, soundLibrary } from '../../core/library/sound-library.ts'

const folder = mkdtempSync(join(tmpdir(), 'waybench-library-'))
afterAll(() => rmSync(folder, { recursive: true }))
const fileOf = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
const codes = (names: readonly string[]): string[] => {
  const opened = openLibrary(names)
  return opened.ok ? ['taken'] : opened.problems.map(problem => problem.code)
}

describe('openLibrary', () => {
  it('gives the bundled library where nothing is named, read once', () => {
    const opened = openLibrary([])
    expect(opened.ok && opened.value).toBe(bundled().library)
    expect(openLibrary(['bundled'])).toEqual(opened)
  })
  it('puts a named file in its place', () => {
    const opened = openLibrary([fileOf('own.json', fileText(soundLibrary()))])
    expect(opened.ok ? [...opened.value.transformations.keys()] : opened.problems).toEqual(['ester', 'fizz', 'peel'])
  })
  it('merges a file with the bundled library where both are named', () => {
    const { materials, transformations } = soundLibrary()
    const own = fileOf(
      'more.json',
      fileText({ materials: { peel: materials['lemon-peel'] }, transformations: { peel: transformations.peel } } as never),
    )
    const opened = openLibrary([own, 'bundled'])
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
    expect(opened.value.transformations.size).toBe(bundled().library.transformations.size + 1)
    expect(opened.value.makers.get('limonene')?.map(t => t.id)).toEqual(['extract-limonene-orange-peel', 'peel'])
  })
  it('tells every file that cannot be read, and what is wrong in those that can', () => {
    expect(codes([join(folder, 'nowhere.json'), folder, fileOf('broken.json', '{"format":')])).toEqual([
      'file-unreadable',
      'file-unreadable',
      'json-syntax',
    ])
  })
})
