import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Material, materialSchema } from '../../core/library/material.ts'
import { printLibraryFile } from '../../core/library/print.ts'
import { chargedRoles, stageOf, type Transformation } from '../../core/library/transformation.ts'
import { cellOf, cellValue, guarded, unguarded } from '../../core/reading/cell-text.ts'
import { readChargeLine } from '../../core/reading/charge-line.ts'
import { readChargeTable } from '../../core/reading/charge-table.ts'
import { lineKeys } from '../../core/reading/line-key.ts'
import { materialTable, readMaterialTable } from '../../core/reading/material-table.ts'
import { bundled } from '../../server/library/bundled.ts'
import { materialsInSdf, sdfOf } from '../../server/library/chemical-files.ts'
import { equationIn, reactionSmilesOf, rxnOf } from '../../server/library/reaction-files.ts'
import { reactionsIn } from '../../server/library/reaction-list.ts'
import { recordsIn } from '../../server/library/records-in.ts'
import { chargesWritten, forms, notHeld, writtenAs } from '../../server/library/written-as.ts'
import { bundledWorkshop } from '../support/app.ts'
import { index, library, toolkit } from '../support/reader.ts'

// Law: what is written in a form that holds everything reads back as just what it was; nothing outside is needed to say so.

/** Texts that tables and data fields stumble over: quotes, separators, signs of formulas, blanks at the ends, other scripts. */
const text = fc.oneof(
  { weight: 3, arbitrary: fc.string({ minLength: 1, maxLength: 30 }) },
  fc.string({ unit: 'binary', minLength: 1, maxLength: 20 }),
  fc.constantFrom(
    '=1+1',
    '+2',
    '-3',
    '@x',
    "'=x",
    "''",
    ' blank ',
    '"quoted"',
    'a,b;c\td',
    'line\nbreak',
    '> <id>',
    '$$$$',
    'M  END',
    '﻿bom',
    'مادة',
    '[1]',
    'null',
    'true',
    '1e5',
    '{"a":1}',
  ),
)
const source = fc.record(
  { citation: text, url: fc.option(text, { nil: undefined }), checked: fc.boolean() },
  { requiredKeys: ['citation', 'checked'] },
)
const number = fc.double({ noNaN: true, noDefaultInfinity: true, min: -500, max: 5000 })
const material: fc.Arbitrary<Material> = fc
  .record(
    {
      id: fc.stringMatching(/^[a-z0-9]{1,8}(-[a-z0-9]{1,5}){0,2}$/),
      name: text,
      synonyms: fc.array(text, { maxLength: 4 }),
      kind: fc.constantFrom('compound' as const, 'polymer' as const, 'mixture' as const, 'feedstock' as const),
      formula: fc.constantFrom('C2H6O', 'CuSO4', 'C14H12O2'),
      smiles: fc.constantFrom('CCO', 'O=C(c1ccccc1)C(O)c1ccccc1', '*CC*', '[Na+].[Cl-]'),
      displayFormula: text,
      cas: fc.constantFrom('64-17-5', '119-53-9'),
      form: fc.constantFrom('solid' as const, 'liquid' as const, 'gas' as const, 'solution' as const),
      densityGPerMl: fc.double({ min: 0.1, max: 20, noNaN: true }),
      meltingC: number,
      contains: fc.record({ compound: fc.constant('water'), massFraction: fc.double({ min: 0.01, max: 1, noNaN: true }) }),
      hazards: fc.record({
        codes: fc.array(fc.constantFrom('H225', 'H319')),
        signalWord: fc.constantFrom('Danger' as const, 'none' as const),
        from: text,
      }),
      note: text,
      reactivityGroups: fc.array(fc.integer({ min: 1, max: 107 })),
      storageGroup: text,
      buyable: fc.boolean(),
      sources: fc.array(source, { maxLength: 3 }),
    },
    { requiredKeys: ['id', 'name', 'kind', 'form', 'sources'] },
  )
  // As JSON holds it: a key without a value is no key.
  .map(one => JSON.parse(JSON.stringify(one)) as Material)
const materials = fc.uniqueArray(material, { selector: one => one.id, minLength: 1, maxLength: 6 })

describe('what is written reads back', () => {
  it('a cell, whatever stands in it', () => {
    fc.assert(
      fc.property(fc.constantFrom('name', 'note', 'synonyms'), fc.oneof(text, fc.array(text)), (key, value) => {
        const kept = key === 'synonyms' ? [value].flat() : [value].flat().join(' ')
        expect(cellValue(key, unguarded(guarded(cellOf(key, kept))))).toEqual(kept)
      }),
      { numRuns: 500 },
    )
  })

  it.each([',', '\t'] as const)('materials as a table parted by %j', delimiter => {
    fc.assert(
      fc.property(materials, list => {
        const read = readMaterialTable('table', materialTable(list, delimiter))
        expect(read).toMatchObject({ ok: true })
        expect(read.ok && read.value).toEqual(list)
      }),
      { numRuns: 300 },
    )
  })

  it('materials as an SD file', () => {
    fc.assert(
      fc.property(materials, list => {
        const read = materialsInSdf('file.sdf', sdfOf(list))
        expect(read).toMatchObject({ ok: true })
        // A material without a structure has none in the file either; the molfile adds nothing.
        expect(read.ok && read.value).toEqual(list)
      }),
      { numRuns: 200 },
    )
  })

  it('the bundled library, in every form that holds all of it', async () => {
    const workshop = await bundledWorkshop()
    const all = [...bundled().library.materials.values()]
    expect(all.length).toBeGreaterThanOrEqual(672)
    const file = {
      format: 'waybench-library' as const,
      version: 1 as const,
      title: 'all',
      materials: all,
      transformations: [...bundled().library.transformations.values()],
    }
    for (const [name, body] of [
      ['all.json', printLibraryFile(file)],
      ['all.csv', materialTable(all)],
      ['all.tsv', materialTable(all, '\t')],
      ['all.sdf', sdfOf(all)],
    ] as const) {
      const read = recordsIn([{ name, text: body }], workshop)
      expect(read.ok, name).toBe(true)
      if (!read.ok) continue
      expect(read.value.materials, name).toEqual(all)
      expect(read.value.materials.every(one => materialSchema.safeParse(one).success)).toBe(true)
      if (name === 'all.json') expect(read.value.transformations).toEqual(file.transformations)
    }
  })

  it.each([',', '\t'] as const)('charges as a table parted by %j: the same materials, amounts, units and roles', delimiter => {
    let lines = 0
    for (const step of library.transformations.values()) {
      const read = readChargeTable(chargesWritten(library, index, step.id, delimiter))!
      expect(read.lines, step.id).toHaveLength(step.charge.length)
      const keys = lineKeys(read.lines)
      for (const [at, { material, amount, unit, role, perGramProduct }] of step.charge.entries()) {
        const charge = readChargeLine(read.lines[at]!, index, 'ask')
        expect(charge?.found, `${step.id}: ${read.lines[at]}`).toMatchObject({ kind: 'material', material })
        expect([charge!.amount, charge!.perGramProduct], `${step.id}: ${read.lines[at]}`).toEqual([amount, perGramProduct ?? null])
        // An amount left open has no unit to be read.
        if (amount !== null || perGramProduct !== undefined) expect(charge!.unit, `${step.id}: ${read.lines[at]}`).toBe(unit)
        expect(read.roles[keys[at]!], `${step.id}: ${read.lines[at]}`).toBe(role)
        lines++
      }
    }
    expect(lines).toBeGreaterThan(1500)
  })

  it.each(['reaction SMILES', 'MDL RXN'] as const)('equations as %s: the same compounds with the same coefficients', form => {
    const sameCompounds = (step: Transformation, equation: string): void => {
      const expected = [step.reactants, step.products].map(side => side.map(one => `${one.coefficient} ${one.compound}`).sort())
      const found = equation.split(' -> ').map(side =>
        side
          .split(' + ')
          .map(term => {
            const [, count = '1', name] = /^(?:(\d+) )?(.*)$/.exec(term)!
            const looked = index.lookUp(name!)
            return `${count} ${looked.kind === 'material' ? looked.material : name}`
          })
          .sort(),
      )
      expect(found, step.id).toEqual(expected)
    }
    let compared = 0
    let withAgents = 0
    for (const step of library.transformations.values()) {
      // Compounds of several loose parts (salts, hydrates) and metals written bare are told apart by what a form cannot hold.
      const plain = [...step.reactants, ...step.products].every(({ compound }) => {
        const { smiles = '' } = library.materials.get(compound)!
        const shared = toolkit.parse(smiles)
        return smiles !== '' && !/[.*[]/.test(smiles) && shared.ok && index.ofStructure(shared.value).length === 1
      })
      if (!plain || step.kind !== 'reaction') continue
      const written = form === 'MDL RXN' ? rxnOf(library, step) : reactionSmilesOf(library, step)
      if (written === null) continue
      const read = equationIn('file', written, index, toolkit)
      expect(read.ok, step.id).toBe(true)
      if (read.ok) sameCompounds(step, read.value.equation)
      compared++
      // What stands over the arrow: each compound of the vessel that the equation does not name, where its structure tells it from all others.
      const charged = step.charge.filter(line => chargedRoles.has(line.role) && stageOf(line) === 'vessel')
      const named = new Set([...step.reactants, ...step.products].map(one => one.compound))
      const over = new Set(
        charged
          .map(line => library.materials.get(line.material)!)
          .map(one => one.contains?.compound ?? one.id)
          .filter(id => !named.has(id)),
      )
      const isPlain = (id: string): boolean => {
        const { smiles = '' } = library.materials.get(id)!
        const parsed = toolkit.parse(smiles)
        return smiles !== '' && !/[.*[]/.test(smiles) && parsed.ok && index.ofStructure(parsed.value).length === 1
      }
      if (![...over].every(isPlain) || !read.ok) continue
      const back = read.value.agents.map(line => {
        const found = index.lookUp(line)
        return found.kind === 'material' ? found.material : line
      })
      expect(back.sort(), step.id).toEqual([...over].sort())
      if (over.size > 0) withAgents++
    }
    expect(compared).toBeGreaterThanOrEqual(60)
    expect(withAgents).toBeGreaterThanOrEqual(30)
  })

  it('says of each form what it cannot hold, and of no step that was written that it was left out', () => {
    const file = {
      format: 'waybench-library' as const,
      version: 1 as const,
      title: 'all',
      materials: [],
      transformations: [...library.transformations.values()],
    }
    for (const form of forms) {
      const lost = notHeld(form, file, library)
      if (form === 'json') expect(lost).toEqual([])
      else expect(lost.length, form).toBeGreaterThan(0)
    }
    const written = file.transformations.filter(step => reactionSmilesOf(library, step) !== null)
    expect(notHeld('smi', { ...file, transformations: written }, library)).toHaveLength(2)
    expect(notHeld('smi', file, library)).toHaveLength(2 + file.transformations.length - written.length)
  })

  it.each(['smi', 'rxn'] as const)('all equations in one %s file come back one by one, under their names', form => {
    const steps = ['benzoin-thiamine', 'lophine', 'adipic-acid-from-cyclohexanone'].flatMap(id => library.transformations.get(id) ?? [])
    const several = [...steps, ...[...library.transformations.values()].filter(step => rxnOf(library, step) !== null).slice(0, 12)]
    const file = { format: 'waybench-library' as const, version: 1 as const, title: 'some', materials: [], transformations: several }
    const read = reactionsIn('own', writtenAs(form, file, library), index, toolkit)
    expect(read.ok).toBe(true)
    if (!read.ok) return
    expect(read.value.map(one => one.title)).toEqual(several.map(step => step.name.slice(0, form === 'rxn' ? 80 : undefined)))
    for (const [at, step] of several.entries()) {
      const alone = equationIn('one', form === 'rxn' ? rxnOf(library, step)! : reactionSmilesOf(library, step)!, index, toolkit)
      expect(alone.ok && { equation: alone.value.equation, agents: alone.value.agents }, step.id).toEqual({
        equation: read.value[at]!.equation,
        agents: read.value[at]!.agents,
      })
    }
  })

  it('a fault in one of several reactions is told with its number, and nothing is taken', () => {
    const read = reactionsIn('own.smi', 'CCO>>CC=O good\nC(>>CC bad\nCCO>>CC=O good', index, toolkit)
    expect(read.ok ? [] : read.problems.map(problem => problem.where[0])).toEqual(['own.smi, reaction 2'])
  })
})
