import { slackH } from './bench-time.ts'
import { firstConflict } from './conflicts.ts'
import type { Order, Times, TimetableInput, Wait } from './timetable-input.ts'

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
    for (const order of input.orders) if (order.shared !== true) this.#orders[order.from]!.push(order)
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
    const shared = this.#input.orders.filter(order => order.shared === true)
    for (const order of shared) this.#orders[order.from]!.push(order)
    const begun = [...new Set(shared.map(order => order.from))]
    if (!this.#settle(node, begun)) return { none: true, proven: this.#left >= 0 }
    this.#bound = finishOf(node)
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
    let conflict = firstConflict(this.#input, node)
    let holds = true
    while (conflict !== null && holds) {
      const way = conflict.reduce((best, other) => (isBefore(other, best, rank, node) ? other : best))
      this.#orders[way.from]!.push(way)
      added.push(way)
      holds = this.#settle(node, [way.from])
      conflict = holds ? firstConflict(this.#input, node) : null
    }
    for (const order of added.reverse()) this.#orders[order.from]!.pop()
    if (holds) this.#keep(node)
  }

  #keep(node: Times): void {
    const finish = finishOf(node)
    if (this.#best === null || finish < this.#best.finish - slackH) this.#best = { ...node, finish }
  }

  #branch(node: Times): void {
    // Looking through all tasks for a conflict is work too.
    this.#left -= node.starts.length >> 1
    const conflict = firstConflict(this.#input, node)
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
}

/** Last goes what ranks last; just before it what ends first. */
function isBefore(way: Order, best: Order, rank: readonly number[], { ends }: Times): boolean {
  if (way.to !== best.to) return rank[way.to]! > rank[best.to]!
  return ends[way.from]! < ends[best.from]!
}

const finishOf = ({ ends }: Times): number => ends.reduce((last, end) => Math.max(last, end), 0)
