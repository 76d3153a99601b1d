import type { Source } from '../../core/library/source.ts'
import type { Working } from '../../core/plan/working.ts'
import { markWords } from '../../core/report/marks.ts'
import { openFigure } from '../state/view.ts'
import { workingFor } from '../state/working-for.ts'
import { workingId } from './figure.tsx'
import { Name } from './words.tsx'

/** The arithmetic behind the figure of this name, as a row below it; nothing while it is folded. */
export function WorkingRow({ name, span }: { readonly name: string; readonly span: number }) {
  if (openFigure.value !== name) return null
  const working = workingFor(name)
  return (
    <tr class="in" id={workingId(name)}>
      <td colSpan={span}>
        <div class="working">
          {working === null ? <p>The working is not at hand while the plan is reckoned again.</p> : <Arithmetic of={working} />}
        </div>
      </td>
    </tr>
  )
}

/** A column with its signs, the total under a rule, then what is to be known about it. */
function Arithmetic({ of: { rows, total, said, sources, seen } }: { readonly of: Working }) {
  return (
    <>
      <table>
        <tbody>
          {rows.map((row, at) => (
            <tr key={`${row.label} ${at}`}>
              <td class="op">{row.sign}</td>
              <td>
                <Name text={row.label} />
              </td>
              <td class={row.own ? 'n own' : 'n'}>{row.value}</td>
            </tr>
          ))}
          <tr class={rows.length > 0 ? 'tot' : ''}>
            <td class="op">{rows.length > 0 ? '=' : ''}</td>
            <td>
              <Name text={total.label} />
            </td>
            <td class="n">
              <b>{total.value}</b>
            </td>
          </tr>
        </tbody>
      </table>
      {said.length > 0 && <p>{said.join(' ')}</p>}
      {sources.length > 0 && (
        <p>
          Source{sources.length > 1 ? 's' : ''}
          {seen === null ? '' : ` (${seen === 'seen' ? 'seen there' : markWords[seen]})`}: {sources.map(sourceText).join('; ')}.
        </p>
      )}
    </>
  )
}

const sourceText = ({ citation }: Source): string => citation.replace(/\.$/, '')
