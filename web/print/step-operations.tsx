import type { Marked } from '../../core/library/mark.ts'
import type { BenchSheet } from '../../core/report/bench-sheet.ts'
import { Marked as MarkedFigure, MarkSign } from '../parts/mark.tsx'
import { Blank, Tick } from './parts.tsx'

/** Words that say that something takes its time, and that it is hot or cold meanwhile. */
const lasts = /\b(reflux|boil|heat|warm|stir|stand|cool|chill|dry|distil|steep|reacts?|hold|keep|overnight|min|h)\b/i
const hasTemperature = /\b(reflux|boil|heat|warm|hot|cool|chill|cold|ice|distil|bath)\b/i

/** What is done, one line each, with blanks for the hour and the temperature. */
export function StepOperations({
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
