/** What a figure of an outcome line is said to be, where that is not the yield of this step on what was charged. */
export type Qualifier = 'excess' | 'purity' | 'conversion' | 'recovered' | 'steps' | 'method' | 'literature'

/** A piece of an outcome line that qualifies, and the percentage that it qualifies where one stands beside it. */
export interface Qualified {
  readonly kind: Qualifier
  readonly text: string
  /** As typed, with its sign; null where none stands beside it. */
  readonly share: string | null
}

const number = String.raw`\d+(?:[.,]\d+)?`
const share = String.raw`(?<![\p{L}\p{N}.,])(?:[<>≤≥~≈]\s*)?(?:${number}\s*(?:[-–—]|to)\s*)?${number}\s*(?:%|percent)`

/** Words for each, as pieces of regular expressions; the first that is found of each kind is taken. */
const words: readonly (readonly [Qualifier, string])[] = [
  [
    'excess',
    String.raw`e\.?e\.?(?![\p{L}\p{N}])|d\.e\.|(?<=(?:%|percent)\s*)de(?=\W*$|[),;])|enantiomeric excess|(?:[ed]\.r\.|[ed]r(?!\p{L}))(?:\s*(?:of|[:=])?\s*${number}\s*:\s*${number})?`,
  ],
  ['purity', String.raw`(?:(?:by\s+)?(?:GC|HPLC|LC|NMR)\s+)?(?:purity|assay)(?:\s+by\s+\w+)?|(?<=(?:%|percent)\s*)pure(?!\p{L})`],
  ['conversion', String.raw`conversion|conv\.`],
  [
    'recovered',
    String.raw`b\.?r\.?s\.?m\.?(?!\p{L})|(?:based|calculated|calcd?\.?|corrected)\s+(?:up)?(?:on|for|to)\s+(?:the\s+)?(?:recovered|unrecovered|unreacted|consumed|converted|reacted)(?!\p{L})[^,;)]*`,
  ],
  [
    'steps',
    String.raw`(?:over|for|in|after)\s+(?:the\s+)?(?:last\s+)?(?:two|three|four|five|six|all|both|several|\d+)\s+steps|(?:two|three|four|\d+)[\s-]+steps?|overall|total`,
  ],
  ['literature', String.raw`lit(?:erature|\.)?(?!\p{L})(?:\s+yield)?`],
  ['method', String.raw`(?:by\s+)?(?:GC|HPLC|LC|NMR)(?:[\s-]+yield|\s+analysis)?(?!\p{L})`],
]

const patterns = words.map(([kind, word]) => {
  const between = String.raw`[\s(.]*(?:of|was|is|yield|[:=])?[\s(]*`
  const before = String.raw`(?:(?:with|at|and)\s+)?(?<before>${share})[\s(,]*(?:yield\s+)?(?:${word})(?!${between}${share})`
  const after = String.raw`(?:(?:with|at|and)\s+)?(?<!\p{L})(?:${word})${between}(?<after>${share})`
  return [kind, new RegExp(`${before}|${after}|(?<!\\p{L})(?:${word})`, 'iu')] as const
})

/** Every qualifier of a line, and the line without them and what they qualify. */
export function qualifiersIn(line: string): { readonly found: readonly Qualified[]; readonly rest: string } {
  const found: Qualified[] = []
  let rest = line
  for (const [kind, pattern] of patterns)
    for (let match = pattern.exec(rest); match !== null; match = pattern.exec(rest)) {
      found.push({ kind, text: match[0].replace(/[\s(),]+/g, ' ').trim(), share: match.groups!.before ?? match.groups!.after ?? null })
      rest = `${rest.slice(0, match.index)} ; ${rest.slice(match.index + match[0].length)}`
    }
  return { found, rest }
}
