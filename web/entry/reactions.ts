import { computed, signal } from '@preact/signals'
import type { Problem } from '../../core/problem/problem.ts'
import { ask, post } from '../api/client.ts'
import { problemsOf } from '../state/asked.ts'
import { emptyWriting, switchWriting, type Writing, writing } from './draft.ts'
import type { TypedMaterial } from './material-typed.ts'
import { own } from './own.ts'
import { openEntry } from './place.ts'

/** One reaction of a file, as the server shows it. */
export interface ReactionShown {
  readonly file: string
  /** In its file, from 1. */
  readonly number: number
  readonly title: string
  /** Its piece of the file. */
  readonly text: string
  /** Null where it cannot be read. */
  readonly read: {
    readonly equation: string
    readonly agents: readonly string[]
    readonly unknown: readonly string[]
    /** Drawn in one hand, both by the file's chiral flag; absent in a list of before. */
    readonly byFlag?: readonly string[]
  } | null
  readonly balanced: boolean
  readonly problems: readonly Problem[]
}

/** A reaction on its way into the library: as in the file, as written so far, or left out by a person. */
export interface Queued extends ReactionShown {
  /** Null = not opened yet: what the file says of it stands for it. */
  readonly written: Writing | null
  readonly left: boolean
}

export interface Queue {
  readonly items: readonly Queued[]
  /** The one that is being written; null = none, and the page is the person's own. */
  readonly at: number | null
  /** What was being written before the file came; it comes back. */
  readonly before: Writing
  /** What was said of structures that the library does not hold, by their SMILES; absent in a list of before. */
  readonly said?: Readonly<Record<string, Partial<TypedMaterial>>>
  /** What new materials were called when they were taken over, by their SMILES. */
  readonly called?: Readonly<Record<string, string>>
  /** Version of the own library that they were taken over as. */
  readonly saved: number | null
}

const key = 'waybench-reactions'

function kept(): Queue | null {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(key) ?? 'null')
    return typeof read === 'object' && read !== null && Array.isArray((read as Queue).items) ? (read as Queue) : null
  } catch {
    return null
  }
}

/** Reactions of files that are gone through and taken over together; kept in this browser until they are, or are put away. */
export const queue = signal<Queue | null>(kept())

function set(next: Queue | null): void {
  queue.value = next
  try {
    if (next === null) localStorage.removeItem(key)
    else localStorage.setItem(key, JSON.stringify(next))
  } catch {
    // A full or forbidden storage keeps nothing; the list still stands on the page.
  }
}

const readFiles = async (files: readonly { readonly name: string; readonly text: string }[]): Promise<readonly ReactionShown[]> =>
  (await ask<{ reactions: readonly ReactionShown[] }>('read-reactions', post({ files }))).reactions

/** Reads files of reactions; the list of them stands then, or why none does is told. */
export async function beginQueue(files: readonly { readonly name: string; readonly text: string }[]): Promise<readonly Problem[]> {
  try {
    const items = (await readFiles(files)).map(one => ({ ...one, written: null, left: false }))
    const now = queue.peek()
    // What is still being completed stays; what was taken over is done with.
    if (now !== null && !standsSaved(now)) set({ ...now, items: [...now.items, ...items], saved: null })
    else {
      closeReaction()
      set({ items, at: null, before: writing.peek(), saved: null })
    }
    return []
  } catch (fault) {
    return problemsOf(fault)
  }
}

/** A reaction's piece of the file as mended by hand, read again in its place. */
export async function mend(at: number, text: string): Promise<readonly Problem[]> {
  const item = queue.peek()?.items[at]
  if (item === undefined) return []
  try {
    const [first] = await readFiles([{ name: item.file, text }])
    if (first !== undefined) change(at, { ...first, number: item.number, title: first.title || item.title, text, written: null })
    return []
  } catch (fault) {
    return problemsOf(fault)
  }
}

export const leaveOut = (at: number, left: boolean): void => change(at, { left })

/** Changes what stands of the list, and keeps it. */
export function patchQueue(patch: Partial<Pick<Queue, 'items' | 'said' | 'called'>>): void {
  const now = queue.peek()
  if (now !== null) set({ ...now, ...patch })
}

function change(at: number, patch: Partial<Queued>): void {
  const now = queue.peek()
  if (now !== null) patchQueue({ items: now.items.map((item, one) => (one === at ? { ...item, ...patch } : item)) })
}

/** A remark, which the reader passes over, above what has no amount yet. */
const overArrow = '# over the arrow in the file: give each its amount'

/** A reaction as the beginning of a preparation. */
export const writingOf = ({ read, title }: Pick<ReactionShown, 'read' | 'title'>): Writing => ({
  ...emptyWriting,
  equation: read?.equation ?? '',
  body: read === null || read.agents.length === 0 ? '' : [overArrow, ...read.agents].join('\n'),
  name: title,
})

/** What stands for a reaction now: what is being written, where it is the one that is. */
export function writtenOf(now: Queue, at: number): Writing {
  return now.at === at ? writing.value : (now.items[at]!.written ?? writingOf(now.items[at]!))
}

/** Keeps what is being written with its reaction. */
function stashed(now: Queue): Queue {
  const { at } = now
  return at === null ? now : { ...now, items: now.items.map((item, one) => (one === at ? { ...item, written: writing.peek() } : item)) }
}

/** Opens a reaction of the list where preparations are written. */
export function openReaction(at: number): void {
  const now = queue.peek()
  if (now?.items[at]?.read == null) return
  const next = stashed(now)
  set({ ...next, at, before: now.at === null ? writing.peek() : now.before })
  switchWriting(next.items[at]!.written ?? writingOf(next.items[at]!))
  openEntry('write')
}

/** Back to the list; what was written before the file came stands where preparations are written. */
export function closeReaction(): void {
  const now = queue.peek()
  if (now !== null && now.at !== null) {
    set({ ...stashed(now), at: null })
    switchWriting(now.before)
  }
}

/** The list that was put away last, until this page is left. */
export const awayWith = signal<Queue | null>(null)

/** Ends with the list; the person's own writing comes back, and the list too if that was a slip. */
export function putAway(): void {
  closeReaction()
  awayWith.value = queue.peek()
  set(null)
}

export function bringBack(): void {
  set(awayWith.peek())
  awayWith.value = null
}

/** They were taken over, and that has not been taken back. */
export const standsSaved = ({ saved }: Queue): boolean => saved !== null && own.value?.history.some(one => one.undoes === saved) !== true

/** They were taken over as this version. */
export function markSaved(saved: number): void {
  const now = queue.peek()
  if (now !== null) set({ ...now, saved })
}

/** Source, certainty, hood and the like as in another reaction of the list, where the person says that they are the same. */
export function likeReaction(at: number): Partial<Writing> {
  const now = queue.peek()
  if (now === null) return {}
  const { source, known, atmosphere, vessel, exotherm, hood } = writtenOf(now, at)
  return { source, known, atmosphere, vessel, exotherm, hood }
}

/** Reactions that can be opened, in order. */
export const openable = computed(() => (queue.value?.items ?? []).flatMap((item, at) => (item.read === null || item.left ? [] : [at])))
