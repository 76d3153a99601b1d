import { type Beneath, nothingBeneath } from '../library/beneath.ts'
import type { FigureTrust } from '../library/figure-trust.ts'
import type { Library } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { byNumber } from '../plan/merged-steps.ts'
import type { Plan } from '../plan/plan.ts'
import { moneyText } from '../quantity/money.ts'
import { durationText } from '../quantity/print.ts'
import { priceFigure } from '../shopping/price-from.ts'
import type { ShoppingLine } from '../shopping/shopping.ts'
import { peroxideText, quenchText, roomAssumption, roomText, roomWarnings, wasteByDay } from './air-and-age.ts'
import { packText, quantityWords } from './amounts.ts'
import { answersOf } from './answers.ts'
import { type BenchSheet, benchSheetOf } from './bench-sheet.ts'
import { cautionBlock } from './cautions.ts'
import { dateAndTime, longDate } from './dates.ts'
import { restsOn } from './figures-text.ts'
import {
  gasText,
  hazardTitle,
  labelText,
  meetingText,
  severityText,
  sharedMeetings,
  stateText,
  storageGroups,
  togetherText,
  wasteAmount,
  wasteFrom,
} from './hazard-sheet.ts'
import { materialInPlace, yieldInPlace } from './in-place-of.ts'
import { lowMelts } from './low-melts.ts'
import { legendText, markLetters } from './marks.ts'
import { nameIn } from './names.ts'
import { noWindowText, wouldDoText } from './no-window.ts'
import { marksOfStep, planFigures } from './plan-figures.ts'
import { priceSentence } from './price-words.ts'
import { isRegulated, lawText } from './regulated.ts'
import { shoppingNotesOf } from './shopping-notes.ts'
import { shoppingSheetOf } from './shopping-sheet.ts'
import { goalLines, metricLines } from './text-amounts.ts'
import { columns, heading, wrapped } from './text-layout.ts'
import { type StepTrust, trustLine, trustOfStep } from './trust-words.ts'
import { capital, listed, sentence } from './words.ts'

/**
 * The whole plan as text that can be read on a terminal and printed on a line printer: the seven answers, the steps with their charges, the
 * shopping list, the hazards, the days and the caution block. Prose is broken at 100 characters; a table may be wider.
 *
 * @param choice  how the ways taken stand among those that were looked for, as sentences
 * @param beneath what own records of the bench stand in place of
 */
export function planText(
  library: Library,
  plan: Plan,
  evaluation: Evaluation,
  choice: readonly string[] = [],
  beneath: Beneath = nothingBeneath,
): string {
  const parts = [
    title(plan),
    answers(library, plan, evaluation),
    goalLines(library, plan, evaluation),
    choice.length === 0 ? [] : [heading('The choice of ways'), ...choice.flatMap(text => wrapped(text, '  '))],
    steps(library, plan, evaluation, beneath),
    shopping(library, plan, evaluation),
    hazards(library, evaluation, beneath),
    metricLines(library, evaluation),
    days(library, plan, evaluation),
    [restsOn(planFigures(library, plan, evaluation))],
    notes(library, plan, evaluation),
    [cautionBlock[0]!, ...cautionBlock.slice(1).flatMap(line => wrapped(line, '  '))],
  ]
  return `${parts
    .filter(lines => lines.length > 0)
    .map(lines => lines.join('\n'))
    .join('\n\n')}\n`
}

function title({ title: name, settings, edition }: Plan): readonly string[] {
  const by = [settings.bench, settings.startDate === null ? '' : `from ${longDate(settings.startDate)}`].filter(part => part !== '')
  const version =
    edition === undefined
      ? []
      : [
          `Version ${edition.number}.`,
          ...(edition.changed.length === 0 ? [] : wrapped(`Changed since the one before: ${edition.changed.join(' ')}`, '')),
        ]
  return [name === '' ? 'Plan' : name, ...(by.length === 0 ? [] : [by.join(', ')]), ...version]
}

const answers = (library: Library, plan: Plan, evaluation: Evaluation): readonly string[] =>
  answersOf(library, plan, evaluation).flatMap(({ no, ask, clauses }) => wrapped(clauses.join(' '), `${no}  ${ask.padEnd(21)}`))

function steps(library: Library, plan: Plan, evaluation: Evaluation, beneath: Beneath): readonly string[] {
  const ordered = [...evaluation.steps].sort((a, b) => byNumber(a.number, b.number))
  const lines = ordered.flatMap((step, at) => [
    ...(at > 0 ? [''] : []),
    ...stepLines(
      benchSheetOf(library, evaluation, step),
      trustOfStep(library, plan, step),
      yieldInPlace(library, plan, beneath, step.transformation),
    ),
    ...wrapped(trustLine(library, trustOfStep(library, plan, step)), '  how sure: '),
  ])
  const used = ordered.flatMap(step => marksOfStep(library, plan, evaluation, step))
  return [heading('Steps'), ...lines, ...wrapped(legendText(used), '  ')]
}

function stepLines(sheet: BenchSheet, { figures }: StepTrust, inPlace: string | null): readonly string[] {
  const letter = (figure: FigureTrust['figure']): string => {
    const one = figures.find(of => of.figure === figure)
    return one === undefined ? '' : ` ${markLetters[one.mark]}`
  }
  const several = sheet.batches > 1
  const table = columns(
    ['', 'material', several ? 'a batch' : 'amount', '', ...(several ? ['in all'] : []), 'mmol', 'eq', ''],
    sheet.charge.map(row => [
      row.stage === 'vessel' ? '' : row.stage === 'quench' ? 'quench' : row.role,
      `${row.name}${row.regulated ? ' §' : ''}`,
      row.amount,
      markLetters[row.sure.mark],
      ...(several ? [row.inAll ?? ''] : []),
      row.mmol ?? '',
      row.equivalents ?? '',
      [row.mark, row.caution].filter(Boolean).join('; '),
    ]),
  )
  return [
    sheet.title,
    ...wrapped(sheet.name, '  '),
    ...(sheet.caution === null ? [] : wrapped(sheet.caution, '  ! ')),
    ...table.map(line => `  ${line}`),
    ...wrapped(
      [sheet.vessel, sheet.temperature === null ? null : `${sheet.temperature}${letter('temperature')}.`, sheet.timesNote]
        .filter(Boolean)
        .join(' '),
      '  ',
    ),
    ...sheet.operations.flatMap((text, at) => wrapped(text, `  ${at + 1}. `.padEnd(6))),
    ...(sheet.operationsScale === null ? [] : wrapped(sheet.operationsScale, '  ! ')),
    ...wrapped(
      `${capital(sheet.outlook.join('; '))}; ${sheet.yields.what} ${sheet.yields.typical}${letter('yield')} (${sheet.yields.range}${letter('range of the yield')})${inPlace === null ? '' : `, ${inPlace}`}.`,
      '  ',
    ),
    ...sheet.notes.flatMap(text => wrapped(text, '  ! ')),
    ...sheet.dangers.flatMap(text => wrapped(text, '  ! ')),
    ...sharedMeetings(sheet.meetings.filter(meeting => !meeting.general)).flatMap(({ meeting }) =>
      wrapped(`${severityText(meeting)}: ${sentence(meeting.title)} See May not meet.`, '  ! '),
    ),
    ...sheet.waste.flatMap(text => wrapped(text, '  waste: ')),
    ...wrapped(sheet.holdPoint, '  hold: '),
  ]
}

function shopping(library: Library, plan: Plan, evaluation: Evaluation): readonly string[] {
  const under = shoppingNotesOf(library, plan.settings, evaluation)
  const sheet = shoppingSheetOf(library, evaluation)
  const { basket, hazards: list } = evaluation
  const currency = basket?.currency ?? ''
  const nameOf = nameIn(library)
  const row = (line: ShoppingLine, supplier?: string): readonly string[] => [
    `${nameOf(line.material)}${isRegulated(list, line.material) ? ' §' : ''}`,
    `${quantityWords(line.need)}${line.open || line.atLeast ? ' +' : ''}`,
    quantityWords(line.shelf),
    quantityWords(line.buy),
    line.packs
      .filter(pack => supplier === undefined || pack.supplier === supplier)
      .map(pack => `${pack.count} × ${packText(pack.amount, pack.unit)}`)
      .join(', '),
    line.packs
      .filter(pack => supplier === undefined || pack.supplier === supplier)
      .map(pack => `${moneyText(pack.count * pack.priceMinor, currency)} ${markLetters[priceFigure(pack.priceFrom).mark]}`)
      .join(' + '),
  ]
  const head = ['', 'need', 'shelf', 'buy', 'packs', 'cost']
  const group = (name: string, lines: readonly ShoppingLine[], supplier?: string): readonly string[] =>
    lines.length === 0
      ? []
      : [
          name,
          ...columns(
            head,
            lines.map(line => row(line, supplier)),
          ).map(text => `  ${text}`),
        ]
  return [
    heading(sheet.title),
    ...group('Price unknown', sheet.unknown),
    ...group('To buy, supplier open', sheet.unplaced),
    ...sheet.suppliers.flatMap(({ name, invented, order, lines }) => [
      ...group(`${name}${invented ? ' (invented)' : ''}`, lines, order.supplier),
      `  goods ${moneyText(order.goodsMinor, currency)}, carriage ${order.carriageUnknown ? 'not stated' : moneyText(order.carriageMinor, currency)}${order.hazardousFeeMinor > 0 ? `, hazardous-goods fee ${moneyText(order.hazardousFeeMinor, currency)}` : ''}: order ${order.carriageUnknown ? 'at least ' : ''}${moneyText(order.totalMinor, currency)}`,
    ]),
    ...wrapped(priceSentence(evaluation) ?? '', ''),
    ...(basket === null || basket.totalMinor === null || basket.orders.length === 0
      ? []
      : [`All that has a price and an amount: ${moneyText(basket.totalMinor, currency)}`]),
    ...(sheet.missing === null ? [] : wrapped(sheet.missing, '')),
    ...sheet.madeUp.flatMap(line => wrapped(`${nameOf(line.material)}, ${quantityWords(line.need)}: ${line.madeUp!.how}`, 'Made up: ')),
    ...pairs(
      'From the shelf',
      sheet.shelf.map(line => [nameOf(line.material), quantityWords(line.shelf)]),
    ),
    ...(under.gap === null ? [] : wrapped(under.gap, '! ')),
    ...section('Left over', under.leftOvers),
    ...section('Other baskets for the same needs', under.otherBaskets),
    ...section('Solvents that could be got back', under.solvents),
    ...sheet.notes.flatMap(note => wrapped(note, '! ')),
    '+: the source gives no amount, or only for a part; at least this much. §: licence, declaration or report, see below.',
  ]
}

const section = (name: string, sentences: readonly string[]): readonly string[] =>
  sentences.length === 0 ? [] : [name, ...sentences.flatMap(text => wrapped(text, '  - '))]

const pairs = (name: string, rows: readonly (readonly string[])[]): readonly string[] =>
  rows.length === 0
    ? []
    : [
        name,
        ...columns(['', ''], rows)
          .slice(1)
          .map(text => `  ${text}`),
      ]

function hazards(library: Library, { hazards: list, steps: charged }: Evaluation, beneath: Beneath): readonly string[] {
  const nameOf = nameIn(library)
  const batches = (number: string): number => charged.find(step => step.number === number)?.batches ?? 1
  return [
    heading(hazardTitle(list)),
    ...list.materials.flatMap(material =>
      wrapped(
        [`${nameOf(material.material)}:`, labelText(material), stateText(library, material), materialInPlace(beneath, material.material)]
          .filter(Boolean)
          .join(' '),
        '- ',
      ),
    ),
    ...(list.meetings.length === 0 ? [] : ['May not meet']),
    ...sharedMeetings(list.meetings).flatMap(({ meeting, places }) =>
      wrapped(
        `${severityText(meeting)} (${places}): ${sentence(meeting.title)} ${meeting.where === 'storage' ? `${sentence(meeting.consequence)} ${sentence(meeting.do)}${togetherText(meeting)}` : meetingText(library, meeting)}`,
        '- ',
      ),
    ),
    ...(list.meetings.some(one => one.where === 'storage') ? ['What stands where'] : []),
    ...storageGroups(library, list).flatMap(({ group, names }) =>
      wrapped(`${capital(group.replaceAll('-', ' '))}: ${names.join('; ')}.`, '- '),
    ),
    ...(list.gas.length === 0 ? [] : ['Gas']),
    ...list.gas.flatMap(gas => wrapped(gasText(library, gas, batches(gas.step)), '- ')),
    ...(list.peroxides.length === 0 ? [] : ['Peroxide formers']),
    ...list.peroxides.flatMap(line => wrapped(peroxideText(library, line), '- ')),
    ...(roomWarnings(list).length === 0 ? [] : ['Vapour and the room']),
    ...roomWarnings(list).flatMap(line => wrapped(roomText(library, line), '- ')),
    ...(roomWarnings(list).length === 0 ? [] : wrapped(roomAssumption, '  ')),
    ...(list.waste.length === 0 ? [] : ['Waste']),
    ...list.waste.flatMap(stream =>
      wrapped(
        `${stream.name}, ${wasteAmount(stream)}: ${stream.container}. From ${wasteFrom(library, stream)}.${wasteByDay(stream) === '' ? '' : ` By day: ${wasteByDay(stream)}.`}${stream.neverWith.length === 0 ? '' : ` Never with ${listed(stream.neverWith)}.`}`,
        '- ',
      ),
    ),
    ...(list.quench.length === 0 ? [] : ['Destroyed before the bottle']),
    ...list.quench.flatMap(line => wrapped(quenchText(library, line), '- ')),
    'Regulated',
    ...list.regulated.flatMap(hit => wrapped(`${capital(nameOf(hit.material))}. ${lawText(hit)}`, '§ ')),
    ...(list.regulated.length === 0 ? ['No row of the bundled lists names anything here.'] : []),
    ...(list.notScreened.length === 0
      ? []
      : wrapped(`Not screened, having neither CAS number nor structure: ${listed(list.notScreened.map(nameOf))}.`, '')),
  ]
}

function days(library: Library, { settings: { windows } }: Plan, { days: plan, steps: charged }: Evaluation): readonly string[] {
  const nameOf = nameIn(library)
  const label = (id: string): string => {
    const step = charged.find(one => one.transformation === id || one.number === id)
    return step === undefined ? id : `step ${step.number}, ${nameOf(step.makes)}`
  }
  const stepText = (id: string): string => label(id).replace(/,.*/, '')
  const attended = plan.booked.filter(one => one.kind !== 'stand')
  return [
    heading('Days'),
    `${plan.handsOnH === null ? 'Hands-on hours unknown' : `${durationText(plan.handsOnH)} hands-on`}; the longest chain takes ${durationText(plan.elapsedH)}.`,
    ...(plan.finishDate === null ? [] : [`Done ${longDate(plan.finishDate)}.`]),
    ...attended.map(
      one =>
        `  ${one.start === null ? `${durationText(one.startH)} on` : dateAndTime(one.start)}  ${label(one.step)}: ${one.do}${one.kind === 'watch' ? ' (watched)' : ''}`,
    ),
    ...plan.unattended.flatMap(one =>
      wrapped(
        `${label(one.step)}: ${one.do}, ${durationText(one.hours)}${one.heated ? ', heated: hang the notice beside it' : ''}.`,
        'Runs alone: ',
      ),
    ),
    ...plan.tooLong.flatMap(one => wrapped(`${label(one.step)}, ${noWindowText(one, windows, stepText)}`, 'No place: ')),
    ...wrapped(wouldDoText(plan), ''),
    ...plan.notes.flatMap(note => wrapped(sentence(note), '')),
  ]
}

const notes = (library: Library, plan: Plan, evaluation: Evaluation): readonly string[] => {
  const list = [...evaluation.notes, ...lowMelts(library, plan)]
  return list.length === 0 ? [] : [heading('To know'), ...list.flatMap(note => wrapped(`${note.what} ${note.why} ${note.cure}`, '! '))]
}
