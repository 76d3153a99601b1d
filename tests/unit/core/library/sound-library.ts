/**
 * A small library that breaks no rule: lemon peel to a compound, one reaction with a solution, a second product and a gas, one polymer.
 * The chemistry is real in its atoms and invented in its figures. Each call gives a fresh copy, to be spoilt by a test.
 */
export function soundLibrary() {
  const sources = [{ citation: 'invented for the test', checked: false }]
  const materials: Record<string, Loose> = {
    water: {
      id: 'water',
      name: 'water',
      kind: 'compound',
      formula: 'H2O',
      smiles: 'O',
      cas: '7732-18-5',
      form: 'liquid',
      densityGPerMl: 0.997,
      sources,
    },
    ethanol: {
      id: 'ethanol',
      name: 'ethanol',
      kind: 'compound',
      formula: 'C2H6O',
      displayFormula: 'C2H5OH',
      smiles: 'CCO',
      cas: '64-17-5',
      form: 'liquid',
      densityGPerMl: 0.789,
      hazards: { codes: ['H225', 'H319'], signalWord: 'Danger', from: 'EU Annex VI' },
      reactivityGroups: [4],
      storageGroup: 'flammable',
      wasteStream: 'non-halogenated-organic',
      peroxideClass: 'B',
      sources,
    },
    'acetic-acid': {
      id: 'acetic-acid',
      name: 'acetic acid',
      kind: 'compound',
      formula: 'C2H4O2',
      smiles: 'CC(O)=O',
      form: 'liquid',
      densityGPerMl: 1.049,
      sources,
    },
    'acetic-acid-50pct': {
      id: 'acetic-acid-50pct',
      name: 'acetic acid, half and half',
      kind: 'mixture',
      form: 'solution',
      densityGPerMl: 1.06,
      contains: { compound: 'acetic-acid', massFraction: 0.5, rest: 'water' },
      sources,
    },
    'ethyl-acetate': {
      id: 'ethyl-acetate',
      name: 'ethyl acetate',
      kind: 'compound',
      formula: 'C4H8O2',
      smiles: 'CCOC(C)=O',
      form: 'liquid',
      densityGPerMl: 0.9,
      sources,
    },
    'sodium-bicarbonate': { id: 'sodium-bicarbonate', name: 'baking soda', kind: 'compound', formula: 'CHNaO3', form: 'solid', sources },
    'sodium-acetate': { id: 'sodium-acetate', name: 'sodium acetate', kind: 'compound', formula: 'C2H3NaO2', form: 'solid', sources },
    'carbon-dioxide': {
      id: 'carbon-dioxide',
      name: 'carbon dioxide',
      kind: 'compound',
      formula: 'CO2',
      smiles: 'O=C=O',
      form: 'gas',
      sources,
    },
    'lemon-peel': { id: 'lemon-peel', name: 'lemon peel', kind: 'feedstock', form: 'solid', sources },
    limonene: {
      id: 'limonene',
      name: 'limonene',
      kind: 'compound',
      formula: 'C10H16',
      smiles: 'CC1=CCC(CC1)C(C)=C',
      form: 'liquid',
      sources,
    },
    polystyrene: {
      id: 'polystyrene',
      name: 'polystyrene',
      kind: 'polymer',
      formula: 'C8H8',
      smiles: '*CC(*)c1ccccc1',
      form: 'solid',
      sources,
    },
  }
  const common = {
    tasks: [
      { do: 'set up', kind: 'hands', hours: 0.5, waitUpToH: 1 },
      { do: 'warm', kind: 'watch', hours: 1, waitUpToH: 18 },
    ],
    elapsedHours: 1.5,
    handsOnHours: 0.5,
    holdPoint: 'overnight',
    temperatureC: [20, 60],
    operations: ['set up', 'warm'],
    equipment: ['flask'],
    gasEvolved: [],
    exotherm: 'none',
    atmosphere: 'air',
    needsHood: false,
    hazardNotes: [],
    sources,
    confidence: 'memory',
  }
  const transformations: Record<string, Loose> = {
    ester: {
      ...structuredClone(common),
      id: 'ester',
      name: 'ethyl acetate',
      kind: 'reaction',
      reactants: [
        { compound: 'ethanol', coefficient: 1 },
        { compound: 'acetic-acid', coefficient: 1 },
      ],
      products: [
        { compound: 'ethyl-acetate', coefficient: 1 },
        { compound: 'water', coefficient: 1 },
      ],
      mainProduct: 'ethyl-acetate',
      limiting: 'ethanol',
      charge: [
        { material: 'ethanol', role: 'substrate', amount: 46, unit: 'g' },
        { material: 'acetic-acid-50pct', role: 'reagent', amount: 250, unit: 'mL' },
        { material: 'water', role: 'wash', amount: null, unit: 'mL' },
        { material: 'ethanol', role: 'recrystallisation', amount: null, perGramProduct: 2, unit: 'mL' },
      ],
      yieldPercent: { low: 50, typical: 65, high: 80 },
      reports: [{ percent: 60, source: sources[0] }],
      smallestProvenG: 1,
      largestProvenG: 100,
      intendedMeetings: [{ materials: ['ethanol', 'acetic-acid'], condition: 'warmed together' }],
    },
    fizz: {
      ...structuredClone(common),
      id: 'fizz',
      name: 'sodium acetate',
      kind: 'reaction',
      reactants: [
        { compound: 'sodium-bicarbonate', coefficient: 1 },
        { compound: 'acetic-acid', coefficient: 1 },
      ],
      products: [
        { compound: 'sodium-acetate', coefficient: 1 },
        { compound: 'carbon-dioxide', coefficient: 1 },
        { compound: 'water', coefficient: 1 },
      ],
      mainProduct: 'sodium-acetate',
      limiting: 'sodium-bicarbonate',
      charge: [
        { material: 'sodium-bicarbonate', role: 'substrate', amount: 84, unit: 'g' },
        { material: 'acetic-acid', role: 'acid', amount: 1, unit: 'mol' },
      ],
      yieldPercent: { low: 80, typical: 90, high: 95 },
      coProducts: [{ compound: 'water', yieldPercent: { low: 80, typical: 90, high: 95 } }],
      gasEvolved: [{ compound: 'carbon-dioxide', perMolLimiting: 1 }],
    },
    peel: {
      ...structuredClone(common),
      id: 'peel',
      name: 'limonene from peel',
      kind: 'isolation',
      reactants: [{ compound: 'lemon-peel', coefficient: 1 }],
      products: [{ compound: 'limonene', coefficient: 1 }],
      mainProduct: 'limonene',
      limiting: 'lemon-peel',
      charge: [{ material: 'lemon-peel', role: 'substrate', amount: 100, unit: 'g' }],
      yieldPercent: { low: 0.5, typical: 1, high: 2 },
    },
  }
  return { materials, transformations }
}

/** A record that a test may spoil in any way. */
// biome-ignore lint/suspicious/noExplicitAny: the point is to write what the schema forbids
type Loose = any
export type SoundLibrary = ReturnType<typeof soundLibrary>

/** The library as the text of one file. */
export const fileText = ({ materials, transformations }: SoundLibrary): string =>
  JSON.stringify({
    format: 'waybench-library',
    version: 1,
    title: 'test',
    materials: Object.values(materials),
    transformations: Object.values(transformations),
  })
