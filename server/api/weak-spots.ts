import { z } from 'zod'
import { trusts } from '../../core/library/trust.ts'
import { inWeakOrder, weakSpots } from '../../core/library/weak-spots.ts'
import { weakPrices } from '../../core/shopping/weak-prices.ts'
import { pricesKept } from '../planning/prices-kept.ts'
import { runsLogged } from '../planning/runs-logged.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

const spotSchema = z
  .object({
    kind: z.string(),
    list: z
      .enum(['materials', 'transformations', 'packs'])
      .meta({ description: 'packs: a price of a packs file; the id is that of its material.' }),
    id: z.string(),
    name: z.string(),
    trust: z.enum(trusts),
    what: z.string(),
    cure: z.string(),
    own: z.boolean().meta({ description: 'The record is one of the bench itself.' }),
  })
  .meta({ id: 'WeakSpot' })

/** Where the library is weak, with what the plans kept here have logged and the prices they hold. */
export const weakSpotsResource: Resource = (api, { workshop, store, own }) => {
  api.get('/weak-spots', { schema: { response: { 200: z.object({ spots: z.array(spotSchema) }), ...refusals } } }, () => {
    const { materials, transformations } = own.file()
    const ids = new Set([...materials, ...transformations].map(record => record.id))
    const prices = new Map(
      pricesKept(store).flatMap(file => weakPrices(workshop.library, file).map(spot => [`${spot.kind} ${spot.name}`, spot] as const)),
    )
    const spots = inWeakOrder([...weakSpots(workshop.library, runsLogged(store)), ...prices.values()])
    return { spots: spots.map(spot => ({ ...spot, own: spot.list !== 'packs' && ids.has(spot.id) })) }
  })
}
