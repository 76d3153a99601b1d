import { Fragment } from 'preact'
import { workingFor } from '../state/working-for.ts'
import { openFigure } from '../state/view.ts'
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
          {working === null ? (
            <p>The working is not at hand while the plan is reckoned again.</p>
          ) : (
            <>
              <table>
                <tbody>
                  {working.lines.map((line, at) => (
                    <Fragment key={`${line.text} ${at}`}>
                      <tr class={line.op === '=' && at === working.lines.length - 1 ? 'tot' : ''}>
                        <td class="op">{line.op}</td>
                        <td>
                          <Name text={line.text} />
                        </td>
                        <td class="n">{line.total ? <b>{line.value}</b> : line.value}</td>
                      </tr>
                    </Fragment>
                  ))}
                </tbody>
              </table>
              {working.notes.map(note => (
                <p key={note}>{note}</p>
              ))}
            </>
          )}
        </div>
      </td>
    </tr>
  )
}
