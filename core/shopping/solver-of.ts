import type { Solver } from './shopping.ts'

/** As much of the HiGHS interface as is used here, so that the core names no package. */
export interface LpSolver {
  solve(
    problem: string,
    options: Readonly<Record<string, unknown>>,
  ): { readonly Status: string; readonly Columns: Readonly<Record<string, unknown>>; readonly ObjectiveValue?: number }
}

/**
 * Why each option: by default a gap of 0.01 % counts as optimal, which on a basket of 500 may be a wrong pack; tolerances of 1e-6 would let
 * a need go short by a millionth. The node limit is a budget in steps of work, never in time, so that the answer is the same everywhere.
 */
const options = {
  output_flag: false,
  mip_rel_gap: 0,
  mip_abs_gap: 0.000001,
  mip_feasibility_tolerance: 1e-9,
  primal_feasibility_tolerance: 1e-9,
  random_seed: 0,
}

/**
 * A HiGHS instance as the solver that the basket takes.
 *
 * @param highs    loaded; its `solve` blocks until done
 * @param maxNodes of branch and bound; beyond it the best found comes back as `feasible`
 */
export function solverOf(highs: LpSolver, maxNodes = 200_000): Solver {
  return model => {
    const nothing = new Map<string, number>()
    let solution: ReturnType<LpSolver['solve']>
    try {
      solution = highs.solve(model, { ...options, mip_max_nodes: maxNodes })
    } catch {
      // It throws a bare number or text when its own memory gives out; whatever it was, there is no answer.
      return { status: 'failed', columns: nothing }
    }
    const columns = new Map<string, number>()
    for (const [name, column] of Object.entries(solution.Columns)) {
      const primal = (column as { readonly Primal?: unknown }).Primal
      // The sum makes -0 a 0.
      if (typeof primal === 'number' && Number.isFinite(primal)) columns.set(name, primal + 0)
    }
    if (solution.Status === 'Optimal') return { status: 'optimal', columns }
    if (solution.Status === 'Infeasible') return { status: 'infeasible', columns: nothing }
    if (!/limit/i.test(solution.Status)) return { status: 'failed', columns: nothing }
    const bound = relaxed(highs, model)
    return {
      ...(columns.size > 0 ? { status: 'feasible', columns } : { status: 'failed', columns: nothing }),
      ...(bound === null ? {} : { bound }),
    }
  }
}

/** What the same program costs where parts of packs may be bought: no whole packs cost less. */
function relaxed(highs: LpSolver, model: string): number | null {
  try {
    const { Status, ObjectiveValue } = highs.solve(model, { ...options, solve_relaxation: true })
    return Status === 'Optimal' && Number.isFinite(ObjectiveValue) ? ObjectiveValue! : null
  } catch {
    return null
  }
}
