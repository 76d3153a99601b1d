import type { WantedMark } from '../../core/library/mark.ts'

/** What figures can be kept to, in the order in which one asks; '' = all. */
export const wantedOptions: readonly (readonly [WantedMark | '', string])[] = [
  ['', 'all'],
  ['not seen', 'not seen in a source'],
  ['seen', 'seen in a source'],
  ['remembered', 'remembered'],
  ['own bench', 'own bench'],
  ['typed', 'typed in this plan'],
  ['derived', 'reckoned by the library'],
  ['at least', 'the least by the equation'],
  ['about', 'about'],
  ['planned', 'a rule of thumb'],
  ['estimated', 'estimated'],
  ['invented', 'invented'],
  ['unknown', 'unknown or not stated'],
]

/** The same for records of a library, which hold nothing that a plan plans. */
export const wantedOfRecords = wantedOptions.filter(([wanted]) => !['typed', 'at least', 'about', 'planned'].includes(wanted))
