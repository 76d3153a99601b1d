import { effect, signal } from '@preact/signals'
import type { Problem } from '../../core/problem/problem.ts'
import { nameKey } from '../../core/reading/name-key.ts'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type NewStructure } from './api.ts'
import { asked, materialLacks, materialRecord, tooLong } from './material-draft.ts'
import { emptyMaterial, type TypedMaterial } from './material-typed.ts'
import { own } from './own.ts'
import { patchQueue, type Queue, queue } from './reactions.ts'
import { readWith } from './reading.ts'
import type { Lack } from './record.ts'
import { today } from './today.ts'

/** A structure of the files that the library does not hold, on its way into it together with its reactions. */
export interface NewMaterial {
  readonly typed: TypedMaterial
  readonly told: NewStructure
  /** As it would be saved. */
  readonly record: Readonly<Record<string, unknown>>
  readonly lacking: readonly Lack[]
}

export interface News {
  readonly all: readonly NewMaterial[]
  /** They are those of what stands in the list now. */
  readonly fresh: boolean
  readonly problems: readonly Problem[]
}

const none: News = { all: [], fresh: true, problems: [] }
/** The new materials of the list of reactions. */
export const news = signal<News>(none)

/** What was said of a structure of the list. */
export const saidOf = ({ said = {} }: Pick<Queue, 'said'>, smiles: string): TypedMaterial => ({ ...emptyMaterial, ...said[smiles], smiles })

/** Whether a person said if it is a solid, a liquid or a gas, which a structure does not tell. */
export const isFormSaid = ({ said = {} }: Pick<Queue, 'said'>, structures: readonly string[]): boolean =>
  structures.some(smiles => said[smiles]?.form !== undefined)

/** Says something of a structure, however the file writes it; hazards that were confirmed for another name are to be confirmed anew. */
export function sayOfStructure({ structures }: NewStructure, patch: Partial<TypedMaterial>): void {
  const now = queue.peek()
  if (now === null) return
  const isOther = 'name' in patch || 'cas' in patch
  const anewOf = ({ hazards }: TypedMaterial): Partial<TypedMaterial> => (isOther && hazards === 'tables' ? { hazards: 'unknown' } : {})
  const said = structures.map(smiles => {
    // Only what was said is kept: the form of a material is nobody's word before a person says it.
    return [smiles, { ...now.said?.[smiles], ...anewOf(saidOf(now, smiles)), ...patch }] as const
  })
  patchQueue({ said: { ...now.said, ...Object.fromEntries(said) } })
}

/** A structure is a material that the library holds, by the word of whoever reads it: the reactions name that one, and nothing is added. */
export function takeForHeld({ structures }: NewStructure, id: string): void {
  const now = queue.peek()
  if (now === null) return
  const line = (text: string): string => (structures.includes(text.trim()) ? `${text} {${id}}` : text)
  const named = (equation: string): string => wordByWord(equation, line)
  patchQueue({
    items: now.items.map(item => {
      const { read, written } = item
      if (read === null || !read.unknown.some(smiles => structures.includes(smiles))) return item
      const unknown = read.unknown.filter(smiles => !structures.includes(smiles))
      const body = (text: string): string => text.split('\n').map(line).join('\n')
      return {
        ...item,
        read: { ...read, equation: named(read.equation), agents: read.agents.map(line), unknown },
        written: written === null ? null : { ...written, equation: named(written.equation), body: body(written.body) },
      }
    }),
  })
}

/** An equation, or a list, with the names that the new materials will have, or were taken over with, in place of their structures. */
export const withNewNames = (text: string): string => {
  const called = queue.value?.called ?? {}
  return wordByWord(text, word => newNames(news.value)[word] ?? called[word] ?? word)
}

const newNames = ({ all }: News): Readonly<Record<string, string>> =>
  Object.fromEntries(all.flatMap(({ told, record }) => told.structures.map(smiles => [smiles, String(record.name)] as const)))

/** The new materials are taken over: the library holds them now, and the list goes on calling them by their names. */
export function keepNewNames(): void {
  patchQueue({ called: { ...queue.peek()?.called, ...newNames(news.peek()) } })
}

/** Each term of an equation without its coefficient, or each of a list, as another word. */
const wordByWord = (text: string, of: (word: string) => string): string =>
  text
    .split(/( \+ | -> | → |; )/)
    .map(part => part.replace(/^(\d+ )?(\S.*)$/, (_, count: string | undefined, word: string) => `${count ?? ''}${of(word)}`))
    .join('')

/** New materials that records of steps name, and no others: what was taken out of a reaction is not added. */
export function namedIn(steps: readonly unknown[]): readonly Readonly<Record<string, unknown>>[] {
  const words = new Set(JSON.stringify(steps).match(/"[a-z0-9-]+"/g))
  return news.value.all.filter(({ record }) => words.has(JSON.stringify(record.id))).map(({ record }) => record)
}

/** After the last letter, ms. */
const restMs = 200
let watching = false

/** Asks what the new structures of the list are whenever it changes, or the library does; called when the entry page first stands. */
export function watchNews(): void {
  if (watching) return
  watching = true
  effect(() => {
    const with_ = queue.value?.at == null ? [] : news.value.all.map(({ record }) => record)
    if (JSON.stringify(with_) !== JSON.stringify(readWith.peek())) readWith.value = with_
  })
  let before = ''
  effect(() => {
    const now = queue.value
    const typed = now === null ? [] : unknownIn(now).map(smiles => saidOf(now, smiles))
    const question = JSON.stringify([own.value?.version ?? 0, typed])
    if (question === before) return
    before = question
    stop?.abort()
    stop = new AbortController()
    if (typed.length === 0) {
      news.value = none
      return
    }
    news.value = { ...news.peek(), fresh: false }
    void ask(typed, stop.signal)
  })
}

let stop: AbortController | null = null

async function ask(typed: readonly TypedMaterial[], signal: AbortSignal): Promise<void> {
  await new Promise(done => setTimeout(done, restMs))
  if (signal.aborted) return
  try {
    // What is too long to be sent is told beside its field, and not sent.
    const short = typed.map(one => (tooLong(one).length > 0 ? { ...emptyMaterial, smiles: one.smiles } : one))
    const { materials } = await entryServer.newStructures(short.map(asked), signal)
    const all = materials.map(told => newMaterial(told, typed.find(one => told.structures.includes(one.smiles))!))
    news.value = { all: all.map((one, at) => withoutDouble(one, all.slice(0, at))), fresh: true, problems: [] }
  } catch (fault) {
    if (!signal.aborted) news.value = { ...news.peek(), problems: problemsOf(fault) }
  }
}

function newMaterial(told: NewStructure, typed: TypedMaterial): NewMaterial {
  const long = tooLong(typed)
  const formless = isFormSaid(queue.peek() ?? {}, told.structures)
    ? []
    : [{ field: 'form', what: 'whether it is a solid, a liquid or a gas' }]
  return { typed, told, record: materialRecord(typed, told, today()), lacking: [...long, ...formless, ...materialLacks(typed, told)] }
}

/** Two of one name would be asked about ever after. */
function withoutDouble(one: NewMaterial, before: readonly NewMaterial[]): NewMaterial {
  const key = (each: NewMaterial): string => nameKey(String(each.record.name)).toLowerCase()
  const other = before.find(each => key(each) === key(one))
  if (other === undefined) return one
  const wrong = `Another new material of this file, ${String(other.told.material.formula)}, is called so: write what sets this one apart.`
  return { ...one, lacking: [...one.lacking, { field: 'name', what: 'a name of its own', wrong }] }
}

const unknownIn = ({ items }: Queue): readonly string[] => [
  ...new Set(items.flatMap(({ left, read }) => (left || read === null ? [] : read.unknown))),
]
