import { z } from 'zod'
import { type Encoding, mostTransformations, wholeLibrary } from '../planning/whole-library.ts'
import { refusals } from '../replies.ts'
import { noneMatch } from './none-match.ts'
import type { Resource } from './resource.ts'

const replySchema = z
  .object({
    edition: z
      .string()
      .nullable()
      .meta({ description: 'Names just these records and traits; the ETag. Null = too large, nothing is sent.' }),
    transformations: z.int(),
    library: z.unknown().meta({ description: 'The records in the library format, the own ones laid over; null = too large.' }),
    traits: z.unknown().meta({ description: 'By material: matches on regulated lists, reactivity groups, structural patterns.' }),
    lists: z.unknown().meta({ description: 'The regulated lists that are loaded, with or without a material of this library.' }),
  })
  .meta({ id: 'WholeLibrary' })

/** The whole library with all that a search of its own needs: the page searches in it by itself. */
export const library: Resource = (api, { workshop }) => {
  const description = `The library as it is now, with the bench's own records laid over, for programs that search by themselves. Up to ${mostTransformations} transformations; above, \`library\` is null. Ask again with If-None-Match: 304 while nothing has changed.`
  api.get('/library', { schema: { description, response: { 200: replySchema, ...refusals } } }, async (request, reply) => {
    const { edition, encoded } = wholeLibrary(workshop)
    const tag = edition === null ? null : `"${edition}"`
    // Never kept without asking: a change of the library is seen by the next search.
    reply.header('cache-control', 'no-cache').header('vary', 'accept-encoding')
    if (tag !== null) reply.header('etag', tag)
    if (tag !== null && noneMatch(request.headers['if-none-match'], tag)) return reply.status(304 as never).send()
    const as = encodingFor(String(request.headers['accept-encoding'] ?? ''))
    if (as !== 'identity') reply.header('content-encoding', as)
    return reply.type('application/json').send((await encoded(as)) as never)
  })
}

/** The tightest that whoever asks can read. */
function encodingFor(accepted: string): Encoding {
  const named = new Set(
    accepted
      .split(',')
      .map(one => one.trim().split(';'))
      .filter(([, quality]) => !/^\s*q=0(\.0*)?$/.test(quality ?? ''))
      .map(([name]) => name),
  )
  return named.has('br') ? 'br' : named.has('gzip') ? 'gzip' : 'identity'
}
