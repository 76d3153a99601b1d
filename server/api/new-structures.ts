import { z } from 'zod'
import { within } from '../../core/choose/searching.ts'
import { newStructuresInPieces } from '../library/new-structures.ts'
import { searched } from '../planning/searching.ts'
import { refusals } from '../replies.ts'
import { identifiedSchema, typedSchema } from './new-materials.ts'
import type { Resource } from './resource.ts'
import { whileConnected } from './while-connected.ts'

/** More structures than this no file of reactions brings that somebody completes by hand. */
const mostStructures = 500

/** Structures of a file that the library does not hold, as new materials: nothing is saved. */
export const newStructuresResource: Resource = (api, { workshop }) => {
  api.post(
    '/new-structures',
    {
      schema: {
        description: 'Structures of a file, each once however it is written, as new materials with ids and names of their own.',
        body: z.strictObject({ structures: z.array(typedSchema).max(mostStructures) }),
        response: {
          200: z.object({
            materials: z.array(
              identifiedSchema.extend({
                structures: z.array(z.string()).meta({ description: 'Every way in which the request writes it.' }),
              }),
            ),
          }),
          ...refusals,
        },
      },
    },
    // In turns: a long list keeps nobody else waiting.
    async (request, reply) => {
      const found = await searched(within(newStructuresInPieces(workshop, request.body.structures)), whileConnected(reply))
      return { materials: structuredClone(found) as never }
    },
  )
}
