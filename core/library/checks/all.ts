import { casDigits } from './cas-digits.ts'
import type { MaterialCheck, TransformationCheck } from './check.ts'
import { coProductsNamed } from './co-products-named.ts'
import { containsResolves } from './contains-resolves.ts'
import { duplicates } from './duplicates.ts'
import { equationBalances } from './equation-balances.ts'
import { equationNamed } from './equation-named.ts'
import { figuresPlausible } from './figures-plausible.ts'
import { formulaAgrees } from './formula-agrees.ts'
import { gasesAreGases } from './gases-are-gases.ts'
import { groupsExist } from './groups-exist.ts'
import { hazardCodesExist } from './hazard-codes-exist.ts'
import { idsResolve } from './ids-resolve.ts'
import { isolationShape } from './isolation-shape.ts'
import { kindFits } from './kind-fits.ts'
import { limitingLimits } from './limiting-limits.ts'
import { linesMeasurable } from './lines-measurable.ts'
import { notItsOwnReactant } from './not-its-own-reactant.ts'
import { polymerEnds } from './polymer-ends.ts'
import { rangesOrdered } from './ranges-ordered.ts'
import { reservedId } from './reserved-id.ts'
import { sourcesPresent } from './sources-present.ts'
import { tasksAddUp } from './tasks-add-up.ts'
import { yieldsOrdered } from './yields-ordered.ts'

/** Every rule about a material. */
export const materialChecks: readonly MaterialCheck[] = [
  reservedId,
  kindFits,
  formulaAgrees,
  polymerEnds,
  casDigits,
  containsResolves,
  hazardCodesExist,
  groupsExist,
  duplicates,
  figuresPlausible,
  sourcesPresent,
]

/** Every rule about a transformation that can be held even where it names a material that is not there. */
export const transformationChecks: readonly TransformationCheck[] = [
  reservedId,
  idsResolve,
  equationNamed,
  isolationShape,
  notItsOwnReactant,
  coProductsNamed,
  yieldsOrdered,
  linesMeasurable,
  tasksAddUp,
  rangesOrdered,
  gasesAreGases,
  sourcesPresent,
]

/** Rules that reckon with amounts and atoms: held where every id of the transformation resolves. */
export const reckoningChecks: readonly TransformationCheck[] = [equationBalances, limitingLimits]
