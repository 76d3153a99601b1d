import type { Material } from '../material.ts'
import type { Finding } from './check.ts'

/** A polymer is counted by its repeat unit, whose open ends are the `*` of its structure; nothing else has open ends. */
export function polymerEnds({ kind, smiles }: Material): readonly Finding[] {
  if (smiles === undefined) return []
  const ends = smiles.split('*').length - 1
  const isRight = kind === 'polymer' ? ends === 2 : ends === 0
  if (isRight) return []
  return [
    {
      severity: 'error',
      code: 'polymer-ends',
      field: ['smiles'],
      what: `A ${kind} with ${ends} open ends ("*") in its structure.`,
      why: 'A polymer is drawn and counted as one repeat unit between two open ends.',
      cure: kind === 'polymer' ? 'Write the repeat unit with one "*" at each end.' : 'Write the whole structure, or call it a polymer.',
    },
  ]
}
