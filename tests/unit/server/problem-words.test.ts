import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { settingsSchema } from '../../../core/plan/settings.ts'
import { askedNames } from '../../../core/problem/asked-as.ts'
import type { Problem } from '../../../core/problem/problem.ts'
import type { App } from '../../../server/app.ts'
import { commands } from '../../../server/cli.ts'
import { inControls } from '../../../web/parts/control-words.ts'
import { testApp } from '../../support/app.ts'
import { waybenchJson } from '../../support/terminal.ts'

let app: App
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app?.close())

const root = join(import.meta.dirname, '../../..')
const ids = { from: 'benzoin', to: 'lophine' }
/** Questions that cannot be read or have no answer: what is asked, and a code that the answer is to have. */
const questions: readonly (readonly [object, string])[] = [
  [{ from: 'nowhere', to: 'nothing', avoid: ['a'], avoidStep: ['b'], mustPass: ['c'], make: ['d'] }, 'id-unknown'],
  [{ ...ids, avoidCode: ['poison'], avoidList: ['of no name'] }, 'code-unreadable'],
  [{ ...ids, make: ['sodium-chloride'] }, 'never-made'],
  [{ ...ids, unbeaten: ['cost'] }, 'axes-to-compare'],
  [{ from: 'water', to: 'lophine' }, 'start-is-free'],
  [{ from: 'benzoin', to: 'benzoin' }, 'start-is-target'],
  [{ from: 'lophine', to: 'benzil' }, 'start-unused'],
  [{ from: 'benzoin', to: 'sodium-hydroxide' }, 'target-never-made'],
  [{ from: 'castor-oil', to: 'lophine' }, 'unreachable'],
  [{ ...ids, maxSteps: 1 }, 'none-so-short'],
  [{ ...ids, mustPass: ['castor-oil'] }, 'none-through'],
  [{ ...ids, maxSteps: 4, seenOnly: true, ownedOnly: true, avoid: ['ammonium-acetate'], avoidCode: ['H314', 'H302'] }, 'none-left'],
]
const optionsOf = (asked: object): string[] =>
  Object.entries(asked).flatMap(([key, value]) => {
    const option = `--${key.replace(/[A-Z]/g, letter => `-${letter.toLowerCase()}`)}`
    if (value === true) return [option]
    return [value].flat().flatMap(one => [option, String(one)])
  })
const wordsOf = (problem: Problem): string => [...problem.where, problem.what, problem.why, problem.cure].join('\n')
const asked = async (url: string, payload: object): Promise<readonly Problem[]> =>
  (await app.inject({ method: 'POST', url: `/api/v1/${url}`, payload })).json().problems
const found = new Map<string, Problem>()

/** Every key at any depth of what a request of this resource may hold, as its own description says. */
async function keysOf(path: string): Promise<ReadonlySet<string>> {
  const { paths, components } = (await app.inject('/api/v1/openapi.json')).json()
  const keys = new Set<string>()
  const seen = new Set<unknown>()
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null || seen.has(node)) return
    seen.add(node)
    const { properties = {}, $ref } = node as { properties?: object; $ref?: string }
    for (const key of Object.keys(properties)) keys.add(key)
    if ($ref !== undefined) walk(components.schemas[$ref.split('/').at(-1)!])
    for (const inner of Object.values(node)) walk(inner)
  }
  walk(paths[`/api/v1${path}`].post.requestBody)
  return keys
}

describe('a problem speaks the language of the door that it comes out of', () => {
  it('the API names keys of the request, and no option of the command line', async () => {
    const keys = await keysOf('/routes')
    for (const [payload, code] of questions) {
      const problems = await asked('routes', payload)
      expect(
        problems.map(one => one.code),
        code,
      ).toContain(code)
      for (const problem of problems) {
        found.set(`${problem.code} ${problem.where[0]}`, problem)
        expect(wordsOf(problem)).not.toMatch(/--|waybench/)
        for (const [, name] of wordsOf(problem).matchAll(/`([^`]+)`/g)) expect(name === 'reach' || keys.has(name!), name).toBe(true)
      }
    }
  })

  it('the search for the cheapest way and the reach do so too', async () => {
    const plan = {
      ...{ title: '', shelf: [], packs: null, settings: settingsSchema.parse({}), log: [], seed: 1 },
      start: { material: 'nowhere', massG: 1 },
      goals: [{ target: 'nothing', amount: { kind: 'rest' }, route: { start: 'nowhere', target: 'nothing', steps: [] } }],
    }
    const keys = await keysOf('/cheapest')
    const problems = await asked('cheapest', { plan, choosing: { avoid: ['c'] } })
    expect(problems.map(one => one.where)).toEqual([
      ['`start`', 'nowhere'],
      ['`goals`', 'nothing'],
      ['`avoid`', 'c'],
    ])
    expect(['start', 'goals', 'avoid'].every(key => keys.has(key))).toBe(true)
    const { problems: ofReach } = (await app.inject('/api/v1/reach?from=nowhere')).json()
    expect(ofReach[0].where).toEqual(['`from`', 'nowhere'])
    for (const problem of [...problems, ...ofReach]) found.set(`${problem.code} ${problem.where[0]}`, problem)
  })

  it('what changed under a saved plan is told with the key that settles it', async () => {
    const { files: saved } = await waybenchJson(['plan', '--from', 'benzoin', '--to', 'benzil', '--have', '5 g', '--save', 'plan.json'])
    const plan = JSON.parse(saved.get('plan.json')!)
    plan.slice.transformations[0].yieldPercent.typical -= 1
    plan.library.hash = '0'.repeat(64)
    const { changes } = (await app.inject({ method: 'POST', url: '/api/v1/evaluations', payload: { plan } })).json()
    expect(changes[0].cure).toContain('`keepsRecords: true`')
    found.set('record-changed', changes[0])
    const files = new Map([['plan.json', JSON.stringify(plan)]])
    for (const words of [
      ['plan', 'plan.json'],
      ['check', 'plan.json'],
      ['replan', 'plan.json'],
    ]) {
      const { out } = await waybenchJson(words, files)
      expect(out, words[0]).toContain('--records old')
      expect(out, words[0]).not.toContain('keepsRecords:')
    }
  })

  it('the command line names its options, each one that there is', async () => {
    const options = new Set(commands.flatMap(command => Object.keys(command.options)))
    for (const [payload, code] of questions) {
      const { problems } = await waybenchJson(['routes', ...optionsOf(payload)])
      expect(
        problems.map((one: Problem) => one.code),
        code,
      ).toContain(code)
      for (const problem of problems) {
        expect(wordsOf(problem)).not.toContain('`')
        for (const [, name] of wordsOf(problem).matchAll(/--([a-z-]+)/g)) expect(options).toContain(name)
      }
    }
  })

  it('the page names its controls, each of which it has', () => {
    expect(found.size).toBeGreaterThan(12)
    const sources = ['web', 'web/sheet', 'web/entry']
      .flatMap(folder => readdirSync(join(root, folder)).map(name => join(root, folder, name)))
      .filter(path => path.endsWith('.tsx'))
      .map(path => readFileSync(path, 'utf8'))
    for (const problem of found.values()) expect(wordsOf(inControls(problem))).not.toMatch(/--|`|waybench/)
    const every = { code: '', where: askedNames.map(name => `\`${name}\``), what: '', why: '', cure: '' }
    for (const [, control] of inControls(every)
      .where.join(' ')
      .matchAll(/“([^”]+)”/g))
      expect(
        sources.some(text => text.includes(control!)),
        control,
      ).toBe(true)
  })
})
