import { describe, expect, it } from 'vitest'
import { type LpSolver, solverOf } from '../../../../core/shopping/solver-of.ts'
import { loadSolver } from '../../../../server/solver/highs.ts'

const answering = (Status: string, Columns: Record<string, unknown> = {}): LpSolver => ({ solve: () => ({ Status, Columns }) })

describe('the solver', () => {
  it('finds the optimum of a small program', async () => {
    const solver = await loadSolver()
    const { status, columns } = solver('Minimize\n cost: 3 x + 2 y\nSubject To\n r1: 5 x + 3 y >= 15\nGeneral\n x\n y\nEnd\n')
    // By hand: three of x cost 9; five of y, 10; two of x and two of y, 10.
    expect([status, columns.get('x'), columns.get('y')]).toEqual(['optimal', 3, 0])
  })

  it('is asked to prove to the last minor unit: by default a gap of 0.01 % counts as optimal', () => {
    let asked: Readonly<Record<string, unknown>> = {}
    const noting: LpSolver = {
      solve: (_, options) => {
        asked = options
        return { Status: 'Optimal', Columns: {} }
      },
    }
    solverOf(noting, 77)('')
    expect(asked).toMatchObject({ mip_rel_gap: 0, mip_max_nodes: 77 })
    expect(asked.time_limit).toBeUndefined()
  })

  it('tells infeasible from failed', async () => {
    const solver = await loadSolver()
    expect(solver('Minimize\n cost: x\nSubject To\n r1: x >= 2\n r2: x <= 1\nGeneral\n x\nEnd\n').status).toBe('infeasible')
    expect(solver('garbage').status).toBe('failed')
    // And is not spoilt for the next question.
    expect(solver('Minimize\n cost: x\nSubject To\n r1: x >= 2\nGeneral\n x\nEnd\n').columns.get('x')).toBe(2)
  })

  it.each([
    ['Optimal', 'optimal'],
    ['Infeasible', 'infeasible'],
    ['Solution limit reached', 'feasible'],
    ['Unbounded', 'failed'],
    ['Empty', 'failed'],
    ['Unknown', 'failed'],
  ])('reads the status %s as %s', (status, expected) => {
    expect(solverOf(answering(status, { x: { Primal: 1 } }))('').status).toBe(expected)
  })

  it('has nothing feasible where the limit came before any answer', () => {
    expect(solverOf(answering('Time limit reached'))('').status).toBe('failed')
  })

  it('takes a crash for no answer', () => {
    const crashing: LpSolver = {
      solve: () => {
        throw new RangeError('memory access out of bounds')
      },
    }
    expect(solverOf(crashing)('')).toEqual({ status: 'failed', columns: new Map() })
  })
})
