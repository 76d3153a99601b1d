import { z } from 'zod'
import { trusts } from '../../core/library/trust.ts'
import { weakSpots } from '../../core/library/weak-spots.ts'
import { runsLogged } from '../planning/runs-logged.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

const spotSchema = z
  .object({
    kind: z.string(),
    list: z.enum(['materials', 'transformations']),
    id: z.string(),
    name: z.string(),
    trust: z.enum(trusts),
    what: z.string(),
    cure: z.string(),
    own: z.boolean().meta({ description: 'The record is one of the bench itself.' }),
  })
  .meta({ id: 'WeakSpot' })

/** Where the library is weak, with what the plans kept here have logged. */
export const weakSpotsResource: Resource = (api, { workshop, store, own }) => {
  api.get('/weak-spots', { schema: { response: { 200: z.object({ spots: z.array(spotSchema) }), ...refusals } } }, () => {
    const { materials, transformations } = own.file()
    const ids = new Set([...materials, ...transformations].map(record => record.id))
    return { spots: weakSpots(workshop.library, runsLogged(store)).map(spot => ({ ...spot, own: ids.has(spot.id) })) }
  })
}
