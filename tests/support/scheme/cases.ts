import type { Drawing } from '../../../core/chemistry/drawing.ts'
import { depictionOf } from '../../../server/depict/depiction-of.ts'
import { braceText, formulaRuns } from '../../../web/map/scheme/runs.ts'
import type { Cell, Item, SchemeIn, Step, Sure, Way } from '../../../web/map/scheme/types.ts'

/**
 * Ten plans to try the scheme on: real chemistry of the bundled library, told in few words. Amounts, times and yields here are only text
 * for the layout; nothing is reckoned from them.
 */
export interface SchemeCase {
  readonly name: string
  readonly drawings: Readonly<Record<string, Drawing>>
  at(pane: number): SchemeIn
}

interface Compound {
  readonly name: string
  readonly smiles?: string
  readonly formula?: string
  readonly words?: true
}

const compounds: Readonly<Record<string, Compound>> = {
  benzoin: { name: 'benzoin', smiles: 'OC(C(=O)c1ccccc1)c1ccccc1', formula: 'C14H12O2' },
  benzil: { name: 'benzil', smiles: 'O=C(C(=O)c1ccccc1)c1ccccc1', formula: 'C14H10O2' },
  benzaldehyde: { name: 'benzaldehyde', smiles: 'O=Cc1ccccc1', formula: 'C7H6O' },
  lophine: { name: 'lophine', smiles: 'c1ccc(cc1)-c1nc(-c2ccccc2)c(-c2ccccc2)[nH]1', formula: 'C21H16N2' },
  diamine: { name: 'o-phenylene\u00addiamine', smiles: 'Nc1ccccc1N', formula: 'C6H8N2' },
  quinoxaline: { name: '2,3-diphenyl\u00adquinoxaline', smiles: 'c1ccc(cc1)-c1nc2ccccc2nc1-c1ccccc1', formula: 'C20H14N2' },
  acetone: { name: '1,3-diphenyl\u00adacetone', smiles: 'O=C(Cc1ccccc1)Cc1ccccc1', formula: 'C15H14O' },
  dienone: {
    name: 'tetraphenyl\u00adcyclo\u00adpentadienone',
    smiles: 'O=C1C(c2ccccc2)=C(c2ccccc2)C(c2ccccc2)=C1c1ccccc1',
    formula: 'C29H20O',
  },
  acetylene: { name: 'diphenyl\u00adacetylene', smiles: 'C(#Cc1ccccc1)c1ccccc1', formula: 'C14H10' },
  dihydrazone: { name: 'benzil di\u00adhydrazone', smiles: 'NN=C(C(=NN)c1ccccc1)c1ccccc1', formula: 'C14H14N4' },
  hexaphenylbenzene: {
    name: 'hexaphenyl\u00adbenzene',
    smiles: 'c1ccc(cc1)-c1c(-c2ccccc2)c(-c2ccccc2)c(-c2ccccc2)c(-c2ccccc2)c1-c1ccccc1',
    formula: 'C42H30',
  },
  castor: { name: 'castor oil', formula: 'C57H104O9' },
  sebacic: { name: 'sebacic acid', smiles: 'OC(=O)CCCCCCCCC(=O)O', formula: 'C10H18O4' },
  octanol: { name: '2-octanol', smiles: 'CCCCCCC(C)O', formula: 'C8H18O' },
  sebacoyl: { name: 'sebacoyl chloride', smiles: 'ClC(=O)CCCCCCCCC(=O)Cl', formula: 'C10H16Cl2O2' },
  hexanediamine: { name: 'hexamethylene\u00addiamine', smiles: 'NCCCCCCN', formula: 'C6H16N2' },
  nylon: { name: 'nylon-6,10', smiles: '*NCCCCCCNC(=O)CCCCCCCCC(*)=O', formula: 'C16H30N2O2' },
  aniline: { name: 'aniline', smiles: 'Nc1ccccc1', formula: 'C6H7N' },
  acetanilide: { name: 'acetanilide', smiles: 'CC(=O)Nc1ccccc1', formula: 'C8H9NO' },
  nitroacetanilide: { name: 'p-nitro\u00adacetanilide', smiles: 'CC(=O)Nc1ccc(cc1)[N+](=O)[O-]', formula: 'C8H8N2O3' },
  nitroaniline: { name: 'p-nitroaniline', smiles: 'Nc1ccc(cc1)[N+](=O)[O-]', formula: 'C6H6N2O2' },
  naphthol: { name: '2-naphthol', smiles: 'Oc1ccc2ccccc2c1', formula: 'C10H8O' },
  paraRed: { name: 'para red', smiles: 'Oc1ccc2ccccc2c1/N=N/c1ccc(cc1)[N+](=O)[O-]', formula: 'C16H11N3O3' },
  copper: { name: 'copper', formula: 'Cu' },
  sulfate: { name: 'copper sulfate penta\u00adhydrate', formula: 'CuSO4·5H2O' },
  nitrate: { name: 'copper nitrate', formula: 'Cu(NO3)2·3H2O' },
  hydroxide: { name: 'copper(II) hydroxide', formula: 'Cu(OH)2' },
  oxide: { name: 'copper oxide', formula: 'CuO' },
  acetate: { name: 'copper acetate', formula: 'Cu(OAc)2' },
  ammine: { name: 'tetraammine\u00adcopper sulfate', formula: '[Cu(NH3)4]SO4·H2O' },
  bark: { name: 'cinnamon bark', words: true },
  cinnamaldehyde: { name: 'cinnam\u00adaldehyde', smiles: 'O=C/C=C/c1ccccc1', formula: 'C9H8O' },
  cinnamyl: { name: 'cinnamyl alcohol', smiles: 'OC/C=C/c1ccccc1', formula: 'C9H10O' },
  limonene: { name: 'limonene', smiles: 'CC(=C)[C@@H]1CCC(C)=CC1', formula: 'C10H16' },
  nitroso: { name: 'limonene nitroso\u00adchloride', smiles: 'CC(=C)C1CCC(C)(Cl)C(N=O)C1', formula: 'C10H16ClNO' },
  carvoxime: { name: 'carvoxime', smiles: 'CC(=C)C1CC=C(C)C(=NO)C1', formula: 'C10H15NO' },
  carvone: { name: 'carvone', smiles: 'CC(=C)[C@@H]1CC=C(C)C(=O)C1', formula: 'C10H14O' },
  galactose: { name: 'D-galactose', smiles: 'OC[C@H]1OC(O)[C@H](O)[C@@H](O)[C@H]1O', formula: 'C6H12O6' },
  mucic: { name: 'mucic acid', smiles: 'O[C@@H]([C@@H](O)[C@H](O)C(O)=O)[C@@H](O)C(O)=O', formula: 'C6H10O8' },
  pyrrole: { name: 'pyrrole', smiles: 'c1cc[nH]c1', formula: 'C4H5N' },
  porphyrin: {
    name: 'tetraphenyl\u00adporphyrin',
    smiles: 'c1ccc(cc1)-c1c2ccc(n2)c(-c2ccccc2)c2ccc([nH]2)c(-c2ccccc2)c2ccc(n2)c(-c2ccccc2)c2ccc1[nH]2',
    formula: 'C44H30N4',
  },
}

const items = (text: string): Item[] => (text === '' ? [] : text.split('; ').map(part => braceText(part)))
const remembered: Item = [{ t: 'remembered', i: true }]

interface WayText {
  readonly over: string
  readonly brief?: string
  readonly under: string
  readonly sure?: Sure
}

const wayOf = (id: string, { over, brief, under, sure = 'seen' }: WayText): Way => ({
  id,
  over: items(over),
  ...(brief ? { brief: items(brief) } : {}),
  under: [...items(under), ...(sure === 'remembered' ? [remembered] : [])],
  sure,
})

interface StepText extends WayText {
  readonly no: string
  readonly from: string
  readonly to: string
  readonly co?: readonly string[]
  readonly made?: readonly string[]
  readonly leaves?: readonly ({ readonly text: string } | { readonly cell: string })[]
  readonly alts?: readonly WayText[]
  readonly grey?: true
}

const stepOf = (text: StepText): Step => ({
  ...wayOf(`${text.from}-${text.to}`, text),
  no: text.no,
  from: text.from,
  to: text.to,
  co: text.co ?? [],
  made: text.made ?? [],
  leaves: (text.leaves ?? []).map(leaver => ('cell' in leaver ? leaver : { text: braceText(leaver.text) })),
  alts: (text.alts ?? []).map((alt, i) => wayOf(`${text.from}-${text.to}-${i}`, alt)),
  ...(text.grey ? { grey: true } : {}),
})

/** `id`: role, amount, and what else the cell says. */
type CellText = Partial<Pick<Cell, 'role' | 'pick' | 'grey'>> & { readonly amount?: string; readonly note?: string }

const legend: readonly Item[] = [
  [{ t: 'Ink: chosen. Grey: not chosen.' }],
  [{ t: 'Solid: seen in a source. Dashed: remembered.' }],
  [{ t: 'Blue: yours to change.', pen: true }],
]

function caseOf(name: string, start: string, cellTexts: Readonly<Record<string, CellText>>, stepTexts: readonly StepText[]): SchemeCase {
  const cells: Record<string, Cell> = {}
  const drawings: Record<string, Drawing> = {}
  for (const [id, text] of Object.entries(cellTexts)) {
    const compound = compounds[id]!
    const shown = depictionOf({
      kind: compound.words ? 'feedstock' : compound.smiles?.includes('*') ? 'polymer' : 'compound',
      formula: compound.formula,
      displayFormula: compound.smiles ? undefined : compound.formula,
      smiles: compound.smiles,
    })
    if (shown.kind === 'structure') drawings[id] = shown.drawing
    const role = text.role ?? (id === start ? 'start' : 'mid')
    cells[id] = {
      id,
      kind: shown.kind,
      name: compound.name,
      role,
      ...(shown.kind === 'structure' ? { shape: shown.drawing } : {}),
      ...(shown.kind === 'formula' ? { formula: formulaRuns(shown.formula) } : {}),
      ...(text.amount ? { amount: braceText(text.amount, role === 'start' ? { pen: true } : {}) } : {}),
      ...(text.note ? { note: braceText(text.note) } : {}),
      ...(text.pick ? { pick: text.pick } : {}),
      ...(text.grey ? { grey: true } : {}),
    }
  }
  const steps = stepTexts.map(stepOf)
  return {
    name,
    drawings,
    at: pane => ({
      pane,
      form: pane < 400 ? 'upright' : 'wide',
      start,
      cells,
      steps,
      legend,
      ...(pane < 400 ? { touch: 44 } : {}),
    }),
  }
}

const toBenzil = (no: string, alts = 3): StepText => ({
  no,
  from: 'benzoin',
  to: 'benzil',
  over: '{NH4NO3} 1.35 eq; {Cu(OAc)2} 1 %; AcOH; {H2O}, 110–118 °C',
  brief: '{NH4NO3}, {Cu(OAc)2}',
  under: '1.5 h; 91 % (85–95)',
  leaves: [{ text: '{N2}' }],
  alts: [
    { over: '{HNO3}, 95–100 °C', under: '1.5 h; 96 % (80–96)' },
    { over: '{Cu(OAc)2} 2.0 eq; AcOH', brief: '{Cu(OAc)2}, AcOH', under: '15 min; 90 % (85–92)' },
    { over: '{FeCl3·6H2O} 3.3 eq; AcOH', brief: '{FeCl3·6H2O}, AcOH', under: '1 h; 67 % (60–90)' },
    { over: '{Cu(OAc)2}; EtOH', under: '6 h; 80 % (70–88)', sure: 'remembered' as const },
  ].slice(0, alts),
})
const toLophine: StepText = {
  no: '2a',
  from: 'benzil',
  to: 'lophine',
  over: '{NH4OAc} 8.0 eq; AcOH, 110–118 °C',
  under: '2.5 h; 90 % (84–98)',
  co: ['benzaldehyde'],
}
const toQuinoxaline: StepText = {
  no: '2b',
  from: 'benzil',
  to: 'quinoxaline',
  over: 'EtOH, 78–80 °C',
  under: '20 min; 75 % (60–90)',
  co: ['diamine'],
  sure: 'remembered',
}
const toDienone = (no: string): StepText => ({
  no,
  from: 'benzil',
  to: 'dienone',
  over: 'KOH 0.54 eq; EtOH, 70–78 °C',
  under: '15 min; 94 % (81–96)',
  co: ['acetone'],
})
const toHexaphenylbenzene = (no: string, grey?: true): StepText => ({
  no,
  from: 'dienone',
  to: 'hexaphenylbenzene',
  over: 'benzophenone; diphenyl ether; 300–303 °C',
  under: '1 h; 84 % (80–88)',
  made: ['acetylene'],
  leaves: [{ text: 'CO' }],
  ...(grey ? { grey } : {}),
})
const goals: Readonly<Record<string, CellText>> = {
  benzoin: { amount: '24.0 g' },
  benzil: { amount: '21.6 g' },
  benzaldehyde: { role: 'co', amount: '2.0 g', pick: 'buy' },
  lophine: { role: 'goal', amount: '5.0 g', note: '3.9 g of the benzil' },
  diamine: { role: 'co', amount: '3.0 g' },
  quinoxaline: { role: 'goal', amount: '5.0 g', note: '5.0 g of the benzil' },
  acetone: { role: 'co', amount: '12.7 g' },
  dienone: { role: 'goal', amount: '21.5 g' },
}

export const cases: readonly SchemeCase[] = [
  caseOf('1-demo', 'benzoin', { ...goals, acetylene: { grey: true, pick: 'make' }, hexaphenylbenzene: { role: 'goal', grey: true } }, [
    toBenzil('1'),
    toLophine,
    toQuinoxaline,
    toDienone('2c'),
    { no: '', from: 'benzil', to: 'acetylene', over: '{N2H4·H2O} 2.58 eq; HgO 2.58 eq; benzene', under: '2 steps, 82 h; 70 %', grey: true },
    toHexaphenylbenzene('', true),
  ]),
  caseOf(
    '2-hexaphenylbenzene',
    'benzoin',
    {
      benzoin: { amount: '24.0 g' },
      benzil: { amount: '21.6 g' },
      acetone: { role: 'co', amount: '10.8 g', pick: 'buy' },
      dienone: { amount: '18.5 g' },
      dihydrazone: { amount: '10.5 g' },
      acetylene: { amount: '6.4 g', pick: 'make' },
      hexaphenylbenzene: { role: 'goal', amount: '11.1 g' },
    },
    [
      toBenzil('1', 2),
      toDienone('2'),
      {
        no: '3',
        from: 'benzil',
        to: 'dihydrazone',
        over: '{N2H4·H2O} 2.58 eq; propan-1-ol, 95–100 °C',
        under: '60 h; 86 % (83–89)',
      },
      {
        no: '4',
        from: 'dihydrazone',
        to: 'acetylene',
        over: 'HgO 2.58 eq; benzene, 70–80 °C',
        under: '2 h; 82 % (79–83)',
        leaves: [{ text: '{N2}' }],
      },
      toHexaphenylbenzene('5'),
    ],
  ),
  caseOf(
    '3-nylon',
    'castor',
    {
      castor: { amount: '50.0 g' },
      sebacic: { amount: '20.8 g' },
      octanol: { amount: '8.1 g' },
      sebacoyl: { amount: '20.9 g' },
      hexanediamine: { role: 'co', amount: '10.2 g', pick: 'buy' },
      nylon: { role: 'goal', amount: '17.3 g' },
    },
    [
      {
        no: '1',
        from: 'castor',
        to: 'sebacic',
        over: 'NaOH; cresol, 135–250 °C',
        under: '8 h; 64 % (28–85)',
        leaves: [{ cell: 'octanol' }],
      },
      {
        no: '2',
        from: 'sebacic',
        to: 'sebacoyl',
        over: '{SOCl2} 2.5 eq; 60–76 °C',
        under: '3 h; 85 % (75–95)',
        sure: 'remembered',
        leaves: [{ text: '{SO2}' }, { text: 'HCl' }],
      },
      {
        no: '3',
        from: 'sebacoyl',
        to: 'nylon',
        over: 'NaOH; {H2O}–{CH2Cl2}, 18–25 °C',
        under: '10 min; 70 % (55–75)',
        co: ['hexanediamine'],
      },
    ],
  ),
  caseOf(
    '4-para-red',
    'aniline',
    {
      aniline: { amount: '10.0 g' },
      acetanilide: { amount: '12.5 g' },
      nitroacetanilide: { amount: '12.5 g' },
      nitroaniline: { amount: '8.3 g' },
      naphthol: { role: 'co', amount: '8.7 g', pick: 'make only' },
      paraRed: { role: 'goal', amount: '10.8 g' },
    },
    [
      {
        no: '1',
        from: 'aniline',
        to: 'acetanilide',
        over: '{Ac2O} 1.1 eq; 100–120 °C',
        under: '30 min; 86 % (75–90)',
        alts: [{ over: 'AcOH, 105–120 °C', under: '6 h; 90 % (83–96)' }],
      },
      {
        no: '2',
        from: 'acetanilide',
        to: 'nitroacetanilide',
        over: '{HNO3} 1.2 eq; {H2SO4}, 0–5 °C',
        under: '1 h; 75 % (60–80)',
      },
      { no: '3', from: 'nitroacetanilide', to: 'nitroaniline', over: '{H2SO4}; {H2O}, 110–125 °C', under: '30 min; 87 % (75–92)' },
      {
        no: '4',
        from: 'nitroaniline',
        to: 'paraRed',
        over: '{NaNO2}, HCl; NaOH, 0–5 °C',
        under: '1 h; 61 % (61–76)',
        co: ['naphthol'],
      },
    ],
  ),
  caseOf(
    '5-copper',
    'copper',
    {
      copper: { amount: '10.0 g' },
      sulfate: { amount: '31.4 g' },
      ammine: { role: 'goal', amount: '15.0 g' },
      nitrate: { amount: '36.9 g' },
      hydroxide: { amount: '14.5 g' },
      oxide: { role: 'goal', amount: '11.2 g' },
      acetate: { role: 'goal', amount: '5.0 g' },
    },
    [
      {
        no: '1',
        from: 'copper',
        to: 'sulfate',
        over: '{HNO3}; {H2SO4}, 20–80 °C',
        under: '80 min; 80 % (65–92)',
        sure: 'remembered',
        leaves: [{ text: 'NO' }],
      },
      {
        no: '2',
        from: 'copper',
        to: 'nitrate',
        over: '{HNO3} 9 eq; {H2O}, 20–60 °C',
        under: '54 min; 97 % (85–100)',
        leaves: [{ text: '{NO2}' }],
      },
      { no: '3', from: 'sulfate', to: 'ammine', over: '{NH3} 25 %; EtOH, 15–25 °C', under: '1 h; 98 % (80–98)' },
      { no: '4', from: 'nitrate', to: 'hydroxide', over: 'NaOH; {H2O}, 10–25 °C', under: '33 min; 97 % (90–100)' },
      { no: '5a', from: 'hydroxide', to: 'oxide', over: '90–100 °C', under: '1 h; 95 % (88–99)', sure: 'unknown' },
      { no: '5b', from: 'hydroxide', to: 'acetate', over: 'AcOH 2.3 eq; {H2O}, 50–80 °C', under: '2 h; 80 % (65–92)', sure: 'remembered' },
    ],
  ),
  caseOf(
    '6-cinnamon',
    'bark',
    { bark: { amount: '100 g' }, cinnamaldehyde: { amount: '1.4 g' }, cinnamyl: { role: 'goal', amount: '1.2 g' } },
    [
      { no: '1', from: 'bark', to: 'cinnamaldehyde', over: 'steam; {CH2Cl2}', under: '4.8 h; 1.4 g per 100 g (0.8–2.0)' },
      {
        no: '2',
        from: 'cinnamaldehyde',
        to: 'cinnamyl',
        over: '{NaBH4} 0.5 eq; MeOH, 5–25 °C',
        under: '1 h; 85 % (75–95)',
        sure: 'remembered',
      },
    ],
  ),
  caseOf(
    '7-carvone',
    'limonene',
    {
      limonene: { amount: '20.0 g' },
      nitroso: { amount: '14.8 g' },
      carvoxime: { amount: '7.9 g' },
      carvone: { role: 'goal', amount: '3.9 g' },
    },
    [
      { no: '1', from: 'limonene', to: 'nitroso', over: '{NaNO2}; HCl, −5–5 °C', under: '1.5 h; 50 % (35–65)', sure: 'remembered' },
      { no: '2', from: 'nitroso', to: 'carvoxime', over: 'DMF; {iPrOH}, 80–83 °C', under: '30 min; 65 % (50–80)', sure: 'remembered' },
      { no: '3', from: 'carvoxime', to: 'carvone', over: 'HCl; {H2O}, 98–102 °C', under: '2 h; 55 % (40–70)', sure: 'unknown' },
    ],
  ),
  caseOf('8-many-ways', 'benzoin', goals, [
    toBenzil('1', 4),
    {
      ...toLophine,
      alts: [
        { over: '{NH4OAc}, 150–180 °C', under: '15 min; 88 % (80–93)', sure: 'remembered' },
        { over: '{NH4OAc}, 130–135 °C', under: '1 h; 72 % (60–80)', sure: 'unknown' },
        { over: '{NH4OAc}; EtOH', under: '30 min; 90 % (85–94)' },
      ],
    },
    toQuinoxaline,
    toDienone('2c'),
  ]),
  caseOf(
    '9-ten-steps',
    'oxide',
    {
      oxide: { amount: '20.0 g' },
      sulfate: { amount: '50.2 g' },
      copper: { amount: '10.1 g' },
      nitrate: { amount: '37.2 g' },
      hydroxide: { amount: '14.6 g' },
      acetate: { amount: '23.9 g' },
      benzoin: { role: 'co', amount: '12.7 g', pick: 'buy' },
      benzil: { amount: '11.3 g' },
      acetone: { role: 'co', amount: '5.7 g' },
      dienone: { amount: '9.7 g' },
      dihydrazone: { amount: '5.5 g' },
      acetylene: { amount: '3.4 g', pick: 'make' },
      hexaphenylbenzene: { role: 'goal', amount: '11.3 g' },
    },
    [
      { no: '1', from: 'oxide', to: 'sulfate', over: '{H2SO4} 1.05 eq; 20–80 °C', under: '2 h; 80 % (70–90)' },
      { no: '2', from: 'sulfate', to: 'copper', over: 'Zn 1.94 eq; HCl 3.8 eq, 20–50 °C', under: '4 h; 79 % (40–98)' },
      {
        no: '3',
        from: 'copper',
        to: 'nitrate',
        over: '{HNO3} 9.0 eq; {H2O}, 20–60 °C',
        under: '54 min; 97 % (85–100)',
        leaves: [{ text: '{NO2}' }],
      },
      { no: '4', from: 'nitrate', to: 'hydroxide', over: 'NaOH 11 eq; {H2O}, 10–25 °C', under: '33 min; 97 % (90–100)' },
      {
        no: '5',
        from: 'hydroxide',
        to: 'acetate',
        over: 'AcOH 2.33 eq; {H2O}, 50–80 °C',
        under: '2 h; 80 % (65–92)',
        sure: 'remembered',
      },
      { no: '6', from: 'acetate', to: 'benzil', over: 'AcOH; {H2O}, 105–118 °C', under: '15 min; 90 % (85–92)', co: ['benzoin'] },
      { ...toDienone('7') },
      {
        no: '8',
        from: 'benzil',
        to: 'dihydrazone',
        over: '{N2H4·H2O} 2.58 eq; propan-1-ol, 95–100 °C',
        under: '60 h; 86 % (83–89)',
      },
      {
        no: '9',
        from: 'dihydrazone',
        to: 'acetylene',
        over: 'HgO 2.58 eq; benzene, 70–80 °C',
        under: '2 h; 82 % (79–83)',
        leaves: [{ text: '{N2}' }],
      },
      toHexaphenylbenzene('10'),
    ],
  ),
  caseOf(
    '10-porphyrin',
    'galactose',
    {
      galactose: { amount: '25.0 g' },
      mucic: { amount: '15.0 g' },
      pyrrole: { amount: '1.8 g' },
      benzaldehyde: { role: 'co', amount: '2.9 g', pick: 'buy' },
      porphyrin: { role: 'goal', amount: '0.78 g' },
    },
    [
      {
        no: '1',
        from: 'galactose',
        to: 'mucic',
        over: '{HNO3} 9.9 eq; {H2O}, 80–100 °C',
        under: '3 h; 51 % (45–60)',
        leaves: [{ text: '{NO2}' }],
      },
      {
        no: '2',
        from: 'mucic',
        to: 'pyrrole',
        over: '{NH3} 4.4 eq; glycerol; {H2O}, 100–200 °C',
        under: '2 h; 39 % (37–40)',
        leaves: [{ text: '{CO2}' }],
      },
      { no: '3', from: 'pyrrole', to: 'porphyrin', over: '{EtCO2H}, 138–142 °C', under: '30 min; 19 % (15–22)', co: ['benzaldehyde'] },
    ],
  ),
]
