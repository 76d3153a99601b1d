import { type FigureTrust, materialFigures, stepFigures } from '../library/figure-trust.ts'
import { type Library, transformationOf } from '../library/library.ts'
import type { Trust } from '../library/trust.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import type { Plan } from '../plan/plan.ts'
import type { ChargedStep } from '../route/charged.ts'
import { nameIn } from './names.ts'
import { capital, listed } from './words.ts'

/** How sure the figures of one step of a plan are. */
export interface StepTrust {
  /** Charges, yield and times of the transformation; a yield of the plan's own, or moved by logged runs, is of the own bench. */
  readonly figures: readonly FigureTrust[]
  /** Hazards and densities of what it charges and makes. */
  readonly materials: readonly { readonly material: string; readonly figures: readonly FigureTrust[] }[]
}

export function trustOfStep(library: Library, plan: Pick<Plan, 'settings' | 'log'>, step: ChargedStep): StepTrust {
  const runs = step.done?.ownRuns ?? 0
  const typed = plan.settings.yields[step.transformation] !== undefined
  const own = typed ? 'typed in this plan' : runs > 0 ? `${runs === 1 ? 'one run' : `${runs} runs`} logged in this plan` : null
  const ids = [...new Set([...step.charges.map(line => line.material), step.makes])]
  return {
    figures: stepFigures(transformationOf(library, step.transformation)).map(one =>
      one.figure === 'yield' && own !== null
        ? { ...one, trust: 'own bench', source: one.source === null ? own : `${own}, over ${one.source}` }
        : one,
    ),
    materials: ids.flatMap(material => {
      const record = library.materials.get(material)
      return record === undefined ? [] : [{ material, figures: materialFigures(record) }]
    }),
  }
}

/** How sure every figure is that a plan rests on, step by step and material by material: for programs. */
export function trustOfPlan(library: Library, plan: Pick<Plan, 'settings' | 'log'>, { steps }: Pick<Evaluation, 'steps'>) {
  const rows = steps.map(step => ({ step: step.number, transformation: step.transformation, ...trustOfStep(library, plan, step) }))
  const materials = new Map(rows.flatMap(row => row.materials.map(one => [one.material, one] as const)))
  return { steps: rows.map(({ materials: _m, ...row }) => row), materials: [...materials.values()] }
}

/**
 * The same in one line for print: "Charges and yield: seen. Times: estimated. Density remembered: ethanol. Hazards unknown: lophine." Of
 * materials only what was not seen is named; nothing is said to be seen that was not.
 */
export function trustLine(library: Library, { figures, materials }: StepTrust): string {
  const byWord = new Map<string, string[]>()
  for (const { figure, trust, source } of figures) {
    const word = wordOf(trust, source)
    byWord.set(word, [...(byWord.get(word) ?? []), figure])
  }
  const own = [...byWord].map(([word, of]) => `${capital(listed(of))}: ${word}.`)
  const weak = (['density', 'hazards'] as const).flatMap(figure =>
    (['remembered', 'unknown'] as const).flatMap(trust => {
      const named = materials.filter(one => one.figures.some(of => of.figure === figure && of.trust === trust))
      return named.length === 0 ? [] : [`${capital(figure)} ${trust}: ${named.map(one => nameIn(library)(one.material)).join('; ')}.`]
    }),
  )
  return [...own, ...(weak.length === 0 ? ['Densities and hazards: seen.'] : weak)].join(' ')
}

const wordOf = (trust: Trust, source: string | null): string => (source === 'estimated from the operations' ? 'estimated' : trust)
