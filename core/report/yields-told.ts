import { type Trust, trusts } from '../library/trust.ts'
import { inWords, listed } from './words.ts'

/** "yields of the steps: two seen, one remembered": what an overall yield is reckoned from. */
export function yieldsTold(told: readonly Trust[]): string {
  const parts = trusts.flatMap(trust => {
    const count = told.filter(one => one === trust).length
    return count === 0 ? [] : [`${inWords(count)} ${trust}`]
  })
  return `yields of the steps: ${listed(parts)}`
}
