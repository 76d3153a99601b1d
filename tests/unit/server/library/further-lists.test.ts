import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { waybench, waybenchJson } from '../../../support/terminal.ts'
import { textOf } from '../../../support/tree.ts'

const source = { citation: 'a list made up for this test', checked: false }
const proof = { confidence: 'a test', sources: [source] }
const list = (rows: readonly object[]) =>
  JSON.stringify({
    format: 'waybench-table',
    version: 1,
    title: 'House list',
    about: 'Made up for a test.',
    rows: [
      {
        kind: 'regulatedList',
        name: 'house',
        fullName: 'House list of the keeper',
        regions: ['UN', 'EU', 'UK', 'US'],
        coversGivenOff: true,
        ...proof,
      },
      ...rows.map(row => ({ list: 'house', category: 'all', legal: 'not in this house', ...row, ...proof })),
    ],
  })
const benzil = { kind: 'regulatedEntry', name: 'benzil', smiles: 'O=C(C(=O)c1ccccc1)c1ccccc1', action: 'stop' }

let folder = ''
const put = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lists-'))
  put('house.json', list([benzil]))
})
afterAll(() => rmSync(folder, { recursive: true }))

const ask = ['--from', 'benzoin', '--to', 'lophine'] as const

describe('further regulated lists of the keeper', () => {
  it('end planning through every command, with the full name of the list, by a substance made on the way', async () => {
    for (const lists of [join(folder, 'house.json'), folder]) {
      const plan = await waybenchJson(['plan', '--from', 'benzoin', '--to', 'benzil', '--have', '24 g', '--lists', lists])
      expect(plan.code).toBe(1)
      expect(JSON.stringify(plan.problems)).toContain('House list of the keeper')
    }
    const routes = await waybenchJson(['routes', ...ask, '--lists', folder])
    expect(routes.code).toBe(1)
    expect(JSON.stringify(routes.problems)).toContain('House list of the keeper')
    const steps = await waybenchJson(['plan', ...ask, '--have', '24 g', '--steps', 'benzil-copper-acetate,lophine', '--lists', folder])
    expect(steps.code).toBe(1)
    const reach = await waybenchJson(['reach', '--from', 'benzoin', '--lists', folder])
    expect(reach.json?.reach.map((row: { compound: string }) => row.compound) ?? []).not.toContain('lophine')
  })
  it('are as the README of the data shows them: its example loads and stops', async () => {
    const example = [...textOf('routes-data/README.md').matchAll(/```json\n(.*?)```/gs)]
      .map(match => match[1]!)
      .find(text => text.includes('waybench-table'))
    const path = put('readme.json', example ?? '')
    const { code, problems } = await waybenchJson(['reach', '--from', 'benzene', '--lists', path])
    rmSync(path)
    expect(code).toBe(1)
    expect(JSON.stringify(problems)).toContain('House list of the keeper')
  })
  it('leave the next command as it was', async () => {
    expect((await waybenchJson(['plan', ...ask, '--have', '24 g'])).code).toBe(0)
  })
  it.each([
    ['a structure that cannot be read', [{ ...benzil, smiles: 'C1CC(' }], 'list-structure'],
    [
      'a pattern that cannot be read',
      [{ kind: 'structureAlert', id: 'x', smarts: '[C', needs: { C: 1 }, text: 'x', action: 'stop', legal: undefined }],
      'list-pattern',
    ],
    ['an action that is none', [{ ...benzil, action: 'forbid' }], null],
    ['a row of another kind', [{ kind: 'storageRule', text: 'x', list: undefined, category: undefined, legal: undefined }], 'list-kind'],
    ['a row of a list that is not named', [{ ...benzil, list: 'hous' }], 'table-dangling'],
  ] as const)('are refused whole for %s', async (_, rows, code) => {
    const path = put('bad.json', list(rows))
    const { code: exit, problems } = await waybenchJson(['routes', ...ask, '--lists', path])
    rmSync(path)
    expect(exit).toBe(2)
    if (code !== null) expect(problems.map((problem: { code: string }) => problem.code)).toContain(code)
    // What rows owe each other is told by list and row; all else by file.
    if (code !== 'table-dangling') expect(JSON.stringify(problems[0].where)).toContain('bad.json')
  })
  it('are refused where there is no such file', async () => {
    const { code, err } = await waybench(['reach', '--from', 'benzoin', '--lists', join(folder, 'none.json')])
    expect(code).toBe(2)
    expect(err).toMatch(/There is no such file or folder/)
  })
})
