import type { Material } from '../material.ts'
import type { CheckContext, Finding } from './check.ts'

/**
 * Two pure materials under one CAS number are probably one. A warning, since isomers sold as a mixture and forms of one element share a number.
 * Only the second of the two, in order of id, is named.
 */
export function duplicates(material: Material, { firstWithCas }: CheckContext): readonly Finding[] {
  const { cas, id, kind } = material
  const first = cas === undefined || kind === 'mixture' || kind === 'feedstock' ? undefined : firstWithCas.get(cas)
  if (first === undefined || first === id) return []
  return [
    {
      severity: 'warning',
      code: 'duplicate-cas',
      field: ['cas'],
      what: `"${first}" has the same CAS number ${cas}.`,
      why: 'A compound under two ids breaks the network: what one step makes, the next would not find.',
      cure: 'Keep one of the two and point to it, or correct the number.',
    },
  ]
}
