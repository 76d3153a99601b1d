/** Abbreviations that label writers use for one word. Applied to the index and to what is looked up alike. Common practice, no source. */
const words: readonly (readonly [RegExp, string])[] = [
  [/\bconc(?:d|entr?)?\.?(?=\s|$)/gi, 'concentrated'],
  [/\bdil\.?(?=\s|$)/gi, 'dilute'],
  [/\bsat(?:d|urd|'d)?\.?(?=\s|$|\))/gi, 'saturated'],
  [/\baq\.?(?=\s|$|\))/gi, 'aqueous'],
  [/\banhyd?(?:r)?\.?(?=\s|$|\))/gi, 'anhydrous'],
  [/\babs\.?(?=\s|$)/gi, 'absolute'],
  [/\bglac\.?(?=\s|$|\))/gi, 'glacial'],
  [/\bsoln?\.?(?=\s|$|\))/gi, 'solution'],
  [/sulph/gi, 'sulf'],
  [/\bice-water\b/gi, 'ice water'],
  [/aluminum/gi, 'aluminium'],
  [/\bcesium/gi, 'caesium'],
  [/colouri[sz]ing|colori[sz]ing/gi, 'colorizing'],
]

const greek: readonly (readonly [RegExp, string])[] = [
  [/α/g, 'alpha'],
  [/β/g, 'beta'],
  [/γ/g, 'gamma'],
  [/δ/g, 'delta'],
  [/ω/g, 'omega'],
]

/** A strength as it stands in names: "3 M", "30 %", "6 N". */
const strengthUnits: readonly (readonly [RegExp, string])[] = [
  [/(\d)\s*(?:%|percent\b|per cent\b|pct\b|proz\.?(?=\s|$))/gi, '$1 %'],
  [/%-?ige[rsn]?\b/gi, '%'],
  [/(\d)\s*(?:mol\s*\/\s*l|mol\s*l-1|mol\s*dm-3|molar)(?![a-z])/gi, '$1 M'],
  [/(\d)\s*normal(?![a-z])/gi, '$1 N'],
  [/(\d)\s*([MN])(?![A-Za-z0-9])(?!,[A-Z])/g, '$1 $2'],
  [/(\d),(\d+)(?= [%MN])/g, '$1.$2'],
]

/**
 * A name in the form in which two spellings of it meet: one kind of quote, dash and dot, plain digits, abbreviations and spelling variants
 * unified, single blanks. Capitals are kept, since Co and CO differ.
 */
export function nameKey(text: string): string {
  let key = text
    .normalize('NFC')
    .replace(/[\u200b-\u200f\u202a-\u202e\u2060\ufeff]/g, '')
    .replace(/[’‘′`´]/g, "'")
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/[₀-₉]/g, digit => String(digit.charCodeAt(0) - 0x2080))
    .replace(/(?<=[A-Z][A-Za-z0-9()[\]]*)\s*(?:,\s*|\s[x×]\s*|\s)(?=\d+\s*H2O\b)/g, '.')
    .replace(/(?<=[A-Z][A-Za-z0-9()[\]]*\.\d+)\s+(?=H2O\b)/g, '')
    .replace(/(?<=[A-Za-z0-9)\]])\s*[·•∙⋅‧*]\s*(?=[0-9A-Z])/g, '.')
  for (const [pattern, instead] of [...greek, ...strengthUnits, ...words]) key = key.replace(pattern, instead)
  return key
    .replace(/\s+/g, ' ')
    .replace(/^[\s,;:.]+(?!\d)|[\s,;:.]+$/g, '')
    .trim()
}
