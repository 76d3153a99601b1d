import { hazardWords } from '../commands/words.ts'
import type { Workshop } from '../library/workshop.ts'
import { listRoutes, type PlanRequest } from './request.ts'

/** Where a plan took the first route without being told to: what of it the buyer cannot have, that it did, and which gentler one lies near. */
export function gentlestWords(workshop: Workshop, request: PlanRequest): string {
  const { from, goals, choosing, side } = request
  const rows = listRoutes(workshop, { ...choosing, from, to: goals[0]!.target, count: 1 }, side)
  const axis = choosing.by ?? 'start'
  const barred = rows.routes[0]!.flags.filter(flag => flag.kind === 'barred').map(flag => `${flag.text}\n`)
  const first = `${barred.join('')}This is the first route by ${axis}; waybench routes lists the others.`
  if (!rows.gentlest) return first
  const lost = rows.gentlest.yieldPointsLost
  return `${first}\nA gentler one, number ${rows.gentlest.place}, ${lost >= 0 ? `costs ${lost.toFixed(1)}` : `gains ${(-lost).toFixed(1)}`} points of overall yield on start (${hazardWords(rows.gentlest.hazard)}, against ${hazardWords(rows.routes[0]!.hazard)}): ${rows.gentlest.steps.join(', ')}.`
}
