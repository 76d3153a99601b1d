/** One mark of a picture: an SVG element as plain data, so that page and paper are drawn by the same code. */
export interface Mark {
  readonly tag: string
  readonly attrs: Readonly<Record<string, string | number>>
  readonly kids?: readonly (Mark | string)[]
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** The mark as SVG text. */
export function markText(mark: Mark): string {
  const attrs = Object.entries(mark.attrs)
    .map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
    .join('')
  const kids = (mark.kids ?? []).map(kid => (typeof kid === 'string' ? escaped(kid) : markText(kid))).join('')
  return kids === '' ? `<${mark.tag}${attrs}/>` : `<${mark.tag}${attrs}>${kids}</${mark.tag}>`
}
