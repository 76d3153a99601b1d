import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Checked, Problem } from '../../core/problem/problem.ts'
import { readChargeTable } from '../../core/reading/charge-table.ts'
import { readPreparation } from '../../core/reading/preparation.ts'
import { identified } from '../../server/library/identified.ts'
import { reactionsIn, reactionsShown } from '../../server/library/reaction-list.ts'
import { recordsIn } from '../../server/library/records-in.ts'
import { bundledWorkshop, testApp } from '../support/app.ts'
import { index, library, toolkit } from '../support/reader.ts'

// Two thousand inputs that nobody should type: nothing crashes, nothing hangs, nothing stored is touched, and whatever is refused says why.

const runs = 2000
/** Longest that one input may take, ms, on a machine that does other things beside: what a person would call hanging is far above. */
const patience = 5000

const nasty = fc.oneof(
  fc.constantFrom(
    ...[
      '',
      ' ',
      '\u0000',
      '\ufeff',
      '\u200b\u200d\u2060',
      '\u202e2 g nizneb\u202c',
      'بنزوين ٢٥ غرام',
      '安息香 25 克',
      '𝟐𝟓 g benzoin',
      '½ g',
      '1/0 g benzoin',
    ],
    ...[
      '1e400 g benzoin',
      '-5 g benzoin',
      '99999999999999999999999 kg benzoin',
      '0.0000000000000000000001 mg benzoin',
      'NaN g',
      'Infinity mL water',
    ],
    ...[
      '=HYPERLINK("x")',
      '=1+1',
      '+2+3',
      '-2+3',
      '@SUM(A1)',
      '\t=1',
      '__proto__',
      'constructor',
      'toString',
      '{benzoin}',
      '{{',
      '}{',
      '{no-such-id}',
    ],
    ...[
      'C(',
      'C1CC',
      'C)C',
      '[',
      '[]',
      'c1cccc1',
      'CC(C)(C)(C)(C)C',
      '[13C',
      'C%',
      'C%99',
      '[Xx]',
      '[C@@@H]',
      '/C=C\\',
      '.',
      '..',
      'C..C',
      '>>',
      '>>>>',
      'C>>',
      '>>C',
      'C>C>C>C',
    ],
    ...[
      '((((((((((',
      '))))))))))',
      '[[[[[[',
      'C'.repeat(3000),
      'C('.repeat(500),
      '('.repeat(5000),
      'a+'.repeat(1000),
      '1 '.repeat(2000),
      '->'.repeat(300),
      '= '.repeat(300),
    ],
    ...[
      '$RXN',
      '$RXN\n\n\n\n  1  1\n$MOL',
      '$$$$',
      'M  END',
      '\n\n\n  0  0\nM  END\n$$$$',
      '{"format":"waybench-library"',
      '[]',
      'null',
      '{"a":'.repeat(2000),
      '[['.repeat(5000),
    ],
    ...[
      'name,cas\n',
      'name\n"',
      'name;form\nx;solid;extra',
      'material,amount\n',
      'material\tamount\tunit\nbenzoin\t25\tg',
      ',,,,\n,,,,',
      'name,name\na,b',
      'step,id,amount\n,,\nx,y,z,1',
      'step,material,amount,unit,role,at,derived\nbenzoin-thiamine,ammonia,-1,furlong,king,nowhere,maybe',
      'step,step,id,amount,colour\na,b,c,d,e',
      '$RDFILE 1\n$RFMT\n$RXN\n$DTYPE waybench:id\n$DATUM {',
      '$RDFILE 1\n$DATM\n$DTYPE waybench:__proto__\n$DATUM {"a":1}\n$RFMT',
      'C.C>>C |f:0.9,1.2,99.100|',
      'C>>C |f:|\n|||\nC>>C |',
    ],
  ),
  fc.string({ unit: 'binary', maxLength: 120 }),
  fc.string({ maxLength: 120 }),
  fc.array(fc.constantFrom(...'CNOcno()[]=#123%+-@/\\.{}> \t\n,;"'.split('')), { maxLength: 80 }).map(parts => parts.join('')),
  fc
    .array(
      fc.constantFrom(
        'benzoin',
        '25',
        'g',
        'mL',
        '->',
        '+',
        'HCl',
        'conc.',
        '3 M',
        'NaOH',
        '%',
        'reflux 2 h',
        '\n',
        'isolated',
        '°C',
        '2',
        '1/2',
        '–',
        ',',
      ),
      { maxLength: 25 },
    )
    .map(parts => parts.join(' ')),
)

/** A problem says what, why and how to mend it, whatever was typed. */
function tells(problems: readonly Problem[]): void {
  for (const problem of problems) {
    for (const part of [problem.code, problem.what, problem.why, problem.cure]) expect(part.trim()).not.toBe('')
    expect(`${problem.what} ${problem.cure}`).not.toMatch(/\bundefined\b|\[object Object\]/)
  }
}
function settles<T>(answer: Checked<T>): void {
  if (!answer.ok) {
    expect(answer.problems.length).toBeGreaterThan(0)
    tells(answer.problems)
  }
}
/** Time of the processor, which another's work beside it does not lengthen. */
function inTime<T>(work: () => T, ms = patience): T {
  const before = process.cpuUsage()
  const answer = work()
  const { user, system } = process.cpuUsage(before)
  expect((user + system) / 1000).toBeLessThan(ms)
  return answer
}

describe('whatever is typed', () => {
  it('as a preparation is read or told, and every line of it kept', () => {
    fc.assert(
      fc.property(nasty, nasty, (first, body) => {
        const read = inTime(() => readPreparation(`${first}\n${body}`, library, index, toolkit))
        tells(read.problems)
        const finite = [read.theoreticalG, read.percentYield, ...read.lines.flatMap(line => [line.amountMol, line.equivalents])]
        for (const figure of finite) if (figure !== null) expect(Number.isFinite(figure)).toBe(true)
        expect(Object.getPrototypeOf(read.transformation)).toBe(Object.prototype)
        if (read.balanced) expect(read.reactants.every(term => term.composition !== null)).toBe(true)
      }),
      { numRuns: runs },
    )
  }, 600_000)

  it('as a material is identified or told', async () => {
    const workshop = await bundledWorkshop()
    fc.assert(
      fc.property(nasty, nasty, nasty, (name, smiles, cas) => {
        const told = inTime(() => identified(workshop, { name, smiles, formula: cas, cas, form: 'solid' }))
        const lye = {
          name,
          smiles: '',
          formula: '',
          cas: '',
          form: 'solution',
          of: 'sodium-hydroxide',
          density: cas,
          strength: smiles,
        } as const
        const solution = inTime(() => identified(workshop, lye))
        tells([...told.problems, ...solution.problems])
        // Typed and not read is told: nothing is left out in silence.
        const { contains, densityGPerMl } = solution.material
        if (contains === undefined) expect(solution.problems.some(one => one.where[1] === 'strength')).toBe(true)
        if (densityGPerMl === undefined && cas.trim() !== '') expect(solution.problems.some(one => one.where[1] === 'density')).toBe(true)
        expect(told.material.id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
        expect(library.materials.has(told.material.id)).toBe(false)
        if (told.molarMass !== null) expect(told.molarMass).toBeGreaterThanOrEqual(0)
      }),
      { numRuns: runs / 4 },
    )
  }, 600_000)

  it('as a file is taken apart or told', async () => {
    const workshop = await bundledWorkshop()
    fc.assert(
      fc.property(nasty, nasty, (one, other) => {
        settles(
          inTime(() =>
            recordsIn(
              [
                { name: 'x', text: one },
                { name: 'y', text: `${other}\n${one}` },
              ],
              workshop,
            ),
          ),
        )
        settles(inTime(() => reactionsIn('x', one, index, toolkit)))
        const shown = inTime(() => reactionsShown([{ name: 'x', text: one }], index, toolkit))
        settles(shown)
        for (const reaction of shown.ok ? shown.value : []) {
          tells(reaction.problems)
          if (reaction.read === null) expect(reaction.problems.length).toBeGreaterThan(0)
        }
        inTime(() => readChargeTable(one))
      }),
      { numRuns: runs },
    )
  }, 600_000)

  it('changes nothing that is saved, and the server answers on', async () => {
    const app = await testApp()
    const url = '/api/v1/own-library'
    const before = (await app.inject({ url })).body
    await fc.assert(
      fc.asyncProperty(nasty, nasty, fc.anything(), async (one, other, record) => {
        const material = { id: one, name: other, kind: 'compound', form: 'solid', formula: one, smiles: other, sources: [] }
        for (const [path, payload] of [
          ['read', { text: one }],
          ['new-material', { name: one.slice(0, 300), smiles: other.slice(0, 2000) }],
          ['own-library/check', { materials: [material, record ?? null], files: [{ name: 'f', text: other }] }],
          ['own-library', { onVersion: 0, materials: [material], transformations: [record ?? null] }],
          ['read-reaction', { name: 'r', text: one }],
        ] as const) {
          let text: string
          try {
            text = JSON.stringify(payload)
          } catch {
            // What JSON cannot carry reaches no server.
            continue
          }
          const reply = await app.inject({
            method: 'POST',
            url: `/api/v1/${path}`,
            headers: { 'content-type': 'application/json' },
            payload: text,
          })
          expect(reply.statusCode, path).toBeLessThan(500)
          if (reply.statusCode >= 400) tells(reply.json().problems)
          if (path === 'own-library/check' && reply.statusCode === 200) tells(reply.json().refused)
        }
      }),
      { numRuns: 100 },
    )
    expect((await app.inject({ url })).body).toBe(before)
    await app.close()
  }, 600_000)

  it('of ten megabytes is refused or read within seconds', async () => {
    const workshop = await bundledWorkshop()
    const ten = 10 * 1024 * 1024
    for (const text of [
      'x'.repeat(ten),
      '2 g benzoin\n'.repeat(ten / 12),
      'a,b\n'.repeat(ten / 4),
      `{"a":"${'y'.repeat(ten)}"}`,
      '[1,'.repeat(ten / 3),
      `${'C'.repeat(ten)}>>C`,
    ]) {
      inTime(() => {
        tells(readPreparation(text, library, index, toolkit).problems)
        settles(recordsIn([{ name: 'big', text }], workshop))
        settles(reactionsIn('big', text, index, toolkit))
      }, 30_000)
    }
  })

  it('never leaves as a formula that a spreadsheet would run', async () => {
    const app = await testApp()
    const payload = {
      onVersion: 0,
      materials: ['=1+1', '+cmd', '-2+3', '@SUM(A1)'].map((name, at) => ({
        id: `own-${at}`,
        name,
        kind: 'feedstock',
        form: 'solid',
        note: name,
        sources: [{ citation: name, checked: false }],
      })),
    }
    expect((await app.inject({ method: 'POST', url: '/api/v1/own-library', payload })).statusCode).toBe(201)
    for (const form of ['csv', 'tsv']) {
      const { body } = await app.inject({ url: `/api/v1/own-library/file?form=${form}` })
      const cells = body.split(/\r\n|[,\t]/)
      expect(cells.length).toBeGreaterThan(20)
      expect(cells.filter(cell => /^"?[=+@-]/.test(cell))).toEqual([])
    }
    await app.close()
  })
})
