import { routeChoice } from '../../core/choose/choice.ts'
import { choiceText } from '../../core/report/choice-text.ts'
import { facts } from '../state/facts-here.ts'
import { routesTo, unbeatenTo } from '../state/route-lists.ts'
import { choosing, plan } from '../state/store.ts'

/** How the ways of the plan stand among those that are listed, a sentence or two a goal: for what is printed and taken away. */
export function choicesTold(): readonly string[] {
  const { library } = facts.peek()
  const { by } = choosing.peek()
  return plan.peek().goals.flatMap(({ target, route }) => {
    const { answer, waiting } = routesTo(target)
    if (answer === null || waiting) return []
    const steps = route.steps.map(step => step.transformation)
    return [choiceText(library, routeChoice(target, steps, by, answer, unbeatenTo(target).answer), steps)]
  })
}
