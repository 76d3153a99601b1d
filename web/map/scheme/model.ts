import type { SchemeIn, Step } from './types.ts'

/** One place on a line: the compound, and the step that makes it (none for one that is started from). */
export interface Unit {
  readonly cell: string
  readonly step?: Step
}

/** A made co-reactant, drawn as a row of its own under the row that it feeds. */
export interface Feeder {
  readonly cell: string
  readonly units: readonly Unit[]
  /** Its row leaves the same trunk as the row that it feeds; otherwise it begins with a compound of its own. */
  readonly fromTrunk: boolean
}

/** What comes after a run of units. */
export type Tail =
  | { readonly kind: 'none' }
  | { readonly kind: 'fork'; readonly cell: string }
  | { readonly kind: 'join'; readonly step: Step; readonly feeders: readonly Feeder[] }

export interface Trail {
  readonly units: readonly Unit[]
  readonly tail: Tail
}

export interface Model {
  /** Steps from a compound, chosen ones first; feeders that leave the same trunk are not among them. */
  children(cell: string): readonly Step[]
  /** From a root, or through a step and what follows it, to the next fork, join or end. */
  fromRoot(cell: string): Trail
  fromStep(step: Step): Trail
  /** What follows a join, its step included. */
  afterJoin(step: Step): Trail
  /** Compounds that a scheme of its own begins with: the start first. */
  readonly roots: readonly string[]
  /** Joins that are named in words, as step product and co-reactant. */
  readonly named: readonly { readonly product: string; readonly cell: string }[]
}

/** Which joins to give up: none, those of the same root, all. */
export type Joins = 'all' | 'other roots' | 'none'

/** Steps as a reader counts them: 2a, 2b, 10; those without a number last, as they came. */
export function byNumber(a: Step, b: Step): number {
  if (a.no === '' || b.no === '') return Number(a.no === '') - Number(b.no === '')
  const digits = Number.parseInt(a.no, 10) - Number.parseInt(b.no, 10)
  return Number.isNaN(digits) || digits === 0 ? (a.no < b.no ? -1 : a.no > b.no ? 1 : 0) : digits
}

/** The scheme as rows: which steps follow each other, where it forks, and which made co-reactants join as rows. */
export function modelOf(input: Pick<SchemeIn, 'start' | 'steps'>, joins: Joins = 'all'): Model {
  const { steps } = input
  const maker = new Map(steps.map(step => [step.to, step]))
  const byFrom = new Map<string, Step[]>()
  for (const step of steps) {
    const list = byFrom.get(step.from) ?? []
    list.push(step)
    byFrom.set(step.from, list)
  }
  for (const list of byFrom.values()) list.sort((a, b) => Number(a.grey ?? false) - Number(b.grey ?? false) || byNumber(a, b))
  const all = (cell: string): readonly Step[] => byFrom.get(cell) ?? []
  const uses = (cell: string): number => steps.reduce((sum, step) => sum + step.made.filter(id => id === cell).length, 0)

  /** Back along a line that neither forks nor joins, to the root or the fork that it leaves. */
  function lineTo(cell: string): { from: string; steps: Step[] } | null {
    const line: Step[] = []
    let at = cell
    for (;;) {
      const step = maker.get(at)
      if (!step) return { from: at, steps: line }
      if (step.made.length > 0) return null
      line.unshift(step)
      at = step.from
      if (all(at).length > 1) return { from: at, steps: line }
      if (uses(at) > 0) return null
    }
  }

  const taken = new Set<string>()
  const trunkFeeders = new Set<string>()
  const rootFeeders = new Set<string>()
  const feedersOf = new Map<string, Feeder[]>()
  const named: { product: string; cell: string }[] = []
  for (const step of steps) {
    for (const cell of step.made) {
      const feeder = joins === 'none' ? null : feederFor(step, cell)
      if (!feeder || taken.has(cell)) {
        named.push({ product: step.to, cell })
        continue
      }
      taken.add(cell)
      const list = feedersOf.get(step.to) ?? []
      list.push(feeder)
      feedersOf.set(step.to, list)
      if (feeder.fromTrunk) trunkFeeders.add(feeder.units[0]!.cell)
      else rootFeeders.add(feeder.units[0]!.cell)
    }
  }

  function feederFor(step: Step, cell: string): Feeder | null {
    if (all(cell).length > 0 || uses(cell) !== 1 || cell === step.from) return null
    const line = lineTo(cell)
    if (!line || line.steps.length === 0) return null
    const units: Unit[] = line.steps.map(made => ({ cell: made.to, step: made }))
    if (!maker.has(line.from) && all(line.from).length === 1) {
      // Its own root: whatever row it feeds must come from another one.
      return rootOf(step.from) === line.from || uses(line.from) > 0
        ? null
        : { cell, units: [{ cell: line.from }, ...units], fromTrunk: false }
    }
    if (joins !== 'all') return null
    // From the fork that the fed row leaves too, with neither fork nor join between.
    if (trunkFeeders.has(units[0]!.cell)) return null
    let at = step.from
    let first: Step | undefined = step
    while (at !== line.from) {
      const before = maker.get(at)
      if (!before || before.made.length > 0 || all(at).length !== 1) return null
      first = before
      at = before.from
    }
    if (first.to === units[0]!.cell || trunkFeeders.has(first.to)) return null
    // The fork must stay one: a single other branch would leave nothing to fork.
    return { cell, units, fromTrunk: true }
  }

  function rootOf(cell: string): string {
    let at = cell
    for (let step = maker.get(at); step; step = maker.get(at)) at = step.from
    return at
  }

  const children = (cell: string): readonly Step[] => all(cell).filter(step => !trunkFeeders.has(step.to))
  const forks = (cell: string): boolean => all(cell).length > 1

  function follow(units: Unit[]): Trail {
    for (;;) {
      const last = units.at(-1)!.cell
      if (forks(last)) return { units, tail: { kind: 'fork', cell: last } }
      const next = all(last)[0]
      if (!next) return { units, tail: { kind: 'none' } }
      const feeders = feedersOf.get(next.to)
      if (feeders) return { units, tail: { kind: 'join', step: next, feeders } }
      units.push({ cell: next.to, step: next })
    }
  }

  const starts = [...new Set([input.start, ...steps.map(step => step.from)])].filter(cell => !maker.has(cell))
  return {
    children,
    fromRoot: cell => follow([{ cell }]),
    fromStep: step => {
      const feeders = feedersOf.get(step.to)
      return feeders ? { units: [], tail: { kind: 'join', step, feeders } } : follow([{ cell: step.to, step }])
    },
    afterJoin: step => follow([{ cell: step.to, step }]),
    roots: starts.filter(cell => !rootFeeders.has(cell)),
    named,
  }
}
