import { type Axis, axes, type ChoosingOptions } from '../../core/choose/query.ts'
import { type Choosing, firstChoosing } from '../../core/plan/choosing.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { nearest } from '../../core/problem/nearest.ts'
import { badOption, type Given } from '../commands/command.ts'

/** The choosing options of a command line. */
export function choosingFrom(given: Given): ChoosingOptions {
  const by = given.text('by')
  if (by !== undefined && !(axes as readonly string[]).includes(by)) {
    const near = nearest(by, axes)
    throw badOption(
      '--by',
      `is "${by}".`,
      `Routes are ordered by one of: ${axes.join(', ')}.`,
      near ? `Did you mean ${near}?` : 'Choose one of them.',
      'axis-unknown',
    )
  }
  const maxSteps = given.text('max-steps') === undefined ? undefined : given.whole('max-steps', 1, 1000, 1)
  return {
    ...(by === undefined ? {} : { by: by as Axis }),
    avoid: given.texts('avoid'),
    avoidStep: given.texts('avoid-step'),
    mustPass: given.texts('must-pass'),
    avoidCode: given.texts('avoid-code'),
    avoidList: given.texts('avoid-list'),
    ownedOnly: given.on('owned-only'),
    seenOnly: given.on('seen-only'),
    ...(maxSteps === undefined ? {} : { maxSteps }),
    make: given.texts('make'),
  }
}

/** How the ways of a plan were looked for: as the command line says, or as the plan itself does where it came out of a file. */
export function choosingGiven(plan: Plan, given: Given): Choosing {
  const { maxSteps = null, ...options } = choosingFrom(given)
  return plan.choosing ?? { ...firstChoosing, ...withoutUndefined(options), maxSteps }
}

const withoutUndefined = (options: Omit<ChoosingOptions, 'maxSteps'>): Partial<Choosing> =>
  Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined))
