import { type Library, transformationOf } from '../library/library.ts'
import { type Trust, trustInYield, trusts } from '../library/trust.ts'
import { inWords, listed } from './words.ts'

/** How sure the yield of each step is, in their order. */
export const yieldTrusts = (library: Library, steps: readonly string[]): readonly Trust[] =>
  steps.map(step => trustInYield(transformationOf(library, step)))

/** "yields of the steps: two seen, one remembered": what an overall yield is reckoned from. */
export function yieldsTold(library: Library, steps: readonly string[]): string {
  const told = yieldTrusts(library, steps)
  const parts = trusts.flatMap(trust => {
    const count = told.filter(one => one === trust).length
    return count === 0 ? [] : [`${inWords(count)} ${trust}`]
  })
  return `yields of the steps: ${listed(parts)}`
}
