import { nothingBeneath } from '../../core/library/beneath.ts'
import { type FigureTrust, recordFigure } from '../../core/library/figure-trust.ts'
import { transformationOf } from '../../core/library/library.ts'
import type { Marked } from '../../core/library/mark.ts'
import type { BenchSheet } from '../../core/report/bench-sheet.ts'
import { benchSheetOf } from '../../core/report/bench-sheet.ts'
import { meetingMark } from '../../core/report/hazard-sheet.ts'
import { yieldInPlace } from '../../core/report/in-place-of.ts'
import { marksOfStep } from '../../core/report/plan-figures.ts'
import { materialsLine, trustOfStep } from '../../core/report/trust-words.ts'
import type { ChargedStep } from '../../core/route/charged.ts'
import type { SchemeIn } from '../map/scheme/types.ts'
import { Marked as MarkedFigure } from '../parts/mark.tsx'
import { Name } from '../parts/words.tsx'
import type { PackProps } from './pack-props.ts'
import { Blank, Leaf } from './parts.tsx'
import { oneStep, SchemeFigure } from './scheme-figure.tsx'
import { StepCharge } from './step-charge.tsx'
import { isTold, StepDangers } from './step-dangers.tsx'
import { StepOperations } from './step-operations.tsx'
import { StepResults } from './step-results.tsx'

/** The bench sheet of one step, on a page of its own: what is taped to the hood. */
export function StepPage({ step, scheme, ...props }: PackProps & { readonly step: ChargedStep; readonly scheme: SchemeIn | null }) {
  const { library, evaluation, depictions, plan } = props
  const sheet = benchSheetOf(library, evaluation, step)
  const trust = trustOfStep(library, plan, step)
  const of = (figure: FigureTrust['figure']): Marked =>
    trust.figures.find(one => one.figure === figure) ?? { mark: 'unknown', source: null }
  const record = recordFigure(transformationOf(library, step.transformation))
  const scale = trust.figures.find(one => one.figure === 'largest scale') ?? record
  const inPlace = yieldInPlace(library, plan, props.beneath ?? nothingBeneath, step.transformation)
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
            <MarkedFigure of={of('range of the yield')}>{sheet.yields.range}</MarkedFigure>){inPlace === null ? '' : `, ${inPlace}`}
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
      {sheet.charge.length > 0 && <StepCharge sheet={sheet} />}
      <p>
        <span data-mark="reckoned">{sheet.vessel}</span>{' '}
        {sheet.notes.length > 0 && <MarkedFigure of={scale}>{sheet.notes.join(' ')}</MarkedFigure>}
      </p>
      <StepOperations sheet={sheet} temperature={of('temperature')} times={of('times')} record={record} />
      <StepResults sheet={sheet} />
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
        <StepDangers sheet={sheet} record={record} {...props} />
      </section>
    </Leaf>
  )
}

/** More rows than this want closer lines to stay on one page; labels and meetings take more room than a line. */
const mostRows = 20
const isLong = ({ charge, operations, materials, meetings, batches, dangers }: BenchSheet): boolean =>
  charge.length + operations.length + materials.length + meetings.length + batches / 2 + dangers.join(' ').length / 120 > mostRows
