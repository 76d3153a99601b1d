/** The door of the core: what the server and the page take. Inside the core each file imports the file it needs. */
export type { Library, LibraryFile } from './library/library.ts'
export { type ComparedRun, comparedRuns } from './logbook/compare.ts'
export { type ReplanInput, type Way, type WayOn, type WayRow, wayRow, waysOn } from './logbook/replan.ts'
export { type RunNote, withRun } from './logbook/run.ts'
export { type EvaluateInput, evaluate } from './plan/evaluate.ts'
export type { Evaluation, GoalResult, Stopped } from './plan/evaluation.ts'
export {
  changesSince,
  libraryHash,
  logEntrySchema,
  type OpenedPlan,
  type PlanFile,
  planFileOf,
  planFileSchema,
  planFromFile,
  planSchema,
  readPlanFile,
} from './plan/file.ts'
export { checkedPlan, PlanRefused } from './plan/goals.ts'
export { libraryOfParts } from './plan/library-of-parts.ts'
export { standing } from './plan/logged.ts'
export { byNumber, type MergedSteps, mergedSteps } from './plan/merged-steps.ts'
export type { Goal, GoalAmount, LogEntry, Plan } from './plan/plan.ts'
export { type Reckoned, reckoned } from './plan/reckoned.ts'
export { defaultSettings, type Settings, settingsSchema } from './plan/settings.ts'
export { sliceFile, sliceOf, sliceOfPlan } from './plan/slice.ts'
export { type StartNeeded, startNeeded } from './plan/start-needed.ts'
export { type Working, type WorkingKey, type WorkingRow, workingOf } from './plan/working.ts'
export { bad, type Checked, good, type Problem, paragraph } from './problem/problem.ts'
export type { ChargedLine, ChargedStep, Spread } from './route/charged.ts'
export { isRoute } from './route/is-route.ts'
export { boughtBy, madeBy } from './route/made-bought.ts'
export { materialsOfRoute, materialsOfSteps } from './route/materials.ts'
export { longestLinearYield, overallYieldOnStart } from './route/overall-yield.ts'
export type { Route, Step } from './route/route.ts'
export { routeOf } from './route/route-of.ts'
export { workingOrder } from './route/working-order.ts'
