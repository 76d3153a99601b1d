import { describe, expect, it } from 'vitest'
import { criticalPath } from '../../core/days/longest-chain.ts'
import { checkValuesOf } from '../support/check-values.ts'

interface Network {
  readonly id: string
  readonly inputs: {
    readonly activities: readonly { readonly id: string; readonly duration: number }[]
    readonly precedence: readonly (readonly [string, string])[]
  }
  readonly expected: {
    readonly duration: number
    readonly critical: readonly string[]
    readonly earlyStart: Readonly<Record<string, number>>
    readonly totalFloat: Readonly<Record<string, number>>
  }
}

// Each entry names its source in check-values.json.
const networks = checkValuesOf('critical-path', 3) as unknown as readonly Network[]

describe('critical path, worked examples in print', () => {
  it('has them all', () => expect(networks).toHaveLength(3))

  it.each(networks)('$id', ({ inputs, expected }) => {
    const found = criticalPath(inOrder(inputs))
    expect(found.hours).toBe(expected.duration)
    expect(Object.fromEntries(found.earlyStart)).toEqual(expected.earlyStart)
    expect(Object.fromEntries(found.totalFloat)).toEqual(expected.totalFloat)
    expect(
      [...found.totalFloat]
        .filter(([, float]) => float === 0)
        .map(([id]) => id)
        .sort(),
    ).toEqual([...expected.critical].sort())
    // The chain is one way through the critical activities, as long as the whole.
    expect(found.chain.every(id => expected.critical.includes(id))).toBe(true)
    const hours = new Map(inputs.activities.map(a => [a.id, a.duration]))
    expect(found.chain.reduce((sum, id) => sum + hours.get(id)!, 0)).toBe(expected.duration)
  })
})

/** The function wants what comes before to stand before; the handout does not list it so. */
function inOrder({ activities, precedence }: Network['inputs']) {
  const left = [...activities]
  const done: { id: string; hours: number; after: string[] }[] = []
  while (left.length > 0) {
    const at = left.findIndex(a => precedence.every(([before, to]) => to !== a.id || done.some(d => d.id === before)))
    const [next] = left.splice(at, 1)
    done.push({ id: next!.id, hours: next!.duration, after: precedence.filter(([, to]) => to === next!.id).map(([before]) => before) })
  }
  return done
}
