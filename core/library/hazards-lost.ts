import type { Problem } from '../problem/problem.ts'
import type { RecordDifference } from './differences.ts'
import type { Material } from './material.ts'
import { trustInHazards } from './trust.ts'

type Hazards = Material['hazards']
const signalWords = ['none', 'Warning', 'Danger'] as const

/** Hazards before and after, where a record changes them. */
function hazardsOf({ list, change, fields }: RecordDifference): { readonly before: Hazards; readonly now: Hazards } | null {
  const field = list === 'materials' && change !== 'same' ? fields.find(({ key }) => key === 'hazards') : undefined
  return field === undefined ? null : { before: field.before as Hazards, now: field.now as Hazards }
}

const isKnown = (hazards: Hazards): boolean => trustInHazards({ hazards, sources: [] }) !== 'unknown'

/** Hazards that were known, and are not any more. */
export const becomeUnknown = (before: Hazards, now: Hazards): boolean => isKnown(before) && !isKnown(now)

/** The hazards of a record were known, and would not be any more: nothing then warns of them in any plan. */
export function losesHazards(row: RecordDifference): boolean {
  const hazards = hazardsOf(row)
  return hazards !== null && becomeUnknown(hazards.before, hazards.now)
}

/**
 * Fewer hazards than were known, in words: "Fewer hazards than the record it stands in place of: H302 is gone.". Null where none goes, and
 * where all of them become unknown, which `losesHazards` tells.
 */
export function fewerHazards(row: RecordDifference): string | null {
  const hazards = hazardsOf(row)
  if (hazards === null || losesHazards(row)) return null
  const gone = goneText(hazards.before, hazards.now)
  const than = row.change === 'overrides' ? 'the record it stands in place of' : 'before'
  return gone === null ? null : `Fewer hazards than ${than}: ${gone}.`
}

/** "H302 and H315 are gone, the signal word falls from Danger to Warning"; null where nothing of what was known goes. */
export function goneText(before: Hazards, now: Hazards): string | null {
  if (before === undefined || now === undefined) return null
  const codes = before.codes.filter(code => !now.codes.includes(code))
  const listed = codes.length < 2 ? codes.join('') : `${codes.slice(0, -1).join(', ')} and ${codes.at(-1)}`
  const falls = signalWords.indexOf(now.signalWord) < signalWords.indexOf(before.signalWord)
  const parts = [
    codes.length === 0 ? '' : `${listed} ${codes.length === 1 ? 'is' : 'are'} gone`,
    falls ? `the signal word falls from ${before.signalWord} to ${now.signalWord}` : '',
  ].filter(part => part !== '')
  return parts.length === 0 ? null : parts.join(', ')
}

/** One warning a record whose hazards would become unknown or fewer. */
export const hazardsLost = (rows: readonly RecordDifference[]): readonly Problem[] =>
  rows.flatMap((row): Problem[] => {
    const where = ['materials', row.id]
    if (losesHazards(row))
      return [
        {
          code: 'hazards-become-unknown',
          where,
          what: `The hazards of ${row.name} become unknown.`,
          why: 'The record it stands over tells them, this one does not: no plan would warn of them any more, and unknown is not safe.',
          cure: 'Give its hazard codes and signal word; of a table, leave the hazard columns out to keep those that are there.',
        },
      ]
    const fewer = fewerHazards(row)
    if (fewer === null) return []
    return [
      {
        code: 'hazards-become-fewer',
        where,
        what: `${row.name}: ${fewer.charAt(0).toLowerCase()}${fewer.slice(1)}`,
        why: 'No plan would warn of what is gone any more.',
        cure: 'Hold it against the newest safety data sheet; where that still tells it, give it back.',
      },
    ]
  })
