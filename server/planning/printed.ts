import { type Breach, breachOf } from '../../core/choose/breach.ts'
import { icalendarOf } from '../../core/days/icalendar.ts'
import { type Beneath, beneathOf, nothingBeneath } from '../../core/library/beneath.ts'
import type { Choosing } from '../../core/plan/choosing.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { type Problem, paragraph } from '../../core/problem/problem.ts'
import { breachSentence } from '../../core/report/breach-text.ts'
import { planCsv } from '../../core/report/csv.ts'
import { planText } from '../../core/report/text.ts'
import { badOption } from '../commands/command.ts'
import type { Workshop } from '../library/workshop.ts'
import { waysCompared } from './ways-compared.ts'

/**
 * A plan as the file that the ending of its name asks for: pack, table, text or calendar.
 *
 * @param today ISO date
 * @param changes  what became of the library since the plan was saved
 * @param choice   how the ways taken stand among those that were looked for, as sentences
 * @param choosing how they were looked for; absent = as the plan says
 * @throws Refusal for any other ending, and for a calendar of a plan without dates
 */
export async function printed(
  path: string,
  workshop: Workshop,
  plan: Plan,
  evaluation: Evaluation,
  today: string,
  changes: readonly Problem[] = [],
  choice: readonly string[] = [],
  choosing?: Choosing,
): Promise<string> {
  const { library } = workshop
  const beneath = beneathIn(workshop, plan)
  const breach = breachSentence(breachIn(workshop, plan))
  const ending = /\.[a-z]+$/i.exec(path)?.[0].toLowerCase()
  if (ending === '.txt')
    return [...(breach === null ? [] : [breach, '']), ...changes.map(paragraph), planText(library, plan, evaluation, choice, beneath)].join(
      '\n',
    )
  if (ending === '.csv') return planCsv(library, plan, evaluation)
  if (ending === '.ics') return calendar(path, workshop, plan, evaluation, today)
  if (ending === '.html') {
    // Drawing and laying out load the toolkit, the fonts and the page's parts: only for those who print.
    const [{ packHtml }, { drawingsFor }, ways] = await Promise.all([
      import('../print/pack.ts'),
      import('./drawings.ts'),
      waysCompared(workshop, plan, evaluation, choosing),
    ])
    return packHtml({
      library,
      plan,
      evaluation,
      drawings: drawingsFor(library, plan),
      today,
      libraryChanges: changes,
      beneath,
      choice,
      breach,
      ways,
    })
  }
  throw badOption(
    '--print',
    `is "${path}".`,
    'The ending tells the form.',
    'Name a file that ends in .html, .csv, .txt or .ics.',
    'print-form',
  )
}

/** What own records stand in place of; a plan that keeps its records is not about that. */
export const beneathIn = ({ library, beneath }: Workshop, { keepsRecords }: Plan): Beneath =>
  keepsRecords === true ? nothingBeneath : beneathOf(library, beneath)

/** What the plan uses against what it was looked for with; only a plan out of a file can. */
function breachIn(workshop: Workshop, { choosing, settings, goals }: Plan): Breach | null {
  if (choosing === undefined) return null
  const steps = goals.flatMap(goal => goal.route.steps.map(step => step.transformation))
  return breachOf({ library: workshop.library, traits: workshop.traits(), settings, options: choosing, steps })
}

function calendar(path: string, { library }: Workshop, plan: Plan, evaluation: Evaluation, today: string): string {
  const id = plan.title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
  const text = icalendarOf(library, evaluation.days, id === '' ? 'plan' : id, plan.title, `${today}T00:00:00Z`)
  if (text !== null) return text
  throw badOption(
    '--print',
    `is "${path}", and the plan has no dates.`,
    'A calendar needs bench windows, a first day, and steps that fit them.',
    'State both in --settings, or print a .txt, which tells the hours.',
    'no-dates',
  )
}
