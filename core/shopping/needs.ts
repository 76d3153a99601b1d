import { type Library, materialOf, transformationOf } from '../library/library.ts'
import type { ChargedLine, ChargedStep } from '../route/charged.ts'
import type { StockUnit } from './measure.ts'
import { riskiestStep } from './riskiest-step.ts'
import type { Quantity } from './shopping.ts'

/** What the plan takes of one material from shelf and shop together. */
export interface Need {
  readonly material: string
  readonly unit: StockUnit
  /** Reserve, repeat and retained samples included; null where no line has a figure. */
  readonly amount: number | null
  /** Some line has no figure: the amount is a lower bound. */
  readonly open: boolean
  readonly planned: boolean
  readonly atLeast: boolean
  /** Comes out of the tap: never bought. */
  readonly free: boolean
  readonly uses: readonly { readonly step: string; readonly role: string; readonly amount: Quantity }[]
  readonly notes: readonly string[]
}

export interface NeedsInput {
  readonly library: Library
  readonly steps: readonly ChargedStep[]
  /** Compounds of which a sample is kept. */
  readonly products: readonly string[]
  /** Added to every need, as a fraction. */
  readonly reserve: number
  /** One repeat of the riskiest step on top. */
  readonly repeat: boolean
  /** Of each product, g; 0 = none. */
  readonly retainedSampleG: number
}

const aboutNote = 'About: what the solution of a compound made here is made up with, at the volume of the solution.'

const quenchNote =
  'Planned to destroy what is left over before it goes into a waste bottle: by the equation, common practice, not from the source.'

/** One line with what else it needs to know to be added up. */
interface Entry {
  readonly step: string
  readonly role: string
  readonly unit: StockUnit
  readonly massG: number | null
  readonly volumeMl: number | null
  readonly times: number
  readonly basis: ChargedLine['basis']
  readonly note: string | null
}

/**
 * The sum over all steps of every charge and work-up line that the plan does not make, by material, in the unit of its lines where they
 * agree, else in g. In order of first use. Water is listed and free.
 */
export function needsOf({ library, steps, products, reserve, repeat, retainedSampleG }: NeedsInput): readonly Need[] {
  const times = timesCharged(steps, products, repeat, retainedSampleG)
  const entries = new Map<string, Entry[]>()
  const add = (material: string, entry: Entry) => {
    const list = entries.get(material)
    if (list === undefined) entries.set(material, [entry])
    else list.push(entry)
  }
  for (const step of steps)
    for (const line of step.charges) {
      // The start is in hand, an earlier step makes the rest, and what is free has neither amount nor bottle.
      if (line.supply === 'bought') add(line.material, entryOf(library, step, line, times.get(step) ?? 1))
    }
  return [...entries].map(([material, list]) => needOf(library, material, list, 1 + reserve))
}

/** How often each step's lines are charged in all: once, once more for a repeat, and a little more for samples taken downstream. */
function timesCharged(
  steps: readonly ChargedStep[],
  products: readonly string[],
  repeat: boolean,
  retainedSampleG: number,
): ReadonlyMap<ChargedStep, number> {
  const again = repeat ? riskiestStep(steps) : null
  // Backwards, so that what a later step takes more of is known when its supplier is reached.
  const extra = new Map<ChargedStep, number>()
  for (const step of [...steps].reverse()) {
    if (!(step.expectedG > 0)) continue
    let moreG = products.includes(step.makes) ? retainedSampleG : 0
    for (const { step: to, massG } of step.goesTo) {
      const consumer = to === null ? undefined : steps.find(s => s.transformation === to || s.number === to)
      if (consumer) moreG += massG * (extra.get(consumer) ?? 0)
    }
    extra.set(step, moreG / step.expectedG)
  }
  return new Map(steps.map(step => [step, 1 + (step === again ? 1 : 0) + (extra.get(step) ?? 0)]))
}

function entryOf(library: Library, step: ChargedStep, line: ChargedLine, times: number): Entry {
  const own = line.line === null ? undefined : transformationOf(library, step.transformation).charge[line.line]
  const byVolume = own === undefined ? line.massG === null && line.volumeMl !== null : own.unit === 'mL' || own.unit === 'L'
  return {
    step: step.transformation,
    role: line.role,
    unit: byVolume ? 'mL' : 'g',
    massG: line.massG,
    volumeMl: line.volumeMl,
    times,
    basis: line.basis,
    note: line.basis === 'about' ? aboutNote : line.role === 'quench' && line.basis === 'planned' && own === undefined ? quenchNote : null,
  }
}

function needOf(library: Library, material: string, entries: readonly Entry[], factor: number): Need {
  const known = entries.filter(e => e.basis !== 'open' && (e.massG !== null || e.volumeMl !== null))
  const units = new Set((known.length > 0 ? known : entries).map(e => e.unit))
  const agreed = units.size === 1 ? [...units][0]! : 'g'
  const lacks = (unit: StockUnit) => known.some(e => (unit === 'g' ? e.massG : e.volumeMl) === null)
  // Without a density the two cannot be added; then the unit that all of them have.
  const unit: StockUnit = lacks(agreed) && !lacks(agreed === 'g' ? 'mL' : 'g') ? (agreed === 'g' ? 'mL' : 'g') : agreed
  const figure = (e: Entry) => (e.basis === 'open' ? null : unit === 'g' ? e.massG : e.volumeMl)
  let sum: number | null = null
  let open = false
  for (const entry of entries) {
    const amount = figure(entry)
    if (amount === null) open = true
    else sum = (sum ?? 0) + amount * entry.times
  }
  const notes = new Set(entries.flatMap(e => (e.note === null ? [] : [e.note])))
  if (known.some(e => figure(e) === null))
    notes.add(
      `Some lines are by mass and some by volume, and ${materialOf(library, material).name} has no density here: not all are added.`,
    )
  return {
    material,
    unit,
    amount: sum === null ? null : sum * factor,
    open,
    planned: entries.some(e => e.basis === 'planned' || e.basis === 'about'),
    atLeast: entries.some(e => e.basis === 'at-least'),
    free: material === 'water',
    uses: entries.map(e => ({ step: e.step, role: e.role, amount: { amount: figure(e), unit } })),
    notes: [...notes],
  }
}
