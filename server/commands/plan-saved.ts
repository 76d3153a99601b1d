import { planChanges } from '../../core/plan/changes.ts'
import { changesSince } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Workshop } from '../library/workshop.ts'
import { cheapestPlan, chosenWords, limitsFrom, wantsCheapest } from '../planning/cheapest.ts'
import { choosingFrom } from '../planning/choosing.ts'
import { planIn, workshopOf } from '../planning/plan-file.ts'
import { badOption, type Given, type Terminal } from './command.ts'
import { inOptions } from './option-words.ts'
import type { Asked } from './plan-asked.ts'

/** A plan out of a file, by its own records or by the library's. */
export async function planSaved(workshop: Workshop, file: string, given: Given, terminal: Terminal): Promise<Asked> {
  for (const name of [
    'from',
    'to',
    'have',
    'want',
    'steps',
    'route',
    'shelf',
    'packs',
    'settings',
    'confidence',
    'reserve',
    'retained-sample',
    'recovery',
    'groups',
  ] as const) {
    if (given.text(name) !== undefined)
      throw badOption(
        `--${name}`,
        'does not go with a plan file.',
        `"${file}" is taken for a plan file, which holds it already.`,
        'Leave one of the two out; a value with spaces belongs in quotes, as in --have "24 g".',
        'option-clash',
      )
  }
  const read = await planIn(workshop, file, terminal)
  const opened = { ...read, plan: onRecords(read.plan, given) }
  const { plan } = opened
  const changes = changesSince(workshop.library, opened).map(inOptions)
  if (!wantsCheapest(given)) return { plan, changes, opened, note: null }
  const limits = limitsFrom(given, plan.packs?.currency ?? 'EUR')
  const answer = await cheapestPlan(workshopOf(workshop, opened), plan, plan.goals, choosingFrom(given), limits)
  return { ...answer, changes, opened, note: chosenWords(workshopOf(workshop, opened), answer) }
}

/** A saved plan as it is, or told to go by its own records or by the library. */
function onRecords(plan: Plan, given: Given): Plan {
  const records = given.text('records')
  if (records === undefined) return plan
  if (records !== 'old' && records !== 'new')
    throw badOption(
      '--records',
      `is "${records}".`,
      'A plan goes by the records it was saved with, or by the library.',
      'Write old or new.',
    )
  const { keepsRecords: _keeps, ...rest } = plan
  return records === 'old' ? { ...rest, keepsRecords: true } : rest
}

/** Held against an earlier file: one version after it, with what changed. */
export async function sinceEarlier(workshop: Workshop, given: Given, terminal: Terminal, asked: Asked): Promise<Asked> {
  const since = given.text('since')
  if (since === undefined) return asked
  const { plan: before } = await planIn(workshop, since, terminal)
  const changed = planChanges(workshop.library, before, asked.plan)
  const number = Math.max(asked.plan.edition?.number ?? 1, (before.edition?.number ?? 1) + (changed.length > 0 ? 1 : 0))
  return { ...asked, plan: { ...asked.plan, edition: { number, changed } } }
}
