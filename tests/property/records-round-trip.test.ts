import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Material, materialSchema } from '../../core/library/material.ts'
import { printLibraryFile } from '../../core/library/print.ts'
import type { ChargeLine, Transformation } from '../../core/library/transformation.ts'
import { cellOf, cellValue, guarded, unguarded } from '../../core/reading/cell-text.ts'
import { readChargeLine } from '../../core/reading/charge-line.ts'
import { chargeTable, readChargeTable, withFacts } from '../../core/reading/charge-table.ts'
import { lineKeys } from '../../core/reading/line-key.ts'
import { materialCell } from '../../core/reading/material-cell.ts'
import { materialTable, readMaterialTable } from '../../core/reading/material-table.ts'
import { stepChargesIn } from '../../core/reading/step-charges.ts'
import { wordFor } from '../../core/reading/word-for.ts'
import { bundled } from '../../server/library/bundled.ts'
import { materialsInSdf, sdfOf } from '../../server/library/chemical-files.ts'
import { keysLeftOut, keyWords, notHeld } from '../../server/library/not-held.ts'
import { rdfOf, recordsInRdf } from '../../server/library/rd-file.ts'
import { recordsIn } from '../../server/library/records-in.ts'
import { forms, writtenAs } from '../../server/library/written-as.ts'
import { anyCharge, anyId, anyMaterial, anyText, anyTransformation } from '../support/any-record.ts'
import { bundledWorkshop } from '../support/app.ts'
import { index, library } from '../support/reader.ts'

// Law: what is written in a form that holds everything reads back as just what it was; nothing outside is needed to say so.

const byId = { selector: (one: { readonly id: string }) => one.id }
const materials = fc.uniqueArray(anyMaterial, { ...byId, minLength: 1, maxLength: 5 })
const transformations = fc.uniqueArray(anyTransformation, { ...byId, minLength: 1, maxLength: 3 })
const fileOf = (some: readonly Material[], steps: readonly Transformation[]) => ({
  format: 'waybench-library' as const,
  version: 1 as const,
  title: 'some',
  materials: [...some],
  transformations: [...steps],
})
/** As a file on a disk holds it. */
const onDisk = (text: string): string => new TextDecoder().decode(new TextEncoder().encode(text))

describe('what is written reads back', () => {
  it('a cell, whatever stands in it', () => {
    fc.assert(
      fc.property(fc.constantFrom('name', 'note', 'synonyms'), fc.oneof(anyText, fc.array(anyText)), (key, value) => {
        const kept = key === 'synonyms' ? [value].flat() : [value].flat().join(' ')
        expect(cellValue(key, unguarded(guarded(cellOf(key, kept))))).toEqual(kept)
      }),
      { numRuns: 500 },
    )
  })

  it.each([',', '\t'] as const)('materials, every key of their schema, as a table parted by %j', delimiter => {
    fc.assert(
      fc.property(materials, list => {
        expect(readMaterialTable('table', onDisk(materialTable(list, delimiter)))).toMatchObject({ ok: true, value: list })
      }),
      { numRuns: 200 },
    )
  })

  it('materials, every key of their schema, as an SD file', () => {
    // A SMILES that nobody can draw stands in its field alone.
    fc.assert(
      fc.property(materials, list => {
        const read = materialsInSdf('file.sdf', onDisk(sdfOf(list)))
        // A record without a SMILES has no structure in the file either; the molfile adds nothing.
        expect(read).toMatchObject({ ok: true })
        expect(read.ok && read.value).toEqual(list)
      }),
      { numRuns: 150 },
    )
  })

  it('transformations, every key of their schema, as an RD file', () => {
    fc.assert(
      fc.property(transformations, list => {
        const read = recordsInRdf('file.rdf', onDisk(rdfOf(library, list)))
        expect(read).toMatchObject({ ok: true })
        expect(read.ok && read.value).toEqual(list)
      }),
      { numRuns: 150 },
    )
  })

  it.each([',', '\t'] as const)('charges, every key of their schema, as a table parted by %j', delimiter => {
    const steps = fc.uniqueArray(fc.record({ id: anyId, charge: anyCharge }), { ...byId, minLength: 1, maxLength: 4 })
    fc.assert(
      fc.property(steps, anyText, (list, name) => {
        const table = onDisk(chargeTable(list, () => name, delimiter))
        const read = stepChargesIn('table', table, materialCell(index))
        expect(read).toMatchObject({ ok: true })
        expect(read?.ok && [...read.value].map(([id, charge]) => ({ id, charge }))).toEqual(list)
      }),
      { numRuns: 300 },
    )
  })

  it('a table of charges over a record changes its charges and nothing else of it, and says of what it changes that it did', async () => {
    const workshop = await bundledWorkshop()
    const citation = 'from the table charges.csv'
    const amountOf = ({ material, amount, unit, perGramProduct }: ChargeLine) => JSON.stringify([material, amount, unit, perGramProduct])
    const unsaid = ({ from, ...line }: ChargeLine): ChargeLine => (from === undefined || from === citation ? line : { ...line, from })
    const expectOver = (read: ReturnType<typeof recordsIn>, step: Transformation, charge: readonly ChargeLine[]) => {
      const [back] = (read.ok ? read.value.transformations : []) as [Transformation]
      const sources = back.sources.filter(one => one.citation !== citation)
      expect({ ...back, sources, charge: back.charge.map(unsaid) }).toEqual({ ...step, charge })
      const before = new Set(step.charge.map(amountOf))
      const isSilent = ({ from, derived, amount, perGramProduct }: ChargeLine) =>
        from === undefined && derived !== true && (amount !== null || perGramProduct !== undefined)
      for (const line of back.charge.filter(isSilent)) expect(before).toContain(amountOf(line))
    }
    fc.assert(
      fc.property(anyTransformation, anyCharge, (step, charge) => {
        const known = { ...workshop, library: { ...library, transformations: new Map([[step.id, step]]) } }
        const table = writtenAs('charges-csv', fileOf([], [{ ...step, charge }]), library, index)
        const read = recordsIn([{ name: 'charges.csv', text: table }], known)
        expect(read).toMatchObject({ ok: true })
        expectOver(read, step, charge)
        // In one import with the record itself, which the library need not hold then.
        const together = recordsIn(
          [
            { name: 'charges.csv', text: table },
            { name: 'step.json', text: printLibraryFile(fileOf([], [step])) },
          ],
          workshop,
        )
        expectOver(together, step, charge)
        // Where there is no charge yet, the table's is the charge.
        const bare = { ...known, library: { ...library, transformations: new Map([[step.id, { ...step, charge: [] }]]) } }
        expect(recordsIn([{ name: 'charges.csv', text: table }], bare)).toMatchObject({
          ok: true,
          value: { transformations: [{ charge }] },
        })
      }),
      { numRuns: 100 },
    )
  })

  it('the bundled library, in every form that holds all of it', async () => {
    const workshop = await bundledWorkshop()
    const all = [...bundled().library.materials.values()]
    expect(all.length).toBeGreaterThanOrEqual(672)
    const file = fileOf(all, [...bundled().library.transformations.values()])
    for (const form of ['json', 'csv', 'tsv', 'charges-csv', 'charges-tsv', 'sdf', 'rdf'] as const) {
      const read = recordsIn([{ name: form, text: onDisk(writtenAs(form, file, library, index)) }], workshop)
      expect(read.ok, form).toBe(true)
      if (!read.ok) continue
      const hasMaterials = form === 'json' || form === 'csv' || form === 'tsv' || form === 'sdf'
      expect(read.value.materials, form).toEqual(hasMaterials ? all : [])
      const hasSteps = form === 'json' || form === 'rdf' || form.startsWith('charges')
      expect(read.value.transformations, form).toEqual(hasSteps ? file.transformations : [])
      if (hasMaterials) expect(read.value.materials.every(one => materialSchema.safeParse(one).success)).toBe(true)
    }
  })

  it.each([',', '\t'] as const)('charges pasted into a preparation from a table parted by %j: the very same lines', delimiter => {
    let lines = 0
    for (const step of library.transformations.values()) {
      const read = readChargeTable(chargeTable([step], id => wordFor(id, index), delimiter))!
      expect(read.lines, step.id).toHaveLength(step.charge.length)
      const keys = lineKeys(read.lines)
      for (const [at, line] of step.charge.entries()) {
        const charge = readChargeLine(read.lines[at]!, index, 'ask')
        expect(charge?.found, `${step.id}: ${read.lines[at]}`).toMatchObject({ kind: 'material', material: line.material })
        const { amount, perGramProduct } = charge!
        const unit = charge!.unit as typeof line.unit
        const asRead = { material: line.material, role: line.role, amount, unit, ...(perGramProduct === null ? {} : { perGramProduct }) }
        expect(withFacts(asRead, read.roles[keys[at]!], read.facts[keys[at]!]), `${step.id}: ${read.lines[at]}`).toEqual(line)
        lines++
      }
    }
    expect(lines).toBeGreaterThan(1500)
  })
})

describe('what a form cannot hold is named, all of it and nothing else', () => {
  const absent = (kept: readonly (keyof Transformation)[], steps: readonly Transformation[]) =>
    (Object.keys(Object.assign({}, ...steps)) as (keyof Transformation)[]).filter(key => !kept.includes(key)).sort()

  it('for forms of records: the keys that do not come back', async () => {
    const workshop = await bundledWorkshop()
    fc.assert(
      fc.property(transformations, steps => {
        const bare = {
          ...workshop,
          library: { ...library, transformations: new Map(steps.map(one => [one.id, { id: one.id } as Transformation])) },
        }
        for (const form of ['json', 'rdf', 'charges-csv', 'charges-tsv', 'csv', 'tsv', 'sdf'] as const) {
          const text = writtenAs(form, fileOf([], steps), library, index)
          const read = recordsIn([{ name: form, text }], bare)
          const back = (read.ok ? read.value.transformations : []) as Transformation[]
          const kept = (Object.keys(Object.assign({}, ...back)) as (keyof Transformation)[]).filter(key =>
            steps.every(one => JSON.stringify(back.find(other => other.id === one.id)?.[key]) === JSON.stringify(one[key])),
          )
          expect([...keysLeftOut(form, steps)].sort(), form).toEqual(absent(kept, steps))
        }
      }),
      { numRuns: 40 },
    )
  })

  it('in words: each key that is left out, and none that is held', () => {
    fc.assert(
      fc.property(materials, transformations, (some, steps) => {
        for (const form of forms) {
          const file = fileOf(some, steps)
          const said = notHeld(form, file, library).join('\n')
          const lost = keysLeftOut(form, steps)
          if (form === 'json') expect(said).toBe('')
          if (form === 'csv' || form === 'tsv' || form === 'sdf') expect(said).toMatch(/^\S+ transformations?: it holds materials alone\.$/)
          else {
            const list = /^Of the transformations, ([^:.]*)/.exec(said)?.[1]?.split(', ') ?? []
            expect(
              list.map(one => one.replace(/ but for .*/, '')),
              form,
            ).toEqual(lost.map(keyWords))
            expect(/^\S+ materials?\b/m.test(said), form).toBe(form !== 'json')
          }
        }
      }),
      { numRuns: 40 },
    )
  })
})

describe('a table over materials that are known', () => {
  const known = { byId: library.materials, named: () => ({ ok: true as const, value: undefined, warnings: [] }) }
  const benzoin = library.materials.get('benzoin')!
  const over = (text: string) => {
    const read = readMaterialTable('mine.csv', text, known)
    return read.ok ? read.value[0] : read.problems
  }
  it('keeps of them what it has no column for, and names itself as the source of a figure that it changes', () => {
    const { sources, ...rest } = benzoin
    expect(over('id,name,meltingC\nbenzoin,benzoin,135.5\n')).toEqual({
      ...rest,
      meltingC: 135.5,
      sources: [...sources, { citation: 'from the table mine.csv', for: 'melting point', checked: false }],
    })
    expect(over(`id,name\nbenzoin,${benzoin.name}\n`)).toEqual(benzoin)
    // An emptied cell empties; of what every record has it says nothing.
    expect(over('id,name,smiles,form\nbenzoin,benzoin,,\n')).not.toHaveProperty('smiles')
    expect(over('id,name,smiles,form\nbenzoin,benzoin,,\n')).toMatchObject({ form: benzoin.form })
  })
  it('an SD file of another program too: the same structure drawn there is no change', () => {
    const whole = sdfOf([{ ...benzoin, smiles: 'OC(c1ccccc1)C(=O)c1ccccc1' }])
    const drawn = `${whole.slice(0, whole.indexOf('M  END'))}M  END\n>  <id>\nbenzoin\n\n$$$$\n`
    expect(drawn).toMatch(/^benzoin\n/)
    const read = materialsInSdf('theirs.sdf', drawn, known)
    expect(read.ok && read.value).toEqual([benzoin])
  })
  it('asks which one a name without an id means, and never stands a new material over one of another name', async () => {
    const workshop = await bundledWorkshop()
    const read = (text: string) => recordsIn([{ name: 'mine.csv', text }], workshop)
    const asked = read('name,note\nammonia,x\n')
    expect(asked.ok ? [] : asked.problems.map(one => [one.code, one.where.at(-1)])).toEqual([['csv-material-ambiguous', 'line 2']])
    const sure = read('id,name,note\nammonia,ammonia,x\n')
    expect(sure.ok && sure.value.materials[0]).toMatchObject({ ...library.materials.get('ammonia'), note: 'x', sources: expect.anything() })
    // It would make the id of a bottle that has another name.
    const other = read('name,form,smiles\nhydrogen peroxide 3,solid,OO\n')
    expect(library.materials.get('hydrogen-peroxide-3')?.name).not.toBe('hydrogen peroxide 3')
    expect(other.ok && other.value.materials[0]).toMatchObject({ id: 'hydrogen-peroxide-3-2' })
  })
})
