import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { h } from 'preact'
import { renderToString } from 'preact-render-to-string'
import type { Depiction } from '../../core/chemistry/drawing.ts'
import type { Beneath } from '../../core/library/beneath.ts'
import type { Library } from '../../core/library/library.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { Reach } from '../../core/report/answers.ts'
import type { ComparedWay } from '../../core/report/way-hazards.ts'
import { Pack } from '../../web/print/pack.tsx'
import { dataFolder } from '../library/bundled.ts'
import { fontRules } from './fonts.ts'

export interface PackInput {
  readonly library: Library
  readonly plan: Plan
  readonly evaluation: Evaluation
  /** How materials are drawn, by id. */
  readonly drawings: Readonly<Record<string, Depiction>>
  /** ISO date that stands in the running head. */
  readonly today: string
  readonly version?: number
  /** What own records of the bench stand in place of. */
  readonly beneath?: Beneath
  readonly reach?: Reach
  /** How the ways taken stand among those that were looked for, as sentences. */
  readonly choice?: readonly string[]
  /** That the plan uses what was asked to be kept clear of, as a sentence. */
  readonly breach?: string | null
  /** The ways that were compared with what can hurt on each. */
  readonly ways?: readonly ComparedWay[]
  /** What became of the library since the plan was saved. */
  readonly libraryChanges?: readonly Problem[]
}

/** Style sheets of the pack, from the root of the project. */
const sheets = ['web/map/scheme/scheme.css', 'web/map/staircase.css', 'web/print/print.css']

/**
 * The pack as one HTML file that needs nothing else: style sheets, drawings and the font stand inside it. It prints on A4 and Letter from any
 * Chromium; on the screen it reads as one long page.
 *
 * @throws Error where a style sheet or the font is missing: a broken installation
 */
export function packHtml({ drawings, ...input }: PackInput): string {
  const depictions = new Map(Object.entries(drawings))
  const body = renderToString(h(Pack, { ...input, depictions }))
  const css = [fontRules(), ...sheets.map(sheet => readFileSync(join(projectRoot(), sheet), 'utf8'))].join('\n')
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(input.plan.title === '' ? 'Plan' : input.plan.title)}</title>
<style>
${css}
</style>
</head>
<body>
${body}
</body>
</html>
`
}

/** The folder that holds routes-data, web and node_modules, from the sources and from the built server alike. */
const projectRoot = (): string => dirname(dataFolder())

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')
