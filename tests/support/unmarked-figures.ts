/** Elements whose numbers are no figures: drawings, hazard codes, structural formulas, what a source is called. */
const passedOver = new Set(['style', 'title', 'svg', 'head'])
const passedOverClasses = new Set(['codes', 'edge', 'cited'])

/** A number with its unit, or a range of numbers with one. */
const withUnit =
  /\d[\d.,\u202f–]*[\s\u00a0\u202f]?(kg|mg|µg|g|mL|L|mmol|mol|eq|h|min|hours?|days?|%|°C|ppm|m³|mg\/m3|g\/mol|g\/mL|×)(?![A-Za-z0-9])|[€$£][\s\u00a0]?\d/
/** A cell of a column of numbers. */
const bare = /^[\s\u00a0]*[−+]?\d[\d.,\u202f]*[\s\u00a0+]*$/

interface Open {
  readonly name: string
  readonly classes: readonly string[]
  readonly mark: string | null
}

/**
 * Figures of a page that nothing marks: neither the element they stand in nor one round it says by `data-mark` how sure it is.
 *
 * @param html well-formed
 * @param names of materials, which hold numbers of their own: "nitric acid, 70 %"
 * @returns each with the words it stands in
 */
export function unmarkedFigures(html: string, names: readonly string[] = []): readonly string[] {
  const longestFirst = [...names].filter(name => /\d/.test(name)).sort((a, b) => b.length - a.length)
  const bared = (text: string): string =>
    longestFirst.reduce(
      (rest, name) => rest.replaceAll(name, '').replaceAll(name.charAt(0).toUpperCase() + name.slice(1), ''),
      text.replaceAll('\u00ad', ''),
    )
  const open: Open[] = []
  const found: string[] = []
  for (const [, closing, name = '', attributes = '', written = ''] of html.matchAll(/<(\/?)([a-zA-Z0-9]+)((?:"[^"]*"|[^">])*)>|([^<]+)/g)) {
    if (name !== '') {
      if (closing) open.pop()
      else if (!attributes.endsWith('/') && !['col', 'br', 'meta', 'input'].includes(name))
        open.push({
          name,
          classes: (/class="([^"]*)"/.exec(attributes)?.[1] ?? '').split(' '),
          mark: /data-mark="([^"]*)"/.exec(attributes)?.[1] ?? null,
        })
      continue
    }
    const text = bared(written)
    if (open.some(one => passedOver.has(one.name) || one.classes.some(c => passedOverClasses.has(c)))) continue
    const isFigure = withUnit.test(text) || (bare.test(text) && open.some(one => one.classes.includes('n')))
    if (isFigure && !open.some(one => one.mark !== null && one.mark !== ''))
      found.push(
        `${open
          .map(one => one.classes.join('.') || one.name)
          .slice(-3)
          .join(' ')}: ${text.trim()}`,
      )
  }
  return found
}
