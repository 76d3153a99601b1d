import * as openchemlib from 'openchemlib'
import { describe, expect, it } from 'vitest'
import { toolkitFrom } from '../../../../core/chemistry/openchemlib.ts'
import { loadLibrary } from '../../../../core/library/load.ts'
import type { Problem } from '../../../../core/problem/problem.ts'
import { filesBelow, textOf } from '../../../support/tree.ts'
import { fileText, type SoundLibrary, soundLibrary } from './sound-library.ts'

const tables = {
  hazardCodes: new Set(['H225', 'H302', 'H319']),
  reactivityGroups: new Set([4, 31]),
  storageGroups: new Set(['flammable', 'general']),
  wasteStreams: new Set(['non-halogenated-organic']),
  peroxideClasses: new Set(['A', 'B']),
}
const toolkit = toolkitFrom(openchemlib)

/** All that the loader says of the sound library after it has been spoilt in one place. */
function saidOf(spoil: (library: SoundLibrary) => void): { problems: readonly Problem[]; warnings: readonly Problem[] } {
  const library = soundLibrary()
  spoil(library)
  const loaded = loadLibrary([{ name: 'test.json', text: fileText(library) }], { tables, toolkit })
  return loaded.ok ? { problems: [], warnings: loaded.warnings } : { problems: loaded.problems, warnings: [] }
}

it('takes a sound library and indexes it', () => {
  const loaded = loadLibrary([{ name: 'test.json', text: fileText(soundLibrary()) }], { tables, toolkit })
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems, null, 1))
  expect(loaded.warnings).toEqual([])
  const { materials, molarMass, makers, users, title } = loaded.value
  expect(title).toBe('test')
  expect([...materials.keys()]).toEqual([...materials.keys()].sort())
  // CIAAW 2021 conventional weights: C 12.011, H 1.008, O 15.999.
  expect(molarMass.get('ethanol')).toBeCloseTo(2 * 12.011 + 6 * 1.008 + 15.999, 9)
  expect(molarMass.has('lemon-peel')).toBe(false)
  expect(makers.get('limonene')?.map(t => t.id)).toEqual(['peel'])
  expect(users.get('acetic-acid')?.map(t => t.id)).toEqual(['ester', 'fizz'])
})

/** Rule by rule: how a sound record is spoilt, the code of the problem that follows, its field, and what else the slip rightly brings. */
const refusals: readonly [string, (library: SoundLibrary) => void, string, string, string[]?][] = [
  [
    'a reserved id',
    l => (l.materials.water.id = 'bundled'),
    'id-reserved',
    'id',
    ['contains-resolves', 'id-unknown', 'id-unknown', 'id-unknown', 'id-unknown'],
  ],
  ['an id of another shape', l => (l.transformations.peel.id = 'Peel it'), 'schema-value', 'id'],
  ['no source', l => (l.materials.limonene.sources = []), 'sources-missing', 'sources'],
  ['no source of a transformation', l => (l.transformations.peel.sources = []), 'sources-missing', 'sources'],
  ['a compound without formula', l => delete l.materials.limonene.formula, 'kind-fits', 'formula'],
  ['a feedstock with a formula', l => (l.materials['lemon-peel'].formula = 'C'), 'kind-fits', 'formula'],
  ['an unreadable formula', l => (l.materials.polystyrene.formula = 'C8Hx'), 'formula-element', 'formula'],
  ['a formula that the structure contradicts', l => (l.materials.limonene.formula = 'C10H18'), 'formula-agrees', 'smiles'],
  ['a formula shown otherwise', l => (l.materials.ethanol.displayFormula = 'C2H4OH'), 'formula-agrees', 'displayFormula'],
  ['a structure that is none', l => (l.materials.limonene.smiles = 'CC('), 'smiles-bracket', 'smiles'],
  ['open ends on a compound', l => (l.materials.limonene.smiles = '*CC1=CCC(CC1)C(C)=C'), 'polymer-ends', 'smiles', ['formula-agrees']],
  ['a polymer without open ends', l => (l.materials.polystyrene.smiles = 'C=Cc1ccccc1'), 'polymer-ends', 'smiles'],
  ['a wrong CAS digit', l => (l.materials.ethanol.cas = '64-17-6'), 'cas-digits', 'cas'],
  ['a CAS number of another shape', l => (l.materials.ethanol.cas = '64175'), 'cas-digits', 'cas'],
  ['a mixture of what is not there', l => (l.materials['acetic-acid-50pct'].contains.rest = 'watre'), 'contains-resolves', 'rest'],
  ['a mixture at no strength', l => delete l.materials['acetic-acid-50pct'].contains.massFraction, 'contains-resolves', 'massFraction'],
  ['a mixture at two strengths', l => (l.materials['acetic-acid-50pct'].contains.molPerL = 9), 'contains-resolves', 'massFraction'],
  ['a hazard code that is none', l => (l.materials.ethanol.hazards.codes = ['H225', 'H999']), 'hazard-codes-exist', '1'],
  ['a hazard code twice', l => (l.materials.ethanol.hazards.codes = ['H225', 'H225']), 'hazard-codes-exist', '1'],
  ['a signal word without codes', l => (l.materials.ethanol.hazards.codes = []), 'hazard-codes-exist', 'signalWord'],
  ['a reactivity group that is none', l => (l.materials.ethanol.reactivityGroups = [44]), 'groups-exist', '0'],
  ['a storage group that is none', l => (l.materials.ethanol.storageGroup = 'flamable'), 'groups-exist', 'storageGroup'],
  ['a waste stream that is none', l => (l.materials.ethanol.wasteStream = 'sink'), 'groups-exist', 'wasteStream'],
  ['a peroxide class that is none', l => (l.materials.ethanol.peroxideClass = 'E'), 'groups-exist', 'peroxideClass'],
  ['an unknown material', l => (l.transformations.ester.charge[2].material = 'watter'), 'id-unknown', 'material'],
  ['an unknown gas', l => (l.transformations.fizz.gasEvolved[0].compound = 'carbon-dioxid'), 'id-unknown', 'compound'],
  ['a meeting of what is not there', l => (l.transformations.ester.intendedMeetings[0].materials[1] = 'vodka'), 'id-unknown', '1'],
  ['a main product that is no product', l => (l.transformations.ester.mainProduct = 'limonene'), 'equation-named', 'mainProduct'],
  [
    'a product that stands twice',
    l => l.transformations.peel.products.push(l.transformations.peel.products[0]),
    'equation-named',
    '1',
    ['isolation-shape'],
  ],
  ['an unbalanced equation', l => l.transformations.ester.products.pop(), 'equation-unbalanced', 'products'],
  [
    'a feedstock in a reaction',
    l => l.transformations.ester.products.push({ compound: 'lemon-peel', coefficient: 1 }),
    'isolation-shape',
    '2',
  ],
  ['an isolation of two', l => l.transformations.peel.products.push({ compound: 'water', coefficient: 1 }), 'isolation-shape', 'products'],
  [
    'a main product that is its own reactant',
    l => {
      l.transformations.ester.reactants.push({ compound: 'ethyl-acetate', coefficient: 1 })
      l.transformations.ester.products[0].coefficient = 2
    },
    'own-reactant',
    'mainProduct',
  ],
  [
    'a second product that is its own reactant',
    l => {
      l.transformations.fizz.reactants.push({ compound: 'water', coefficient: 1 })
      l.transformations.fizz.products[2].coefficient = 2
    },
    'own-reactant',
    'compound',
  ],
  ['yields out of order', l => (l.transformations.ester.yieldPercent.low = 70), 'yields-ordered', 'yieldPercent'],
  ['a yield above 100 %', l => (l.transformations.ester.yieldPercent.high = 101), 'yields-ordered', 'yieldPercent'],
  ['a typical yield of 0', l => (l.transformations.peel.yieldPercent = { low: 0, typical: 0, high: 1 }), 'yields-ordered', 'typical'],
  ['an impossible report', l => (l.transformations.ester.reports[0].percent = 104), 'yields-ordered', 'percent'],
  ['a second product that is no product', l => (l.transformations.fizz.coProducts[0].compound = 'ethanol'), 'co-products-named', '0'],
  ['a second product from nowhere', l => (l.transformations.fizz.coProducts[0].from = 'distillation'), 'co-products-named', 'from'],
  ['a volume without a density', l => delete l.materials.ethanol.densityGPerMl, 'lines-measurable', 'unit'],
  ['moles of a feedstock', l => (l.transformations.peel.charge[0].unit = 'mol'), 'lines-measurable', 'unit', ['limiting-amount']],
  ['an amount and one per gram', l => (l.transformations.ester.charge[3].amount = 5), 'lines-measurable', 'perGramProduct'],
  ['no amount of the limiting reactant', l => (l.transformations.ester.charge[0].amount = null), 'limiting-amount', 'charge'],
  ['a limiting reactant only to wash with', l => (l.transformations.peel.charge[0].role = 'wash'), 'limiting-amount', 'charge'],
  ['a limiting reactant that is in excess', l => (l.transformations.fizz.charge[1].amount = 0.8), 'limiting-exceeded', 'limiting'],
  ['tasks of other hours', l => (l.transformations.ester.elapsedHours = 2), 'tasks-add-up', 'tasks'],
  ['tasks of other hands', l => (l.transformations.ester.handsOnHours = 1), 'tasks-add-up', 'tasks'],
  ['a wait beyond the hold point', l => (l.transformations.ester.holdPoint = 'hours'), 'tasks-add-up', 'waitUpToH'],
  ['temperatures the wrong way round', l => (l.transformations.ester.temperatureC = [60, 20]), 'ranges-ordered', 'temperatureC'],
  ['scales the wrong way round', l => (l.transformations.ester.smallestProvenG = 200), 'ranges-ordered', 'smallestProvenG'],
  ['a gas that is a liquid', l => (l.transformations.fizz.gasEvolved[0].compound = 'water'), 'gases-are-gases', '0'],
  ['a mistyped key', l => (l.materials.water.meltngC = 0), 'schema-unknown-key', 'meltngC'],
  ['a missing key', l => delete l.materials.water.form, 'schema-missing-key', 'form'],
  ['a role that is none', l => (l.transformations.peel.charge[0].role = 'substrat'), 'schema-value', 'role'],
  ['a text for a number', l => (l.materials.water.densityGPerMl = '1'), 'schema-type', 'densityGPerMl'],
  ['a negative amount', l => (l.transformations.peel.charge[0].amount = -100), 'schema-value', 'amount'],
]

describe('refuses, with one problem that names the place', () => {
  it.each(refusals)('%s', (_, spoil, code, field, besides = []) => {
    const { problems } = saidOf(spoil)
    const own = problems.filter(problem => problem.code === code && problem.where.at(-1) === field)
    expect(own, JSON.stringify(problems, null, 1)).toHaveLength(1)
    const others = problems.filter(problem => !own.includes(problem)).map(problem => problem.code)
    expect(others.sort()).toEqual(besides)
    expect(own[0]!.where[0]).toBe('test.json')
    for (const words of [own[0]!.what, own[0]!.why, own[0]!.cure]) expect(words).toMatch(/^[A-Z"0-9].*\.$/s)
  })
})

it('has a case for every code that a rule can give', () => {
  const text = filesBelow('core/library/checks', /\.ts$/).map(textOf).join('\n')
  const codes = new Set([...text.matchAll(/(?:code: (?:\w+ \? )?|: )'([a-z]+(?:-[a-z]+)+)'/g)].map(match => match[1]!))
  const tried = new Set([...refusals.map(([, , code]) => code), 'limiting-short', 'duplicate-cas', 'figures-plausible'])
  expect([...codes].filter(code => !tried.has(code))).toEqual([])
  expect(codes.size).toBeGreaterThanOrEqual(20)
})

describe('warns without refusing', () => {
  it('where another reactant is charged a little short', () => {
    const { problems, warnings } = saidOf(l => (l.transformations.fizz.charge[1].amount = 0.95))
    expect(problems).toEqual([])
    expect(warnings.map(w => w.code)).toEqual(['limiting-short'])
  })
  it('is silent within 2 %', () => {
    expect(saidOf(l => (l.transformations.fizz.charge[1].amount = 0.985))).toEqual({ problems: [], warnings: [] })
  })
  it('where two compounds share a CAS number', () => {
    const { problems, warnings } = saidOf(l => (l.materials.limonene.cas = '64-17-5'))
    expect(problems).toEqual([])
    expect(warnings.map(w => [w.code, w.where[1]])).toEqual([['duplicate-cas', 'limonene']])
  })
  it('where a record of a layer takes the CAS number of another, whichever comes first', () => {
    const beneath = loadLibrary([{ name: 'test.json', text: fileText(soundLibrary()) }], { tables, toolkit })
    if (!beneath.ok) throw new Error('unsound')
    const told = (id: string, cas: string | undefined) => {
      const file = {
        format: 'waybench-library',
        version: 1,
        title: 'own',
        materials: [{ ...soundLibrary().materials[id], cas }],
        transformations: [],
      }
      const over = loadLibrary([{ name: 'own.json', text: JSON.stringify(file) }], { tables, toolkit, over: beneath.value })
      return over.ok ? over.warnings.map(one => [one.code, one.where[1]]) : over.problems
    }
    // CAS 7732-18-5 is water, 64-17-5 ethanol.
    expect(told('acetic-acid', '64-17-5')).toEqual([['duplicate-cas', 'acetic-acid']])
    expect(told('limonene', '64-17-5')).toEqual([['duplicate-cas', 'limonene']])
    expect(told('water', '7732-18-5')).toEqual([])
  })
  // CRC Handbook, from memory: benzaldehyde boils at 178.8 °C, flashes at 63 °C and has 1.04 g/mL.
  it.each([
    [{ densityGPerMl: 1040 }, ['densityGPerMl'], 'Write it in g/mL: 1040 kg/m³ is 1.04.'],
    [{ densityGPerMl: 22.59 }, [], undefined],
    [{ boilingC: 50, flashC: 200 }, ['flashC'], undefined],
    [{ boilingC: 178.8, flashC: 63, meltingC: -57, densityGPerMl: 1.04 }, [], undefined],
    [{ boilingC: 20, meltingC: 80 }, ['meltingC'], undefined],
    [{ meltingC: -300 }, ['meltingC'], undefined],
  ] as const)('where figures cannot be: %j', (figures, fields, cure) => {
    const { problems, warnings } = saidOf(l => Object.assign(l.materials.limonene, figures))
    expect(problems).toEqual([])
    expect(warnings.map(one => [one.code, one.where.at(-1)])).toEqual(fields.map(field => ['figures-plausible', field]))
    if (cure !== undefined) expect(warnings[0]!.cure).toBe(cure)
  })
})

describe('all problems at once', () => {
  it('from several records, the faulty ones not hiding the others nor dragging them along', () => {
    const { problems } = saidOf(l => {
      l.materials.ethanol.frm = 'liquid'
      l.materials.limonene.cas = '1-2-3'
      l.transformations.fizz.yieldPercent.typical = 120
    })
    expect(problems.map(p => [p.code, p.where[1]])).toEqual([
      ['schema-unknown-key', 'ethanol'],
      ['cas-digits', 'limonene'],
      ['yields-ordered', 'fizz'],
    ])
    expect(problems[0]!.cure).toContain('Did you mean "form"?')
  })
  it('proposes the id that was meant', () => {
    const { problems } = saidOf(l => (l.transformations.ester.charge[2].material = 'watter'))
    expect(problems[0]!.cure).toContain('Did you mean "water"?')
  })
  it('names the elements that are off', () => {
    const { problems } = saidOf(l => l.transformations.ester.products.pop())
    expect(problems[0]!.what).toBe('The equation does not balance (H: 10 on the left, 8 on the right; O: 3 on the left, 2 on the right).')
  })
})

describe('several files', () => {
  const half = (keep: 'materials' | 'transformations'): string => {
    const library = soundLibrary()
    return fileText({ ...library, [keep === 'materials' ? 'transformations' : 'materials']: {} })
  }
  const files = [
    { name: 'stuff.json', text: half('materials') },
    { name: 'steps.json', text: half('transformations') },
  ]
  it('are merged by id, in any order', () => {
    const one = loadLibrary(files)
    const other = loadLibrary([...files].reverse())
    if (!one.ok || !other.ok) throw new Error('refused')
    expect([...one.value.materials]).toEqual([...other.value.materials])
    expect([...one.value.transformations]).toEqual([...other.value.transformations])
  })
  it('may hold the same record twice', () => {
    expect(loadLibrary([...files, files[0]!]).ok).toBe(true)
  })
  it('may not hold two different ones under one id: both files are named', () => {
    const library = soundLibrary()
    library.materials.water.name = 'tap water'
    const loaded = loadLibrary([...files, { name: 'mine.json', text: fileText({ ...library, transformations: {} }) }])
    if (loaded.ok) throw new Error('taken')
    expect(loaded.problems).toHaveLength(1)
    expect(loaded.problems[0]!.code).toBe('id-repeated')
    expect(loaded.problems[0]!.where).toEqual(['mine.json', 'water'])
    expect(loaded.problems[0]!.what).toContain('stuff.json')
  })
  it('are refused where they are of another format', () => {
    const loaded = loadLibrary([{ name: 'shelf.json', text: '{"format":"waybench-shelf","version":1,"items":[]}' }])
    expect(loaded.ok ? [] : loaded.problems.map(p => [p.code, p.where.join('/')])).toEqual([
      ['schema-value', 'shelf.json/format'],
      ['schema-missing-key', 'shelf.json/title'],
      ['schema-missing-key', 'shelf.json/materials'],
      ['schema-missing-key', 'shelf.json/transformations'],
      ['schema-unknown-key', 'shelf.json/items'],
    ])
  })
})
