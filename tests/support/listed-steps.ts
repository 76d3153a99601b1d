/**
 * Records that name a substance under a stop row in every role it can have, for tests that no door lets such a plan through. Nothing here can
 * be done: the equations are arithmetic between placeholders of one formula, the charges are invented. Phosgene stands in the Chemical Weapons
 * Convention, Annex on Chemicals, Schedule 3A(1); norephedrine in the United Nations Convention of 1988, table I, "the salts of the substances".
 * Bottles are named so that only structures tell what is in them.
 */
const sources = [{ citation: 'invented for a test', checked: false }]
const compound = (id: string, formula: string, more: object = {}) => ({
  id,
  name: id.replaceAll('-', ' '),
  kind: 'compound',
  formula,
  form: 'solid',
  sources,
  ...more,
})
const step = (
  id: string,
  from: readonly string[],
  to: readonly string[],
  charged: readonly (readonly [string, string])[],
  more: object = {},
) => ({
  id,
  name: `arithmetic for ${id}`,
  kind: 'reaction',
  reactants: from.map(one => ({ compound: one, coefficient: 1 })),
  products: to.map(one => ({ compound: one, coefficient: 1 })),
  mainProduct: to[0],
  limiting: from[0],
  charge: charged.map(([material, role]) => ({ material, role, amount: 1, unit: 'g' })),
  yieldPercent: { low: 80, typical: 90, high: 95 },
  elapsedHours: 1,
  operations: [],
  equipment: [],
  atmosphere: 'air',
  needsHood: false,
  exotherm: 'none',
  gasEvolved: [],
  hazardNotes: [],
  confidence: 'memory',
  sources,
  ...more,
})

const listed = 'bottle-one'
const single = 'CCl2O'
const double = 'C2Cl4O2'
const conventions = {
  weapons: 'Chemical Weapons Convention, 1993, Annex on Chemicals',
  precursors: 'United Nations Convention against Illicit Traffic',
}

/** One case a role: the step that names the substance so, its ends, and a phrase of the full name of the list. */
export const listedRoles = [
  { role: 'start', from: listed, to: 'end-start', made: step('listed-start', [listed], ['end-start'], [[listed, 'substrate']]) },
  {
    role: 'reactant',
    from: 'stuff',
    to: 'end-reactant',
    made: step(
      'listed-reactant',
      ['stuff', listed],
      ['end-reactant'],
      [
        ['stuff', 'substrate'],
        [listed, 'reagent'],
      ],
    ),
  },
  {
    role: 'reagent',
    from: 'stuff',
    to: 'end-reagent',
    made: step(
      'listed-reagent',
      ['stuff'],
      ['end-reagent'],
      [
        ['stuff', 'substrate'],
        [listed, 'catalyst'],
      ],
    ),
  },
  {
    role: 'solvent',
    from: 'stuff',
    to: 'end-solvent',
    made: step(
      'listed-solvent',
      ['stuff'],
      ['end-solvent'],
      [
        ['stuff', 'substrate'],
        [listed, 'solvent'],
      ],
    ),
  },
  { role: 'target', from: 'stuff', to: listed, made: step('listed-target', ['stuff'], [listed], [['stuff', 'substrate']]) },
  {
    role: 'by-product',
    from: 'double-stuff',
    to: 'end-by-product',
    made: step('listed-by-product', ['double-stuff'], ['end-by-product', listed], [['double-stuff', 'substrate']]),
  },
  {
    role: 'gas',
    from: 'double-stuff',
    to: 'end-gas',
    made: step('listed-gas', ['double-stuff'], ['end-gas', listed], [['double-stuff', 'substrate']], {
      gasEvolved: [{ compound: listed, perMolLimiting: 1 }],
    }),
  },
  {
    role: 'part of a mixture',
    from: 'stuff',
    to: 'end-mixture',
    made: step(
      'listed-mixture',
      ['stuff'],
      ['end-mixture'],
      [
        ['stuff', 'substrate'],
        ['bottle-two', 'solvent'],
      ],
    ),
  },
  {
    role: 'salt',
    from: 'stuff',
    to: 'end-salt',
    made: step(
      'listed-salt',
      ['stuff'],
      ['end-salt'],
      [
        ['stuff', 'substrate'],
        ['bottle-three', 'base'],
      ],
    ),
  },
].map(one => ({ ...one, list: one.role === 'salt' ? conventions.precursors : conventions.weapons }))

/** The same with nothing listed: what goes through every door. */
export const harmless = {
  role: 'nothing listed',
  from: 'stuff',
  to: 'end-harmless',
  list: '',
  made: step(
    'harmless',
    ['stuff'],
    ['end-harmless'],
    [
      ['stuff', 'substrate'],
      ['tap', 'solvent'],
    ],
  ),
}

const all = [...listedRoles, harmless]
export const listedMaterials = [
  compound(listed, single, { smiles: 'O=C(Cl)Cl', form: 'gas' }),
  {
    id: 'bottle-two',
    name: 'bottle two',
    kind: 'mixture',
    form: 'solution',
    contains: { compound: listed, massFraction: 0.05, rest: 'tap' },
    sources,
  },
  compound('bottle-three', 'C9H14ClNO', { smiles: 'CC(N)C(O)c1ccccc1.Cl' }),
  compound('tap', 'H2O', { smiles: 'O', form: 'liquid', densityGPerMl: 1 }),
  compound('stuff', single),
  compound('double-stuff', double),
  ...all.filter(one => one.to !== listed).map(one => compound(one.to, one.role === 'reactant' ? double : single)),
]

export const listedLibrary = {
  format: 'waybench-library',
  version: 1,
  title: 'Listed substances',
  materials: listedMaterials,
  transformations: all.map(one => one.made),
}
