import type { Trust } from './trust.ts'

/**
 * How a figure is marked where it stands: how sure it is, as told of every record, or by whom it was set where no source prints it.
 * `typed` = by the reader into this plan; `derived` = reckoned or allowed for by whoever wrote the record; `at least` = the least that the
 * equation takes; `about` = a volume taken for what it is nearly; `planned` = a rule of thumb; `estimated` = judged from the operations;
 * `reckoned` = by the program, from figures that are marked themselves.
 */
export const marks = [
  'seen',
  'remembered',
  'own bench',
  'typed',
  'derived',
  'at least',
  'about',
  'planned',
  'estimated',
  'invented',
  'unknown',
  'reckoned',
] as const
export type Mark = (typeof marks)[number]

/** A figure's mark with where it comes from, in words; null = nobody is named. */
export interface Marked {
  readonly mark: Mark
  readonly source: string | null
}

/** What figures are kept to: one mark, or all that was not seen in a source. */
export type WantedMark = Exclude<Mark, 'reckoned'> | 'not seen'
export const wantedMarks: readonly WantedMark[] = [
  'not seen',
  ...marks.filter((mark): mark is Exclude<Mark, 'reckoned'> => mark !== 'reckoned'),
]

/** A figure of this mark is among those wanted. */
export const isWanted = (wanted: WantedMark, mark: Mark): boolean => (wanted === 'not seen' ? mark !== 'seen' : mark === wanted)

/**
 * A mark as the plain trust that it comes to. What the reader typed counts as the own bench; what nobody printed is the judgement of
 * whoever wrote it down, and so remembered.
 */
export function trustOfMark(mark: Exclude<Mark, 'reckoned'>): Trust {
  switch (mark) {
    case 'seen':
    case 'remembered':
    case 'own bench':
    case 'invented':
    case 'unknown':
      return mark
    case 'typed':
      return 'own bench'
    default:
      return 'remembered'
  }
}
