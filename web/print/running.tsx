import { cautionLine, whoMayDo } from '../../core/report/cautions.ts'
import { longDate } from '../../core/report/dates.ts'

export interface Running {
  readonly title: string
  readonly bench: string
  /** ISO date of printing. */
  readonly today: string
  readonly version?: number
}

/** Text as a CSS string inside a style element: quotes, line ends and the end of the element itself are written as escapes. */
const cssString = (text: string): string => `"${text.replace(/[\\"<>\n\r\f]/g, sign => `\\${sign.codePointAt(0)!.toString(16)} `)}"`

const line = (length: number): string => '_'.repeat(length)

/**
 * Head and foot of every page, in the margin boxes of the page itself, so that they stand on pages that only their printing brings forth.
 * Margin boxes hold text and no elements, which is why the plan's name is written into a style sheet.
 */
export function pageRules({ title, bench, today, version }: Running): string {
  const head = [title, bench].filter(part => part !== '').join(', ')
  const when = [version === undefined ? '' : `version ${version}`, longDate(today)].filter(part => part !== '').join('      ')
  const foot = (who: string): string => cssString(`${cautionLine}\n${who} ${line(38)}      ${whoMayDo.with} ${line(28)}`)
  return `@page { @top-left { content: ${cssString(head)} } @top-right { content: ${cssString(`${when}      page `)} counter(page) " of " counter(pages) } @bottom-left { content: ${foot(whoMayDo.plan)} } }
@page step { @bottom-left { content: ${foot(whoMayDo.step)} } }`
}

/** The rules as an element. */
export const PageRules = (running: Running) => <style dangerouslySetInnerHTML={{ __html: pageRules(running) }} />
