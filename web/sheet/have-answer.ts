import type { Plan } from '../../core/plan/plan.ts'
import { massText } from '../../core/quantity/print.ts'
import { counted } from '../parts/words.tsx'

/** "24.0 g of benzoin and six bottles; a hood, no inert gas": the clauses of the heading; empty where nothing is in hand. */
export function haveAnswer(plan: Plan, nameOf: (id: string) => string): readonly string[] {
  const { start, shelf, settings } = plan
  const bottles = shelf.filter(item => item.material !== start.material).length
  const bottlesText = counted(bottles, 'bottle')
  const owned = ownedText(settings.hood, settings.inertGas)
  if (start.material === '')
    return bottles === 0 ? [] : [`${bottlesText} on the shelf${owned === '' ? '' : ';'}`, ...(owned === '' ? [] : [owned])]
  const inHand = start.massG === null ? nameOf(start.material) : `${massText(start.massG)} of ${nameOf(start.material)}`
  const first = bottles === 0 ? inHand : `${inHand} and ${bottlesText}`
  return owned === '' ? [first] : [`${first};`, owned]
}

/** What is owned of the two things that decide most; nothing where nothing was said. */
function ownedText(hood: boolean | null, inertGas: boolean | null): string {
  const parts = [hood === null ? null : hood ? 'a hood' : 'no hood', inertGas === null ? null : inertGas ? 'inert gas' : 'no inert gas']
  return parts.filter(part => part !== null).join(', ')
}
