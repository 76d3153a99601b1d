import { arcValue, labelsOf } from './best.ts'
import type { Network } from './network.ts'
import type { RankedRoute } from './ranked-route.ts'
import { routeValue } from './route-value.ts'
import { mustsOf, type RoutesAsked, spaceOf } from './routes.ts'
import { type Space, targetNode, type Weights } from './space.ts'

/** More arcs than this are not worth handing to an integer solver: measured, a thousand already took it up to nine seconds. */
const mostArcs = 1500
const tie = 1e-9

/** The least sum over distinct steps as an integer program, and how its answer is read. */
export interface SharedProgram {
  /** Text in the LP format. */
  readonly model: string
  /** @param columns value of each variable @returns the route; null where the answer is none, which a solver out of its depth may give */
  readonly routeIn: (columns: ReadonlyMap<string, number>) => RankedRoute | null
}

/**
 * Asks an integer solver for the route with the least sum over distinct steps, where the search could not prove it.
 *
 * One 0/1 variable an arc of the search's own space: the target has one maker; no compound has two, made by the chain or beside it; what an arc
 * takes is made unless it may be bought; what is made is taken; along an arc the order rises, so that no circle feeds itself.
 *
 * @param known best value found; arcs that can be in no better route are left out
 * @returns null where more arcs are left than a solver is asked for
 */
export function sharedProgram(
  network: Network,
  weights: Weights,
  asked: RoutesAsked,
  target: number,
  known: number,
  maxSteps?: number,
): SharedProgram | null {
  const space = spaceOf(network, weights, asked)
  const arcs = arcsWorth(space, targetNode(space, target), known)
  if (arcs.length > mostArcs || arcs.length === 0) return null
  return {
    model: programText(space, arcs, targetNode(space, target), mustsOf(space, asked), maxSteps),
    routeIn: columns => {
      const chosen = arcs.filter(a => (columns.get(`x${a}`) ?? 0) > 0.5 && space.arcOf[a]! >= 0).map(a => space.arcOf[a]!)
      const makers = new Set(chosen.map(a => network.head[a]!))
      if (chosen.length === 0 || makers.size < chosen.length || !makers.has(target)) return null
      const route = [...chosen].sort((a, b) => a - b)
      return { arcs: route, value: routeValue(network, weights, asked.start, target, route) }
    },
  }
}

/** Arcs below the target whose own bound does not lie above what is known already. */
function arcsWorth(space: Space, target: number, known: number): number[] {
  const { makerStart, makers, bodyStart, body } = space.network
  const labels = labelsOf(space).value
  const seen = new Set([target])
  const stack = [target]
  const arcs: number[] = []
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    for (let k = makerStart[node]!; k < makerStart[node + 1]!; k++) {
      const a = makers[k]!
      if (space.masked[a] || arcValue(space, labels, a) > known + tie * (1 + Math.abs(known))) continue
      arcs.push(a)
      for (let u = bodyStart[a]!; u < bodyStart[a + 1]!; u++) {
        const twin = space.twin?.[body[u]!] ?? -1
        for (const next of twin < 0 ? [body[u]!] : [body[u]!, twin]) {
          if (seen.has(next)) continue
          seen.add(next)
          stack.push(next)
        }
      }
    }
  }
  return arcs
}

function programText(space: Space, arcs: readonly number[], target: number, musts: ReturnType<typeof mustsOf>, maxSteps?: number): string {
  const { network, leaf, twin, start, own, arcOf } = space
  const { head, bodyStart, body } = network
  const makersOf = new Map<number, number[]>()
  const usersOf = new Map<number, number[]>()
  const list = (map: Map<number, number[]>, node: number, a: number) => map.set(node, [...(map.get(node) ?? []), a])
  for (const a of arcs) {
    list(makersOf, head[a]!, a)
    for (let u = bodyStart[a]!; u < bodyStart[a + 1]!; u++) list(usersOf, body[u]!, a)
  }
  const sum = (of: readonly number[]) => of.map(a => `x${a}`).join(' + ')
  const twinOf = (node: number) => twin?.[node] ?? -1
  const rows = [`${sum(makersOf.get(target) ?? [])} = 1`]
  for (const [node, makers] of makersOf) {
    // What the chain makes is handed on to the side, and made in no other way there.
    const other = twinOf(node)
    const together = [...makers.filter(a => arcOf[a]! >= 0), ...(other < 0 ? [] : (makersOf.get(other) ?? []))]
    if (together.length > 1) rows.push(`${sum(together)} <= 1`)
    if (node === target) continue
    const users = usersOf.get(node) ?? []
    for (const a of makers) rows.push(`${sum(users) || '0 x0'} - x${a} >= 0`)
  }
  const nodes = new Set<number>()
  const most = makersOf.size + 1
  const rises = (from: number, a: number) => {
    if (!makersOf.has(from)) return
    nodes.add(from).add(head[a]!)
    rows.push(`u${head[a]!} - u${from} - ${most} x${a} >= ${1 - most}`)
  }
  const isStart = (node: number) => node === start || (twin !== null && node === start + twin.length / 2)
  for (const a of arcs) {
    for (let u = bodyStart[a]!; u < bodyStart[a + 1]!; u++) {
      const node = body[u]!
      if (isStart(node)) continue
      const makers = makersOf.get(node) ?? []
      if (leaf[u] === Number.POSITIVE_INFINITY) rows.push(makers.length === 0 ? `x${a} = 0` : `${sum(makers)} - x${a} >= 0`)
      rises(node, a)
      if (twinOf(node) >= 0) rises(twinOf(node), a)
    }
  }
  for (const must of musts) {
    const meeting = must.start
      ? arcs.filter(a => body.subarray(bodyStart[a], bodyStart[a + 1]).some(isStart))
      : must.nodes.flatMap(node => makersOf.get(node) ?? [])
    rows.push(meeting.length === 0 ? `x${arcs[0]!} >= 2` : `${sum(meeting)} >= 1`)
  }
  const steps = arcs.filter(a => arcOf[a]! >= 0)
  if (maxSteps !== undefined) rows.push(`${sum(steps)} <= ${maxSteps}`)
  return [
    'Minimize',
    ` obj: ${steps.map(a => `${own[a]!} x${a}`).join(' + ')}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${row}`),
    'Bounds',
    ...[...nodes].map(node => ` 0 <= u${node} <= ${most}`),
    'Binary',
    ` ${arcs.map(a => `x${a}`).join(' ')}`,
    'End',
  ].join('\n')
}
