import { effect, signal } from '@preact/signals'
import { changesSince, type OpenedPlan } from '../../core/plan/file.ts'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import { settingsSchema } from '../../core/plan/settings.ts'
import { sliceFile } from '../../core/plan/slice.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { server } from '../api/client.ts'
import type { DemoReply, PlanRow, WayIn } from '../api/replies.ts'
import { addressWith, planInAddress } from './address.ts'
import { problemsOf } from './asked.ts'
import { brought, carried } from './brought.ts'
import { type Draft, draftOf, dropDraft, unsavedDrafts } from './draft.ts'
import { keeping, noFacts } from './facts.ts'
import { bringFacts } from './facts-asked.ts'
import { facts, startCompound } from './facts-here.ts'
import { forgetWanted, wantGoal } from './goals.ts'
import { forgetHalfDone } from './half-done.ts'
import { planOfFile, stateOfPlan } from './plan-file.ts'
import { planTitle } from './plan-title.ts'
import { before, changedSince } from './records-saved-with.ts'
import { routeOfSteps } from './routes-of.ts'
import { saved, savingProblems, savingState } from './saving.ts'
import { emptyState, hasStart } from './sheet-state.ts'
import { change, edits, plan, show, startAfresh } from './store.ts'
import { openQuestion } from './view.ts'

/** The first page stands: no plan is open, or the list of plans was asked for. */
export const atDoor = signal(true)
export const plansKept = signal<readonly PlanRow[]>([])
/** Plans that are in this browser alone. */
export const unsaved = signal<readonly Draft[]>([])
export const demo = signal<DemoReply | null>(null)
export const openingProblems = signal<readonly Problem[]>([])
export const opening = signal(false)

/** Reckons on with the records of the plan file: what the server has of the same ones is left aside. The plan keeps that choice. */
export function keepOldLibrary(): void {
  before.value ??= carried.value
  change({ do: 'keep-records', keep: true })
}

/** Records of these steps are at hand, of the plan itself. */
export function canKeepOld(steps: readonly string[]): boolean {
  const held = new Set((before.value ?? carried.value)?.transformations.map(step => step.id))
  return steps.every(id => held.has(id))
}

/** Reckons with what the library says now, and saves that, so that it is not asked again. */
export function takeNewLibrary(): void {
  changedSince.value = []
  change({ do: 'keep-records', keep: false })
}

/** The facts follow what the plan goes by, over Undo too; called once. */
export function watchRecords(): void {
  effect(() => {
    const keeps = plan.value.keepsRecords === true
    const old = before.value
    const { kept } = facts.peek()
    if (old !== null && keeps && kept === null) facts.value = keeping(facts.peek(), old)
    else if (!keeps && kept !== null) facts.value = noFacts
  })
}

/** Another plan is opened: nothing of the one before is kept. */
function leave(): void {
  forgetWanted()
  forgetHalfDone()
  changedSince.value = []
  before.value = null
  carried.value = null
  if (facts.value.kept !== null) facts.value = noFacts
}

/** What the address asks for; else the first page, which also shows what never reached the server. */
export async function begin(): Promise<void> {
  const id = planInAddress(location.search)
  if (id !== null) return openPlan(id)
  await openDoor()
}

/** The first page: what is kept on the server and in this browser, and the demo. */
async function openDoor(): Promise<void> {
  atDoor.value = true
  unsaved.value = unsavedDrafts().filter(draft => hasStart(draft.state))
  const [kept, shown] = await Promise.allSettled([server.plans(), server.demo()])
  if (kept.status === 'fulfilled') plansKept.value = kept.value.plans
  if (shown.status === 'fulfilled') {
    demo.value = shown.value
    // Drawn on the first page, and at hand when one of them is opened.
    const { waysIn } = shown.value
    void bringFacts(
      [],
      waysIn.flatMap(way => [way.start.material, ...(way.goals ?? []).map(goal => goal.target)]),
    )
  }
  openingProblems.value = kept.status === 'rejected' ? problemsOf(kept.reason) : []
}

/** Deletes a plan that is kept, with all its versions and its draft here. */
export async function dropKept(id: string): Promise<void> {
  try {
    await server.dropPlan(id)
    dropDraft(id)
    plansKept.value = plansKept.value.filter(row => row.id !== id)
  } catch (fault) {
    openingProblems.value = problemsOf(fault)
  }
}

/** Leaves the plan, which is kept, for the first page. */
export function openList(): void {
  leave()
  startAfresh()
  saved.value = null
  savingState.value = 'clean'
  savingProblems.value = []
  window.history.pushState(null, '', addressWith(location.href, null))
  void openDoor()
}

/** Opens a plan by its id. A draft of it in this browser that never reached the server stands before what the server has. */
export async function openPlan(id: string): Promise<void> {
  opening.value = true
  openingProblems.value = []
  leave()
  const draft = draftOf(id)
  try {
    const kept = await server.plan(id)
    const read = planOfFile(kept.plan)
    carried.value = read.ok ? sliceFile(read.value.slice) : null
    if (draft !== null && !draft.clean && draft.saved !== null) {
      show(draft.state)
      saved.value = draft.saved
      savingState.value = draft.saved.version === kept.version ? 'kept' : 'conflict'
      edits.value = 1
    } else {
      const opened = read
      if (!opened.ok) {
        openingProblems.value = opened.problems
        atDoor.value = true
        return
      }
      show(stateOfPlan(opened.value.plan))
      saved.value = { id: kept.id, version: kept.version, savedAt: kept.savedAt }
      savingState.value = 'clean'
      changedSince.value = kept.changes
    }
    before.value = carried.value
    window.history.replaceState(null, '', addressWith(location.href, id))
    atDoor.value = false
  } catch (fault) {
    if (draft !== null) {
      showDraft(draft)
      saved.value = draft.saved
      savingState.value = 'failed'
      savingProblems.value = problemsOf(fault)
      atDoor.value = false
    } else {
      openingProblems.value = problemsOf(fault)
      await openDoor()
      openingProblems.value = problemsOf(fault)
    }
  } finally {
    opening.value = false
  }
}

/** What a draft holds: its records too, by which a plan that keeps them is reckoned, whatever the library says by now. */
function showDraft({ state, records = null }: Draft): void {
  carried.value = records
  // First what the server says of all it names, with all that it has reckoned about it; the records then stand over that.
  show(state)
  before.value = records
}

/** Goes on with a plan that never reached the server; it is saved as soon as that answers. */
export function openUnsaved(draft: Draft): void {
  leave()
  showDraft(draft)
  saved.value = null
  edits.value = 1
  atDoor.value = false
}

/** An empty sheet, or one on which something is in hand already. */
export function beginPlan(start: { readonly material: string; readonly name: string; readonly massG: number | null } | null): void {
  leave()
  startAfresh()
  saved.value = null
  atDoor.value = false
  if (start === null) {
    openQuestion.value = 1
    return
  }
  change({ do: 'rename', title: titleOf(start.name) })
  change({ do: 'start', material: start.material, massG: start.massG })
  openQuestion.value = 2
}

/** A title that no kept plan bears yet: "Benzoin downstream", then "Benzoin downstream 2". */
function freeTitle(title: string): string {
  const taken = new Set(plansKept.value.map(row => row.title))
  for (let no = 1; ; no++) {
    const numbered = no === 1 ? title : `${title} ${no}`
    if (!taken.has(numbered)) return numbered
  }
}

const titleOf = (name: string): string => freeTitle(planTitle(name, new Date().toISOString().slice(0, 10)))

/** A plan out of a file: a new one here, reckoned with the library that is served; what differs from its own is told. */
export function showFile(opened: OpenedPlan): void {
  leave()
  carried.value = sliceFile(opened.slice)
  show(stateOfPlan(opened.plan))
  before.value = carried.value
  saved.value = null
  edits.value = 1
  atDoor.value = false
  openQuestion.value = null
  // All of its records, so that each is held against what the library says of it.
  const steps = [...opened.slice.transformations.keys()]
  const routes = Array.from({ length: Math.ceil(steps.length / mostSteps) }, (_, at) => steps.slice(at * mostSteps, (at + 1) * mostSteps))
  void bringFacts(routes, [...opened.slice.materials.keys()]).then(() => {
    const { materials, transformations } = facts.value.library
    const here = libraryOfParts(
      { title: '' },
      [...materials.values()].filter(one => !brought.value.materials.has(one.id)),
      [...transformations.values()].filter(one => !brought.value.steps.has(one.id)),
    )
    changedSince.value = changesSince(here, opened)
  })
}

/** So many steps are asked for in one list. */
const mostSteps = 300

/** The demo's bench, with one of its ways in; goals without steps go the way that the search puts first. */
export async function openDemo(of: DemoReply, way: WayIn): Promise<void> {
  leave()
  const empty = emptyState(1)
  show({
    choosing: empty.choosing,
    plan: {
      ...empty.plan,
      title: freeTitle(way.title),
      shelf: of.shelf,
      packs: of.packs,
      settings: settingsSchema.parse({ ...of.settings, windows: way.windows ?? of.settings.windows }),
      start: way.start,
    },
  })
  saved.value = null
  edits.value = 1
  atDoor.value = false
  openQuestion.value = null
  // The demo's own steps are those of a school; what the public cannot have is not led with: the search then finds the way.
  const isPublic = settingsSchema.parse(of.settings).buyer === 'public'
  const goals = (way.goals ?? []).map(goal => (isPublic ? { ...goal, steps: undefined } : goal))
  await bringFacts(
    goals.flatMap(goal => (goal.steps === undefined ? [] : [goal.steps])),
    [way.start.material, ...of.shelf.map(item => item.material), ...goals.map(goal => goal.target)],
  )
  for (const goal of goals) {
    const route = goal.steps === undefined ? null : routeOfSteps(facts.value.library, startCompound.value, goal.steps)
    if (route === null) wantGoal(goal.target, goal.amount)
    else change({ do: 'add-goal', route, ...(goal.amount === undefined ? {} : { amount: goal.amount }) })
  }
}
