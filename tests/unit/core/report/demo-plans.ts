import type { Depiction } from '../../../../core/chemistry/drawing.ts'
import type { HazardTables } from '../../../../core/hazards/tables.ts'
import type { Library } from '../../../../core/library/library.ts'
import { evaluate } from '../../../../core/plan/evaluate.ts'
import type { Evaluation } from '../../../../core/plan/evaluation.ts'
import type { Plan } from '../../../../core/plan/plan.ts'
import { demoParts } from '../../../../server/library/demo.ts'
import { openWorkshop } from '../../../../server/library/workshop.ts'
import { drawingsFor } from '../../../../server/planning/drawings.ts'
import { planOf } from '../../../../server/planning/request.ts'
import { loadSolver } from '../../../../server/solver/highs.ts'

/** One plan with all that a report is made from. */
export interface Reported {
  readonly title: string
  readonly library: Library
  readonly tables: HazardTables
  readonly plan: Plan
  readonly evaluation: Evaluation
  readonly drawings: Readonly<Record<string, Depiction>>
}

/** A change of a demo plan and, where `solved` is false, no basket. */
interface Change {
  readonly with?: (plan: Plan) => Plan
  readonly solved?: boolean
}

/** The bundled demo's plan by its title in `ways-in.json`, reckoned. */
export async function reported(title: string, { with: changed = plan => plan, solved = true }: Change = {}): Promise<Reported> {
  const workshop = await openWorkshop([])
  const { library, tables } = workshop
  const { waysIn, shelf, packs, settings } = demoParts()
  const way = waysIn.find(one => one.title === title)!
  const choosing = { avoid: [], avoidStep: [], mustPass: [], avoidCode: [], avoidList: [], ownedOnly: false, make: [] }
  const asked = {
    from: way.start.material,
    haveG: way.start.massG,
    goals: way.goals.map(({ target, amount }) => ({ target, amount })),
    steps: null,
    route: 1,
    choosing,
    side: { shelf, packs, settings: { ...settings, windows: way.windows ?? settings.windows } },
    seed: 1,
    title,
  }
  const plan = changed(planOf(workshop, asked))
  const evaluation = evaluate({ library, tables, traits: workshop.traits(), plan, solver: solved ? await loadSolver() : null })
  if ('stopped' in evaluation) throw new Error(`${title} is stopped`)
  return { title, library, tables, plan, evaluation, drawings: drawingsFor(library, plan) }
}

export const demoTitles = [
  'Benzoin downstream',
  'Castor oil to a nylon',
  'Copper scrap round its salts',
  'Cinnamon bark to its oil and on',
] as const

/** All four, in the order of their titles. */
export const allReported = (): Promise<readonly Reported[]> => Promise.all(demoTitles.map(title => reported(title)))
