import type { Traits } from '../hazards/traits.ts'
import type { Library } from '../library/library.ts'
import type { Transformation } from '../library/transformation.ts'
import { trustInYield } from '../library/trust.ts'
import type { Settings } from '../plan/settings.ts'
import { avoids, bears, isOwned, materialsOfStep } from './forbidden.ts'
import { type ChoosingOptions, matchesList } from './query.ts'

/** What was asked to be kept clear of, and what of it a plan uses all the same. Each once, in the order of the steps. */
export interface Breach {
  /** As a person names it: a statement, a material, a list, a step. */
  readonly asked: readonly string[]
  /** Materials by their names; steps where it is the step itself. */
  readonly used: readonly string[]
}

export interface BreachInput {
  readonly library: Library
  readonly traits: ReadonlyMap<string, Pick<Traits, 'regulated'>>
  readonly settings: Settings
  readonly options: Pick<ChoosingOptions, 'avoid' | 'avoidStep' | 'avoidCode' | 'avoidList' | 'ownedOnly' | 'seenOnly'>
  /** Transformation ids; those that the library does not hold are passed over. */
  readonly steps: readonly string[]
}

/** What a chosen way uses against what was asked, by the very rules that the search goes by; null where it keeps to everything. */
export function breachOf({ library, traits, settings, options, steps }: BreachInput): Breach | null {
  const asked = new Set<string>()
  const used = new Set<string>()
  const against = (what: string, by: string): void => {
    asked.add(what)
    used.add(by)
  }
  const nameOf = (id: string): string => library.materials.get(id)?.name ?? id
  for (const step of steps.flatMap(id => library.transformations.get(id) ?? [])) {
    if (options.avoidStep?.includes(step.id)) against('a step that is avoided', stepName(step))
    if (options.ownedOnly && !isOwned(step, settings)) against('equipment that the bench does not own', stepName(step))
    if (options.seenOnly && trustInYield(step) === 'remembered') against('yields that were only remembered', stepName(step))
    for (const id of materialsOfStep(step)) {
      for (const avoided of options.avoid ?? []) if (avoids(library, new Set([avoided]), id)) against(nameOf(avoided), nameOf(id))
      for (const code of options.avoidCode ?? []) if (bears(library, step, id, [code])) against(code, nameOf(id))
      for (const list of options.avoidList ?? [])
        if (traits.get(id)?.regulated.some(match => matchesList(match.list, list))) against(list, nameOf(id))
    }
  }
  return used.size === 0 ? null : { asked: [...asked], used: [...used] }
}

const stepName = (step: Transformation): string => `the step “${step.name}”`
