import { capital, counted, inWords } from '../../core/report/words.ts'
import type { ReachRow } from '../api/replies.ts'

/** "12 compounds within three steps; three are your goals". */
export function becomeAnswer(reach: readonly ReachRow[], goals: readonly string[]): readonly string[] {
  if (reach.length === 0) return []
  const proven = reach.filter(row => row.proven).length
  const most = reach.reduce((steps, row) => Math.max(steps, row.steps ?? 0), 0)
  const open = proven === reach.length ? '' : `, ${inWords(reach.length - proven)} more not proven`
  const first = `${capital(counted(proven, 'compound'))} within ${counted(most, 'step')}${open};`
  const chosen = goals.length === 0 ? 'choose a goal' : goals.length === 1 ? 'one is your goal' : `${inWords(goals.length)} are your goals`
  return [first, chosen]
}

export type ReachOrder = 'steps' | 'yield' | 'name'

/**
 * Rows as the list shows them.
 *
 * @param words  parts of names, all of which must occur; empty = all
 */
export function reachShown(rows: readonly ReachRow[], words: string, order: ReachOrder): readonly ReachRow[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean)
  const found = rows.filter(row => wanted.every(word => row.name.toLowerCase().includes(word) || row.compound.includes(word)))
  const byYield = (a: ReachRow, b: ReachRow): number => (b.bestYieldOnStart ?? -1) - (a.bestYieldOnStart ?? -1)
  const byName = (a: ReachRow, b: ReachRow): number => (a.name < b.name ? -1 : 1)
  return [...found].sort((a, b) =>
    order === 'name'
      ? byName(a, b)
      : order === 'yield'
        ? byYield(a, b) || byName(a, b)
        : (a.steps ?? 99) - (b.steps ?? 99) || byYield(a, b) || byName(a, b),
  )
}
