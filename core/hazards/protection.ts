import type { Known, Protection } from './hazard-list.ts'

interface Rule {
  readonly what: Protection['what']
  readonly do: string
  readonly codes: RegExp
}

/**
 * What the codes ask for at a bench. Common practice, no source; the data sheet decides. No glove material is ever named here: only a source
 * can name one.
 */
const rules: readonly Rule[] = [
  { what: 'eyes', do: 'Goggles that seal; a face shield for pouring.', codes: /^(H314|H318|EUH070)$/ },
  { what: 'eyes', do: 'Safety glasses with side shields.', codes: /^(H319|H320|H315|H335)$/ },
  {
    what: 'hands',
    do: 'Gloves: choose the material by the data sheet.',
    codes: /^(H31[0-7]|H340|H350i?|H360.*|EUH066|H372|H373|H341|H351|H361.*)$/,
  },
  { what: 'skin', do: 'Closed lab coat, long trousers, closed shoes; wash splashes off at once.', codes: /^(H310|H311|H314)$/ },
  {
    what: 'air',
    do: 'Work in the hood.',
    codes:
      /^(H33[0-6]|H340|H341|H350i?|H351|H360.*|H361.*|H37[0-3]|H224|H225|H220|EUH029|EUH031|EUH032|EUH071|H300\+H330|H310\+H330|H301\+H331|H311\+H331)$/,
  },
  { what: 'ignition', do: 'No flame, spark or hot surface near it.', codes: /^(H22[0-8]|H24[0-2]|H25[0-2]|H26[01]|EUH01[489])$/ },
  { what: 'ignition', do: 'Keep away from everything that burns.', codes: /^H27[0-2]$/ },
]

/**
 * Protection for a material by its codes, the stronger of two that concern the same thing. What is not known is treated as harmful until its
 * data sheet has been read.
 */
export function protectionFor(codes: readonly string[], known: Known): readonly Protection[] {
  if (known === 'unknown')
    return [
      { what: 'eyes', do: 'Goggles that seal, until its data sheet is read.', codes: [] },
      { what: 'hands', do: 'Gloves: choose the material by the data sheet.', codes: [] },
      { what: 'air', do: 'Work in the hood, until its data sheet is read.', codes: [] },
    ]
  const found: Protection[] = []
  for (const rule of rules) {
    const asking = codes.filter(code => rule.codes.test(code))
    const stronger = rule.what === 'eyes' && found.some(one => one.what === 'eyes')
    if (asking.length > 0 && !stronger) found.push({ what: rule.what, do: rule.do, codes: asking })
  }
  return found
}
