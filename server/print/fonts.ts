import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

/** The scripts that a plan is written in: names in Latin letters, Greek for locants, signs for figures. */
const subsets = ['latin', 'greek', 'math'] as const
const families = [
  { sheet: 'wght.css', style: 'normal' },
  { sheet: 'wght-italic.css', style: 'italic' },
] as const

let rules: string | null = null

/**
 * The @font-face rules of the pack's font with the font files inside, as data addresses; about 250 kB, read once a process.
 *
 * @throws Error where the font's package is missing or no longer has these files
 */
export function fontRules(): string {
  if (rules !== null) return rules
  const folder = dirname(createRequire(import.meta.url).resolve('@fontsource-variable/ysabeau-office/package.json'))
  rules = families
    .flatMap(({ sheet, style }) => {
      const text = readFileSync(join(folder, sheet), 'utf8')
      return subsets.map(subset => {
        const name = `ysabeau-office-${subset}-wght-${style}.woff2`
        const face = text.split('@font-face').find(rule => rule.includes(`/${name})`))
        if (face === undefined) throw new Error(`The font package no longer has ${name}.`)
        const data = readFileSync(join(folder, 'files', name)).toString('base64')
        const end = face.indexOf('}')
        return `@font-face${face.slice(0, end).replace(/url\([^)]*\)/, `url(data:font/woff2;base64,${data})`)}}`
      })
    })
    .join('\n')
  return rules
}
