import { describe, expect, it } from 'vitest'
import { regulatedAmong, stopsAmong } from '../../../../core/hazards/regulated.ts'
import type { RegulatedEntry } from '../../../../core/hazards/tables.ts'
import type { Material } from '../../../../core/library/material.ts'
import type { MaterialUse } from '../../../../core/route/materials.ts'
import { bundledTables, materialWith, traitsWith } from '../../../support/hazards.ts'

const tables = bundledTables()
const entries = tables.regulated.entries
const uses: readonly MaterialUse[] = ['start', 'charged', 'made', 'product', 'by-product', 'gas']

/** Rows that a material meets, in whatever role and region. */
const rowsOf = (material: Material, rest: readonly Material[] = []) => traitsWith([material, ...rest]).get(material.id)!.regulated
const meets = (material: Material, entry: RegulatedEntry, rest: readonly Material[] = []) =>
  rowsOf(material, rest).some(
    match => match.category === entry.category && match.legal === entry.legal && match.reason.includes(entry.name),
  )

/** One row for each thing that is compared: the row and a label for the report. */
const withKey = (key: 'cas' | 'smiles') =>
  entries.filter(entry => entry[key] !== undefined).map(entry => [`${entry.list}: ${entry.name}`, entry] as const)

describe('each listed substance is found by every identity that its row holds', () => {
  it('has rows to test', () => {
    expect(entries.length).toBeGreaterThanOrEqual(233)
    expect(withKey('cas').length).toBeGreaterThan(200)
    expect(withKey('smiles').length).toBeGreaterThan(150)
  })
  const materials = entries.map((entry, index) => ({
    entry,
    byCas: entry.cas === undefined ? null : materialWith({ id: `cas-${index}`, name: 'no name', cas: entry.cas }),
    bySmiles: entry.smiles === undefined ? null : materialWith({ id: `smiles-${index}`, name: 'no name', smiles: entry.smiles }),
    byName: [entry.name, ...(entry.synonyms ?? [])].map((name, at) => materialWith({ id: `name-${index}-${at}`, name })),
    byShoutedName: materialWith({ id: `shout-${index}`, name: 'no name', synonyms: [entry.name.toUpperCase().replaceAll('-', ' ')] }),
  }))
  const all = materials
    .flatMap(({ byCas, bySmiles, byName, byShoutedName }) => [byCas, bySmiles, ...byName, byShoutedName])
    .filter(one => one !== null)
  const traits = traitsWith(all)
  const finds = (material: Material, entry: RegulatedEntry) =>
    traits
      .get(material.id)!
      .regulated.some(match => match.category === entry.category && match.legal === entry.legal && match.reason.startsWith(entry.name))
  it('by CAS number', () => {
    for (const { entry, byCas } of materials) if (byCas) expect(finds(byCas, entry), `${entry.list}: ${entry.name}`).toBe(true)
  })
  it('by name and every synonym, whatever the case and the hyphens', () => {
    for (const { entry, byName, byShoutedName } of materials) {
      for (const material of [...byName, byShoutedName]) expect(finds(material, entry), `${entry.list}: ${material.name}`).toBe(true)
    }
  })
  it('by structure', () => {
    for (const { entry, bySmiles } of materials) if (bySmiles) expect(finds(bySmiles, entry), `${entry.list}: ${entry.name}`).toBe(true)
  })
})

/** Amines and acids of the lists, with a salt of each as a supplier sells it. */
const salts: readonly [name: string, smiles: string][] = [
  ['ephedrine', 'C[NH2+]C(C)C(O)c1ccccc1.[Cl-]'],
  ['ephedrine', 'CNC(C)C(O)c1ccccc1.Cl'],
  ['pseudoephedrine', 'C[NH2+][C@@H](C)[C@@H](O)c1ccccc1.C[NH2+][C@@H](C)[C@@H](O)c1ccccc1.[O-]S([O-])(=O)=O'],
  ['norephedrine', 'CC(N)C(O)c1ccccc1.OC(=O)C(O)C(O)C(O)=O'],
  ['phenylacetic acid', '[Na+].[O-]C(=O)Cc1ccccc1'],
  ['phenylacetic acid', '[O-]C(=O)Cc1ccccc1.[K+].O'],
  ['piperidine', 'C1CC[NH2+]CC1.[Cl-]'],
  ['methylamine and its salts', 'C[NH3+].[Cl-]'],
]
describe('salts', () => {
  it.each(salts)('of %s are found where the row covers them: %s', (name, smiles) => {
    const entry = entries.find(one => one.name === name && one.covers?.includes('salts'))!
    expect(meets(materialWith({ id: 'salt', smiles }), entry)).toBe(true)
  })
  it('are found for every amine whose row covers salts, as hydrochloride, whatever else the row says', () => {
    const amines = entries.filter(
      entry =>
        entry.covers?.includes('salts') &&
        entry.smiles &&
        !entry.smiles.includes('.') &&
        /N/.test(entry.smiles) &&
        !/N#C|C#N|C\(N\)=O|NC\(C\)=O/.test(entry.smiles),
    )
    expect(amines.length).toBeGreaterThan(30)
    const salted = amines.map((entry, index) => materialWith({ id: `salt-${index}`, name: 'no name', smiles: `${entry.smiles}.Cl` }))
    const found = traitsWith(salted)
    for (const [index, entry] of amines.entries()) {
      const rows = found.get(`salt-${index}`)!.regulated.filter(match => match.category === entry.category && match.legal === entry.legal)
      expect(
        rows.some(match => match.reason.includes(entry.name)),
        `${entry.list}: ${entry.name}`,
      ).toBe(true)
    }
  })
  it('are covered exactly where the saltsRule of a row says so', () => {
    for (const entry of entries) {
      const excluded = ['7647-01-0', '7664-93-9'].includes(entry.cas ?? '') && entry.saltsRule?.includes('except the salts of hydrochloric')
      expect(entry.covers?.includes('salts') ?? false, entry.name).toBe(entry.saltsRule !== undefined && !excluded)
    }
  })
  it.each([
    ['sodium chloride is no hydrochloric acid', '[Na+].[Cl-]'],
    ['sodium sulfate is no sulfuric acid', '[Na+].[Na+].[O-]S([O-])(=O)=O'],
    ['sodium cyanide is no hydrogen cyanide by structure', '[Na+].[C-]#N'],
    ['potassium iodide is no hydriodic acid', '[K+].[I-]'],
    ['sodium acetate is no acetic anhydride', '[Na+].CC([O-])=O'],
  ])('%s', (_, smiles) => {
    expect(rowsOf(materialWith({ id: 'salt', smiles }))).toEqual([])
  })
  it('solvates come off always', () => {
    const entry = entries.find(one => one.name === 'piperonal')!
    expect(meets(materialWith({ id: 'solvate', smiles: 'O=Cc1ccc2OCOc2c1.O' }), entry)).toBe(true)
  })
})

describe('hands and isotopes do not hide a listed substance', () => {
  it.each([
    'CN[C@@H](C)[C@H](O)c1ccccc1',
    'CN[C@H](C)[C@H](O)c1ccccc1',
    'C/C=C/c1ccc2OCOc2c1',
    'C\\C=C/c1ccc2OCOc2c1',
    'CC(=O)[13CH2]c1ccccc1',
  ])('%s', smiles => {
    expect(stopsAmong(traitsWith([materialWith({ id: 'one', smiles })]), ['one']).length).toBeGreaterThan(0)
  })
})

describe('esters, where the list names them', () => {
  it('finds ethyl phenylacetate beside phenylacetic acid in the United States only', () => {
    const traits = traitsWith([materialWith({ id: 'ester', smiles: 'CCOC(=O)Cc1ccccc1' })])
    const hits = (region: 'UN' | 'US') =>
      regulatedAmong(traits, [{ material: 'ester', as: ['charged'] }], { region, buyer: 'professional' })
    expect(hits('US').map(hit => hit.action)).toEqual(['licence'])
    expect(hits('UN')).toEqual([])
  })
  it.each(['CCOC(=O)C(O)c1ccccc1', 'COC(=O)Cc1ccc(C)cc1', 'CC(=O)OCc1ccccc1'])('not %s', smiles => {
    expect(rowsOf(materialWith({ id: 'one', smiles }))).toEqual([])
  })
})

// Families by the words of the Annex on Chemicals. The structures are made up to fit the words, or are exempt in the Annex itself.
describe('structural families', () => {
  const actions = (smiles: string, cas?: string) =>
    rowsOf(materialWith({ id: 'one', smiles, ...(cas && { cas }) })).map(match => match.action)
  it.each([
    ['a phosphorus-fluorine bond', 'CCCCCCCCP(=O)(F)OCCCCC'],
    ['the same, written with separate charges', 'CCCCCCCC[P+]([O-])(F)OCCCCC'],
    ['a phosphorus-cyanide bond', 'CCOP(=O)(OCC)C#N'],
    ['a dialkylaminoethyl thiophosphate', 'COP(=O)(OC)SCCN1CCCCC1'],
    ['an alkyl phosphonite of an amino alcohol', 'CCP(OCCCCC)OCCN1CCCCC1'],
    ['a chlorovinyl arsine', 'ClC=C[As](c1ccccc1)c1ccccc1'],
    ['a 1-chloroalkyl 2-chloroethyl sulfide', 'CCC(Cl)SCCCl'],
    ['a quinuclidinyl benzilate, as a salt', 'O=C(OC1C[NH+]2CCC1CC2)C(O)(c1ccccc1)c1ccccc1.[Cl-]'],
    ['an alkyl phosphonochloridate, written with separate charges', 'CC[P+]([O-])(Cl)OCCCC'],
    ['a 2-haloethyl amine, free', 'CCN(CC)CCCl'],
    ['a 2-haloethyl amine, as a salt', 'CC[NH+](CC)CCCl.[Cl-]'],
    ['a 2-haloethyl sulfide', 'CCCCSCCCl'],
    ['an alkyl phosphonyl dichloride', 'CCP(=O)(Cl)Cl'],
    ['a 4-anilinopiperidine', 'CN1CCC(CC1)Nc1ccccc1'],
    ['an ergoline', 'CN1CC(C=C2C1Cc1c[nH]c3cccc2c13)C(=O)OC'],
    ['a methylenedioxyphenyl with three carbons', 'CCCc1ccc2OCOc2c1'],
  ])('%s ends planning', (_, smiles) => {
    expect(actions(smiles)).toContain('stop')
  })
  it('an alkyl phosphonate needs a licence, and fonofos is exempt by its CAS number', () => {
    expect(actions('CCOP(C)(=O)OCC')).toEqual(['licence'])
    expect(actions('CCOP(CC)(=S)Sc1ccccc1', '944-22-9')).toEqual([])
  })
  it.each([
    ['a dialkyl phosphoramidic dihalide', 'CN(C)P(=O)(Cl)Cl'],
    ['a dialkyl dialkylphosphoramidate', 'CN(C)P(=O)(OCC)OCC'],
    ['a dialkylaminoethanethiol, as a salt', 'C[NH+](C)CCS.[Cl-]'],
  ])('%s needs a licence', (_, smiles) => {
    expect(actions(smiles)).toEqual(['licence'])
  })
  it('dialkylaminoethanols need one, and the two that the Annex exempts do not, free or as salts', () => {
    expect(actions('CC(C)N(CCO)C(C)C')).toEqual(['licence'])
    expect(actions('CN(C)CCO')).toEqual([])
    expect(actions('CCN(CC)CCO')).toEqual([])
  })
})

// Close relatives that stand on no list here, ten of them kept apart from a listed one by a single group.
describe('harmless neighbours are not flagged', () => {
  it.each([
    ['vanillin, beside piperonal', 'O=Cc1ccc(O)c(OC)c1'],
    ['veratraldehyde, beside piperonal', 'O=Cc1ccc(OC)c(OC)c1'],
    ['eugenol, beside safrole', 'C=CCc1ccc(O)c(OC)c1'],
    ['isoeugenol, beside isosafrole', 'CC=Cc1ccc(O)c(OC)c1'],
    ['anethole, beside isosafrole', 'CC=Cc1ccc(OC)cc1'],
    ['acetophenone, beside phenylacetone', 'CC(=O)c1ccccc1'],
    ['4-phenyl-2-butanone, beside phenylacetone', 'CC(=O)CCc1ccccc1'],
    ['hydrocinnamic acid, beside phenylacetic acid', 'OC(=O)CCc1ccccc1'],
    ['mandelic acid, beside benzilic acid', 'OC(C(=O)O)c1ccccc1'],
    ['benzoin, beside benzilic acid', 'OC(C(=O)c1ccccc1)c1ccccc1'],
    ['morpholine, beside piperidine', 'C1COCCN1'],
    ['pyrrolidine, beside piperidine', 'C1CCNC1'],
    ['cyclohexanone, beside 4-piperidone', 'O=C1CCCCC1'],
    ['triphenylphosphine oxide, beside the phosphonates', 'O=P(c1ccccc1)(c1ccccc1)c1ccccc1'],
    ['triethyl phosphate, beside the phosphonates', 'CCOP(=O)(OCC)OCC'],
    ['2-chloroethanol, beside the mustards', 'OCCCl'],
    ['ethanolamine, beside the dialkylaminoethanols', 'NCCO'],
    ['choline chloride, beside the dialkylaminoethanols', 'C[N+](C)(C)CCO.[Cl-]'],
    ['N-(2-chloroethyl)acetamide, beside the nitrogen mustards', 'CC(=O)NCCCl'],
    ['limonene nitrosochloride, beside the nitrogen mustards', 'CC(=C)C1CCC(C)(Cl)C(N=O)C1'],
    ['potassium hexafluorophosphate, beside the phosphonofluoridates', '[K+].F[P-](F)(F)(F)(F)F'],
    ['methionine, beside the sulfides', 'CSCCC(N)C(=O)O'],
  ])('%s', (_, smiles) => {
    expect(rowsOf(materialWith({ id: 'neighbour', smiles }))).toEqual([])
  })
  it('nor is a colleague that shares an abbreviation with a listed one, once its structure is known', () => {
    const aminophenol = materialWith({ id: '4-aminophenol', synonyms: ['4-AP'], smiles: 'Nc1ccc(O)cc1' })
    expect(rowsOf(aminophenol).filter(match => match.action === 'stop')).toEqual([])
    expect(rowsOf(materialWith({ id: 'bottle', synonyms: ['NPP'] })).some(match => match.action === 'stop')).toBe(true)
  })
})

describe('a stop row', () => {
  const safrole = materialWith({ id: 'safrole', smiles: 'C=CCc1ccc2OCOc2c1', form: 'liquid' })
  const ethanol = materialWith({ id: 'ethanol', smiles: 'CCO', form: 'liquid' })
  const doors: readonly [string, Material, readonly Material[]][] = [
    ['free', safrole, []],
    [
      'in a mixture that contains it',
      materialWith({ id: 'oil', kind: 'mixture', form: 'solution', contains: { compound: 'safrole', massFraction: 0.01 } }),
      [safrole],
    ],
    [
      'as what a mixture is made up with',
      materialWith({ id: 'dye', kind: 'mixture', form: 'solution', contains: { compound: 'ethanol', molPerL: 0.1, rest: 'safrole' } }),
      [safrole, ethanol],
    ],
    ['as one part of a structure among others', materialWith({ id: 'blend', smiles: 'CCO.C=CCc1ccc2OCOc2c1' }), []],
    ['as a feedstock by its name', materialWith({ id: 'sassafras-oil', kind: 'feedstock', form: 'liquid' }), []],
    ['as a mixture by its own CAS number', materialWith({ id: 'unclear', kind: 'mixture', form: 'solution', cas: '94-59-7' }), []],
  ]
  it.each(doors)('ends planning %s', (_, material, rest) => {
    const hits = stopsAmong(traitsWith([material, ...rest]), [material.id])
    expect(hits.length).toBeGreaterThan(0)
    expect(hits[0]).toMatchObject({ action: 'stop', material: material.id })
  })
  it.each(uses)('ends it in the role %s, in every region and for every buyer', use => {
    const traits = traitsWith([safrole])
    expect(stopsAmong(traits, [{ material: 'safrole', as: [use] }]).length).toBeGreaterThan(0)
    for (const region of ['UN', 'EU', 'UK', 'US'] as const) {
      for (const buyer of ['public', 'professional'] as const)
        expect(regulatedAmong(traits, [{ material: 'safrole', as: [use] }], { region, buyer })[0]?.action).toBe('stop')
    }
  })
  it('names the list in full and the reason', () => {
    const [hit] = stopsAmong(traitsWith([safrole]), ['safrole'])
    expect(hit?.list).toBe('United Nations Convention against Illicit Traffic in Narcotic Drugs and Psychotropic Substances, 1988')
    expect(hit?.reason).toMatch(/safrole is listed/)
  })
  it('lets nothing pass that was never screened', () => {
    expect(() => stopsAmong(new Map(), ['safrole'])).toThrow(RangeError)
  })
})

// Limits of Regulation (EU) 2019/1148, Annex I: nitric acid 3 % (licence to 10 %), hydrogen peroxide 12 % (to 35 %), ammonium nitrate 16 %
// nitrogen (no licence for the public).
describe('strength limits of solutions', () => {
  const nitric = materialWith({ id: 'nitric-acid', cas: '7697-37-2', form: 'liquid' })
  const acid = (massFraction: number) =>
    materialWith({ id: 'bottle', kind: 'mixture', form: 'solution', contains: { compound: 'nitric-acid', massFraction } })
  const hit = (
    material: Material,
    rest: readonly Material[],
    buyer: 'public' | 'professional',
    region: 'EU' | 'UK' | 'UN' = 'EU',
    molarMass = {},
  ) => regulatedAmong(traitsWith([material, ...rest], molarMass), [{ material: material.id, as: ['charged'] }], { region, buyer })
  it.each([
    [0.03, 'note', false],
    [0.031, 'licence', false],
    [0.1, 'licence', false],
    [0.11, 'licence', true],
    [0.68, 'licence', true],
  ] as const)('nitric acid at mass fraction %f: %s, barred for the public: %s', (massFraction, action, barred) => {
    expect(hit(acid(massFraction), [nitric], 'public')[0]).toMatchObject({ action, barred })
    expect(hit(acid(massFraction), [nitric], 'professional')[0]).toMatchObject({ action, barred: false })
  })
  it('reckons mol/L to a mass fraction: 0.4 mol/L is below 3 %, 0.6 mol/L above', () => {
    const molar = (molPerL: number) =>
      materialWith({ id: 'bottle', kind: 'mixture', form: 'solution', densityGPerMl: 1.02, contains: { compound: 'nitric-acid', molPerL } })
    // 0.4 x 63.01 / 1020 = 2.5 %; 0.6 x 63.01 / 1020 = 3.7 %
    expect(hit(molar(0.4), [nitric], 'public', 'EU', { 'nitric-acid': 63.012 })[0]?.action).toBe('note')
    expect(hit(molar(0.6), [nitric], 'public', 'EU', { 'nitric-acid': 63.012 })[0]?.action).toBe('licence')
  })
  it('takes a strength that is not known for too strong', () => {
    expect(hit(materialWith({ id: 'bottle', kind: 'mixture', form: 'solution', cas: '7697-37-2' }), [], 'public')[0]).toMatchObject({
      action: 'licence',
      barred: true,
    })
  })
  it('counts ammonium nitrate by its nitrogen: not for the public of the EU, with a licence in the UK', () => {
    const salt = materialWith({ id: 'ammonium-nitrate', cas: '6484-52-2' })
    expect(hit(salt, [], 'public')[0]).toMatchObject({ action: 'licence', barred: true })
    expect(hit(salt, [], 'public', 'UK')[0]).toMatchObject({ action: 'licence', barred: false })
    expect(hit(salt, [], 'public', 'UN')).toEqual([])
    // 45 % of the salt is 15.75 % nitrogen of ammonium nitrate.
    const blend = (massFraction: number) =>
      materialWith({ id: 'blend', kind: 'mixture', form: 'solid', contains: { compound: 'ammonium-nitrate', massFraction } })
    expect(hit(blend(0.45), [salt], 'public')[0]?.action).toBe('note')
    expect(hit(blend(0.46), [salt], 'public')[0]?.action).toBe('licence')
  })
})

describe('what a step only gives off', () => {
  const chloride = materialWith({ id: 'hydrogen-chloride', cas: '7647-01-0', form: 'gas' })
  const hits = (as: readonly MaterialUse[]) =>
    regulatedAmong(traitsWith([chloride]), [{ material: 'hydrogen-chloride', as }], { region: 'UN', buyer: 'public' })
  it('is no purchase: rows about trade do not concern it', () => {
    expect(hits(['gas'])).toEqual([])
    expect(hits(['by-product'])).toEqual([])
    expect(hits(['by-product', 'charged']).map(hit => hit.action)).toEqual(['reporting'])
  })
  it('is still the matter of a treaty about making it', () => {
    const thionyl = materialWith({ id: 'thionyl-chloride', cas: '7719-09-7', form: 'liquid' })
    const found = regulatedAmong(traitsWith([thionyl]), [{ material: 'thionyl-chloride', as: ['by-product'] }], {
      region: 'UN',
      buyer: 'professional',
    })
    expect(found.map(hit => hit.action)).toEqual(['licence'])
  })
})

describe('without a toolkit', () => {
  it('finds by CAS number and name, and says that a structure alone was not screened', async () => {
    const { traitsOf } = await import('../../../../core/hazards/traits.ts')
    const { libraryWith } = await import('../../../support/hazards.ts')
    const named = materialWith({ id: 'a', name: 'safrole' })
    const drawn = materialWith({ id: 'b', smiles: 'C=CCc1ccc2OCOc2c1' })
    const traits = traitsOf(libraryWith([named, drawn]), tables, null)
    expect(traits.get('a')?.regulated[0]?.action).toBe('stop')
    expect(traits.get('b')).toMatchObject({ screened: false, regulated: [] })
  })
})
