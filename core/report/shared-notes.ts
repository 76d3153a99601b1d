import type { HazardList } from '../hazards/hazard-list.ts'
import { byNumber } from '../plan/merged-steps.ts'
import { sentence } from './words.ts'

/** Dangers that the same steps have, as sentences. */
export interface SharedNotes {
  readonly steps: readonly string[]
  readonly notes: readonly string[]
}

/**
 * Dangers of the steps, each told once with all the steps that have it: first what is a step's own, in order of steps, then what several
 * share.
 */
export function sharedNotes(steps: HazardList['steps']): readonly SharedNotes[] {
  const inOrder = [...steps].sort((a, b) => byNumber(a.step, b.step))
  const byNote = new Map<string, string[]>()
  for (const { step, notes } of inOrder)
    for (const note of new Set(notes.map(sentence))) byNote.set(note, [...(byNote.get(note) ?? []), step])
  const groups = new Map<string, { readonly steps: readonly string[]; readonly notes: string[] }>()
  for (const [note, numbers] of byNote) {
    const group = groups.get(numbers.join(' '))
    if (group) group.notes.push(note)
    else groups.set(numbers.join(' '), { steps: numbers, notes: [note] })
  }
  return [...groups.values()].sort((a, b) => Number(a.steps.length > 1) - Number(b.steps.length > 1) || byNumber(a.steps[0]!, b.steps[0]!))
}
