import { type BenchTime, slackH } from './bench-time.ts'

/** One task of the timetable. `bench` = inside one window; `split` = in several; `begun` = begun at the bench, then stands alone; `any`. */
export interface TimedTask {
  readonly hours: number
  readonly lies: 'bench' | 'split' | 'begun' | 'any'
  readonly hands: boolean
  readonly heated: boolean
  /** Not before this hour. */
  readonly release: number
}

/** `to` begins when `from` has ended, or has begun. */
export interface Order {
  readonly from: number
  readonly to: number
  readonly since: 'end' | 'start'
}

/** `to` begins within so many hours after the end of `from`. */
export interface Wait {
  readonly from: number
  readonly to: number
  readonly upToH: number
}

/** A vessel is taken from the start of one task to the end of another; `fits` = which vessels will do. */
export interface VesselUse {
  readonly first: number
  readonly last: number
  readonly fits: readonly number[]
}

export interface TimetableInput {
  readonly tasks: readonly TimedTask[]
  readonly orders: readonly Order[]
  readonly waits: readonly Wait[]
  readonly bench: BenchTime
  readonly vesselUses: readonly VesselUse[]
  /** How many there are of each vessel. */
  readonly vesselCounts: readonly number[]
  /** Null = as many as needed. */
  readonly heatSources: number | null
  /** Orders of precedence to begin with: for each task a number, and the smaller goes first where two want the same. */
  readonly ranks: readonly (readonly number[])[]
  /** End of the calendar, h. */
  readonly horizonH: number
  /** Steps of work (a task pushed later is one), at the most; 0 = only what follows without trying. */
  readonly budget: number
}

export interface Timetable {
  readonly starts: readonly number[]
  readonly ends: readonly number[]
  readonly finishH: number
  /** No timetable ends earlier. */
  readonly proven: boolean
}

/**
 * The timetable that ends first, with one pair of hands.
 *
 * All but the sharing of hands, vessels and heat only ever pushes tasks later, so that the earliest times follow by pushing until nothing is
 * violated. Where two tasks then want the same hands, one of them goes first. A few plain rules of precedence give a first answer; then both
 * ways are tried, the better-looking one first, and a way that cannot end before the best found so far is left (branch and bound over the
 * orders that resolve conflicts). Within the budget the answer is proven; beyond it the best found is returned.
 *
 * @returns null where no timetable was found; `proven` in the second case tells whether none exists
 * Source: conflict-based branching for scheduling with minimum and maximum time lags, as in Neumann, Schwindt and Zimmermann, "Project
 * Scheduling with Time Windows and Scarce Resources" (from memory); held against exhaustive search in the tests.
 */
export function timetable(input: TimetableInput): Timetable | { readonly none: true; readonly proven: boolean } {
  return new Search(input).run()
}

/** How far beyond the end that unlimited hands would reach a timetable is sought: windows come round every week, so that what has found no
 * place in eight of them finds none later. */
const soughtBeyondH = 8 * 7 * 24

class Search {
  readonly #input: TimetableInput
  /** For each task the orders and waits that its times bear on. */
  readonly #orders: Order[][]
  readonly #waitsInto: Wait[][]
  #best: { starts: Float64Array; ends: Float64Array; finish: number } | null = null
  #bound = 0
  #horizonH: number
  #left: number

  constructor(input: TimetableInput) {
    this.#input = input
    this.#horizonH = input.horizonH
    this.#left = Number.POSITIVE_INFINITY
    this.#orders = input.tasks.map(() => [])
    this.#waitsInto = input.tasks.map(() => [])
    for (const order of input.orders) this.#orders[order.from]!.push(order)
    for (const wait of input.waits) this.#waitsInto[wait.to]!.push(wait)
  }

  run(): Timetable | { readonly none: true; readonly proven: boolean } {
    const { tasks, budget, horizonH } = this.#input
    const node = { starts: new Float64Array(tasks.length), ends: new Float64Array(tasks.length) }
    for (const [index, task] of tasks.entries()) if (!this.#set(node, index, task.release)) return { none: true, proven: true }
    if (
      !this.#settle(
        node,
        tasks.map((_, index) => index),
      )
    )
      return { none: true, proven: true }
    this.#bound = finishOf(node)
    this.#horizonH = Math.min(horizonH, this.#bound + soughtBeyondH)
    this.#left = budget
    for (const rank of this.#input.ranks) this.#dive(node, rank)
    if (this.#best === null || this.#best.finish > this.#bound + slackH) this.#branch(node)
    const proven = this.#left > 0
    if (this.#best === null) return { none: true, proven }
    const { starts, ends, finish } = this.#best
    return { starts: [...starts], ends: [...ends], finishH: finish, proven: proven || finish <= this.#bound + slackH }
  }

  /** Resolves every conflict by one rule, without turning back. */
  #dive(root: Times, rank: readonly number[]): void {
    const node = { starts: root.starts.slice(), ends: root.ends.slice() }
    const added: Order[] = []
    let conflict = this.#conflictIn(node)
    let holds = true
    while (conflict !== null && holds) {
      const way = conflict.reduce((best, other) => (isBefore(other, best, rank, node) ? other : best))
      this.#orders[way.from]!.push(way)
      added.push(way)
      holds = this.#settle(node, [way.from])
      conflict = holds ? this.#conflictIn(node) : null
    }
    for (const order of added.reverse()) this.#orders[order.from]!.pop()
    if (holds) this.#keep(node)
  }

  #keep(node: Times): void {
    const finish = finishOf(node)
    if (this.#best === null || finish < this.#best.finish - slackH) this.#best = { ...node, finish }
  }

  #branch(node: Times): void {
    const conflict = this.#conflictIn(node)
    if (conflict === null) {
      this.#keep(node)
      return
    }
    const ways: { order: Order; node: Times; finish: number; sum: number }[] = []
    for (const order of conflict) {
      if (this.#left <= 0) return
      this.#left--
      const child = { starts: node.starts.slice(), ends: node.ends.slice() }
      this.#orders[order.from]!.push(order)
      const holds = this.#settle(child, [order.from])
      this.#orders[order.from]!.pop()
      if (holds) ways.push({ order, node: child, finish: finishOf(child), sum: child.ends.reduce((total, end) => total + end, 0) })
    }
    // The way that delays least first: by its end, then by the sum of all ends.
    ways.sort((a, b) => a.finish - b.finish || a.sum - b.sum)
    for (const way of ways) {
      if (this.#best !== null && (way.finish >= this.#best.finish - slackH || this.#best.finish <= this.#bound + slackH)) return
      this.#orders[way.order.from]!.push(way.order)
      this.#branch(way.node)
      this.#orders[way.order.from]!.pop()
    }
  }

  /** Puts a task at its first possible start from `time` on. */
  #set(node: Times, index: number, time: number): boolean {
    const { bench } = this.#input
    const { hours, lies } = this.#input.tasks[index]!
    const start =
      lies === 'any'
        ? time
        : lies === 'bench'
          ? bench.startFor(time, hours)
          : lies === 'split'
            ? bench.splitStart(time, hours)
            : bench.startFor(time, 0)
    node.starts[index] = start
    const end = lies === 'split' ? bench.splitEnd(start, hours) : start + hours
    node.ends[index] = end
    const most = this.#best === null ? this.#horizonH : Math.min(this.#horizonH, this.#best.finish - slackH)
    return end <= most
  }

  /** Pushes tasks later until every order and wait holds; false where that is never, or not before the best end known. */
  #settle(node: Times, changed: readonly number[]): boolean {
    const { bench, tasks } = this.#input
    const { starts, ends } = node
    const queue = [...changed]
    for (let head = 0; head < queue.length; head++) {
      const index = queue[head]!
      for (const { to, since } of this.#orders[index]!) {
        const from = since === 'end' ? ends[index]! : starts[index]!
        if (starts[to]! >= from - slackH) continue
        if (--this.#left < 0 || !this.#set(node, to, from)) return false
        queue.push(to)
      }
      for (const { from, upToH } of this.#waitsInto[index]!) {
        const wanted = starts[index]! - upToH
        if (ends[from]! >= wanted - slackH) continue
        const { lies, hours } = tasks[from]!
        const start = lies === 'split' ? bench.splitStartFor(wanted, hours) : wanted - hours
        if (--this.#left < 0 || !this.#set(node, from, Math.max(start, starts[from]!))) return false
        queue.push(from)
      }
    }
    return true
  }

  /** The ways to resolve the first conflict in time, each an order of two tasks; null where hands, heat and vessels suffice. */
  #conflictIn(node: Times): readonly Order[] | null {
    const found = [this.#handsConflict(node), this.#heatConflict(node), this.#vesselConflict(node)].filter(c => c !== null)
    if (found.length === 0) return null
    return found.reduce((first, other) => (other.at < first.at ? other : first)).ways
  }

  #handsConflict({ starts, ends }: Times): Conflict | null {
    const { tasks } = this.#input
    const order = tasks
      .flatMap((task, index) => (task.hands && task.hours > 0 ? [index] : []))
      .sort((a, b) => starts[a]! - starts[b]! || a - b)
    let busy: number | null = null
    for (const index of order) {
      if (busy !== null && starts[index]! < ends[busy]! - slackH)
        return { at: starts[index]!, ways: bothWays([busy], [index], (a, b) => [a, b]) }
      if (busy === null || ends[index]! > ends[busy]!) busy = index
    }
    return null
  }

  #heatConflict({ starts, ends }: Times): Conflict | null {
    const { tasks, heatSources } = this.#input
    if (heatSources === null) return null
    const order = tasks
      .flatMap((task, index) => (task.heated && task.hours > 0 ? [index] : []))
      .sort((a, b) => starts[a]! - starts[b]! || a - b)
    for (const [position, index] of order.entries()) {
      const running = order.slice(0, position).filter(other => ends[other]! > starts[index]! + slackH)
      if (running.length < Math.max(1, heatSources)) continue
      return { at: starts[index]!, ways: bothWays(running, [index], (a, b) => [a, b]) }
    }
    return null
  }

  #vesselConflict({ starts, ends }: Times): Conflict | null {
    const { vesselUses, vesselCounts } = this.#input
    const order = vesselUses.filter(use => use.fits.length > 0).sort((a, b) => starts[a.first]! - starts[b.first]! || a.first - b.first)
    for (const [position, use] of order.entries()) {
      const running = order.slice(0, position).filter(other => ends[other.last]! > starts[use.first]! + slackH)
      if (running.length === 0 || allFit([...running, use], vesselCounts)) continue
      return { at: starts[use.first]!, ways: bothWays(running, [use], (a, b) => [a.last, b.first]) }
    }
    return null
  }
}

interface Times {
  readonly starts: Float64Array
  readonly ends: Float64Array
}

interface Conflict {
  readonly at: number
  readonly ways: readonly Order[]
}

/** Of all that meet, some pair must come one after the other: every pair, both ways. */
function bothWays<T>(
  running: readonly T[],
  more: readonly T[],
  pair: (before: T, after: T) => readonly [number, number],
): readonly Order[] {
  const all = [...running, ...more]
  return all.flatMap((a, i) =>
    all.flatMap((b, j) => {
      const [from, to] = pair(a, b)
      return i === j ? [] : [{ from, to, since: 'end' as const }]
    }),
  )
}

/** Last goes what ranks last; just before it what ends first. */
function isBefore(way: Order, best: Order, rank: readonly number[], { ends }: Times): boolean {
  if (way.to !== best.to) return rank[way.to]! > rank[best.to]!
  return ends[way.from]! < ends[best.from]!
}

/** Does each find a vessel of its own? Augmenting paths over so few that nothing better pays. */
function allFit(uses: readonly VesselUse[], counts: readonly number[]): boolean {
  const takers: number[][] = counts.map(() => [])
  const place = (use: number, tried: Set<number>): boolean => {
    for (const vessel of uses[use]!.fits) {
      if (tried.has(vessel)) continue
      tried.add(vessel)
      const held = takers[vessel]!
      if (held.length < counts[vessel]!) {
        held.push(use)
        return true
      }
      for (const [at, other] of held.entries())
        if (place(other, tried)) {
          held[at] = use
          return true
        }
    }
    return false
  }
  return uses.every((_, use) => place(use, new Set()))
}

const finishOf = ({ ends }: Times): number => ends.reduce((last, end) => Math.max(last, end), 0)
