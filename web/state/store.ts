import { batch, computed, signal } from '@preact/signals'
import type { Change } from './change.ts'
import { type History, historyOf, stepped, undone } from './history.ts'
import { emptyState, type SheetState } from './sheet-state.ts'

/** A fresh plan's seed: any number serves, as long as it stays with the plan. */
const newSeed = (): number => Math.floor(Math.random() * 0x7fffffff)

const history = signal<History>(historyOf(emptyState(newSeed())))

/** What the person has said. */
export const sheet = computed<SheetState>(() => history.value.now)
export const plan = computed(() => sheet.value.plan)
export const choosing = computed(() => sheet.value.choosing)
export const canUndo = computed(() => history.value.past.length > 0)
/** Grows with every change and every step back: what is to be saved. */
export const edits = signal(0)

export function change(what: Change): void {
  batch(() => {
    history.value = stepped(history.value, what)
    edits.value++
  })
}

export function undo(): void {
  if (!canUndo.value) return
  batch(() => {
    history.value = undone(history.value)
    edits.value++
  })
}

/** Opens a plan that is kept somewhere: nothing to undo, nothing to save. */
export function show(state: SheetState): void {
  batch(() => {
    history.value = historyOf(state)
    edits.value = 0
  })
}

/** An empty sheet. */
export const startAfresh = (): void => show(emptyState(newSeed()))
