import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chargedRoles, stageOf, type Transformation } from '../../core/library/transformation.ts'
import { readEquation } from '../../core/reading/equation-line.ts'
import { partsOfReactionSmiles, reactionSmiles } from '../../core/reading/reaction-smiles.ts'
import { keysLeftOut, notHeld } from '../../server/library/not-held.ts'
import { rdfOf } from '../../server/library/rd-file.ts'
import { equationIn, notDrawn, reactionSmilesOf, rxnOf } from '../../server/library/reaction-files.ts'
import { reactionsIn } from '../../server/library/reaction-list.ts'
import { titleOf } from '../../server/library/reaction-title.ts'
import { writtenAs } from '../../server/library/written-as.ts'
import { anyTransformation } from '../support/any-record.ts'
import { rdkitModule } from '../support/rdkit.ts'
import { index, library, toolkit } from '../support/reader.ts'

// Law: an equation that is written in a form of reactions reads back as just that equation, each compound whole.

const steps = [...library.transformations.values()]
const drawable = (isMolfile: boolean) => steps.filter(step => notDrawn(library, step, isMolfile) === null)
const fileOf = (transformations: readonly Transformation[]) => ({
  format: 'waybench-library' as const,
  version: 1 as const,
  title: 'some',
  materials: [],
  transformations: [...transformations],
})
const termsOf = (equation: string) => {
  const { reactants, products, problems } = readEquation(equation, index, toolkit)
  expect(problems).toEqual([])
  const side = (list: typeof reactants) => list.map(({ compound, coefficient }) => ({ compound, coefficient }))
  return { reactants: side(reactants), products: side(products) }
}
/** A line of such a file as the reader of equations takes it. */
const pasted = (line: string) => {
  const { agents = [] } = readEquation(line, index, toolkit)
  const over = agents.flatMap(smiles => {
    const structure = toolkit.parse(smiles)
    return structure.ok ? index.ofStructure(structure.value) : []
  })
  return { ...termsOf(line), over: over.sort() }
}
const pastedFrom = (step: Transformation) => ({ reactants: step.reactants, products: step.products, over: overArrow(step) })
/** Compounds of the vessel that the equation does not name, as far as they have a structure. */
const overArrow = (step: Transformation): readonly string[] => {
  const named = new Set([...step.reactants, ...step.products].map(one => one.compound))
  const charged = step.charge.filter(line => chargedRoles.has(line.role) && stageOf(line) === 'vessel')
  const ids = charged
    .map(line => library.materials.get(line.material)!)
    .flatMap(one => one.contains?.compound ?? (one.kind === 'compound' || one.kind === 'polymer' ? [one.id] : []))
  return [...new Set(ids)].filter(id => !named.has(id) && /^[^*]+$/.test(library.materials.get(id)?.smiles ?? '*')).sort()
}

describe('an equation reads back with every compound whole, salts and hydrates too', () => {
  it.each(['smi', 'rxn'] as const)('as %s: the same compounds, coefficients and order, and what stands over the arrow', form => {
    let parted = 0
    let withAgents = 0
    const list = drawable(form === 'rxn')
    for (const step of list) {
      const read = equationIn('file', form === 'rxn' ? rxnOf(library, step)! : reactionSmilesOf(library, step)!, index, toolkit)
      expect(read.ok, step.id).toBe(true)
      if (!read.ok) continue
      expect(read.value.unknown, step.id).toEqual([])
      expect(termsOf(read.value.equation), step.id).toEqual({ reactants: step.reactants, products: step.products })
      const over = read.value.agents.map(line => {
        const found = index.lookUp(line)
        return found.kind === 'material' ? found.material : line
      })
      expect(over.sort(), step.id).toEqual(overArrow(step))
      // Pasted into the box of an equation, with its name behind it as the file has it, it is just that equation too.
      if (form === 'smi') expect(pasted(`${reactionSmilesOf(library, step)!}\t${step.name}`), step.id).toEqual(pastedFrom(step))
      if (over.length > 0) withAgents++
      if ([...step.reactants, ...step.products].some(one => library.materials.get(one.compound)!.smiles!.includes('.'))) parted++
    }
    expect(list.length).toBeGreaterThanOrEqual(360)
    expect(parted).toBeGreaterThanOrEqual(100)
    expect(withAgents).toBeGreaterThanOrEqual(150)
  })

  it('holds pieces together as CXSMILES does', () => {
    // The examples of "CXSMILES, part 2: component grouping", NextMove Software, 2022: pieces are counted over the whole reaction.
    const pieces = '[Na+].[OH-].c1ccccc1.[Cs+].[O-]C(=O)[O-].[Cs+]>>'
    const parts = (text: string) => partsOfReactionSmiles(text, toolkit)
    const grouped = ['[Na+].[OH-]', 'c1ccccc1', '[Cs+].[O-]C(=O)[O-].[Cs+]']
    expect(parts(`${pieces}C |f:0.1,3.4.5|`).reactants).toEqual(grouped)
    const apart = '[Na+].[OH-].c1ccccc1>[Cs+].[O-]C(=O)[O-].[Cs+]>C |f:0.1,3.4.5|'
    expect(parts(apart)).toEqual({ reactants: grouped.slice(0, 2), agents: grouped.slice(2), products: ['C'] })
    // Pieces that do not stand side by side, and other features beside the groups.
    expect(parts('[Na+].c1ccccc1.[OH-]>>C |$;;;;;;;;$,f:0.2,r|').reactants).toEqual(['[Na+].[OH-]', 'c1ccccc1'])
    // What is written is what is read there.
    expect(reactionSmiles({ reactants: grouped, agents: [], products: ['C'] })).toBe(`${pieces}C |f:0.1,3.4.5|`)
    expect(reactionSmiles({ reactants: ['CCO'], agents: ['O.O'], products: ['CC=O'] })).toBe('CCO>O.O>CC=O |f:1.2|')
  })

  it('each molfile of a reaction file is one compound to a second toolkit as well', async () => {
    const rdkit = await rdkitModule()
    let salts = 0
    for (const step of drawable(true).filter((_, at) => at % 4 === 0)) {
      const blocks = rxnOf(library, step)!
        .split(/^\$MOL\n/m)
        .slice(1)
      const written = [...step.reactants, ...step.products].flatMap(({ compound, coefficient }) =>
        Array.from({ length: coefficient }, () => library.materials.get(compound)!.smiles!),
      )
      for (const [at, smiles] of written.entries()) {
        const [drawn, meant] = [rdkit.get_mol(blocks[at]!), rdkit.get_mol(smiles)]
        expect(drawn?.get_smiles(), `${step.id}: ${smiles}`).toBe(meant?.get_smiles())
        drawn?.delete()
        meant?.delete()
        if (smiles.includes('.')) salts++
      }
    }
    expect(salts).toBeGreaterThan(50)
  })
})

describe('several reactions in one file', () => {
  const several = [
    ...['benzoin-thiamine', 'lophine', 'adipic-acid-from-cyclohexanone'].flatMap(id => library.transformations.get(id) ?? []),
    ...drawable(true).slice(0, 12),
  ]
  it.each(['smi', 'rxn', 'rdf'] as const)('of the form %s come back one by one, under their names', form => {
    const text = form === 'rdf' ? rdfOf(library, several) : writtenAs(form, fileOf(several), library, index)
    const read = reactionsIn('own', text, index, toolkit)
    expect(read.ok).toBe(true)
    if (!read.ok) return
    expect(read.value.map(one => one.title)).toEqual(several.map(step => titleOf(step, form === 'smi' ? 'smi' : 'rxn')))
    expect(read.value.map(one => termsOf(one.equation))).toEqual(several.map(({ reactants, products }) => ({ reactants, products })))
  })

  it('a fault in one is told with its number, and nothing is taken', () => {
    const read = reactionsIn('own.smi', 'CCO>>CC=O good\nC(>>CC bad\nCCO>>CC=O good', index, toolkit)
    expect(read.ok ? [] : read.problems.map(problem => problem.where[0])).toEqual(['own.smi, reaction 2'])
  })
})

describe('what a form of equations cannot hold is named', () => {
  it.each(['smi', 'rxn'] as const)('by %s: just the keys that do not come back, and each name that is shortened', form => {
    const equations = fc.shuffledSubarray(drawable(true), { minLength: 1, maxLength: 3 })
    fc.assert(
      fc.property(equations, fc.array(anyTransformation, { minLength: 3, maxLength: 3 }), (drawn, made) => {
        const list = drawn.map(({ reactants, products, charge }, at) => ({ ...made[at]!, reactants, products, charge }))
        const read = reactionsIn('own', writtenAs(form, fileOf(list), library, index), index, toolkit)
        expect(read.ok).toBe(true)
        if (!read.ok) return
        expect(read.value.map(one => termsOf(one.equation))).toEqual(list.map(({ reactants, products }) => ({ reactants, products })))
        const kept = new Set(['reactants', 'products', 'name'])
        expect([...keysLeftOut(form, list)].sort()).toEqual(
          Object.keys(Object.assign({}, ...list))
            .filter(key => !kept.has(key))
            .sort(),
        )
        const said = notHeld(form, fileOf(list), library)
        const shortened = list.filter((step, at) => read.value[at]!.title !== step.name)
        expect(said.filter(one => one.includes(': the name is shortened to ')).map(one => one.split(': the name is shortened')[0])).toEqual(
          shortened.map(one => one.name),
        )
      }),
      { numRuns: 60 },
    )
  })

  it('an equation that cannot be drawn with its reason, all others being there', () => {
    for (const form of ['smi', 'rxn'] as const) {
      const said = notHeld(form, fileOf(steps), library)
      const undrawn = steps.filter(step => notDrawn(library, step, form === 'rxn') !== null)
      expect(undrawn.length).toBeGreaterThan(5)
      for (const step of undrawn)
        expect(
          said.some(one => one.startsWith(`${step.name}: `) && /has no structure|open ends|written out/.test(one)),
          step.id,
        ).toBe(true)
      const written = writtenAs(form, fileOf(steps), library, index)
      expect(written.match(form === 'rxn' ? /^\$RXN/gm : /\n/g)).toHaveLength(steps.length - undrawn.length)
    }
  })
})
