import type { Choosing } from '../../core/plan/choosing.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { listed } from '../../core/report/words.ts'
import { Problems } from '../parts/problem.tsx'
import { nameOf, wayName } from '../state/names.ts'
import { askRoutesAgain } from '../state/route-lists.ts'
import { change, choosing } from '../state/store.ts'

/** Answers of the search that say there is no such way; any other is a fault on the road. */
const noWayCodes = new Set(['none-left', 'none-so-short', 'none-through', 'none-by-default', 'unreachable', 'stopped-by-list'])

export const saysNoWay = (problems: readonly Problem[]): boolean => problems.length > 0 && problems.every(one => noWayCodes.has(one.code))

/** One thing that was asked, in the words of its blank, with what takes it back. */
export interface Wish {
  readonly told: string
  readonly label: string
  readonly patch: Partial<Choosing>
}

/** Everything that narrows the ways, as the blanks of question 3 say it. */
export function wishesIn(asked: Choosing): readonly Wish[] {
  const without = <T,>(all: readonly T[], one: T): T[] => all.filter(other => other !== one)
  return [
    ...asked.avoid.map(id => ({
      told: nameOf(id),
      label: `allow ${nameOf(id)} again`,
      patch: { avoid: without(asked.avoid, id) },
    })),
    ...asked.avoidStep.map(id => ({
      told: `the step “${wayName(id)}”`,
      label: `allow the step “${wayName(id)}” again`,
      patch: { avoidStep: without(asked.avoidStep, id) },
    })),
    ...asked.avoidCode.map(code => ({ told: code, label: `allow ${code} again`, patch: { avoidCode: without(asked.avoidCode, code) } })),
    ...asked.avoidList.map(list => ({ told: list, label: `allow ${list} again`, patch: { avoidList: without(asked.avoidList, list) } })),
    ...(asked.ownedOnly ? [{ told: 'only what the bench owns', label: 'allow other equipment again', patch: { ownedOnly: false } }] : []),
    ...(asked.seenOnly
      ? [{ told: 'only yields seen in a source or at your bench', label: 'allow remembered yields again', patch: { seenOnly: false } }]
      : []),
    ...(asked.maxSteps === null
      ? []
      : [{ told: `at most ${asked.maxSteps} steps`, label: 'allow as many steps as it takes', patch: { maxSteps: null } }]),
  ]
}

/** What the search says of no way, in the words of the sheet, with what would open one. */
export function onSheet(
  problem: Problem,
  asked: Choosing,
  target: string,
): { readonly problem: Problem; readonly wishes: readonly Wish[] } {
  const where = [`ways to ${nameOf(target)}`]
  const wishes = wishesIn(asked)
  const told = (patch: Partial<Problem>, ways: readonly Wish[] = []) => ({ problem: { ...problem, where, ...patch }, wishes: ways })
  const makeAll: Wish = {
    told: '',
    label: 'also look at ways that make what could be bought',
    patch: { make: [...new Set([...asked.make, 'all'])] },
  }
  const through = asked.mustPass.map(id => ({
    told: nameOf(id),
    label: `drop ${nameOf(id)}`,
    patch: { mustPass: asked.mustPass.filter(other => other !== id) },
  }))
  switch (problem.code) {
    case 'none-left':
      return told(
        {
          what: 'What is avoided leaves no way.',
          why:
            wishes.length === 0
              ? 'A list ends planning with what every way needs.'
              : `There are ways; this takes them out: ${listed(wishes.map(one => one.told))}.`,
          cure: wishes.length === 1 ? 'Allow it again, or choose another goal.' : 'Allow one of these again, or choose another goal.',
        },
        wishes,
      )
    case 'none-so-short':
      return told(
        { what: `No way has so few steps.`, cure: 'Allow more steps.' },
        wishes.filter(one => 'maxSteps' in one.patch),
      )
    case 'none-through':
      return told(
        {
          what: `No way makes ${listed([...new Set([...asked.mustPass, ...asked.make.filter(id => id !== 'all')])].map(nameOf))} as it goes.`,
          why: 'There are ways that do not.',
          cure: 'Drop the compound, or look at more ways.',
        },
        [...through, makeAll],
      )
    case 'none-by-default':
      return told({ why: 'There is a way that makes what could be bought as well.', cure: 'Look at those too.' }, [makeAll])
    case 'unreachable':
      return told({
        what: `${nameOf(target)} cannot be made from this start with the preparations of this library.`,
        why: 'What it is made from does not come from the start, or can be neither made nor bought.',
        cure: 'Question 2 lists what the start can become; or write the missing preparation.',
      })
    case 'search-cut-short':
      return told({ cure: 'Look again, or narrow what is asked below.' })
    default:
      return { problem, wishes: [] }
  }
}

/** Why there are no ways, and buttons that open one. */
export function NoWay({ target, problems }: { readonly target: string; readonly problems: readonly Problem[] }) {
  const told = problems.map(problem => onSheet(problem, choosing.value, target))
  const wishes = told.flatMap(one => one.wishes)
  return (
    <Problems of={told.map(one => one.problem)}>
      {saysNoWay(problems) ? (
        wishes.map(wish => (
          <button type="button" class="do" key={wish.label} onClick={() => change({ do: 'choosing', patch: wish.patch })}>
            {wish.label}
          </button>
        ))
      ) : (
        <button type="button" class="do" onClick={() => askRoutesAgain(target)}>
          Try again
        </button>
      )}
    </Problems>
  )
}
