import Papa from 'papaparse'
import type { Library } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { lineMark } from '../plan/line-mark.ts'
import { byNumber } from '../plan/merged-steps.ts'
import type { Plan } from '../plan/plan.ts'
import { type Cells, csvColumns, major } from './csv-columns.ts'
import { feesMarked, figureCells, priceCells } from './csv-figures.ts'
import { nameIn } from './names.ts'
import { leftOversOf, solventsOf } from './shopping-notes.ts'

/**
 * The plan as one CSV table (RFC 4180, CRLF, UTF-8 with a byte order mark so that spreadsheets read it as such): goals, steps, charges,
 * figures (every other figure that the plan rests on, with its value in `note`), shopping, prices, orders, left-overs, other baskets, solvents, hazards, meetings, gas, waste, regulated, days, notes and cautions, told apart by the first column. Figures are bare
 * numbers with a point, at full precision; an empty `amount` means that it is not known, and `note` says so. `mark` tells how sure a figure is
 * and `source` by whose word; an empty mark is a figure that was reckoned from marked ones. A text that a spreadsheet would
 * read as a formula is escaped with an apostrophe.
 */
export function planCsv(library: Library, plan: Plan, evaluation: Evaluation): string {
  const rows = [
    ...goals(library, evaluation),
    ...steps(library, evaluation),
    ...charges(library, evaluation),
    ...figureCells(library, plan, evaluation),
    ...shopping(library, evaluation),
    ...priceCells(library, evaluation),
    ...orders(evaluation),
    ...underTheList(library, plan, evaluation),
    ...hazards(library, evaluation),
    ...meetings(library, evaluation),
    ...gasAndWaste(library, evaluation),
    ...regulated(library, evaluation),
    ...days(evaluation),
    ...evaluation.notes.map(note => ({ section: 'note', id: note.code, note: `${note.what} ${note.why} ${note.cure}` })),
    { section: 'caution', id: 'caution', name: plan.title, note: cautionNote },
  ]
  const data = rows.map((row: Cells) => csvColumns.map(column => row[column] ?? ''))
  return `\ufeff${Papa.unparse({ fields: [...csvColumns], data }, { newline: '\r\n', escapeFormulae: true })}\r\n`
}

const cautionNote =
  'Quantities are estimates. Read the safety data sheets. Local codes and licensed practice decide. Do not work alone. The schedules of controlled drugs are not in the bundled lists.'

const goals = (library: Library, { goals: list }: Evaluation): readonly Cells[] =>
  list.map(goal => ({
    section: 'goal',
    id: goal.target,
    name: nameIn(library)(goal.target),
    amount: goal.expectedG,
    unit: 'g',
    p10_g: goal.p10G,
    median_g: goal.medianG,
    p90_g: goal.p90G,
    note: `amount at typical yields; overall yield on start ${goal.overallYieldOnStart}; yield of the longest linear sequence ${goal.longestLinearYield}${goal.chance === null ? '' : `; chance ${goal.chance}`}`,
  }))

const steps = (library: Library, { steps: list }: Evaluation): readonly Cells[] =>
  inOrder(list).map(step => ({
    section: 'step',
    step: step.number,
    id: step.transformation,
    name: nameIn(library)(step.makes),
    amount: step.expectedG,
    unit: 'g',
    p10_g: step.p10G,
    median_g: step.medianG,
    p90_g: step.p90G,
    note: [
      `batches ${step.batches}`,
      step.theoreticalG === null ? 'no theoretical mass: an isolation' : `theory ${step.theoreticalG} g`,
      ...step.notes,
    ].join('; '),
  }))

const charges = (library: Library, evaluation: Evaluation): readonly Cells[] =>
  inOrder(evaluation.steps).flatMap(step =>
    step.charges.map(line => ({
      section: 'charge',
      step: step.number,
      id: line.material,
      name: nameIn(library)(line.material),
      role: line.role,
      ...(line.massG === null && line.volumeMl !== null
        ? { amount: line.volumeMl, unit: 'mL' }
        : { amount: line.massG, unit: line.massG === null ? '' : 'g' }),
      mol: line.amountMol,
      equivalents: line.equivalents,
      state: line.basis,
      note: [
        `goes ${line.at === 'workup' ? 'into the work-up' : line.at === 'quench' ? 'into the quench' : 'into the vessel'}`,
        `${line.supply}`,
        ...(line.massG === null && line.volumeMl === null
          ? ['amount not known']
          : line.massG !== null && line.volumeMl !== null
            ? [`${line.volumeMl} mL`]
            : []),
      ].join('; '),
      ...lineMark(library, evaluation, step, line),
    })),
  )

const shopping = (library: Library, { shopping: list, basket }: Evaluation): readonly Cells[] =>
  list.map(line => ({
    section: 'shopping',
    id: line.material,
    name: nameIn(library)(line.material),
    amount: line.buy.amount,
    unit: line.buy.unit,
    cost: line.costMinor === null ? null : major(line.costMinor, basket?.currency),
    currency: basket?.currency ?? '',
    state: line.costMinor === null ? 'price unknown' : line.open ? 'amount open' : 'known',
    note: [
      `need ${line.need.amount ?? 'not known'} ${line.need.unit}`,
      `shelf ${line.shelf.amount ?? 'not known'} ${line.shelf.unit}`,
      ...line.packs.map(pack => `${pack.count} x ${pack.amount} ${pack.unit} from ${pack.supplier}`),
      ...(line.madeUp === null ? [] : [line.madeUp.how]),
      ...line.notes,
    ].join('; '),
  }))

/** What is left, what else could be bought, what could be got back. */
function underTheList(library: Library, plan: Plan, evaluation: Evaluation): readonly Cells[] {
  const nameOf = nameIn(library)
  const { basket, otherBaskets = [] } = evaluation
  const currency = basket?.currency ?? ''
  return [
    ...leftOversOf(library, evaluation).map(one => ({
      section: 'left over',
      id: one.material,
      name: nameOf(one.material),
      amount: one.left.amount,
      unit: one.left.unit,
      note: one.couldServe.map(use => `could serve ${use.transformation}, ${use.times} times`).join('; '),
    })),
    ...otherBaskets.map(other => ({
      section: 'other basket',
      id: other.kind,
      cost: major(other.totalMinor, currency),
      currency,
      note: [
        `costs ${major(other.moreMinor, currency)} more`,
        ...other.packs.map(pack => `${pack.count} x ${pack.amount} ${pack.unit} ${pack.material} from ${pack.supplier}`),
      ].join('; '),
    })),
    ...solventsOf(library, plan.settings, evaluation).map(one => ({
      section: 'solvent',
      id: one.material,
      name: nameOf(one.material),
      amount: one.recoverableMl,
      unit: 'mL',
      state: one.worthIt ? 'worth distilling' : 'not worth distilling',
      note: `of ${one.usedMl} mL used; ${one.hours} h; ${one.why}`,
    })),
  ]
}

const orders = ({ basket }: Evaluation): readonly Cells[] =>
  basket === null
    ? []
    : [
        ...basket.orders.map(order => ({
          section: 'order',
          id: order.supplier,
          name: order.name,
          cost: major(order.totalMinor, basket.currency),
          currency: basket.currency,
          note: `goods ${major(order.goodsMinor, basket.currency)}; carriage ${order.carriageUnknown ? 'not stated' : major(order.carriageMinor, basket.currency)}; hazardous-goods fee ${major(order.hazardousFeeMinor, basket.currency)}`,
          ...(order.carriageUnknown ? { state: 'at least' } : {}),
          ...(order.carriageMinor + order.hazardousFeeMinor === 0 ? {} : feesMarked(order)),
        })),
        {
          section: 'total',
          cost: basket.totalMinor === null ? null : major(basket.totalMinor, basket.currency),
          currency: basket.currency,
          state: basket.complete ? 'complete' : 'incomplete',
          note: [...basket.priceUnknown.map(id => `price unknown: ${id}`), ...basket.amountUnknown.map(id => `amount open: ${id}`)].join(
            '; ',
          ),
        },
      ]

const hazards = (library: Library, { hazards: list }: Evaluation): readonly Cells[] =>
  list.materials.map(material => ({
    section: 'hazard',
    step: material.steps.join(' '),
    id: material.material,
    name: nameIn(library)(material.material),
    role: material.as.join(' '),
    ...(material.massG === null && material.volumeMl !== null
      ? { amount: material.volumeMl, unit: 'mL' }
      : { amount: material.massG, unit: material.massG === null ? '' : 'g' }),
    state: material.known,
    codes: material.codes.map(({ code }) => code).join(' '),
    note:
      material.known === 'unknown'
        ? 'No hazard data: read its safety data sheet.'
        : [material.signalWord ?? '', ...material.codes.map(({ statement }) => statement), material.from ?? ''].filter(Boolean).join('; '),
  }))

const meetings = (library: Library, { hazards: list }: Evaluation): readonly Cells[] =>
  list.meetings.map(meeting => ({
    section: 'may not meet',
    step: meeting.where === 'step' ? meeting.place : '',
    id: meeting.materials.join(' '),
    name: meeting.materials.map(nameIn(library)).join(', '),
    role: meeting.where,
    state: meeting.intended ? 'intended' : meeting.severity,
    note: [
      meeting.title,
      ...(meeting.where === 'step' ? [] : [meeting.place]),
      meeting.consequence,
      meeting.do,
      ...meeting.conditions,
    ].join(' '),
  }))

const gasAndWaste = (library: Library, { hazards: list }: Evaluation): readonly Cells[] => [
  ...list.gas.map(gas => ({
    section: 'gas',
    step: gas.step,
    id: gas.compound,
    name: nameIn(library)(gas.compound),
    amount: gas.litres,
    unit: 'L',
    note: `${gas.litresPerBatch} L a batch at full conversion, 25 C and 1 atm; never in a closed vessel`,
  })),
  ...list.waste.map(waste => ({
    section: 'waste',
    step: [...new Set(waste.from.map(part => part.step))].join(' '),
    id: waste.stream,
    name: waste.name,
    amount: waste.massG,
    unit: waste.massG === null ? '' : 'g',
    state: waste.open ? 'at least' : 'known',
    note: [waste.container, ...waste.neverWith.map(what => `never with ${what}`)].join('; '),
  })),
  ...list.quench.flatMap(line =>
    line.reagents.map(({ name, massG, volumeMl }) => ({
      section: 'destroyed',
      step: line.step,
      id: line.destroys,
      name: nameIn(library)(line.destroys),
      amount: massG ?? volumeMl,
      unit: massG !== null ? 'g' : volumeMl !== null ? 'mL' : '',
      state: line.from,
      note: `with ${name}; done when ${line.test}`,
    })),
  ),
]

const regulated = (library: Library, { hazards: list }: Evaluation): readonly Cells[] => [
  ...list.regulated.map(hit => ({
    section: 'regulated',
    id: hit.material,
    name: nameIn(library)(hit.material),
    state: hit.action,
    note: `${hit.list}, ${hit.category}; ${hit.reason}; ${hit.legal}`,
  })),
  ...list.notScreened.map(id => ({
    section: 'regulated',
    id,
    name: nameIn(library)(id),
    state: 'not screened',
    note: 'neither CAS number nor structure',
  })),
]

const noWindowNotes = {
  longer: 'longer than every bench window; no date',
  apart: 'no bench window falls within what it may wait; no date',
  keeps: 'no bench window comes soon enough after the steps before it; no date',
} as const

const days = ({ days: plan, steps: charged }: Evaluation): readonly Cells[] => [
  ...plan.booked.map(one => ({
    section: 'day',
    step: numberOf(charged, one.step),
    id: one.kind,
    name: one.do,
    amount: one.endH - one.startH,
    unit: 'h',
    note: one.start === null ? `${one.startH} h to ${one.endH} h` : `${one.start} to ${one.end}`,
  })),
  ...plan.tooLong.map(one => ({
    section: 'day',
    step: numberOf(charged, one.step),
    id: one.why === 'longer' ? 'too long' : 'no window',
    name: one.do,
    amount: one.hours,
    unit: 'h',
    note: noWindowNotes[one.why],
  })),
]

const numberOf = (steps: Evaluation['steps'], id: string): string => steps.find(step => step.transformation === id)?.number ?? id

const inOrder = (steps: Evaluation['steps']): Evaluation['steps'] => [...steps].sort((a, b) => byNumber(a.number, b.number))
