import type { Problem } from '../problem/problem.ts'
import type { RecordDifference } from './differences.ts'
import type { Material } from './material.ts'
import { trustInHazards } from './trust.ts'

/** The hazards of a record were known, and would not be any more: nothing then warns of them in any plan. */
export function losesHazards({ list, change, fields }: RecordDifference): boolean {
  const field = list === 'materials' && change !== 'same' ? fields.find(({ key }) => key === 'hazards') : undefined
  if (field === undefined) return false
  const known = (hazards: unknown): boolean =>
    hazards !== undefined && trustInHazards({ hazards: hazards as Material['hazards'], sources: [] }) !== 'unknown'
  return known(field.before) && !known(field.now)
}

/** One warning a record whose hazards would become unknown. */
export const hazardsLost = (rows: readonly RecordDifference[]): readonly Problem[] =>
  rows.filter(losesHazards).map(({ id, name }) => ({
    code: 'hazards-become-unknown',
    where: ['materials', id],
    what: `The hazards of ${name} become unknown.`,
    why: 'The record it stands over tells them, this one does not: no plan would warn of them any more, and unknown is not safe.',
    cure: 'Give its hazard codes and signal word; of a table, leave the hazard columns out to keep those that are there.',
  }))
