import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openDatabase } from '../../../server/store/driver.ts'
import { openStore } from '../../../server/store/store.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waybench-store-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

describe('the store', () => {
  it('makes its folder and keeps plans over a restart', () => {
    const below = join(folder, 'not', 'there', 'yet')
    const first = openStore(below)
    first.create('a', 'Benzoin downstream', '{"x":1}', '2026-12-03T20:00:00Z')
    first.save('a', 1, 'Benzoin downstream', '{"x":2}', '2026-12-03T20:01:00Z')
    first.close()
    const second = openStore(below)
    expect(second.get('a')).toEqual({
      id: 'a',
      title: 'Benzoin downstream',
      version: 2,
      savedAt: '2026-12-03T20:01:00Z',
      body: '{"x":2}',
    })
    expect(second.get('a', 1)?.body).toBe('{"x":1}')
    second.close()
  })

  it('refuses a save on top of another hand and keeps theirs', () => {
    const store = openStore(folder)
    store.create('a', 'A', '1', 't1')
    expect(store.save('a', 1, 'A', '2', 't2')).toMatchObject({ version: 2 })
    expect(store.save('a', 1, 'A', '3', 't3')).toBe('conflict')
    expect(store.get('a')?.body).toBe('2')
    expect(store.save('gone', 1, 'A', '3', 't3')).toBeNull()
    store.close()
  })

  it('lets two programs write the same folder', () => {
    const one = openStore(folder)
    const two = openStore(folder)
    for (let i = 0; i < 20; i++) (i % 2 ? one : two).create(`p${i}`, `P${i}`, '{}', `t${String(i).padStart(2, '0')}`)
    expect(one.list()).toHaveLength(20)
    expect(two.list().map(p => p.id)[0]).toBe('p19')
    one.close()
    two.close()
  })

  it('does not touch what a later Waybench wrote', () => {
    openDatabase(join(folder, 'waybench.sqlite')).exec('pragma user_version = 99')
    expect(() => openStore(folder)).toThrow(/later Waybench/)
  })

  it('stores text and numbers and nothing that would turn into something else', () => {
    const database = openDatabase(':memory:')
    database.exec('create table t (x)')
    for (const wrong of [undefined, true, Number.NaN, new Date(0), {}])
      expect(() => database.run('insert into t values (?)', wrong)).toThrow(TypeError)
    expect(database.all('select * from t')).toEqual([])
    database.close()
  })

  it('undoes a change that fails halfway', () => {
    const database = openDatabase(':memory:')
    database.exec('create table t (x)')
    expect(() =>
      database.change(() => {
        database.run('insert into t values (?)', 1)
        throw new Error('halfway')
      }),
    ).toThrow('halfway')
    expect(database.all('select * from t')).toEqual([])
    database.close()
  })
})
