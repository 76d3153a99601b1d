import { describe, expect, it } from 'vitest'
import { byFlagLine } from '../../../../core/reading/by-flag.ts'
import { rdfOf } from '../../../../server/library/rd-file.ts'
import { notDrawn, rxnOf } from '../../../../server/library/reaction-files.ts'
import { reactionsShown } from '../../../../server/library/reaction-list.ts'
import { rdkitModule } from '../../../support/rdkit.ts'
import { index, library, toolkit } from '../../../support/reader.ts'

const several = [...library.transformations.values()].filter(step => notDrawn(library, step, true) === null).slice(0, 5)

describe('reactions of files', () => {
  it('of several files come with file and number, and one that cannot be read hides none', () => {
    const files = several.map((step, at) => ({ name: `${at}.rxn`, text: rxnOf(library, step)! }))
    // A molecule is missing: the counts of the file tell, and no other takes its place.
    const bad = { name: 'bad.rxn', text: files[0]!.text.replace(/^\$MOL\n/m, '') }
    const shown = reactionsShown([files[0]!, bad, ...files.slice(1), { name: 'all.rdf', text: rdfOf(library, several) }], index, toolkit)
    const list = shown.ok ? shown.value : []
    expect(list.map(one => [one.file, one.number])).toEqual([
      ['0.rxn', 1],
      ['bad.rxn', 1],
      ...several.slice(1).map((_, at) => [`${at + 1}.rxn`, 1]),
      ...several.map((_, at) => ['all.rdf', at + 1]),
    ])
    expect(list.filter(one => one.read === null).map(one => [one.file, one.problems.length > 0])).toEqual([['bad.rxn', true]])
    expect(list.filter(one => one.read !== null).every(one => one.balanced && one.problems.length === 0)).toBe(true)
    // What is shown of each can be read again by itself: that is how one is mended.
    const again = list.flatMap(one => (one.read === null ? [] : [reactionsShown([{ name: one.file, text: one.text }], index, toolkit)]))
    expect(again.map(one => one.ok && one.value[0]!.read?.equation)).toEqual(list.flatMap(one => one.read?.equation ?? []))
  })

  // Names of the data are those of any other program; CTfile formats, RDfiles: $DTYPE and $DATUM (from memory).
  it('tell what an RD file says of a reaction beside its equation, which is not read', () => {
    const data = '$DTYPE YIELD\n$DATUM 75\n$DTYPE ROOT:NOTE\n$DATUM two lines\nof it\n'
    const text = `$RDFILE 1\n$DATM\n${several
      .slice(0, 2)
      .map((step, at) => `$RFMT\n${rxnOf(library, step)}${at === 0 ? data : ''}`)
      .join('')}`
    const shown = reactionsShown([{ name: 'all.rdf', text }], index, toolkit)
    const told = shown.ok ? shown.value.map(one => [one.balanced, one.problems.map(({ code, what }) => [code, what])]) : []
    const what = 'The file says more of this reaction, which is not read: YIELD: 75; ROOT:NOTE: two lines of it.'
    expect(told).toEqual([
      [true, [['reaction-data-not-read', what]]],
      [true, []],
    ])
  })

  // RDKit, an independent toolkit, writes the flag 0 whatever hand is drawn: so do many programs.
  it('say that the chiral flag did it where a hand is drawn and both are read', async () => {
    const rdkit = await rdkitModule()
    const block = (smiles: string, flag: 0 | 1, form: 'V2000' | 'V3000' = 'V2000'): string => {
      const molecule = rdkit.get_mol(smiles)!
      const text = form === 'V2000' ? molecule.get_molblock() : molecule.get_v3Kmolblock()
      molecule.delete()
      return text.replace(/^(.{12}) {2}0(.*V2000)$/m, `$1  ${flag}$2`).replace(/^(M {2}V30 COUNTS(?: \d+){4}) 0/m, `$1 ${flag}`)
    }
    const [carvone, diol, carvacrol] = ['CC1=CC[C@@H](CC1=O)C(C)=C', 'C[C@H](O)[C@@H](CC)O', 'Cc1ccc(cc1O)C(C)C']
    const byFlag = (...blocks: readonly string[]) => {
      const text = `$RXN\n\n\n\n  ${blocks.length - 1}  1\n${blocks.map(one => `$MOL\n${one.trimEnd()}\n`).join('')}`
      const shown = reactionsShown([{ name: 'a.rxn', text }], index, toolkit)
      return shown.ok ? shown.value[0]!.read : null
    }
    const read = byFlag(block(carvone!, 0), block(carvacrol!, 0))!
    expect(read.byFlag).toHaveLength(1)
    expect(read.equation.startsWith(`${read.byFlag[0]} -> `)).toBe(true)
    expect(read.equation).not.toContain('@')
    const told = byFlag(block(carvone!, 1), block(carvacrol!, 0))!
    expect(told.byFlag).toEqual([])
    expect(told.equation).not.toBe(read.equation)
    expect(byFlag(block(diol!, 0), block(carvacrol!, 1))!.byFlag).toHaveLength(1)
    // Nothing is drawn in one hand: the flag says nothing.
    expect(byFlag(block('CC(O)CC', 0), block(carvacrol!, 0))!.byFlag).toEqual([])
    expect(byFlagLine(read.byFlag)).toContain('chiral flag')
    const rxn3000 = (flag: 0 | 1) => {
      const tables = [carvone!, carvacrol!].map(one => block(one, flag, 'V3000').match(/M {2}V30 BEGIN CTAB[\s\S]*M {2}V30 END CTAB/)![0])
      const side = (name: string, table: string) => `M  V30 BEGIN ${name}\n${table}\nM  V30 END ${name}\n`
      const text = `$RXN V3000\n\n\n\nM  V30 COUNTS 1 1\n${side('REACTANT', tables[0]!)}${side('PRODUCT', tables[1]!)}M  END\n`
      const shown = reactionsShown([{ name: 'a.rxn', text }], index, toolkit)
      return shown.ok ? shown.value[0]!.read : null
    }
    // V3000 writes groups out where there are any: without one the hand is as drawn, whatever the flag.
    for (const flag of [0, 1] as const) expect(rxn3000(flag)).toEqual(told)
  })
})
