/**
 * Makes web/map/scheme/text-widths.generated.ts: advance widths and kerning of the page's face, so that a scheme can be laid out
 * where no browser measures text (worker, server, print). Run by hand when the font package changes: node scripts/text-widths.js
 *
 * fontkit's getVariation() fails on WOFF2, so the files are unpacked first.
 */
import { readFile, writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { create } from 'fontkit'
import wawoff2 from 'wawoff2'

const root = fileURLToPath(new URL('..', import.meta.url))
const files = `${root}node_modules/@fontsource-variable/ysabeau-office/files/`
// In the order in which a browser would look: the Latin file first, then what it lacks.
const subsets = ['latin', 'latin-ext', 'greek', 'math', 'symbols']
const faces = [
  ['460', 'normal', 460],
  ['560', 'normal', 560],
  ['600', 'normal', 600],
  ['640', 'normal', 640],
  ['680', 'normal', 680],
  ['460i', 'italic', 460],
]
const ascii = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i)).join('')
const others = '\u00a0–—−·×÷°±≥≤≈→⇌′″‘’“”…€£§µμ½²³⁺⁻†•äöüÄÖÜßéèêëáàâãåæøœçñíîïóôúûÅØÉαβγδεζηθκλνπρστφχψωΔΣΩ\u2009\u202f'
const chars = [...new Set(ascii + others)]
const features = ['tnum', 'lnum', 'kern']

async function unpacked(subset, style) {
  const woff2 = await readFile(`${files}ysabeau-office-${subset}-wght-${style}.woff2`)
  return create(Buffer.from(await wawoff2.decompress(woff2)))
}

async function table(style, wght) {
  const fonts = []
  for (const subset of subsets) fonts.push((await unpacked(subset, style)).getVariation({ wght }))
  const homeOf = char => fonts.find(font => font.hasGlyphForCodePoint(char.codePointAt(0)))
  const widthIn = (font, text) => {
    const run = font.layout(text, features)
    return (run.advanceWidth / font.unitsPerEm) * 1000
  }
  const missing = []
  const advance = new Map()
  for (const char of chars) {
    const font = homeOf(char)
    if (font) advance.set(char, widthIn(font, char))
    else missing.push(char)
  }
  const kern = []
  for (const [a, widthA] of advance) {
    for (const [b, widthB] of advance) {
      const font = homeOf(a)
      if (font !== homeOf(b)) continue
      const pair = Math.round(widthIn(font, a + b) - widthA - widthB)
      if (pair !== 0) kern.push([a + b, pair])
    }
  }
  return { missing, advance, kern }
}

const made = []
for (const [name, style, wght] of faces) {
  const { missing, advance, kern } = await table(style, wght)
  const row = {
    advances: chars.map(char => (advance.has(char) ? Math.round(advance.get(char)) : -1)),
    kern: Object.fromEntries(kern),
  }
  made.push(`  '${name}': ${JSON.stringify(row)},`)
  console.log(`${name}: ${advance.size} characters, ${kern.length} kern pairs, not in the font: ${missing.join(' ') || 'none'}`)
}
const text = `// Made by scripts/text-widths.js from @fontsource-variable/ysabeau-office (SIL OFL 1.1). Thousandths of the font size; -1 = not in the font.
export interface FaceWidths { readonly advances: readonly number[]; readonly kern: Readonly<Record<string, number>> }
export const measuredCharacters = ${JSON.stringify(chars.join(''))}
export const faceWidths: Readonly<Record<string, FaceWidths>> = {
${made.join('\n')}
}
`
await writeFile(`${root}web/map/scheme/text-widths.generated.ts`, text)
