import type { Drawing } from '../../../core/chemistry/drawing.ts'
import { type Mark, markText } from '../mark.ts'
import { readingOf } from './reading.ts'
import { elMarks } from './scheme-marks.ts'
import type { SchemeIn, SchemeOut } from './types.ts'

/** The scheme as SVG text: for a printed file made where there is no page. Styled by scheme.css, like the one on the page. */
export function schemeText(input: SchemeIn, out: SchemeOut, drawings: Readonly<Record<string, Drawing>>, label: string): string {
  const spoken = [label, ...readingOf(input, out).parts.map(part => part.label)].join('. ')
  const kids = out.els.flatMap(el => elMarks(el, cell => drawings[cell]))
  const attrs: Mark['attrs'] = {
    xmlns: 'http://www.w3.org/2000/svg',
    class: 'scheme still',
    width: out.w,
    height: out.h,
    viewBox: `0 0 ${out.w} ${out.h}`,
    role: 'img',
    'aria-label': spoken,
  }
  return markText({ tag: 'svg', attrs, kids })
}
