import type { HazardList } from '../hazards/hazard-list.ts'
import { listed } from './words.ts'

/** What the buyer cannot have, as the clause that every answer about the plan begins with; none where they can have all of it. */
export function barredClause({ regulated }: Pick<HazardList, 'regulated'>, nameOf: (id: string) => string): readonly string[] {
  const barred = [...new Set(regulated.filter(hit => hit.barred).map(hit => hit.material))]
  return barred.length === 0 ? [] : [`The public cannot have ${listed(barred.map(nameOf))};`]
}
