import { signal } from '@preact/signals'
import type { Problem } from '../../core/problem/problem.ts'
import { problemsOf } from '../state/asked.ts'
import { forgetLibrary } from '../state/questions.ts'
import { type Edit, entryServer, type OwnReply, type OwnVersion } from './api.ts'
import { readAgain } from './reading.ts'

/** The bench's own library as it stands on the server. */
export const own = signal<OwnReply | null>(null)
export const ownProblems = signal<readonly Problem[]>([])
/** The save that was made last on this page, until it is taken back. */
export const lastSave = signal<OwnVersion | null>(null)

export async function loadOwn(): Promise<void> {
  try {
    own.value = await entryServer.own()
    ownProblems.value = []
  } catch (fault) {
    ownProblems.value = problemsOf(fault)
  }
}

/** Of what a save is called in the list of saves, characters. */
const longestWhat = 300

/** @returns the problems; empty = it is saved, whole */
export async function saveOwn(what: string, edit: Edit): Promise<readonly Problem[]> {
  try {
    // On top of what stands now: what the trial showed was checked against just that.
    const { version } = await entryServer.own()
    const saved = await entryServer.save(version, what.slice(0, longestWhat), edit)
    await changed()
    lastSave.value = saved
    return []
  } catch (fault) {
    return problemsOf(fault)
  }
}

/** Takes the newest save back that still stands. */
export async function undoOwn(): Promise<void> {
  try {
    const { version } = await entryServer.own()
    await entryServer.undo(version)
    lastSave.value = null
    await changed()
  } catch (fault) {
    ownProblems.value = problemsOf(fault)
  }
}

async function changed(): Promise<void> {
  await loadOwn()
  forgetLibrary()
  readAgain()
}
