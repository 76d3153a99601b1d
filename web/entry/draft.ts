import { computed, signal } from '@preact/signals'
import type { LineFacts } from '../../core/reading/charge-table.ts'
import { isOutcome } from '../../core/reading/outcome-line.ts'
import type { TypedTask } from './typed-tasks.ts'

/** A preparation as it is being written: everything as typed. */
export interface Writing {
  readonly equation: string
  /** Charges, what is done, times: a line each. */
  readonly body: string
  /** "46.5 g", "80 %", or a range; empty = not said. */
  readonly outcome: string
  /** Percent, as typed. */
  readonly low: string
  readonly typical: string
  readonly high: string
  readonly hours: string
  readonly handsOn: string
  readonly temperature: string
  readonly holdPoint: '' | 'never' | 'hours' | 'overnight' | 'weeks'
  readonly vessel: '' | 'flask' | 'beaker' | 'pot' | 'tube' | 'mortar' | 'tray' | 'other'
  readonly atmosphere: 'air' | 'inert'
  readonly exotherm: '' | 'none' | 'mild' | 'strong'
  readonly hood: '' | 'yes' | 'no'
  readonly tasks: readonly TypedTask[]
  /** Parted by commas. */
  readonly equipment: string
  readonly dangers: string
  readonly source: string
  readonly known: '' | 'checked' | 'memory' | 'own'
  /** Day of the run at the own bench, YYYY-MM-DD; empty = not said. */
  readonly ranOn: string
  readonly name: string
  /** Id of a record that this one is to stand in place of; empty = a new one. */
  readonly inPlaceOf: string
  /** Role by the key of a charge line as typed, where a person or a table set another than the reader's. */
  readonly roles: Readonly<Record<string, string>>
  /** What a table or a person said of a charge line besides, by the same key. */
  readonly facts: Readonly<Record<string, LineFacts>>
}

export const emptyWriting: Writing = {
  equation: '',
  body: '',
  outcome: '',
  low: '',
  typical: '',
  high: '',
  hours: '',
  handsOn: '',
  temperature: '',
  holdPoint: '',
  vessel: '',
  atmosphere: 'air',
  exotherm: '',
  hood: '',
  tasks: [],
  equipment: '',
  dangers: '',
  source: '',
  known: '',
  ranOn: '',
  name: '',
  inPlaceOf: '',
  roles: {},
  facts: {},
}

const key = 'waybench-entry'

function kept(): Writing {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(key) ?? 'null')
    return typeof read === 'object' && read !== null ? { ...emptyWriting, ...read } : emptyWriting
  } catch {
    return emptyWriting
  }
}

/** What is being written; kept in this browser at every letter. */
export const writing = signal<Writing>(kept())

/** What stood before an example was loaded, the page emptied or a proposal taken; newest last. */
const before = signal<readonly Writing[]>([])
export const canTakeBack = computed(() => before.value.length > 0)
const mostSteps = 50

export function write(patch: Partial<Writing>): void {
  writing.value = { ...writing.peek(), ...patch }
  try {
    localStorage.setItem(key, JSON.stringify(writing.peek()))
  } catch {
    // A full or forbidden storage keeps nothing; what is written still stands on the page.
  }
}

/** A change that replaces what was typed: it can be taken back. */
export function replaceWriting(patch: Partial<Writing>): void {
  before.value = [...before.peek().slice(1 - mostSteps), writing.peek()]
  write(patch)
}

/** Another preparation takes the place of this one, which is kept elsewhere: undoing must not mix the two. */
export function switchWriting(next: Writing): void {
  before.value = []
  write({ ...emptyWriting, ...next })
}

export function takeBack(): void {
  const last = before.peek().at(-1)
  if (last === undefined) return
  before.value = before.peek().slice(0, -1)
  write(last)
}

/** Stands in the first line while no equation is written, so that the first charge is not taken for one. */
const noEquation = '->'

/** The text as the reader takes it; empty where nothing is written. */
export function textOf({ equation, body, outcome }: Writing): string {
  const rest = [body, outcome.trim() === '' ? '' : outcomeLine(outcome)].filter(part => part.trim() !== '')
  const first = equation.replace(/\s+/g, ' ').trim()
  if (first === '' && rest.length === 0) return ''
  return [first === '' ? noEquation : first, ...rest].join('\n')
}

/** "46.5 g" alone says nothing to the reader; the blank it stands in does. */
export const outcomeLine = (outcome: string): string => {
  const text = outcome.replace(/\s+/g, ' ').trim()
  return isOutcome(text) ? text : `isolated ${text}`
}
