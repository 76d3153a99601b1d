import type { Library } from '../../core/library/library.ts'
import type { Goal, GoalAmount, LogEntry, Plan } from '../../core/plan/plan.ts'
import { defaultSettings, type Settings } from '../../core/plan/settings.ts'
import { workingOrder } from '../../core/route/working-order.ts'

const copper = 'benzil-copper-ammonium-nitrate'

/** Steps from benzoin to each target of the demo plan, by the copper oxidation. */
export const benzoinSteps: Readonly<Record<string, readonly string[]>> = {
  benzil: [copper],
  lophine: [copper, 'lophine'],
  '2-3-diphenylquinoxaline': [copper, 'diphenylquinoxaline'],
  tetraphenylcyclopentadienone: [copper, 'tetraphenylcyclopentadienone-koh'],
  hexaphenylbenzene: [
    copper,
    'tetraphenylcyclopentadienone-koh',
    'benzil-dihydrazone',
    'diphenylacetylene-dihydrazone',
    'hexaphenylbenzene',
  ],
}

export const mass = (massG: number): GoalAmount => ({ kind: 'mass', massG })
export const share = (fraction: number): GoalAmount => ({ kind: 'share', fraction })
export const rest: GoalAmount = { kind: 'rest' }

/** A goal from benzoin; `steps` in place of the usual ones. */
export const benzoinGoal = (library: Library, target: string, amount: GoalAmount, steps = benzoinSteps[target]!): Goal => ({
  target,
  amount,
  route: { start: 'benzoin', target, steps: workingOrder(library, 'benzoin', steps) },
})

/** A plan from 24 g of benzoin with what a test leaves out filled in. */
export const benzoinPlan = (
  goals: readonly Goal[],
  own: Partial<Omit<Plan, 'settings'>> & { settings?: Partial<Settings> } = {},
): Plan => ({
  title: 'a test',
  start: { material: 'benzoin', massG: 24 },
  shelf: [],
  packs: null,
  log: [],
  seed: 1,
  ...own,
  goals,
  settings: { ...defaultSettings, ...own.settings },
})

/** A log entry of the first oxidation with what a test leaves out filled in. */
export const logEntry = (own: Partial<LogEntry>): LogEntry => ({
  id: 'run-1',
  step: copper,
  date: null,
  batch: 1,
  chargedG: null,
  weighedG: 20,
  dampPercent: 0,
  purity: null,
  failed: false,
  note: '',
  replaces: null,
  ...own,
})
