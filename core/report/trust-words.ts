import { asLabelled } from '../hazards/mixture.ts'
import { type FigureTrust, materialFigures, stepFigures } from '../library/figure-trust.ts'
import { type Library, transformationOf } from '../library/library.ts'
import { type Mark, trustOfMark } from '../library/mark.ts'
import type { Trust } from '../library/trust.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { lineMark } from '../plan/line-mark.ts'
import type { Plan } from '../plan/plan.ts'
import type { ChargedStep } from '../route/charged.ts'
import { nameIn } from './names.ts'
import { capital, listed } from './words.ts'

/** How sure the figures of one step of a plan are. */
export interface StepTrust {
  /** Charges, yield, times and the rest of the transformation; a yield of the plan's own, or moved by logged runs, says so. */
  readonly figures: readonly FigureTrust[]
  /** Hazards, density and all else that is known of what it charges and makes. */
  readonly materials: readonly { readonly material: string; readonly figures: readonly FigureTrust[] }[]
}

export function trustOfStep(library: Library, plan: Pick<Plan, 'settings' | 'log'>, step: ChargedStep): StepTrust {
  const runs = step.done?.ownRuns ?? 0
  const typed = plan.settings.yields[step.transformation] !== undefined
  const own = typed ? 'typed in this plan' : runs > 0 ? `${runs === 1 ? 'one run' : `${runs} runs`} logged in this plan` : null
  const transformation = transformationOf(library, step.transformation)
  // All that the hazard list holds of the step, with the labels that it shows: what forms beside the product can hurt too.
  const formed = [...transformation.products, ...transformation.gasEvolved].map(one => one.compound)
  const ids = [...new Set([...step.charges.map(line => line.material), step.makes, ...formed])]
  return {
    figures: stepFigures(transformation).map(one =>
      (one.figure === 'yield' || one.figure === 'range of the yield') && own !== null
        ? {
            ...one,
            trust: 'own bench',
            mark: typed ? 'typed' : 'own bench',
            source: one.source === null ? own : `${own}, over ${one.source}`,
          }
        : one,
    ),
    materials: ids.flatMap(material => {
      const record = library.materials.get(material)
      return record === undefined ? [] : [{ material, figures: materialFigures(asLabelled(library, record)) }]
    }),
  }
}

/** How sure one line of a step's charge is. */
export interface LineTrust {
  readonly material: string
  readonly trust: Trust
  readonly mark: Mark
  readonly source: string | null
}

/** How sure every figure is that a plan rests on, step by step, line by line and material by material: for programs. */
export function trustOfPlan(library: Library, plan: Pick<Plan, 'settings' | 'log'>, evaluation: Pick<Evaluation, 'steps' | 'start'>) {
  const rows = evaluation.steps.map(step => ({
    step: step.number,
    transformation: step.transformation,
    charges: step.charges.map((line): LineTrust => {
      const { mark, source } = lineMark(library, evaluation, step, line)
      return { material: line.material, trust: trustOfMark(mark), mark, source }
    }),
    ...trustOfStep(library, plan, step),
  }))
  const materials = new Map(rows.flatMap(row => row.materials.map(one => [one.material, one] as const)))
  return { steps: rows.map(({ materials: _m, ...row }) => row), materials: [...materials.values()] }
}

/**
 * The same in one line for print: "Charges and yield: seen. Times: estimated. Density remembered: ethanol. Hazards unknown: lophine." Of
 * materials only what was not seen is named; nothing is said to be seen that was not.
 */
export function trustLine(library: Library, { figures, materials }: StepTrust): string {
  const byWord = new Map<string, string[]>()
  for (const { figure, mark, inPart } of figures) {
    const word = `${lineWords[mark] ?? mark}${inPart ? ' in part' : ''}`
    byWord.set(word, [...(byWord.get(word) ?? []), figure])
  }
  const own = [...byWord].map(([word, of]) => `${capital(listed(of))}: ${word}.`)
  return [...own, materialsLine(library, materials)].join(' ')
}

/** "Density remembered: ethanol. Hazards unknown: lophine.": of materials only what was not seen is named. */
export function materialsLine(library: Library, materials: StepTrust['materials']): string {
  const weak = (['density', 'hazards'] as const).flatMap(figure =>
    (['remembered', 'unknown'] as const).flatMap(trust => {
      const named = materials.filter(
        one =>
          (figure === 'hazards' || isPoured(library, one.material)) && one.figures.some(of => of.figure === figure && of.trust === trust),
      )
      return named.length === 0 ? [] : [`${capital(figure)} ${trust}: ${named.map(one => nameIn(library)(one.material)).join('; ')}.`]
    }),
  )
  return weak.length === 0 ? 'Densities and hazards: seen.' : weak.join(' ')
}

/** A density is asked of what is poured; what is weighed needs none. */
const isPoured = (library: Library, material: string): boolean =>
  ['liquid', 'solution'].includes(library.materials.get(material)?.form ?? '')

const lineWords: Partial<Record<Mark, string>> = { derived: 'an allowance of the library' }
