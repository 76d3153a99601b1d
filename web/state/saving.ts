import { effect, signal } from '@preact/signals'
import type { LibraryFile } from '../../core/library/library.ts'
import { stepMissing } from '../../core/plan/missing-steps.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { Refused, server } from '../api/client.ts'
import { addressWith } from './address.ts'
import { problemsOf } from './asked.ts'
import { carried, carriedInSearch } from './brought.ts'
import { type Draft, dropDraft, keepDraft } from './draft.ts'
import { bringWhatIsSaved, carryPlan, factsAsked } from './facts-asked.ts'
import { facts } from './facts-here.ts'
import { fileOfPlan } from './plan-file.ts'
import { hasStart, type SheetState } from './sheet-state.ts'
import { edits, sheet } from './store.ts'

/** So long after the last change a plan is saved, ms: long enough for a word, short enough to be believed. */
const restMs = 900

export const saved = signal<Draft['saved']>(null)
/** `kept` = only in this browser so far. */
export const savingState = signal<'clean' | 'kept' | 'saving' | 'conflict' | 'failed'>('clean')
export const savingProblems = signal<readonly Problem[]>([])

let timer: ReturnType<typeof setTimeout> | undefined
let inFlight = false

/** Keeps every change in the browser at once and on the server once the hand rests; called once. */
export function watchSaving(): void {
  effect(() => {
    const now = edits.value
    const state = sheet.value
    if (now === 0) return
    keepDraft({ state, saved: saved.peek(), clean: false, records: recordsOf(state) })
    if (savingState.peek() === 'conflict') return
    savingState.value = 'kept'
    clearTimeout(timer)
    timer = setTimeout(() => void save(), restMs)
  })
}

/** What a draft must hold beside what was typed: records that the server may not have, or has others of. */
const recordsOf = ({ plan }: SheetState): LibraryFile | null =>
  plan.keepsRecords === true ? (facts.peek().kept ?? carried.peek()) : carriedInSearch.peek()

/** Saves now. `over` writes over what somebody else saved meanwhile. */
export async function save(over: number | null = null): Promise<void> {
  if (!hasStart(sheet.peek())) return
  if (inFlight) {
    timer = setTimeout(() => void save(over), restMs)
    return
  }
  inFlight = true
  savingState.value = 'saving'
  const { seed } = sheet.peek().plan
  const { missing, waiting } = await bringWhatIsSaved()
  if (sheet.peek().plan.seed !== seed) {
    // Another plan was opened meanwhile; this one is kept in this browser.
    inFlight = false
    return
  }
  if (waiting || missing.length > 0) {
    inFlight = false
    if (waiting) {
      savingState.value = 'kept'
      timer = setTimeout(() => void save(over), restMs)
      return
    }
    // Written without them it could never be reckoned again; this browser keeps it.
    savingProblems.value = factsAsked.peek().problems.length > 0 ? factsAsked.peek().problems : missing.map(stepMissing)
    savingState.value = 'failed'
    return
  }
  const at = edits.peek()
  const state = sheet.peek()
  const before = saved.peek()
  try {
    const file = fileOfPlan(state, facts.peek())
    const reply = before === null ? await server.savePlan(file) : await server.saveAgain(before.id, over ?? before.version, file)
    const kept = { id: reply.id, version: reply.version, savedAt: reply.savedAt }
    if (saved.peek() !== before || sheet.peek().plan.seed !== state.plan.seed) {
      // Another plan was opened meanwhile: this one is safe, and the page is no longer about it.
      keepDraft({ state, saved: kept, clean: true })
      return
    }
    saved.value = kept
    carryPlan()
    savingProblems.value = []
    const clean = edits.peek() === at
    savingState.value = clean ? 'clean' : 'kept'
    keepDraft({ state: sheet.peek(), saved: saved.peek(), clean, records: recordsOf(sheet.peek()) })
    window.history.replaceState(null, '', addressWith(location.href, reply.id))
    if (!clean) timer = setTimeout(() => void save(), restMs)
  } catch (fault) {
    savingProblems.value = problemsOf(fault)
    savingState.value = fault instanceof Refused && fault.status === 409 ? 'conflict' : 'failed'
  } finally {
    inFlight = false
  }
}

/** Takes over what somebody else saved, or writes ours over it. */
export async function settleConflict(keep: 'mine' | 'theirs', open: (id: string) => Promise<void>): Promise<void> {
  const mine = saved.peek()
  if (mine === null) return
  if (keep === 'theirs') {
    dropDraft(mine.id)
    savingState.value = 'clean'
    await open(mine.id)
    return
  }
  try {
    const theirs = await server.plan(mine.id)
    await save(theirs.version)
  } catch (fault) {
    savingProblems.value = problemsOf(fault)
  }
}
