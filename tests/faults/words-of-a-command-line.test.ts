import { describe, expect, it } from 'vitest'
import { readable } from '../../core/problem/readable.ts'
import { waybench, waybenchJson } from '../support/terminal.ts'

const plan = ['plan', '--from', 'benzoin', '--to', 'lophine', '--have', '24 g'] as const

describe('words of a command line', () => {
  it('took the last of two amounts and passed over the first in silence', async () => {
    const { code, problems } = await waybenchJson([...plan, '--have', '12 g'])
    expect(code).toBe(2)
    expect(problems[0]).toMatchObject({ code: 'option-repeated', where: ['command line', '--have'] })
  })

  it('knew an option --constructor', async () => {
    const { code, problems } = await waybenchJson([...plan, '--constructor'])
    expect({ code, what: problems[0].code }).toEqual({ code: 2, what: 'option-unknown' })
  })

  it('sought routes for a goal named twice and found that none fit together', async () => {
    const { code, problems } = await waybenchJson(['plan', '--from', 'benzoin', '--goal', 'lophine=2g', '--goal', 'lophine=3g'])
    expect({ code, what: problems[0].code }).toEqual({ code: 2, what: 'goal-twice' })
  })

  it('read the unit of an amount without quotes as a plan file and did not say so', async () => {
    const { code, err } = await waybench(['plan', '--from', 'benzoin', '--to', 'lophine', '--have', '24', 'g'])
    expect(code).toBe(2)
    expect(err).toMatch(/"g" is taken for a plan file/)
    expect(err).toMatch(/belongs in quotes/)
  })

  it('quoted a sign that nobody sees, so that the fault could not be seen either', async () => {
    const { err } = await waybench([...plan.slice(0, -1), '24\u200bg'])
    expect(err).toContain('24[U+200B]g')
    expect(readable('a\u202eb\ufeff')).toBe('a[U+202E]b[U+FEFF]')
  })

  it('printed a mistyped id of ten million letters twice over', async () => {
    const { code, err } = await waybench(['reach', '--from', 'x'.repeat(10_000_000)])
    expect(code).toBe(2)
    expect(err.length).toBeLessThan(2000)
    expect(err).toContain('... (cut)')
  })

  it('let the title of a plan file steer the terminal', async () => {
    const { files } = await waybench([...plan, '--save', 'plan.json'])
    const saved = JSON.parse(files.get('plan.json')!)
    files.set('plan.json', JSON.stringify({ ...saved, title: 'lophine \u001b[2J\u001b]0;owned\u0007' }))
    const { code, out } = await waybench(['plan', 'plan.json'], files)
    expect(code).toBe(0)
    expect(out).toContain('lophine [U+001B][2J')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: none may come through
    expect(out).not.toMatch(/[\u0000-\u0008\u000b-\u001f]/)
  })
})
