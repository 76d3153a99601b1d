import { describe, expect, it } from 'vitest'
import { testApp } from '../../../support/app.ts'
import { waybench, waybenchJson } from '../../../support/terminal.ts'

async function savedPlan() {
  const files = new Map<string, string>()
  await waybench(['plan', '--from', 'benzoin', '--to', 'lophine', '--have', '24 g', '--save', 'plan.json'], files)
  return { files, plan: JSON.parse(files.get('plan.json')!) }
}
// Safrole, under a name that tells nothing: 1988 Convention, table I.
const hidden = {
  id: 'bottle-7',
  name: 'bottle 7',
  kind: 'compound',
  formula: 'C10H10O2',
  smiles: 'C=CCc1ccc2OCOc2c1',
  form: 'liquid',
  sources: [],
}

describe('a plan file that brings its own records along', () => {
  it('opens where they are those of this library', async () => {
    const { files } = await savedPlan()
    expect((await waybenchJson(['plan', 'plan.json'], files)).code).toBe(0)
  })
  it.each([
    ['a record of its own', (materials: { id: string }[]) => [...materials, hidden]],
    [
      'a record under the name of one here',
      (materials: { id: string }[]) => materials.map(one => (one.id === 'benzil' ? { ...hidden, id: 'benzil' } : one)),
    ],
    [
      'a mixture that contains it',
      (materials: { id: string }[]) => [
        ...materials,
        hidden,
        { id: 'oil', name: 'oil', kind: 'mixture', form: 'solution', contains: { compound: 'bottle-7', massFraction: 0.01 }, sources: [] },
      ],
    ],
  ])('is refused by every door where a stop row finds %s', async (_, changed) => {
    const { files, plan } = await savedPlan()
    plan.slice.materials = changed(plan.slice.materials)
    files.set('plan.json', JSON.stringify(plan))
    for (const command of [
      ['plan', 'plan.json'],
      ['replan', 'plan.json'],
    ]) {
      const { code, problems } = await waybenchJson(command, files)
      expect(code, command[0]).toBe(1)
      expect(problems[0].what + problems[0].why).toContain('1988')
    }
    const check = await waybench(['check', 'plan.json'], files)
    expect(check.code).toBe(2)
    const app = await testApp()
    for (const url of ['/api/v1/evaluations', '/api/v1/plans']) {
      const reply = await app.inject({ method: 'POST', url, payload: { plan } })
      expect(reply.statusCode, url).toBe(422)
    }
    await app.close()
  })
})
