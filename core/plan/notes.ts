import type { Library } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import { numberText, percentText } from '../quantity/print.ts'
import { demandOf } from '../route/demand.ts'
import { flowOf } from '../route/flow.ts'
import type { Amounts } from './amounts.ts'
import type { Confident } from './confidence.ts'
import type { Plan } from './plan.ts'

const grams = (massG: number): string => `${numberText(massG)} g`

/** What the reader must know about the amounts of a plan. */
export function amountNotes(library: Library, plan: Plan, confident: Confident): readonly Problem[] {
  return [
    ...shortStart(library, plan, confident),
    ...outOfReach(library, plan, confident),
    ...aboveTheory(confident.amounts),
    ...unrunGoals(library, plan, confident),
  ]
}

const name = (library: Library, id: string): string => library.materials.get(id)?.name ?? id

/** The start, or a logged product, does not reach: by how much, which goals are cut, what it would allow. */
function shortStart(library: Library, plan: Plan, { amounts }: Confident): Problem[] {
  return amounts.division.goals.flatMap((part, index) => {
    if (part.cutBy === null) return []
    const goal = plan.goals[index]!
    const scarce = name(library, part.cutBy)
    const askedG = goal.amount.kind === 'mass' ? goal.amount.massG : null
    const lacking = askedG === null ? null : lackOf(library, amounts, goal.target, askedG - part.massG, part.cutBy)
    const by = lacking === null ? '' : ` ${grams(lacking)} more of it would be needed.`
    const asked = askedG === null ? 'its share' : grams(askedG)
    return [
      {
        code: 'start-short',
        where: ['goals', goal.target],
        what: `The ${scarce} does not reach for ${asked} of ${name(library, goal.target)}: it allows ${grams(part.massG)}.${by}`,
        why: 'Goals are served in their order, and this one comes too late to get all it asks.',
        cure: `Lower this goal to ${grams(part.massG)} or one before it, or take more ${scarce}.`,
      },
    ]
  })
}

/** Grams of a scarce compound that so much more of a target takes. */
function lackOf(library: Library, amounts: Amounts, target: string, moreG: number, compound: string): number {
  const lossG = (step: string): number => flowOf(library, step).lossG
  const inHand = new Set(amounts.steps.filter(s => s.logged).map(s => s.makes))
  const at = (massG: number): number =>
    demandOf(library, amounts.merged.steps, new Map([[target, massG]]), { yields: amounts.yields, lossG, inHand }).compoundG.get(
      compound,
    ) ?? 0
  return at(2 * moreG) - at(moreG)
}

/** A confidence that the start does not allow. */
function outOfReach(library: Library, plan: Plan, confident: Confident): Problem[] {
  const { confidence } = plan.settings
  if (!confident.limited || confidence === null) return []
  const start = name(library, confident.amounts.merged.start)
  return [
    {
      code: 'confidence-out-of-reach',
      where: ['settings', 'confidence'],
      what: `The mass goals together come out with a chance of ${percentText(confident.chanceAll ?? 0, 2)}, not ${percentText(confidence, 2)}.`,
      why: `All the ${start} in hand is planned for them already.`,
      cure: `Take more ${start}, lower a goal, or plan for ${percentText(confident.chanceAll ?? 0, 2)}.`,
    },
  ]
}

function aboveTheory(amounts: Amounts): Problem[] {
  return amounts.steps.flatMap(step => {
    if (!step.logged || step.logged.aboveTheory.length === 0) return []
    return [
      {
        code: 'above-theory',
        where: ['log', step.transformation],
        what: `More ${step.makes} was weighed than theory allows.`,
        why: 'It is wet, impure or mis-weighed; it counts as weighed and teaches no yield.',
        cure: 'Dry it and weigh again, then log a correction.',
      },
    ]
  })
}

/** A goal that gets nothing at all. */
function unrunGoals(library: Library, plan: Plan, { amounts }: Confident): Problem[] {
  return amounts.division.goals.flatMap((part, index) => {
    const goal = plan.goals[index]!
    if (part.massG > 0 || part.cutBy !== null) return []
    return [
      {
        code: 'nothing-left',
        where: ['goals', goal.target],
        what: `Nothing is left for ${name(library, goal.target)}.`,
        why: 'The goals before it and what is kept back take all there is.',
        cure: 'Lower one of them, or take more of the start.',
      },
    ]
  })
}
