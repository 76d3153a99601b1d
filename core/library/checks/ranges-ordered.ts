import type { Transformation } from '../transformation.ts'
import type { Finding } from './check.ts'

/** From is not above to in the temperatures, nor the smallest proven scale above the largest. */
export function rangesOrdered({ temperatureC, smallestProvenG, largestProvenG }: Transformation): readonly Finding[] {
  const findings: Finding[] = []
  const find = (field: string, what: string, cure: string) =>
    findings.push({
      severity: 'error',
      code: 'ranges-ordered',
      field: [field],
      what,
      why: 'A range is read from its lower to its upper end.',
      cure,
    })
  if (temperatureC !== undefined && temperatureC[0] > temperatureC[1])
    find('temperatureC', `From ${temperatureC[0]} to ${temperatureC[1]} C.`, 'Exchange the two.')
  if (smallestProvenG !== undefined && largestProvenG !== undefined && smallestProvenG > largestProvenG)
    find('smallestProvenG', `Smallest scale ${smallestProvenG} g, largest ${largestProvenG} g.`, 'Exchange the two or correct them.')
  return findings
}
