import { holdPointOf } from '../days/hold-point.ts'
import type { GasLine, LabelledMaterial, Meeting } from '../hazards/hazard-list.ts'
import { materialFigures, stepFigures } from '../library/figure-trust.ts'
import { type Library, materialOf, transformationOf } from '../library/library.ts'
import type { Marked } from '../library/mark.ts'
import type { Role, Stage, Task, Transformation } from '../library/transformation.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { lineMark } from '../plan/line-mark.ts'
import { durationText, massText, noBreakSpace, numberText, percentText, volumeText } from '../quantity/print.ts'
import type { AmountBasis, ChargedStep } from '../route/charged.ts'
import { millimolText } from './amounts.ts'
import { chargeAmountText } from './charge-amount.ts'
import { chargeCaution, stepCaution } from './charge-cautions.ts'
import { nameIn } from './names.ts'
import { quenchVesselText } from './quench-vessel.ts'
import { isRegulated } from './regulated.ts'
import { capital, counted, degrees, sentence } from './words.ts'

/** One line of what goes in. Amounts are of one batch; `inAll` only where there are several. */
export interface ChargeRow {
  readonly material: string
  readonly name: string
  readonly stage: Stage
  readonly role: Role
  readonly amount: string
  readonly inAll: string | null
  readonly mmol: string | null
  readonly equivalents: string | null
  readonly basis: AmountBasis
  /** How sure the amount is, and by whose word. */
  readonly sure: Marked
  /** What the basis means, in words; null for an amount of the source. */
  readonly mark: string | null
  /** "Danger: causes severe skin burns and eye damage": stands beside the amount of what is dangerous or unknown. */
  readonly caution: string | null
  readonly regulated: boolean
}

export interface TaskRow {
  readonly do: string
  readonly kind: Task['kind']
  readonly time: string
}

/** What is taped to the hood for one step. */
export interface BenchSheet {
  readonly number: string
  readonly transformation: string
  readonly name: string
  readonly makes: string
  /** "Step 1: charge 24.0 g of benzoin, expect 21.6 g of benzil". */
  readonly title: string
  /** Batches still to run. */
  readonly batches: number
  readonly charge: readonly ChargeRow[]
  /** Said once over the amounts of a dangerous step; null where nothing in it asks for it. */
  readonly caution: string | null
  /** How full the vessel gets, and which one it takes. */
  readonly vessel: string | null
  readonly temperature: string | null
  readonly operations: readonly string[]
  /** Said where the words of the operations hold amounts and the scale is another one. */
  readonly operationsScale: string | null
  readonly equipment: readonly string[]
  readonly tasks: readonly TaskRow[]
  readonly timesNote: string
  /** Of one batch, g; null for an isolation. */
  readonly theoryG: number | null
  /** Theory, P10 and P90 of all batches, ready to print. */
  readonly outlook: readonly string[]
  /** The yield of the step by itself: "yield of the step", "96 %", "80–96". */
  readonly yields: { readonly what: string; readonly typical: string; readonly range: string }
  readonly melting: string | null
  /** How sure that melting point is; null where there is none. */
  readonly meltingSure: Marked | null
  readonly notes: readonly string[]
  readonly materials: readonly LabelledMaterial[]
  readonly dangers: readonly string[]
  readonly meetings: readonly Meeting[]
  readonly gas: readonly GasLine[]
  readonly waste: readonly string[]
  readonly holdPoint: string
  readonly source: readonly string[]
  readonly done: string | null
}

/** What an amount rests on, as words beside it. */
const basisWords: Readonly<Record<AmountBasis, string | null>> = {
  source: null,
  derived: 'reckoned by the library',
  'at-least': 'at least: the source gives none',
  about: 'about',
  planned: 'planned, not from the source',
  open: 'the source gives no amount',
}

/** Roles whose lines have no meaningful equivalents: poured by volume, not counted. */
const uncounted: ReadonlySet<Role> = new Set(['solvent', 'wash', 'drying', 'quench', 'extraction', 'recrystallisation'])

const stageOrder: readonly Stage[] = ['vessel', 'quench', 'workup']

/** The bench sheet of one step of an evaluated plan. */
export function benchSheetOf(library: Library, evaluation: Evaluation, step: ChargedStep): BenchSheet {
  const transformation = transformationOf(library, step.transformation)
  const nameOf = nameIn(library)
  const { hazards } = evaluation
  const batches = step.done ? step.done.leftToRun : step.batches
  const each = batches > 1 ? ' a batch' : ''
  const theoryG = step.ofCharge.theoryG === null ? null : step.ofCharge.theoryG / Math.max(1, batches)
  const quenchVessel = quenchVesselText(step, Math.max(1, batches))
  const finished = step.done != null && step.done.leftToRun === 0
  return {
    number: step.number,
    transformation: step.transformation,
    name: transformation.name,
    makes: step.makes,
    title: finished
      ? `Step ${step.number}: done, ${massText(step.done.isolatedG)} of ${nameOf(step.makes)} isolated`
      : `Step ${step.number}: charge ${massText(step.ofCharge.chargeG)} of ${nameOf(step.limiting.compound)}, expect ${massText(step.ofCharge.medianG)} of ${nameOf(step.makes)}`,
    batches,
    charge: chargeRows(library, evaluation, step, Math.max(1, batches)),
    caution: stepCaution(hazards, step.number),
    vessel: vesselText(transformation, step, batches),
    temperature: temperatureText(transformation.temperatureC),
    operations: transformation.operations.map(sentence),
    operationsScale: operationsScale(library, transformation, step, batches),
    equipment: [...transformation.equipment, ...(quenchVessel === null ? [] : [quenchVessel])],
    tasks: (transformation.tasks ?? []).map(task => ({ do: capital(degrees(task.do)), kind: task.kind, time: durationText(task.hours) })),
    timesNote: timesNote(transformation),
    theoryG,
    outlook: [
      theoryG === null ? 'no theoretical mass: an isolation' : `theory ${massText(theoryG)}${each}`,
      `P10 ${massText(step.ofCharge.p10G)}, P90 ${massText(step.ofCharge.p90G)}`,
    ],
    yields: yieldsOf(step, theoryG),
    melting: meltingText(materialOf(library, step.makes).meltingC),
    meltingSure: materialFigures(materialOf(library, step.makes)).find(one => one.figure === 'melting point') ?? null,
    notes: step.notes.map(sentence),
    materials: hazards.materials.filter(material => material.steps.includes(step.number)),
    dangers: (hazards.steps.find(one => one.step === step.number)?.notes ?? []).map(sentence),
    meetings: hazards.meetings.filter(meeting => meeting.where === 'step' && meeting.place === step.number),
    gas: hazards.gas.filter(gas => gas.step === step.number),
    waste: wasteOfStep(evaluation, step.number),
    holdPoint: holdText(library, transformation),
    source: sourceTexts(transformation),
    done:
      step.done == null
        ? null
        : `${massText(step.done.isolatedG)} isolated and logged; ${counted(step.done.leftToRun, 'batch', 'batches')} still to run.`,
  }
}

function chargeRows(library: Library, evaluation: Evaluation, step: ChargedStep, batches: number): readonly ChargeRow[] {
  const { hazards } = evaluation
  const transformation = transformationOf(library, step.transformation)
  const nameOf = nameIn(library)
  const rows = step.charges
    .filter(line => line.supply !== 'free' || line.line !== null)
    .map(line => ({
      material: line.material,
      name: nameOf(line.material),
      stage: line.at,
      role: line.role,
      amount: chargeAmountText(library, transformation, line, batches) ?? 'as needed',
      inAll: batches > 1 ? (chargeAmountText(library, transformation, line) ?? 'as needed') : null,
      mmol: line.amountMol === null || uncounted.has(line.role) ? null : millimolText(line.amountMol / batches),
      equivalents: line.equivalents === null || uncounted.has(line.role) ? null : numberText(line.equivalents, 3, 2),
      basis: line.basis,
      sure: lineMark(library, evaluation, step, line),
      mark: basisWords[line.basis],
      caution: chargeCaution(hazards, line.material),
      regulated: isRegulated(hazards, line.material),
    }))
  return rows.sort((a, b) => stageOrder.indexOf(a.stage) - stageOrder.indexOf(b.stage))
}

function vesselText({ vesselKind, gasEvolved }: Transformation, step: ChargedStep, batches: number): string | null {
  const { perBatch, assumed } = step.volumeMl
  if (perBatch === null || batches === 0) return null
  const kind = vesselKind === undefined || vesselKind === 'other' ? 'vessel' : vesselKind
  const runs = batches > 1 ? `${capital(counted(batches, 'batch', 'batches'))}. ` : ''
  const about = assumed ? 'about ' : ''
  const open = gasEvolved.length > 0 ? ' Gas comes off: never closed.' : ''
  return `${runs}The ${kind} then holds ${about}${volumeText(perBatch)}${batches > 1 ? ' a batch' : ''}.${open}`
}

/** "110–118 °C"; null where the library does not say. */
export function temperatureText(temperatureC: Transformation['temperatureC']): string | null {
  if (temperatureC === undefined) return null
  const [from, to] = temperatureC.map(value => String(value).replace('-', '−'))
  return from === to ? `${from}${noBreakSpace}°C` : `${from}–${to}${noBreakSpace}°C`
}

const meltingText = (meltingC: number | undefined): string | null =>
  meltingC === undefined ? null : `${String(meltingC).replace('-', '−')}${noBreakSpace}°C`

/** Amounts inside the words of a procedure are those of its source: they are not scaled, so it is said. */
function operationsScale(library: Library, transformation: Transformation, step: ChargedStep, batches: number): string | null {
  const part = step.limiting.massG > 0 ? step.ofCharge.chargeG / step.limiting.massG : 0
  const scale = (step.scale * part) / Math.max(1, batches)
  if (Math.abs(scale - 1) < 0.02 || !transformation.operations.some(text => /\d\s?(mL|mg|g|kg|L)\b/.test(text))) return null
  const reference = step.scale === 0 ? 0 : step.limiting.massG / step.scale
  return `Amounts in these words are those of the source, at ${massText(reference)} of ${nameIn(library)(step.limiting.compound)}: take ${numberText(scale, 3, 2)} times as much${batches > 1 ? ' for each batch' : ''}.`
}

function timesNote({ tasks, timesBasis, elapsedHours, handsOnHours }: Transformation): string {
  const total = `${durationText(elapsedHours)} in all`
  const hands = handsOnHours === undefined ? 'hands-on time unknown' : `${durationText(handsOnHours)} hands on`
  const basis =
    tasks === undefined ? 'times of single tasks are not known' : timesBasis === 'source' ? 'times from the source' : 'times are estimates'
  return `${capital(total)}, ${hands}; ${basis}.`
}

function yieldsOf({ yieldFraction: { low, typical, high } }: ChargedStep, theoryG: number | null): BenchSheet['yields'] {
  const figure = (fraction: number): string => numberText(fraction * 100, 3, fraction < 0.1 ? 1 : 0)
  return {
    what: theoryG === null ? 'recovery' : 'yield of the step',
    typical: percentText(typical, 2),
    range: `${figure(low)}–${figure(high)}`,
  }
}

function wasteOfStep({ hazards }: Evaluation, number: string): readonly string[] {
  return hazards.waste.flatMap(stream =>
    stream.from
      .filter(part => part.step === number)
      .map(part => `${capital(part.what)}: ${stream.name.toLowerCase()}, ${stream.container}.`),
  )
}

function holdText(library: Library, transformation: Transformation): string {
  const { hours, derived } = holdPointOf(library, transformation)
  const keeps =
    hours === 0
      ? 'The product may not wait: go on at once.'
      : `The product may wait ${durationText(hours)} from the end of work-up to the next set-up.`
  if (derived) return `${keeps} Derived, not from a source.`
  if (transformation.holdPointBasis !== 'source') return `${keeps} Common practice.`
  const mark = stepFigures(transformation).find(one => one.figure === 'hold point')?.mark
  return `${keeps} ${mark === 'own bench' ? 'From the own bench.' : mark === 'remembered' ? 'Remembered.' : 'From the source.'}`
}

/** Sources of charge and yield; what was remembered says so. */
function sourceTexts({ sources, confidence, yieldPercent }: Transformation): readonly string[] {
  const seen = sources.filter(source => source.checked)
  const first = [...new Set((seen.length > 0 ? seen : sources).map(source => source.citation))].slice(0, 2).map(sentence)
  const how = confidence === 'checked' ? 'Seen.' : confidence === 'memory' ? 'Remembered, no source seen.' : 'Common practice.'
  const range = yieldPercent.from === undefined ? [] : [sentence(`yield: ${yieldPercent.from}`)]
  return [how, ...first, ...range]
}
