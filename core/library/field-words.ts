import type { Material } from './material.ts'
import { exposureText } from './physical.ts'
import type { Source, Unit } from './source.ts'
import type { ChargeLine, Reactant, Task, Transformation, YieldPercent } from './transformation.ts'

/** What the words of a field need besides its value. */
export interface Say {
  /** Name of a material, its id where it is not known. */
  readonly nameOf: (id: string) => string
  /** The record is an isolation: its yields are g per 100 g of feedstock. */
  readonly isolation: boolean
}

/** How a field is called, and how its value reads; of a list, how one item reads. */
export type FieldWords<V> = { readonly label: string } & (
  | { readonly told: (value: V, say: Say) => string }
  | (V extends readonly (infer Item)[]
      ? {
          readonly each: (item: Item, say: Say) => string
          /** What an item is of, where one of the same may stand in both lists with other figures. */
          readonly of?: (item: Item, say: Say) => string
          /** Items of the same thing told as one. */
          readonly gathered?: (list: readonly Item[]) => readonly Item[]
        }
      : never)
)

type WordsOf<R> = { readonly [K in keyof Required<R>]: FieldWords<NonNullable<R[K]>> }

const asWritten = (label: string) => ({ label, told: String })
const yesNo = (label: string) => ({ label, told: (value: boolean) => (value ? 'yes' : 'no') })
const inUnit = (label: string, unit: string) => ({ label, told: (value: number) => figure(value, unit) })
const named = (label: string) => ({ label, told: (id: string, { nameOf }: Say) => nameOf(id) })
const listed = (label: string) => ({ label, each: (item: string | number) => String(item) })

/** A number with its unit, the minus sign as it is printed. */
const figure = (value: number, unit: string): string => `${String(value).replace('-', '−')}\u00a0${unit}`
const hours = (label: string) => inUnit(label, 'h')
const celsius = (label: string) => inUnit(label, '°C')
const grams = (label: string) => inUnit(label, 'g')
const within = (parts: readonly (string | undefined | false)[]): string => {
  const said = parts.filter(part => typeof part === 'string' && part !== '')
  return said.length === 0 ? '' : ` (${said.join(', ')})`
}

const sources = {
  label: 'sources',
  gathered: eachCitationOnce,
  each: ({ citation, for: speaksFor, detail, url, checked }: Source): string =>
    `${citation}${within([speaksFor === undefined ? undefined : `for ${speaksFor}`, detail, url, checked ? undefined : 'not looked up'])}`,
}

/** A citation that speaks for several figures, once, with all that it speaks for. */
function eachCitationOnce(list: readonly Source[]): readonly Source[] {
  const byCitation = new Map<string, Source>()
  for (const source of list) {
    const key = `${source.citation}\n${source.url ?? ''}\n${source.checked}`
    const before = byCitation.get(key)
    const both = (one: string | undefined, other: string | undefined): string | undefined =>
      [...new Set([one, other])].filter(text => text !== undefined && text !== '').join('; ') || undefined
    const [speaksFor, detail] = [both(before?.for, source.for), both(before?.detail, source.detail)]
    const { for: _for, detail: _detail, ...bare } = source
    byCitation.set(key, { ...bare, ...(speaksFor === undefined ? {} : { for: speaksFor }), ...(detail === undefined ? {} : { detail }) })
  }
  return [...byCitation.values()]
}

/** Every field of a material. */
export const materialWords: WordsOf<Material> = {
  id: asWritten('id'),
  name: asWritten('name'),
  synonyms: listed('other names'),
  kind: asWritten('kind'),
  formula: asWritten('formula'),
  displayFormula: asWritten('formula as drawn'),
  smiles: asWritten('structure (SMILES)'),
  cas: asWritten('CAS number'),
  form: asWritten('state'),
  densityGPerMl: inUnit('density', 'g/mL'),
  meltingC: celsius('melting point'),
  boilingC: celsius('boiling point'),
  flashC: celsius('flash point'),
  contains: {
    label: 'content',
    told: ({ compound, massFraction, molPerL, rest }, { nameOf }) => {
      const strength = [
        massFraction === undefined ? undefined : figure(Number((massFraction * 100).toPrecision(6)), '% by mass'),
        molPerL === undefined ? undefined : figure(molPerL, 'mol/L'),
      ].filter(part => part !== undefined)
      return `${[nameOf(compound), ...strength].join(', ')}${rest === undefined ? '' : `, the rest ${nameOf(rest)}`}`
    },
  },
  hazards: {
    label: 'hazards',
    told: ({ codes, signalWord, from }) =>
      `${codes.length === 0 ? 'no codes' : codes.join(', ')}, ${signalWord === 'none' ? 'no signal word' : signalWord}${within([from])}`,
  },
  note: asWritten('note'),
  reactivityGroups: listed('reactivity groups'),
  storageGroup: asWritten('storage group'),
  wasteStream: asWritten('waste stream'),
  peroxideClass: asWritten('peroxide class'),
  exposureLimit: { label: 'exposure limit', told: limit => exposureText({ exposureLimit: limit }) ?? limit.basis },
  buyable: yesNo('can be bought'),
  sources,
}

const amountText = (amount: number | null, unit: Unit): string => (amount === null ? 'as needed' : figure(amount, unit))

const chargeText = ({ amount, unit, perGramProduct, derived, role, at, from }: ChargeLine): string =>
  `${perGramProduct === undefined ? amountText(amount, unit) : `${figure(perGramProduct, unit)} per g of product`}${within([
    role,
    at === undefined ? undefined : at === 'workup' ? 'in the work-up' : at === 'quench' ? 'in the quench' : 'in the vessel',
    derived && 'reckoned',
    from,
  ])}`

/** "80–98 %, typically 90 (several sources)"; one figure alone where all three are the same. */
export function yieldWords({ low, typical, high, from }: YieldPercent, isolation: boolean): string {
  const unit = isolation ? 'g per 100\u00a0g' : '%'
  const range = low === typical && typical === high ? figure(typical, unit) : `${low}–${figure(high, unit)}, typically ${typical}`
  return `${range}${within([from])}`
}

const term = (label: string) => ({
  label,
  each: ({ compound, coefficient }: Reactant, { nameOf }: Say) => `${coefficient === 1 ? '' : `${coefficient} `}${nameOf(compound)}`,
})

const taskKinds: Readonly<Record<Task['kind'], string>> = { hands: 'hands-on', watch: 'watched', stand: 'stands' }

/** Every field of a transformation. */
export const transformationWords: WordsOf<Transformation> = {
  id: asWritten('id'),
  name: asWritten('name'),
  kind: asWritten('kind'),
  reactants: term('taken by the equation'),
  products: term('given by the equation'),
  mainProduct: named('main product'),
  limiting: named('limiting reactant'),
  coProducts: {
    label: 'second products',
    of: ({ compound }, { nameOf }) => nameOf(compound),
    each: ({ yieldPercent, from }, { isolation }) => `${yieldWords(yieldPercent, isolation)}${within([from])}`,
  },
  charge: { label: 'charge', of: ({ material }, { nameOf }) => nameOf(material), each: chargeText },
  yieldPercent: { label: 'yield', told: (value, { isolation }) => yieldWords(value, isolation) },
  reports: {
    label: 'what others got',
    each: ({ percent, scaleG, note, source }, { isolation }) =>
      `${figure(percent, isolation ? 'g per 100\u00a0g' : '%')}${within([
        scaleG === undefined ? undefined : `at ${figure(scaleG, 'g')}`,
        note,
        source.citation,
      ])}`,
  },
  lossG: grams('fixed loss'),
  tasks: {
    label: 'tasks',
    each: ({ do: what, kind, hours: takesH, waitUpToH, splits, reaction }) =>
      `${what}${within([
        figure(takesH, 'h'),
        taskKinds[kind],
        waitUpToH > 0 && `may wait ${figure(waitUpToH, 'h')}`,
        splits && 'can be split',
        reaction && 'the reaction itself',
      ])}`,
  },
  timesBasis: { label: 'times from', told: value => (value === 'source' ? 'the source' : 'an estimate') },
  vesselKind: asWritten('vessel'),
  foam: yesNo('foams'),
  peakVolumeMl: inUnit('largest volume', 'mL'),
  temperatureC: {
    label: 'temperature',
    told: ([low, high]) => (low === high ? figure(low, '°C') : `${String(low).replace('-', '−')} to ${figure(high, '°C')}`),
  },
  elapsedHours: hours('time in all'),
  handsOnHours: hours('hands-on time'),
  operations: listed('operations'),
  equipment: listed('equipment'),
  atmosphere: asWritten('atmosphere'),
  needsHood: yesNo('needs a hood'),
  exotherm: { label: 'gets warm by itself', told: value => (value === 'none' ? 'no' : value) },
  gasEvolved: {
    label: 'gas given off',
    of: ({ compound }, { nameOf }) => nameOf(compound),
    each: ({ perMolLimiting }) => `${perMolLimiting}\u00a0mol per mol of the limiting reactant`,
  },
  largestProvenG: grams('largest published scale'),
  smallestProvenG: grams('smallest published scale'),
  holdPoint: { label: 'product keeps', told: value => (value === 'never' ? 'not at all' : value === 'overnight' ? value : `for ${value}`) },
  holdPointBasis: asWritten('how long it keeps, from'),
  hazardNotes: listed('what can hurt'),
  intendedMeetings: {
    label: 'meant to meet',
    each: ({ materials, condition }, { nameOf }) => `${materials.map(nameOf).join(' and ')}: ${condition}`,
  },
  isolated: { label: 'isolated', told: ({ amount, unit }) => amountText(amount, unit) },
  isolatedBasis: asWritten('isolated amount from'),
  note: asWritten('note'),
  sources,
  confidence: {
    label: 'how sure',
    told: value => ({ checked: 'read in its source', memory: 'from memory', 'common-practice': 'common practice, no source' })[value],
  },
}

const all: Readonly<Record<string, { readonly label: string }>> = { ...materialWords, ...transformationWords }

/** How a field of either kind of record is called; its key where the format does not know it. */
export const fieldLabel = (key: string): string => all[key]?.label ?? key

const order = Object.keys(all)
/** Fields in the order of the format, what they rest on last. */
export const inFieldOrder = (one: string, other: string): number => order.indexOf(one) - order.indexOf(other)
