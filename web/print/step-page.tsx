import type { LabelledMaterial } from '../../core/hazards/hazard-list.ts'
import { type FigureTrust, recordFigure } from '../../core/library/figure-trust.ts'
import { transformationOf } from '../../core/library/library.ts'
import type { Marked } from '../../core/library/mark.ts'
import { massText } from '../../core/quantity/print.ts'
import type { BenchSheet, ChargeRow } from '../../core/report/bench-sheet.ts'
import { benchSheetOf } from '../../core/report/bench-sheet.ts'
import { meetingBrief, meetingMark, severityText, sharedMeetings } from '../../core/report/hazard-sheet.ts'
import { nameIn } from '../../core/report/names.ts'
import { marksOfStep } from '../../core/report/plan-figures.ts'
import { materialsLine, trustOfStep } from '../../core/report/trust-words.ts'
import { counted, degrees, listed, lowerFirst, sentence } from '../../core/report/words.ts'
import type { ChargedStep } from '../../core/route/charged.ts'
import type { SchemeIn } from '../map/scheme/types.ts'
import { Marked as MarkedFigure, MarkSign } from '../parts/mark.tsx'
import { Name } from '../parts/words.tsx'
import { SmallLabel } from './hazard-label.tsx'
import type { PackProps } from './pack-props.ts'
import { Blank, Leaf, Tick } from './parts.tsx'
import { oneStep, SchemeFigure } from './scheme-figure.tsx'

/** So many batches get a column of blanks each; more share one. */
const mostColumns = 3
/** So many batches get a line of results each. */
const mostResults = 6

/** The bench sheet of one step, on a page of its own: what is taped to the hood. */
export function StepPage({ step, scheme, ...props }: PackProps & { readonly step: ChargedStep; readonly scheme: SchemeIn | null }) {
  const { library, evaluation, depictions, plan } = props
  const sheet = benchSheetOf(library, evaluation, step)
  const trust = trustOfStep(library, plan, step)
  const of = (figure: FigureTrust['figure']): Marked =>
    trust.figures.find(one => one.figure === figure) ?? { mark: 'unknown', source: null }
  const record = recordFigure(transformationOf(library, step.transformation))
  const scale = trust.figures.find(one => one.figure === 'largest scale') ?? record
  const used = [
    ...marksOfStep(library, plan, evaluation, step),
    ...(sheet.meltingSure === null ? [] : [sheet.meltingSure.mark]),
    ...sheet.meetings.filter(isTold).map(meeting => meetingMark(meeting).mark),
    ...(sheet.done === null ? [] : (['own bench'] as const)),
  ]
  const figure = scheme === null ? null : oneStep(scheme, step)
  return (
    <Leaf title={<Name text={sheet.title} />} of="step" used={used}>
      <div class={isLong(sheet) ? 'step-head dense' : 'step-head'}>
        {figure === null ? <p>{sheet.name}</p> : <SchemeFigure input={figure} depictions={depictions} label={sheet.name} />}
        <ul class="s soft">
          {sheet.outlook.map(line => (
            <li key={line} data-mark="reckoned">
              {line}
            </li>
          ))}
          <li>
            {sheet.yields.what} <MarkedFigure of={of('yield')}>{sheet.yields.typical}</MarkedFigure> (
            <MarkedFigure of={of('range of the yield')}>{sheet.yields.range}</MarkedFigure>)
          </li>
        </ul>
      </div>
      {sheet.done !== null && (
        <p class="note">
          <MarkedFigure of={{ mark: 'own bench', source: 'the bench log of this plan' }}>{sheet.done}</MarkedFigure>
        </p>
      )}
      {sheet.caution !== null && (
        <p class="s">
          <b>Caution.</b> {sheet.caution}
        </p>
      )}
      {sheet.charge.length > 0 && <Charges sheet={sheet} />}
      <p>
        <span data-mark="reckoned">{sheet.vessel}</span>{' '}
        {sheet.notes.length > 0 && <MarkedFigure of={scale}>{sheet.notes.join(' ')}</MarkedFigure>}
      </p>
      <Operations sheet={sheet} temperature={of('temperature')} times={of('times')} record={record} />
      <Results sheet={sheet} />
      <section class="s keep ends">
        <p>
          <b>Waste.</b>{' '}
          {sheet.waste.length === 0
            ? 'None by mass balance.'
            : sheet.waste.map((text, at) => (
                <span key={`${at}${text}`}>
                  {text}{' '}
                  <span class="nb">
                    <Blank mm={14} /> mL
                  </span>{' '}
                </span>
              ))}
        </p>
        <p>
          <b>Hold point.</b> <span data-mark={of('hold point').mark}>{sheet.holdPoint}</span>
          {sheet.equipment.length > 0 && (
            <>
              {' '}
              <b>Needs</b> <MarkedFigure of={record}>{sheet.equipment.join(', ')}.</MarkedFigure>
            </>
          )}
        </p>
        <p>
          <b>Source.</b> <span data-mark={record.mark}>{sheet.source.slice(0, 2).join(' ')}</span> <b>How sure.</b>{' '}
          {materialsLine(library, trust.materials)}
        </p>
      </section>
      <section>
        <Dangers sheet={sheet} record={record} {...props} />
      </section>
    </Leaf>
  )
}

/** More rows than this want closer lines to stay on one page; labels and meetings take more room than a line. */
const mostRows = 20
const isLong = ({ charge, operations, materials, meetings, batches, dangers }: BenchSheet): boolean =>
  charge.length + operations.length + materials.length + meetings.length + batches / 2 + dangers.join(' ').length / 120 > mostRows

function Charges({ sheet }: { readonly sheet: BenchSheet }) {
  const blanks = sheet.batches <= mostColumns ? Math.max(1, sheet.batches) : 1
  const several = sheet.batches > 1
  return (
    <table class={`t charge blanks-${blanks}`}>
      <thead>
        <tr>
          <th colSpan={2}>material</th>
          <th class="n">{several ? `each of ${counted(sheet.batches, '', '').trim()}` : 'amount'}</th>
          {several && <th class="n">in all</th>}
          <th class="n">mmol</th>
          <th class="n">eq</th>
          {Array.from({ length: blanks }, (_, at) => (
            <th key={at}>{blanks > 1 ? `weighed ${at + 1}` : 'weighed'}</th>
          ))}
          <th>lot</th>
        </tr>
      </thead>
      <tbody>
        {sheet.charge.map((row, at) => (
          <ChargeLine row={row} blanks={blanks} key={`${row.material}${at}`} />
        ))}
      </tbody>
    </table>
  )
}

const ChargeLine = ({ row, blanks }: { readonly row: ChargeRow; readonly blanks: number }) => (
  <tr>
    <td class="bx">
      <Tick />
    </td>
    <td class="mat">
      <Name text={row.name} />
      {row.regulated && ' §'}
      {row.stage !== 'vessel' && <span class="s soft"> {row.stage === 'quench' ? 'quench: have it ready' : row.role}</span>}
      {row.caution !== null && <span class="s caution"> {row.caution}</span>}
      {row.mark !== null && <i class="s soft block">{row.mark}</i>}
    </td>
    <td class="n">
      <MarkedFigure of={row.sure}>{row.basis === 'open' ? <i>{row.amount}</i> : <b>{row.amount}</b>}</MarkedFigure>
    </td>
    {row.inAll !== null && (
      <td class="n" data-mark="reckoned">
        {row.inAll}
      </td>
    )}
    <td class="n" data-mark="reckoned">
      {row.mmol}
    </td>
    <td class="n" data-mark="reckoned">
      {row.equivalents}
    </td>
    {Array.from({ length: blanks }, (_, at) => (
      <td class="wr" key={at}>
        <Blank />
      </td>
    ))}
    <td class="wr">
      <Blank />
    </td>
  </tr>
)

/** Words that say that something takes its time, and that it is hot or cold meanwhile. */
const lasts = /\b(reflux|boil|heat|warm|stir|stand|cool|chill|dry|distil|steep|reacts?|hold|keep|overnight|min|h)\b/i
const hasTemperature = /\b(reflux|boil|heat|warm|hot|cool|chill|cold|ice|distil|bath)\b/i

function Operations({
  sheet,
  temperature,
  times,
  record,
}: {
  readonly sheet: BenchSheet
  readonly temperature: Marked
  readonly times: Marked
  /** The record that the words are of. */
  readonly record: Marked
}) {
  if (sheet.operations.length === 0) return null
  return (
    <>
      <h2>
        Then
        <MarkSign of={record} />
        {sheet.temperature !== null && (
          <>
            , at <MarkedFigure of={temperature}>{sheet.temperature}</MarkedFigure>
          </>
        )}
      </h2>
      <ol class="ops" data-mark={record.mark}>
        {sheet.operations.map((text, at) => (
          <li key={`${at}${text}`}>
            <Tick />
            <span>{text}</span>
            <span class="nb">
              {hasTemperature.test(text) && (
                <>
                  <Blank mm={11} /> °C{' '}
                </>
              )}
              {lasts.test(text) ? (
                <>
                  from <Blank mm={15} /> to <Blank mm={15} />
                </>
              ) : (
                <>
                  at <Blank mm={15} />
                </>
              )}
            </span>
          </li>
        ))}
      </ol>
      {sheet.operationsScale !== null && (
        <p>
          <b>
            <MarkedFigure of={record}>{sheet.operationsScale}</MarkedFigure>
          </b>
        </p>
      )}
      <p class="s soft">
        <MarkedFigure of={times}>
          {attended(sheet)}
          {sheet.timesNote}
        </MarkedFigure>
      </p>
    </>
  )
}

/** What somebody stays with and what runs alone, with its time; the rest is hands. */
const attended = ({ tasks }: BenchSheet): string =>
  [['Stay with it', tasks.filter(task => task.kind === 'watch')] as const, ['Alone', tasks.filter(task => task.kind === 'stand')] as const]
    .filter(([, of]) => of.length > 0)
    .map(([word, of]) => `${word}: ${of.map(task => `${task.do.charAt(0).toLowerCase()}${task.do.slice(1)}, ${task.time}`).join('; ')}. `)
    .join('')

function Results({ sheet }: { readonly sheet: BenchSheet }) {
  const lines = sheet.batches <= mostResults ? Math.max(1, sheet.batches) : 1
  return (
    <section class="keep" data-mark="reckoned">
      <h2>
        Result{' '}
        <span class="s soft plain">
          {lines > 2 && sheet.theoryG !== null && `in % of ${massText(sheet.theoryG)}, the theory of a batch; `}above 100 %: wet or
          mis-weighed? Weigh again before the next step.
        </span>
      </h2>
      <div class={lines > 2 ? 'results' : undefined}>
        {Array.from({ length: lines }, (_, at) => (
          <p class="res" key={at}>
            <span>
              {lines > 1 ? `batch ${at + 1}: ` : ''}
              {lines > 2 ? '' : 'weighed '}
              <Blank mm={lines > 2 ? 14 : 20} /> g
            </span>
            <span>
              <Tick /> damp <Tick /> dry
            </span>
            {sheet.theoryG !== null && (
              <span>
                {lines > 2 ? '' : `÷ ${massText(sheet.theoryG)} `}= <Blank mm={lines > 2 ? 11 : 14} /> %
              </span>
            )}
            {sheet.melting !== null && at === 0 && lines <= 2 && <Melting library={sheet.melting} sure={sheet.meltingSure} />}
          </p>
        ))}
      </div>
      {sheet.melting !== null && lines > 2 && (
        <p class="res">
          <Melting library={sheet.melting} sure={sheet.meltingSure} />
        </p>
      )}
    </section>
  )
}

const Melting = ({ library, sure }: { readonly library: string; readonly sure: Marked | null }) => (
  <span>
    melts at <Blank mm={14} /> °C, library {sure === null ? library : <MarkedFigure of={sure}>{library}</MarkedFigure>}
  </span>
)

/** Told in full; rules about a kind of step only by their titles, notes in the hazard list alone. */
const isTold = (meeting: BenchSheet['meetings'][number]): boolean => meeting.severity !== 'note' && !meeting.general

function Dangers({ sheet, library, record }: PackProps & { readonly sheet: BenchSheet; readonly record: Marked }) {
  // Rules about a kind of step are told in full once, in the hazard list; here their titles remind of them.
  const kinds = sheet.meetings.filter(meeting => meeting.general && meeting.severity === 'never')
  const general = kinds.map(meeting => lowerFirst(degrees(meeting.title)))
  const labelled = sheet.materials.filter(material => material.class !== 'none')
  const charged = new Set(sheet.charge.map(row => row.material))
  const comesOf = ({ material, as }: LabelledMaterial): string =>
    charged.has(material) ? '' : as.includes('gas') ? ' (given off here)' : as.includes('by-product') ? ' (a by-product here)' : ''
  const none = sheet.materials
    .filter(material => material.class === 'none')
    .map(material => `${nameIn(library)(material.material)}${comesOf(material)}`)
  return (
    <>
      <h2>
        What can hurt in step {sheet.number}
        <MarkSign of={record} />
      </h2>
      <div class="s">
        {sheet.dangers.length > 0 && (
          <p data-mark={record.mark}>
            {sheet.dangers.map((text, at) => (
              <span key={text}>
                {at > 0 && ' '}
                {text}
              </span>
            ))}
          </p>
        )}
        {sharedMeetings(sheet.meetings.filter(isTold)).map(({ meeting }, at) => (
          <p key={`${meeting.title}${at}`} data-mark={meetingMark(meeting).mark}>
            <b>
              {severityText(meeting)}: {sentence(meeting.title)}
            </b>{' '}
            {meetingBrief(library, meeting)}
            <MarkSign of={meetingMark(meeting)} />
          </p>
        ))}
        {general.length > 0 && (
          <p data-mark={kinds.map(meetingMark).find(one => one.mark === 'remembered')?.mark ?? meetingMark(kinds[0]!).mark}>
            <b>Never here, as the hazard list tells:</b> {general.join('; ')}.
          </p>
        )}
      </div>
      <div class="hz-two">
        {labelled.map(material => (
          <SmallLabel library={library} material={material} where={comesOf(material)} key={material.material} />
        ))}
      </div>
      {none.length > 0 && <p class="s soft">No hazard class assigned, with a source: {listed(none)}.</p>}
    </>
  )
}
