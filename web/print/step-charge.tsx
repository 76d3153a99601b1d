import type { BenchSheet, ChargeRow } from '../../core/report/bench-sheet.ts'
import { counted } from '../../core/report/words.ts'
import { Marked as MarkedFigure } from '../parts/mark.tsx'
import { Name } from '../parts/words.tsx'
import { Blank, Tick } from './parts.tsx'

/** So many batches get a column of blanks each; more share one. */
const mostColumns = 3

/** What is charged, with blanks for what is really weighed. */
export function StepCharge({ sheet }: { readonly sheet: BenchSheet }) {
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
