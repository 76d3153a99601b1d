import { computed, signal } from '@preact/signals'
import type { Transformation } from '../../core/library/transformation.ts'
import type { StepRow } from './api.ts'
import { type Writing, writing } from './draft.ts'
import { own } from './own.ts'
import { readingState } from './reading.ts'
import { type Drafted, drafted, type Lack } from './record.ts'
import { sameRecord } from './same-record.ts'
import { today } from './today.ts'

/** Steps of the library that make the same of the same; null = not looked up yet. */
export const sameWays = signal<readonly StepRow[] | null>(null)
/** Ids that the library beneath has turned out to hold: a new step is not to stand in place of one unsaid. */
export const idsBeneath = signal<ReadonlySet<string>>(new Set())

export interface Drafting extends Drafted {
  /** The record is saved already, word for word. */
  readonly isKept: boolean
}

/**
 * The record out of what is written, as it would be saved.
 *
 * @param kept   the own steps
 * @param ways   steps with the same reactants and product, own ones among them
 * @param beneath ids that are not free besides
 */
export function draftingOf(
  it: Writing,
  reading: Parameters<typeof drafted>[1],
  kept: readonly Transformation[],
  ways: readonly Pick<StepRow, 'id' | 'name'>[],
  beneath: ReadonlySet<string>,
  day: string,
): Drafting {
  const ids = new Set([...kept.map(one => one.id), ...ways.map(one => one.id), ...beneath])
  // What was to be replaced makes something else than what is written now: then it is left alone.
  const inPlaceOf = ways.some(one => one.id === it.inPlaceOf) ? it.inPlaceOf : ''
  const { record, lacking } = drafted({ ...it, inPlaceOf }, reading, day, id => ids.has(id))
  if (record === null) return { record, lacking, isKept: false }
  const twin = sameRecord(record, inPlaceOf === '' ? kept : kept.filter(one => one.id === inPlaceOf))
  if (twin !== null) return { record: { ...twin }, lacking, isKept: true }
  const namesake = [...kept, ...ways].find(one => one.id !== record.id && one.name === record.name)
  return namesake === undefined ? { record, lacking, isKept: false } : { record: null, lacking: [named(namesake.name)], isKept: false }
}

const named = (name: string): Lack => ({
  field: 'name',
  what: 'a name of its own',
  wrong: `Another step is called “${name}” already, and routes would show two that look alike: write what sets this one apart, such as its source or its scale.`,
})

export const drafting = computed(() =>
  draftingOf(
    writing.value,
    readingState.value.reading,
    (own.value?.transformations ?? []) as readonly Transformation[],
    sameWays.value ?? [],
    idsBeneath.value,
    today(),
  ),
)

/** What is wrong with what stands in a field, and how to write it; null = nothing, or nothing is known yet. */
export const wrongIn = (field: string): string | null =>
  readingState.value.fresh ? (drafting.value.lacking.find(one => one.field === field && one.wrong !== undefined)?.wrong ?? null) : null
